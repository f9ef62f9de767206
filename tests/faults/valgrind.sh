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
small=tests/fuzz/corpus/run/arm.json align=tests/fuzz/corpus/run/wishbone-align.json priced=tests/fuzz/corpus/run/wishbone.json

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

look "spread, with charts" spread $small --draws 100 -o "$work/spread"
look "choose" choose $priced --draws 100 --format json
look "bench, with charts" bench cases/press.csv dynamic=cases/rig.csv -o "$work/bench"
look "start" start --front strut --rear five_link
cat >"$work/ramp.json" <<'END'
{ "format": "giveway-readings-1", "readings": [
  { "name": "bump", "corner": "front", "travel_mm": [-20, 20], "toe_change_deg": [0.05, -0.05], "within_deg": 0.2 } ] }
END
look "match" match $priced --readings "$work/ramp.json" --format json

look "align" align $align --format json
look "report" report $small -o "$work/page"
exit $status
