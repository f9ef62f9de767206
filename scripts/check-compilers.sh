#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# No source draws a warning from gcc or from clang, whichever of them are installed; and a function that is
# compiled for several processors (GW_WIDE) keeps the name that other files call it by.
set -euo pipefail
cd "$(dirname "$0")/.."
status=0

compile() { # COMPILER FILE...
    local command
    read -ra command < <(env -u MAKEFLAGS -u MFLAGS make -s CC="$1" MODE="${MODE:-release}" print-flags)
    shift
    "${command[@]}" -Itests -Werror "$@"
}

object=$(mktemp)
trap 'rm -f "$object"' EXIT

named() { # COMPILER
    local file name
    while IFS=: read -r file name; do
        compile "$1" -c -o "$object" "$file"
        nm "$object" | grep -qE " [Ti] $name\$" || { echo "# $file: no $name in the object" && return 1; }
    done < <(grep -HoP '^GW_WIDE (?!.*static)[a-z]+ \K[a-z_0-9]+' src/*/*.c)
}

for compiler in gcc clang; do
    if ! command -v $compiler >/dev/null; then
        echo "ok - $compiler # SKIP not installed"
    elif compile $compiler -fsyntax-only src/*/*.c tests/*/*.c && named $compiler; then
        echo "ok - $compiler draws no warning, and names what it compiles"
    else
        echo "not ok - $compiler" && status=1
    fi
done
exit $status
