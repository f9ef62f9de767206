#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# shellcheck disable=SC2317  # functions are called through step
#
# Layout and code, with general tools: lint.sh [FILE.c|FILE.h ...] (left out: everything)
set -uo pipefail
cd "$(dirname "$0")/.." || exit 2
B=build/release
status=0

step() { # NAME COMMAND...
    local name=$1
    shift
    if "$@"; then echo "ok    $name"; else echo "FAIL  $name" && status=1; fi
}

if [ $# -gt 0 ]; then
    files=("$@")
else
    mapfile -t files < <(find include src tests -name '*.[ch]' | sort)
fi
mapfile -t sources < <(printf '%s\n' "${files[@]}" | grep '\.c$')
read -ra flags < <(env -u MAKEFLAGS make -s CC=clang print-flags)
flags=("${flags[@]:1}" -Itests)

# What clang-tidy says of warnings that it does not show is of no interest.
noise='warnings? generated|^Suppressed|^Use -header-filter'

tidy_some() { # FILE...
    clang-tidy --quiet "$@" -- "${flags[@]}" 2> >(grep -vE "$noise" >&2)
}

tidy() { # two halves at a time
    local half=$(((${#sources[@]} + 1) / 2)) first
    tidy_some "${sources[@]:0:half}" &
    first=$!
    if [ ${#sources[@]} -gt "$half" ]; then tidy_some "${sources[@]:half}" || { wait "$first"; return 1; }; fi
    wait "$first"
}

check_cpp() {
    cppcheck --quiet --error-exitcode=1 --std=c11 --language=c --inline-suppr -j 2 \
        --enable=warning,performance,portability,style --suppressions-list=scripts/cppcheck.txt \
        -D_POSIX_C_SOURCE=200809L -DGW_LINT=1 -Iinclude -Isrc -Itests "-I$B" "${sources[@]}"
}

step "clang-format" clang-format --dry-run -Werror "${files[@]}"
if [ ${#sources[@]} -gt 0 ]; then
    step "clang-tidy" tidy
    step "cppcheck" check_cpp
fi
if [ $# = 0 ]; then step "shellcheck" shellcheck -x -e SC1007,SC1090 scripts/*.sh .ci/run src/cli/completions/giveway.bash tests/*/*.sh; fi
exit "$status"
