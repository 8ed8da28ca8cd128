#!/usr/bin/env bash
# Installs what is missing, builds Wend and opens the sample take in a window. Without a display it prints the take's
# summary, pulls, crew windows and snags, and writes the picture of the plan.
set -euo pipefail
cd "$(dirname "$0")/.."
. app/packages.sh
wend_install $wend_build_packages

cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=RelWithDebInfo -DWEND_TESTS=OFF
cmake --build build --target wend

plan=samples/first-batch.wend
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec build/wend open "$plan"
fi

echo
# `check` answers 1 when snags stop the take, as they do in this sample: that is a finding, not a failure.
build/wend check "$plan" --quiet > build/first-batch-check.txt || [ $? = 1 ]
head -2 build/first-batch-check.txt
echo
echo "Pulls"
build/wend pulls "$plan" --quiet
echo
echo "Crew windows"
build/wend sheet "$plan" --for crew --quiet
echo
echo "Snags"
tail -n +3 build/first-batch-check.txt
build/wend draw "$plan" --at 60 --view plan -o build/first-batch-plan.png
echo "The picture of the plan is build/first-batch-plan.png"
