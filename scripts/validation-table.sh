#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# validation-table.sh ROWS TEXT CSV
# ROWS has a line a comparison, with tabs between: kind, basis, source, what, expected, got, allowed difference.
# basis says where the expected value comes from: print, solver, formula, memory, reading.
# Writes the table as text, by kind and source, with a summary that can stand in a README; and as CSV.
set -euo pipefail
export LC_ALL=C
rows=$1 text=$2 csv=$3
sorted=$(mktemp)
trap 'rm -f "$sorted"' EXIT
# Stable, so that the rows of one test stay in its order; tests ran side by side.
sort -s -t $'\t' -k1,1 -k3,3 -k2,2 "$rows" >"$sorted"

awk -F '\t' '
function quoted(s) { gsub(/"/, "\"\"", s); return "\"" s "\"" }
BEGIN { print "kind,basis,source,what,expected,got,difference,allowed" }
{
    off = $6 - $5; if (off < 0) off = -off
    printf "%s,%s,%s,%s,%s,%s,%.3g,%s\n", quoted($1), $2, quoted($3), quoted($4), $5, $6, off, $7
}' "$sorted" >"$csv"

awk -F '\t' '
function share(off, allowed) { return allowed > 0 ? off / allowed : (off == 0 ? 0 : 999) }
function title(kind) {
    if (kind == "copied") return "printed tables carried over"
    if (kind == "second reading") return "second readings: programs written apart from this one, the worst of each kind of number"
    return "worked out here, printed or solved elsewhere"
}
BEGIN {
    HOW["print"] = "values in print"; HOW["solver"] = "by a general-purpose solver"
    HOW["formula"] = "a formula evaluated again, apart"; HOW["memory"] = "recalled from memory"
    HOW["reading"] = "a second program"
}
BEGIN { row = "  %-72.72s %13s %13s %10s %10s %6s\n" }
NF != 7 || $4 == "" || $3 == "" || !($2 in HOW) { print "line " NR ": not a row: " $0 >"/dev/stderr"; bad = 1; next }
$1 != kind { kind = $1; source = ""; printf "%s%s\n", (NR > 1 ? "\n" : ""), toupper(title(kind)) }
$3 SUBSEP $2 != source {
    source = $3 SUBSEP $2
    printf "\n%s [%s]\n", $3, HOW[$2]
    printf row, "what", "expected", "got", "difference", "allowed", "used"
    if (!((kind, $3) in seen)) { seen[kind, $3]; sources[kind]++ }
}
{
    off = $6 - $5; if (off < 0) off = -off
    used = share(off, $7)
    what = length($4) > 72 ? substr($4, 1, 69) "..." : $4
    printf row, what, sprintf("%.7g", $5), sprintf("%.7g", $6), sprintf("%.2g", off), sprintf("%.2g", $7), sprintf("%.0f %%", 100 * used)
    count[kind]++; of[$2]++; total++
    if (kind == "copied" && $2 == "print") copied_print++
    if (!(used <= 1)) { failed++ }
    if (kind != "second reading" && used >= worst) { worst = used; at = $4 " (" $3 ")" }
}
END {
    if (bad || !total) exit 1
    printf "\nSUMMARY\n\n"
    printf "%d comparisons with the world outside from %d sources hold: %d with values in print (%d of them tables that are only carried over), %d with general-purpose solvers, %d with formulas evaluated again, apart from this program, %d with what is recalled from memory; ", \
        count["computed"] + count["copied"], sources["computed"] + sources["copied"], of["print"], \
        copied_print, of["solver"], of["formula"], of["memory"]
    printf "the tightest uses %.0f %% of its tolerance: %s.", 100 * worst, at
    if (count["second reading"])
        printf " Besides, %d kinds of number agree with second readings, written apart.", count["second reading"]
    printf "\n"
    if (failed) { print failed " do not hold" >"/dev/stderr"; exit 1 }
}' "$sorted" >"$text"
