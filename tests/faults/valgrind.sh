#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Every command under valgrind: no memory read before it was written, none used after, none lost.
set -u
cd "${SOURCE:-$(dirname "$0")/../..}" || exit 2
if [ "${MODE:-release}" = asan ] || ! command -v valgrind >/dev/null; then
    echo "valgrind is not installed, or the sanitizers look already" && exit 77
fi
work=$(mktemp -d "${TMPDIR:-/tmp}/valgrind.XXXXXX")
trap 'rm -rf "$work"' EXIT
PATH=$PWD/tests/faults:$PATH # the stand-in for gnuplot
export PATH
status=0
small=tests/fuzz/corpus/run/arm.json align=tests/fuzz/corpus/run/wishbone-align.json

look() { # NAME ARGUMENTS...
    local name=$1
    shift
    if valgrind -q --error-exitcode=99 --leak-check=full --show-leak-kinds=all --errors-for-leak-kinds=all \
        "$GIVEWAY" "$@" >"$work/out" 2>"$work/err"; then
        echo "ok - $name"
    else
        echo "not ok - $name"
        sed 's/^/#   /' "$work/err" | head -n 30
        status=1
    fi
}

for command in check rates deflect travel ride; do look "$command" $command $small; done
look "compare, with charts" compare $small -o "$work/charts"

look "align" align $align --format json
look "report" report $small -o "$work/page"
exit $status
