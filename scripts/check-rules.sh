#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Rules that keep the showing half as it was designed: check-rules.sh [--lower | --show RULE]
# Each rule prints what breaks it, a line each. How many lines are allowed stands in scripts/rules.txt; that number
# only ever falls: more fails, and --lower writes down what is reached where there are fewer.
set -euo pipefail
cd "$(dirname "$0")/.."
export LC_ALL=C
B=${B:-build/release}
allowed=scripts/rules.txt
work=$(mktemp -d "${TMPDIR:-/tmp}/rules-XXXXXX")
trap 'rm -rf "$work"' EXIT
shopt -s nullglob

# The rooms that show, from the ground up; those that do not exist yet are empty.
sources() { # ROOM...: their C files
    local room file
    for room in "$@"; do
        for file in src/"$room"/*.c src/"$room"/*.h; do echo "$file"; done
    done
}
showing=(format record chart show page cli)

# What each object defines and needs: "D|U object symbol". Objects left over from files that are gone do not count.
symbols() {
    local object source
    if [ -f "$work/symbols" ]; then cat "$work/symbols" && return; fi
    for object in "$B"/*/*.o; do
        source=${object#"$B"/} && source=src/${source%.o}.c
        if [ -f "$source" ]; then echo "$object"; fi
    done >"$work/objects"
    xargs nm -A <"$work/objects" | sed -E "s|^$B/||; s|\.o:|  |" |
        awk '{ kind = $(NF - 1); name = $NF
               if (kind ~ /^[TDRBC]$/ || (kind == "i" && name ~ /^gw_/)) print "D", $1, name
               else if (kind == "U") print "U", $1, name }' | grep -v '\.resolver$' >"$work/symbols"
    cat "$work/symbols"
}

# 1. Units are divided by where a figure is read: the showing half names none of them elsewhere.
rule_units() { sources "${showing[@]}" study | grep -vx src/record/unit.h | xargs -r grep -nF '"giveway/units.h"' || true; }

# 3. The library exports what its headers declare, under its own prefix, and no name stands for two things.
rule_exports() {
    nm -g "$B/installed/libgiveway.a" | awk 'NF > 1 && $(NF - 1) ~ /^[TDRBCiVW]$/ { print $NF }' | sort -u >"$work/defined"
    cat include/giveway/*.h | grep -oE '\b(gw|GW)_[A-Za-z0-9_]+' | sort -u | comm -23 "$work/defined" -
}
rule_prefix() { symbols | awk '$1 == "D" && $2 !~ /^cli\/main$/ && $3 !~ /^(gw|GW)_/ { print $2, $3 }'; }
rule_twice() {
    symbols | awk '$1 == "D" { print $3 }' | sort | uniq -d
    cat src/*/*.[ch] include/giveway/*.h | sed -nE 's/^\} (gw_[a-z0-9_]+);.*/\1/p' | sort >"$work/types"
    uniq -d "$work/types"
    symbols | awk '$1 == "D" { print $3 }' | sort -u | comm -12 - <(uniq "$work/types")
}

# 4. Each kind of mark-up has one writer; words are not compared to find out what they mean.
rule_strcmp() { sources show page | xargs -r grep -nE '\bstrcmp\(' || true; }
rule_bold() { sources "${showing[@]}" | grep -vE '^src/(record/paper|format/table)\.' | xargs -r grep -nF '\033[' || true; }
rule_tags() { sources base format start record chart show cli | grep -v '^src/format/html\.' | xargs -r grep -nE '"[^"]*</?(t[dhr]|p|div|span|table|section)\b' || true; }
rule_gnuplot() { sources "${showing[@]}" | grep -vx src/chart/gnuplot.c | xargs -r grep -nE '"[^"]*\bset (label|object|[xy]range|terminal)\b' || true; }

# 5. Every result has its schema, its page of the manual and planted faults.
rule_results() {
    local file name
    for file in src/cli/cmd_*.c; do
        name=${file#src/cli/cmd_} && name=${name%.c}
        grep -qE 'OPT_FORMAT|\.result = ' "$file" || continue
        grep -q "X(${name^^})" src/show/results.h || echo "$name: no schema"
        grep -qE "^\.Nm $name|^\.Ic $name|giveway $name|\.It.* $name\b|Cm $name" src/cli/giveway.1 || echo "$name: not in the manual"
        grep -qE "^src/show/$name[_.a-z]*\\|" tests/mutants.txt || echo "$name: no planted fault in tests/mutants.txt"
    done
}

# 6. What shows results works nothing out: it calls of the rooms that compute only names and texts.
names_and_texts='(GW_[A-Z_]+|gw_(status_text|fail|ride_caution|band_nominal|[a-z0-9_]*_name|[a-z0-9_]*_text|[a-z0-9_]*_words|[a-z0-9_]*_free))'
rule_calls() {
    symbols | awk '
        $1 == "D" && $2 ~ /^(bush|corner|vehicle|ride)\// { room[$3] = $2 }
        { line[NR] = $0 }
        END {
            for (i = 1; i <= NR; i++) {
                split(line[i], w, " ")
                if (w[1] == "U" && w[2] ~ /^(record|chart|show|page|format)\// && w[3] in room) print w[2], w[3]
            }
        }' | grep -vE " $names_and_texts\$" || true
}

# 7. No circle of files: those that are left when, again and again, every file is taken away that needs no other
# one of its room, or that no other one needs.
rule_circles() {
    symbols | awk '
        $1 == "D" { at[$3] = $2 }
        { line[NR] = $0 }
        END {
            for (i = 1; i <= NR; i++) {
                split(line[i], w, " ")
                if (w[1] != "U" || !(w[3] in at) || at[w[3]] == w[2]) continue
                split(w[2], a, "/"); split(at[w[3]], b, "/")
                if (a[1] == b[1]) edge[w[2] " " at[w[3]]]
            }
            do {
                delete from; delete to
                for (e in edge) { split(e, w, " "); from[w[1]]; to[w[2]] }
                left = 0
                for (e in edge) { split(e, w, " "); if (!(w[1] in to) || !(w[2] in from)) { delete edge[e]; left++ } }
            } while (left)
            for (e in edge) { split(e, w, " "); file[w[1]]; file[w[2]] }
            for (f in file) print f
        }' | sort
}

# A function holds one idea.
rule_long() {
    for file in src/*/*.c; do
        awk '/^{/ { start = FNR } /^}/ && start { if (FNR - start - 1 > 41) print FILENAME ":" start ": " FNR - start - 1 " lines"; start = 0 }' "$file"
    done
}

case ${1:-} in
--show) "rule_$2" && exit ;;
--lower | '' | */giveway) ;; # the program, as every script is given it
*) echo "usage: check-rules.sh [--lower | --show RULE]" >&2 && exit 2 ;;
esac

if [ ! -f "$B/giveway" ]; then echo "skipped: the rules are read from what was built" && exit 77; fi
faults=0
: >"$work/new"
while read -r rule most what; do
    if [ -z "$rule" ] || [ "$rule" = "#" ]; then echo "$rule${most:+ $most}${what:+ $what}" >>"$work/new" && continue; fi
    "rule_$rule" >"$work/found"
    found=$(wc -l <"$work/found")
    if [ "$found" -gt "$most" ]; then
        echo "not ok - $what: $found, allowed are $most (scripts/check-rules.sh --show $rule)"
        head -n 20 "$work/found"
        faults=$((faults + 1))
    elif [ "$found" -lt "$most" ]; then
        echo "ok - $what: $found; allowed are still $most, lower that with scripts/check-rules.sh --lower"
        most=$found
    else
        echo "ok - $what: $found"
    fi
    echo "$rule $most $what" >>"$work/new"
done <"$allowed"
if [ "${1:-}" = --lower ]; then cp "$work/new" "$allowed"; fi
[ $faults = 0 ]
