#!/usr/bin/env bash
# Installs what is missing, builds everything with warnings as errors, checks the layout of every source, runs every
# test, and runs core once more under the address and undefined-behaviour sanitizers.
set -euo pipefail
cd "$(dirname "$0")/.."
. app/packages.sh
wend_install $wend_build_packages $wend_test_packages

echo "Layout"
find app core ui tests -name '*.cpp' -o -name '*.h' | sort | xargs clang-format --dry-run --Werror

export QT_QPA_PLATFORM=offscreen
XDG_RUNTIME_DIR=$(mktemp -d)
XDG_STATE_HOME=$XDG_RUNTIME_DIR/state
export XDG_RUNTIME_DIR XDG_STATE_HOME
chmod 700 "$XDG_RUNTIME_DIR"
trap 'rm -rf "$XDG_RUNTIME_DIR"' EXIT

echo "Build and tests"
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=RelWithDebInfo -DWEND_TESTS=ON
cmake --build build
ctest --test-dir build --output-on-failure -j "$(nproc)"

echo "Core under sanitizers"
cmake -S . -B build-asan -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1" -DWEND_UI=OFF \
  -DWEND_SANITIZE=address,undefined
cmake --build build-asan
ctest --test-dir build-asan --output-on-failure -j "$(nproc)"
