#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# One table of speed and memory: bench.sh BUILD_DIR
# First the benchmarks of the library, one after another; each prints rows "what TAB value TAB unit", and
# headings without tabs. Then whole processes of every command on the demonstration case, and some of them
# once more on one processor. Ratios are of times of the same run.
set -euo pipefail
cd "$(dirname "$0")/.."
B=$1
case=${CASE:-cases/fast-saloon.json}
runs=${RUNS:-11}
out=$B/bench
rm -rf "$out" && mkdir -p "$out"
export LC_ALL=C NO_COLOR=1

heading() { printf '\n%s\n' "$1"; }
row() { printf '  %-40s %9s  %s\n' "$1" "$2" "$3"; }
process_row() { printf '  %-28s %10s %10s %12s %10s\n' "$@" | sed 's, *$,,'; }

model=$(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo 2>/dev/null | head -n 1)
processors=$(getconf _NPROCESSORS_ONLN 2>/dev/null || echo 1)
load=$(cut -d ' ' -f 1 /proc/loadavg 2>/dev/null || echo unknown)
echo "giveway $("$B/giveway" --version | awk '{print $NF}'), measured on $(date +%Y-%m-%d)"
echo "${model:-an unnamed processor}, $processors processors, load before $load; $(cc --version | head -n 1)"

if awk -v load="$load" 'BEGIN { exit !(load > 0.5) }'; then
    echo "Other programs were running: wall times of processes are too long, processor times are not."
fi

for program in "$B"/tests/bench/bench_*; do
    case $program in *.[od] | *\*) continue ;; esac
    "$program" | while IFS=$'\t' read -r what value unit; do
        if [ -n "${value:-}" ]; then row "$what" "$value" "${unit:-}"; else heading "$what"; fi
    done
done

measure() { "$B/tests/bench/measure" "$runs" "$@"; }

process() { # LABEL ARGUMENT...
    local label=$1 median least used memory status
    shift
    IFS=$'\t' read -r median least used memory status < <(measure "$B/giveway" "$@")
    if [ "$status" != 0 ]; then median="status $status" least=- used=- memory=-; fi
    process_row "$label" "$median" "$least" "$used" "$memory"
}

heading "Whole processes on $case, $runs runs each"
process_row "" "median ms" "least ms" "processor ms" "memory MB"
for command in $("$B/giveway" help | sed -nE 's/^  ([a-z]+) .*/\1/p' | grep -vx help); do
    case $command in
    report) process "report, with its charts" report "$case" -o "$out/report" ;;
    *) process "$command" "$command" "$case" ;;
    esac
done
process "compare, with charts" compare "$case" -o "$out/compare"
process "compare, with SVG charts" compare "$case" -o "$out/compare-svg" --format-charts svg
by_rule=tests/cases/saloon-by-rule.json # the same car with nothing shared, by the rules of load transfer
process "compare, by the rules" compare "$by_rule"
process "report, by the rules" report "$by_rule" -o "$out/report-by-rule"

# What charts take beyond the comparison itself, over one plotting process that does nothing but fill as many
# pixels as the pictures had when one process drew them all: 34 empty pages of 1600 x 1000, which took 1.9 s
# where the 88 files did.
charts_take() { # [WRAPPER...]
    local with without
    without=$(measure "$@" "$B/giveway" compare "$case" | cut -f 2)
    with=$(measure "$@" "$B/giveway" compare "$case" -o "$out/compare" | cut -f 2)
    awk "BEGIN { printf \"%.0f\", $with - $without }"
}
if command -v gnuplot >/dev/null; then
    for page in $(seq 34); do
        echo "set terminal pngcairo size 1600,1000; set output '$out/empty-$page.png'; plot [0:1][0:1] 2; unset output"
    done >"$out/empty.gnuplot"
    took=$(charts_take env) empty=$(measure gnuplot -d "$out/empty.gnuplot" | cut -f 2)
    heading "Charts of compare, beyond the comparison itself, least of $runs runs"
    row "88 files" "$took" "ms"
    row "to one process on 34 empty pages" "$(awk "BEGIN { printf \"%.2f\", $took / $empty }")" "(keep at 0.50 or below on two processors)"
fi

# The planner: every combination of a car on the road, three bushes at each of five places an axle; then one axle.
if command -v python3 >/dev/null; then
    heading "The planner, once each"
    process_row "" "wall ms" "" "processor ms" "memory MB"
    runs=1
    for choices in 10 5; do
        python3 scripts/bench_choose.py "$choices" >"$out/choose-$choices.json"
        cp cases/*.csv "$out"
        process "choose, 3^$choices combinations" choose "$out/choose-$choices.json"
    done
    planned=$(measure "$B/giveway" choose "$out/choose-10.json" | cut -f 3)
    kits=$(measure "$B/giveway" compare "$out/choose-10.json" | cut -f 3)
    row "a combination to a kit of compare" "$(awk "BEGIN { printf \"%.3f\", ($planned / 59049) / ($kits / 4) }")" "(keep below 0.33)"
fi

# How sure: draws should cost no more than their load cases, bands less than the comparison they stand in.
ratio() { # LABEL FIRST SECOND REMARK
    row "$1" "$(awk "BEGIN { printf \"%.2f\", $2 / $3 }")" "$4"
}
used() { measure "$B/giveway" "$@" | cut -f 3; }
heading "How sure, and the user's own car, processor time"
runs=3
hatch=tests/cases/hatchback-by-rule.json
spread=$(used spread "$case")
row "spread of the whole car, 1024 draws, ms" "$spread" "(5 kits, 9 answers each: keep below 3000)"
if command -v python3 >/dev/null; then # the front corner alone, as the contract counts: 5 kits, 5 loads
    python3 - "$case" >"$out/front.json" <<'END'
import json, sys
case = json.load(open(sys.argv[1]))
del case["corners"]["rear"]
for key in ("choose", "jobs", "align"): case.pop(key, None)
case["vehicle"]["roll_centre_height_mm"] = {"front": 60, "rear": 110}
for kit in case["kits"]: kit["fits"] = {j: b for j, b in kit["fits"].items() if j.startswith("front.")}
json.dump(case, sys.stdout)
END
    front=$(used spread "$out/front.json")
    row "spread of the front corner alone, 1024 draws, ms" "$front" "(5 kits, 5 loads: keep below 1500)"
    solved=$(used deflect "$out/front.json")
    ratio "a draw of it to deflect, all kits and loads once" "$front" "$(awk "BEGIN { print 1024 * $solved }")" "(keep below 0.1)"
fi
ratio "compare with bands to compare without" "$(used compare "$case")" "$(used compare "$case" --no-bands)" "(keep below 2)"
ratio "match to deflect, the model once" "$(used match "$hatch" --readings cases/hatchback-ramp.csv)" "$(used deflect "$hatch")" "(keep below 50)"
row "bench of a press and a rig, ms" "$(used bench cases/press.csv dynamic=cases/rig.csv)" "(keep below 50)"
row "start, ms" "$(used start --front strut --rear five_link)" "(keep below 20)"

# The program still starts a thread a processor; they share one.
alone() { # COMMAND
    local one all
    one=$(measure taskset -c 0 "$B/giveway" "$1" "$case" | cut -f 2)
    all=$(measure "$B/giveway" "$1" "$case" | cut -f 2)
    process_row "$1" "$one" "$all" "$(awk "BEGIN { printf \"%.2f\", $one / $all }")" ""
}

if [ "$processors" -gt 1 ] && command -v taskset >/dev/null; then
    heading "One processor against all $processors, least of $runs runs"
    process_row "" "one ms" "all ms" "times faster" ""
    for command in compare travel ride align; do alone "$command"; done
fi
