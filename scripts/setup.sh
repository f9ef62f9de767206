#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing: setup.sh demo|check|lint|coverage|fuzz|deb [--retry]
# Says nothing when all is there, and is then done in a moment.
set -euo pipefail
cd "$(dirname "$0")/.."

need=()   # the work cannot go on without these
extra=()  # tests that need these are skipped without them, and say so
skipped=build/setup-skipped # extras that could not be had, so that nobody waits for them twice

# One line a package: how to see that it is there. A program that came by another way counts.
present() {
    case $1 in
    gcc) command -v cc ;;
    g++) command -v c++ ;;
    libc6-dev) echo '#include <complex.h>' | cc -E -x c - ;; # gcc alone brings no headers
    make) command -v make ;;
    pkg-config) command -v pkg-config ;;
    libgsl-dev) pkg-config --exists gsl ;;
    libcjson-dev) pkg-config --exists libcjson ;;
    libcmocka-dev) pkg-config --exists cmocka ;;
    gnuplot-nox) command -v gnuplot ;;
    libclang-rt-14-dev) echo 'int LLVMFuzzerTestOneInput(void){return 0;}' | clang -fsanitize=fuzzer -x c -o /dev/null - ;;
    calculix-ccx) command -v ccx ;;
    python3-numpy) have_python numpy ;;
    python3-scipy) have_python scipy ;;
    python3-jsonschema) have_python jsonschema ;;
    dpkg-dev) command -v dpkg-buildpackage ;;
    debhelper) command -v dh ;;
    chromium) command -v chromium || command -v chromium-browser ;;
    nodejs) command -v node ;;
    npm) command -v npm ;;
    browser-modules) [ -f build/browser/node_modules/axe-core/axe.min.js ] && cmp -s tests/browser/package-lock.json build/browser/package-lock.json ;;
    fonts-dejavu-core) [ -f /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf ] ;;
    fonts-liberation) [ -f /usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf ] ;;
    locales) [ -d /usr/share/i18n/locales ] ;;
    gcovr | lintian | mandoc | valgrind | clang | clang-format | clang-tidy | cppcheck | shellcheck) command -v "$1" ;;
    *) echo "setup.sh: no probe for $1" >&2 && exit 2 ;;
    esac >/dev/null 2>&1
}

have_python() { # of the interpreters there are, does one have it? Found, not imported, which is slow
    local python
    for python in /usr/bin/python3 python3; do
        "$python" -I -c 'import importlib.util as u, sys; sys.exit(u.find_spec(sys.argv[1]) is None)' "$1" && return
    done
}

choose() {
    need=(gcc libc6-dev make pkg-config libgsl-dev libcjson-dev)
    case $1 in
    demo) need+=(gnuplot-nox) ;;
    check | coverage)
        need+=(gnuplot-nox libcmocka-dev)
        extra=(g++ calculix-ccx python3-numpy python3-scipy python3-jsonschema nodejs npm chromium
            fonts-dejavu-core fonts-liberation mandoc valgrind locales)
        if [ "$1" = coverage ]; then need+=(gcovr); fi
        ;;
    fuzz) need+=(clang libclang-rt-14-dev) ;;
    lint) need+=(libcmocka-dev clang clang-format clang-tidy cppcheck shellcheck) ;;
    deb) need+=(gnuplot-nox dpkg-dev debhelper lintian) ;;
    *) echo "usage: scripts/setup.sh demo|check|lint|coverage|fuzz|deb [--retry]" >&2 && exit 2 ;;
    esac
}

absent() { # of the packages given, those that are not there
    local package
    for package in "$@"; do present "$package" || echo "$package"; done
}

root() { # run as root, by whatever way there is
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

install() {
    root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -q --no-install-recommends "$@" >>build/setup.log 2>&1
}

by_hand() { # no way to install: say what is wanted, and stop only if it is needed
    echo "giveway: please install these (Debian names): $*"
    echo "  on a Debian system:  apt-get install $*"
    echo "  elsewhere: a C11 compiler, GNU make, pkg-config, GSL and cJSON with headers, gnuplot 5;"
    echo "  for the tests: cmocka, and if you can CalculiX (ccx), Python 3 with NumPy and SciPy, mandoc."
}

# The rules of accessibility that the browser test holds the page against: no part of the program, never beside the
# sources. Without them that one check is left out.
browser_modules() {
    if [ "$1" != check ] && [ "$1" != coverage ]; then return; fi
    if present browser-modules || ! present npm || grep -qsx browser-modules "$skipped"; then return; fi
    echo "installing: axe-core (log: build/setup.log)"
    mkdir -p build/browser
    cp tests/browser/package.json tests/browser/package-lock.json build/browser/
    if ! npm ci --prefix build/browser --no-audit --no-fund --ignore-scripts \
        --fetch-retries=1 --fetch-timeout=60000 >>build/setup.log 2>&1; then
        rm -f build/browser/package-lock.json
        echo "axe-core could not be installed; the check of the page's accessibility will be skipped"
        echo browser-modules >>"$skipped"
    fi
}

choose "${1:-}"
if [ "${2:-}" = --retry ]; then rm -f "$skipped"; fi
mapfile -t missing < <(absent "${need[@]}")
mapfile -t wanted < <(absent "${extra[@]}")
if [ -f "$skipped" ] && [ ${#wanted[@]} -gt 0 ]; then
    mapfile -t wanted < <(printf '%s\n' "${wanted[@]}" | grep -vxFf "$skipped" || true)
fi
if [ $((${#missing[@]} + ${#wanted[@]})) = 0 ]; then
    browser_modules "$1"
    exit 0
fi

mkdir -p build
if ! command -v apt-get >/dev/null || { [ "$(id -u)" != 0 ] && ! command -v sudo >/dev/null; }; then
    by_hand "${missing[@]}" "${wanted[@]}"
    if [ ${#missing[@]} -gt 0 ]; then exit 1; fi
    printf '%s\n' "${wanted[@]}" >>"$skipped"
    exit 0
fi

echo "installing: ${missing[*]} ${wanted[*]} (log: build/setup.log)"
root apt-get update -q >>build/setup.log 2>&1 || true
if [ ${#missing[@]} -gt 0 ] && ! install "${missing[@]}"; then
    tail -n 20 build/setup.log >&2
    by_hand "${missing[@]}" >&2
    exit 1
fi
if [ ${#wanted[@]} -gt 0 ] && ! install "${wanted[@]}"; then
    for package in "${wanted[@]}"; do install "$package" || true; done
fi
mapfile -t wanted < <(absent "${wanted[@]}")
for package in "${wanted[@]}"; do
    echo "$package could not be installed; tests that need it will be skipped"
    echo "$package" >>"$skipped"
done
browser_modules "$1"
