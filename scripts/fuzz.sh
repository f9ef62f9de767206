#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Runs the fuzzers: fuzz.sh DIR SECONDS TARGET...
# DIR/TARGET is the program. What it learns is kept in build/fuzz/corpus/TARGET, where the next run goes on;
# tests/fuzz/corpus/TARGET, the small corpus that `make check` replays, is only read. A finding ends with
# status 1 and leaves its input in build/fuzz/found.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 2
dir=$1 seconds=$2
shift 2

export TMPDIR=${TMPDIR:-/tmp}
export UBSAN_OPTIONS=print_stacktrace=1:halt_on_error=1
status=0
printf '%-10s %12s %10s %8s\n' target executions corpus found
for target in "$@"; do
    learnt=build/fuzz/corpus/$target found=build/fuzz/found log=build/fuzz/$target.log
    mkdir -p "$learnt" "$found"
    before=$(find "$found" -name "$target-*" | wc -l)
    options=()
    if [ -f "tests/fuzz/$target.dict" ]; then options+=("-dict=tests/fuzz/$target.dict"); fi
    "$dir/$target" -max_total_time="$seconds" -max_len=13000 -timeout=60 -rss_limit_mb=2048 \
        -print_final_stats=1 -artifact_prefix="$found/$target-" "${options[@]}" \
        "$learnt" "tests/fuzz/corpus/$target" >"$log" 2>&1 </dev/null
    ended=$?
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
    after=$(find "$found" -name "$target-*" | wc -l)
    printf '%-10s %12s %10s %8s\n' "$target" "${runs:-?}" "$(find "$learnt" -type f | wc -l)" $((after - before))
    if [ $ended != 0 ]; then
        status=1
        grep -m 1 -E 'FOUND: |ERROR: |runtime error: ' "$log" || tail -n 5 "$log"
    fi
done
exit $status
