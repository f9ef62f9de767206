#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# No source draws a warning from gcc or from clang, whichever of them are installed.
set -euo pipefail
cd "$(dirname "$0")/.."
status=0

compile() { # COMPILER FILE...
    local command
    read -ra command < <(env -u MAKEFLAGS -u MFLAGS make -s CC="$1" MODE="${MODE:-release}" print-flags)
    shift
    "${command[@]}" -Itests -Werror -fsyntax-only "$@"
}

for compiler in gcc clang; do
    if ! command -v $compiler >/dev/null; then
        echo "ok - $compiler # SKIP not installed"
    elif compile $compiler src/*/*.c tests/*/*.c; then
        echo "ok - $compiler draws no warning"
    else
        echo "not ok - $compiler" && status=1
    fi
done
exit $status
