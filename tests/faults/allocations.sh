#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Memory runs out at the allocations of each command: a sample with every check, all of them with `make faults`.
#
#   allocations.sh [PROGRAM] [--all]      the program is that of tests/faults/allocation, not this one
set -u
cd "${SOURCE:-$(dirname "$0")/../..}" || exit 2
tool=${B:-build/release}/tests/faults/allocation
if [ ! -x "$tool" ]; then
    echo "needs malloc to itself, which the sanitizers have" && exit 77
fi
work=$(mktemp -d "${TMPDIR:-/tmp}/faults.XXXXXX")
trap 'rm -rf "$work"' EXIT
PATH=$PWD/tests/faults:$PATH # the stand-in for gnuplot
export PATH TMPDIR=$work
status=0
small=tests/fuzz/corpus/run/wishbone.json large=tests/cases/saloon-by-rule.json ramp=$work/ramp.json
cat >"$ramp" <<'END'
{ "format": "giveway-readings-1", "load_percent": 3, "readings": [
  { "name": "bump", "corner": "front", "travel_mm": [-20, 20], "toe_change_deg": [0.05, -0.05], "within_deg": 0.2 } ] }
END

# How many allocations a run has; reading materials and case is the same for all commands.
count() { "$tool" --every 1000000000 "$@" | sed -nE 's/.*: ([0-9]+) allocations.*/\1/p'; }

# A run in which none was made to fail says nothing.
tried() {
    "$tool" "$@" >"$work/tried" || status=1
    cat "$work/tried"
    if grep -q ' 0 failures' "$work/tried"; then echo "not ok - nothing failed in: $*" && status=1; fi
    rm -f "$work/tried"
}

try() { # SAMPLES ARGUMENTS...: so many failures spread over the run
    local samples=$1 n
    shift
    n=$(count "$@")
    if [ "$all" = yes ]; then samples=$n; fi
    tried --from "$from" --every $(((n - from) / samples + 1)) "$@"
}

try_files() { # SAMPLES ARGUMENTS...
    local samples=$1 n
    shift
    n=$(count "$@" -o "$work/count")
    if [ "$all" = yes ]; then samples=$n; fi
    tried --from "$from" --every $(((n - from) / samples + 1)) --apart "$work/out" "$@"
    rm -rf "${work:?}"/*
}

all=no
if [ "${2:-}" = --all ]; then all=yes; fi
from=0
try 80 check $small
# What rates of one bush take is reading materials and case, and little more.
from=$(count rates --format csv $large rack_rubber)
for command in deflect compare travel ride align rates; do try 80 $command $large; done
for command in deflect compare travel ride align rates; do try 25 $command --format json $large; done
# Axles with shared parts, and the whole car.
try_car() { # CASE BUSH COMMANDS...
    local case=$1 command
    from=$(count rates --format csv "$case" "$2")
    for command in "${@:3}"; do try 25 "$command" "$case"; done
    try 12 deflect --format json "$case"
}
try_car tests/casefile/samples/shared-parts.json mount_rubber deflect travel compare
try_car cases/live-axle.json rod_rubber deflect travel compare ride
from=$(count rates --format csv $small rubber)
try 30 spread --draws 100 --format json $small
try 60 choose --draws 100 --format json $small
try_on() { # SAMPLES ARGUMENTS...: of a command that takes no case, or another
    local was=$from
    from=0
    try "$@"
    from=$was
}
try_on 30 bench --format json cases/press.csv dynamic=cases/rig.csv
try_on 30 start --front strut --rear five_link
try 25 match --format json --readings "$ramp" $small
from=$(count rates --format csv $large rack_rubber)
try 25 rates --explain $large
try 25 deflect --detail $large
from=$(count rates --format csv $small rubber)
try_files 20 compare --quiet $small
from=$(count compare --quiet --no-bands --kit rubber cases/live-axle.json)
try_files 8 compare --quiet --no-bands --kit rubber cases/live-axle.json
from=$(count rates --format csv $small rubber)
try_files 20 report --quiet $small
try_files 12 spread --draws 100 --quiet $small
try_files 12 choose --draws 100 --quiet $small
from=0
try_files 12 bench --quiet cases/press.csv dynamic=cases/rig.csv
exit $status
