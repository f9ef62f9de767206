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
small=tests/fuzz/corpus/run/wishbone.json large=cases/fast-saloon.json

# How many allocations a run has; reading materials and case is the same for all commands.
count() { "$tool" --every 1000000000 "$@" | sed -nE 's/.*: ([0-9]+) allocations.*/\1/p'; }

try() { # SAMPLES ARGUMENTS...: so many failures spread over the run
    local samples=$1 n
    shift
    n=$(count "$@")
    if [ "$all" = yes ]; then samples=$n; fi
    "$tool" --from "$from" --every $(((n - from) / samples + 1)) "$@" || status=1
}

try_files() { # SAMPLES ARGUMENTS...
    local samples=$1 n
    shift
    n=$(count "$@" -o "$work/count")
    if [ "$all" = yes ]; then samples=$n; fi
    "$tool" --from "$from" --every $(((n - from) / samples + 1)) --apart "$work/out" "$@" || status=1
    rm -rf "${work:?}"/*
}

all=no
if [ "${2:-}" = --all ]; then all=yes; fi
from=0
try 80 check $small
from=$(count check $large)
for command in deflect compare travel ride align rates; do try 80 $command $large; done
for command in deflect compare travel ride align rates; do try 25 $command --format json $large; done
try 30 spread --draws 100 --format json $small
try 60 choose --draws 100 --format json $small
try 25 rates --explain $large
try 25 deflect --detail $large
from=$(count check $small)
try_files 20 compare --quiet $small
try_files 20 report --quiet $small
exit $status
