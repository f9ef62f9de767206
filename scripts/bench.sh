#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# One table of speed and memory: bench.sh BUILD_DIR
# First the benchmarks of the library, one after another; each prints rows "what TAB value TAB unit"
# (other lines are shown as they are). Then whole processes of every command on the demonstration
# case: the median of several runs.
set -euo pipefail
cd "$(dirname "$0")/.."
B=$1
case=${CASE:-cases/fast-saloon.json}
runs=${RUNS:-11}
out=$B/bench
rm -rf "$out" && mkdir -p "$out"
export LC_ALL=C NO_COLOR=1

row() { printf '%-48s %12s  %s\n' "$1" "$2" "$3"; }

model=$(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo 2>/dev/null | head -n 1)
echo "on ${model:-an unnamed processor}, $(nproc 2>/dev/null || echo 1) cores, $(cc --version | head -n 1)"
echo
row "what" "value" "unit"
row "----" "-----" "----"

for program in "$B"/tests/bench/bench_*; do
    case $program in *.[od] | *\*) continue ;; esac
    "$program" | while IFS=$'\t' read -r what value unit; do
        if [ -n "${value:-}" ]; then row "$what" "$value" "${unit:-}"; else echo "$what"; fi
    done
done

process() { # LABEL ARGUMENT...
    local label=$1 median least memory status
    shift
    IFS=$'\t' read -r median least memory status < <("$B/tests/bench/measure" "$runs" "$B/giveway" "$@")
    if [ "$status" != 0 ]; then
        row "$label" "-" "exit status $status"
    else
        row "$label, whole process" "$median" "ms (least $least, memory $memory MB)"
    fi
}

for command in $("$B/giveway" help | sed -nE 's/^  ([a-z]+) .*/\1/p' | grep -vx help); do
    case $command in
    report) process "report, with charts" report "$case" -o "$out/report" ;;
    *) process "$command" "$command" "$case" ;;
    esac
done
process "compare, with charts" compare "$case" -o "$out/compare"
