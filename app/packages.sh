# What Wend needs from Debian 12, in one place; sourced by app/start.sh and tests/run.sh.

wend_build_packages="g++ cmake ninja-build qt6-base-dev qt6-svg-dev libeigen3-dev nlohmann-json3-dev fonts-b612 fontconfig"
wend_test_packages="libgtest-dev clang-format libcgal-dev libgmp-dev libmpfr-dev libboost-dev"

# Installs those of the named packages that are missing; says what to do where it may not.
wend_install() {
  local missing="" package
  for package in "$@"; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || missing="$missing $package"
  done
  [ -z "$missing" ] && return 0
  local as_root=""
  if [ "$(id -u)" != 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "These packages are missing, and installing them needs root or sudo: apt-get install$missing" >&2
      return 1
    fi
    as_root=sudo
  fi
  echo "Installing:$missing"
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get update -q &&
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing
}
