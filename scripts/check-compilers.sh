#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# No source draws a warning from gcc or from clang, whichever of them are installed.
set -euo pipefail
cd "$(dirname "$0")/.."
B=${B:-build/release}
flags=(-std=c11 -D_POSIX_C_SOURCE=200809L -ffp-contract=off -Iinclude -Isrc -Itests "-I$B" -Wall -Wextra
    -Wconversion -Wshadow -Wdouble-promotion -Wstrict-prototypes -Wformat=2 -Werror -fsyntax-only)
read -ra packages < <(pkg-config --cflags gsl libcjson)
status=0
for compiler in gcc clang; do
    if ! command -v $compiler >/dev/null; then
        echo "ok - $compiler # SKIP not installed"
    elif $compiler "${flags[@]}" "${packages[@]}" src/*/*.c tests/*/*.c; then
        echo "ok - $compiler draws no warning"
    else
        echo "not ok - $compiler" && status=1
    fi
done
exit $status
