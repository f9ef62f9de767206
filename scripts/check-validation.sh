#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The table of validation is made of what tests write, and of nothing that does not hold.
set -euo pipefail
cd "$(dirname "$0")/.."
B=${B:-build/release}
work=$(mktemp -d "${TMPDIR:-/tmp}/validation-XXXXXX")
trap 'rm -rf "$work"' EXIT
status=0
verdict() { # TRUE_OR_FALSE WHAT
    if [ "$1" = true ]; then echo "ok - $2"; else echo "not ok - $2" && status=1; fi
}
holds() { if "$@" >&2; then echo true; else echo false; fi; }
table() { scripts/validation-table.sh "$work/rows" "$work/table.txt" "$work/table.csv"; }
row() { printf 'computed\t%s\tA. Author (1954)\t%s\t2\t2.5\t%s\n' "${3:-print}" "$1" "$2"; }

GIVEWAY_VALIDATION=$work/rows "$B/tests/bush/test_handbook" >/dev/null 2>&1
verdict "$(holds table)" "what a test writes becomes a table"
verdict "$(holds grep -q 'Adkins, A. N. Gent, Brit. J. Appl. Phys. 5 (1954)' "$work/table.txt")" "it names the source"
verdict "$(holds grep -qE '^[0-9]+ comparisons with the world outside from [2-9] sources hold' "$work/table.txt")" \
    "it counts comparisons and sources"
verdict "$(holds test "$(wc -l <"$work/table.csv")" = "$(($(wc -l <"$work/rows") + 1))")" "the CSV has a line for each"

row "a rate" 0.6 >"$work/rows"
verdict "$(holds table)" "a difference within the tolerance passes"
verdict "$(holds grep -qE 'a rate +2 +2.5 +0.5 +0.6 +83 %' "$work/table.txt")" "with its share of the tolerance"
row "a rate" 0.4 >"$work/rows"
verdict "$(if table 2>/dev/null; then echo false; else echo true; fi)" "one beyond it is refused"
printf 'computed\tprint\tA. Author (1954)\t\t2\t2.5\t1\n' >"$work/rows"
verdict "$(if table 2>/dev/null; then echo false; else echo true; fi)" "a row that does not say what is refused"
row "a rate" 0.6 guessed >"$work/rows"
verdict "$(if table 2>/dev/null; then echo false; else echo true; fi)" "a row that does not say where its value comes from is refused"
{
    row "a rate" 0.6
    row "a rate" 0.6 solver && row "a rate" 0.6 solver
    row "a rate" 0.6 formula && row "another" 0.6 formula && row "a third" 0.6 formula
    row "a rate" 0.6 memory
    printf 'copied\tprint\tB. Author\ta table\t1\t1\t0\n'
} >"$work/rows"
verdict "$(holds table)" "rows of every basis make a table"
verdict "$(holds grep -q '^8 comparisons .* from 2 sources hold: 2 with values in print (1 of them tables that are only carried over), 2 with general-purpose solvers, 3 with formulas evaluated again, apart from this program, 1 with what is recalled from memory;' "$work/table.txt")" \
    "and are counted apart"
verdict "$(holds grep -qx '"computed",formula,"A. Author (1954)","a third",2,2.5,0.5,0.6' "$work/table.csv")" "the CSV has the basis too"
: >"$work/rows"
verdict "$(if table 2>/dev/null; then echo false; else echo true; fi)" "a table without rows is refused"
exit $status
