#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The table of every check against the world outside: validate.sh MODE
# Runs the tests that hold such checks; each writes its own rows (tests/support/check.h, tests/crosscheck/
# validation.py). Leaves build/MODE/validation.txt and .csv; prints the text, then a summary.
set -euo pipefail
cd "$(dirname "$0")/.."
export LC_ALL=C
mode=$1 B=build/$1
export GIVEWAY_VALIDATION=$PWD/$B/validation.rows

programs() { # unit tests that name a source
    grep -lE '\bcheck_(from|copy_of|printed_in|solved_by)\(' tests/*/test_*.c | sed "s|^tests/\(.*\)\.c\$|$B/tests/\1|"
}
scripts() { # shell scripts that call a Python script with rows of its own
    grep -lE 'validation\.record|tally\.keep' tests/crosscheck/*.py | while read -r python; do
        grep -lF "${python##*/} " tests/crosscheck/*.sh || true
    done | sort -u
}

rm -f "$GIVEWAY_VALIDATION"
mapfile -t tests < <(scripts; programs)
echo "running ${#tests[@]} programs and scripts, which takes some minutes (log: $B/validation.log)"
if ! scripts/run-tests.sh "$mode" 0 --only "${tests[@]}" >"$B/validation.log" 2>&1; then
    grep -A 20 '^FAIL' "$B/validation.log" >&2 || tail -n 20 "$B/validation.log" >&2
    echo "no table is made while a test fails (log: $B/validation.log)" >&2
    exit 1
fi
grep '^skip' "$B/validation.log" || true
scripts/validation-table.sh "$B/validation.rows" "$B/validation.txt" "$B/validation.csv"
cat "$B/validation.txt"
echo "table: $B/validation.txt, $B/validation.csv"
