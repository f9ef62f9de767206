#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# validation-table.sh ROWS TEXT CSV
# ROWS has a line a comparison, with tabs between: kind, source, what, expected, got, allowed difference.
# Writes the table as text, by kind and source, with a summary that can stand in a README; and as CSV.
set -euo pipefail
export LC_ALL=C
rows=$1 text=$2 csv=$3
sorted=$(mktemp)
trap 'rm -f "$sorted"' EXIT
# Stable, so that the rows of one test stay in its order; tests ran side by side.
sort -s -t $'\t' -k1,1 -k2,2 "$rows" >"$sorted"

awk -F '\t' '
function quoted(s) { gsub(/"/, "\"\"", s); return "\"" s "\"" }
BEGIN { print "kind,source,what,expected,got,difference,allowed" }
{
    off = $5 - $4; if (off < 0) off = -off
    printf "%s,%s,%s,%s,%s,%.3g,%s\n", quoted($1), quoted($2), quoted($3), $4, $5, off, $6
}' "$sorted" >"$csv"

awk -F '\t' '
function share(off, allowed) { return allowed > 0 ? off / allowed : (off == 0 ? 0 : 999) }
function title(kind) {
    if (kind == "copied") return "printed tables carried over"
    if (kind == "second reading") return "second readings: programs written apart from this one, the worst of each kind of number"
    return "worked out here, printed or solved elsewhere"
}
BEGIN { row = "  %-72.72s %13s %13s %10s %10s %6s\n" }
NF != 6 || $3 == "" || $2 == "" { print "line " NR ": not a row: " $0 >"/dev/stderr"; bad = 1; next }
$1 != kind { kind = $1; source = ""; printf "%s%s\n", (NR > 1 ? "\n" : ""), toupper(title(kind)) }
$2 != source {
    source = $2
    printf "\n%s\n", source
    printf row, "what", "expected", "got", "difference", "allowed", "used"
    sources[kind]++
}
{
    off = $5 - $4; if (off < 0) off = -off
    used = share(off, $6)
    what = length($3) > 72 ? substr($3, 1, 69) "..." : $3
    printf row, what, sprintf("%.7g", $4), sprintf("%.7g", $5), sprintf("%.2g", off), sprintf("%.2g", $6), sprintf("%.0f %%", 100 * used)
    count[kind]++; total++
    if (!(used <= 1)) { failed++ }
    if (kind != "second reading" && used >= worst) { worst = used; at = $3 " (" $2 ")" }
}
END {
    if (bad || !total) exit 1
    printf "\nSUMMARY\n\n"
    printf "%d comparisons with the world outside from %d sources hold: %d worked out and %d carried over from printed tables; ", \
        count["computed"] + count["copied"], sources["computed"] + sources["copied"], count["computed"], count["copied"]
    printf "the tightest uses %.0f %% of its tolerance: %s.", 100 * worst, at
    if (count["second reading"])
        printf " Besides, %d kinds of number agree with second readings, written apart.", count["second reading"]
    printf "\n"
    if (failed) { print failed " do not hold" >"/dev/stderr"; exit 1 }
}' "$sorted" >"$text"
