#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Runs the tests, two at a time, and sums up: run-tests.sh MODE BUILD_STATUS [--only] TEST_PROGRAM...
# Besides the programs it runs the scripts tests/*/*.sh (not those that begin with "_"),
# tests/*/test_*.py and scripts/check-*.sh, unless --only is given. Logs are kept in build/MODE/logs.
#
# A test passes with status 0, is skipped with 77 (its last line says why), and fails otherwise. One
# whose last line says "N passed, N failed" is counted by it, one that prints "ok" and "not ok" lines
# (the Test Anything Protocol) by these. Scripts in tests/ get the program as their first argument, too.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 2

mode=$1 built=$2
shift 2
only=no
if [ "${1:-}" = --only ]; then only=yes && shift; fi

export B=build/$mode MODE=$mode
export GIVEWAY=$PWD/$B/giveway SOURCE=$PWD LOGS=$PWD/$B/logs
export TEST_SECONDS=${TEST_SECONDS:-600}
# The same conditions everywhere, and nothing written beside the sources.
export LC_ALL=C TZ=UTC NO_COLOR=1 PYTHONDONTWRITEBYTECODE=1 CMOCKA_MESSAGE_OUTPUT=TAP
export ASAN_OPTIONS=abort_on_error=0:exitcode=99 UBSAN_OPTIONS=print_stacktrace=1:halt_on_error=1
export OMP_NUM_THREADS=${OMP_NUM_THREADS:-1}
# The interpreter that has the packages of the distribution need not be the first on the path.
PYTHON=python3
for candidate in /usr/bin/python3 python3; do
    if "$candidate" -c 'import numpy' 2>/dev/null; then PYTHON=$candidate && break; fi
done
export PYTHON
rm -rf "$LOGS"
mkdir -p "$LOGS"

run_one() {
    local path=$1 name log start status=0 seconds passed failed skipped verdict
    name=$(short_name "$path")
    log=$LOGS/${name//\//-}.log
    export TMPDIR=$LOGS/tmp/${name//\//-}
    mkdir -p "$TMPDIR"
    start=$EPOCHREALTIME
    case $path in
    scripts/*.sh) timeout "$TEST_SECONDS" bash "$path" ;;
    *.sh) timeout "$TEST_SECONDS" bash "$path" "$GIVEWAY" ;;
    *.py) timeout "$TEST_SECONDS" "$PYTHON" "$path" "$GIVEWAY" ;;
    *) timeout "$TEST_SECONDS" "$path" ;;
    esac >"$log" 2>&1 </dev/null || status=$?
    seconds=$(awk -v a="$start" -v b="$EPOCHREALTIME" 'BEGIN { printf "%.2f", b - a }')

    skipped=$(grep -cE '^(not )?ok\b.*# SKIP' "$log")
    failed=$(grep -E '^not ok\b' "$log" | grep -cv '# SKIP')
    passed=$(grep -E '^ok\b' "$log" | grep -cv '# SKIP')
    if [[ $(tail -n 1 "$log") =~ ([0-9]+)\ passed,\ ([0-9]+)\ failed ]]; then
        passed=${BASH_REMATCH[1]} failed=${BASH_REMATCH[2]}
    fi
    if [ $status = 77 ]; then
        passed=0 failed=0 skipped=1 verdict=skip
    elif [ $status != 0 ] || [ "$failed" != 0 ]; then
        if [ "$failed" = 0 ]; then failed=1; fi
        verdict=FAIL
    else
        if [ $((passed + skipped)) = 0 ]; then passed=1; fi
        if [ "$passed" = 0 ]; then verdict=skip; else verdict=ok; fi
    fi
    echo "$passed $failed $skipped" >"$log.count"
    report "$verdict" "$name" "$passed" "$seconds" "$status" "$log"
    rm -rf "$TMPDIR"
}

report() { # in one write, so that two running at once do not mix their lines
    local line
    line=$(printf '%-5s %-44s %5d %8.2f s' "$1" "$2" "$3" "$4")
    case $1 in
    skip) line+="  $(tail -n 1 "$6")" ;;
    FAIL)
        if [ "$5" = 124 ]; then line+="  stopped after $TEST_SECONDS s"; else line+="  status $5"; fi
        line+=$'\n'$(tail -n 60 "$6" | grep -vE '^ok\b' | sed 's/^/      | /')
        ;;
    esac
    printf '%s\n' "$line"
}

short_name() {
    local name=${1#"$B"/}
    name=${name#tests/}
    echo "${name#scripts/}"
}
export -f run_one report short_name

shopt -s nullglob
items=()
if [ $only = no ]; then # the long ones first, so that they do not run alone at the end
    for script in tests/crosscheck/*.sh tests/*/*.sh tests/*/test_*.py scripts/check-*.sh; do
        case "${script##*/} ${items[*]} " in _* | *" $script "*) ;; *) items+=("$script") ;; esac
    done
fi
shopt -u nullglob
items+=("$@")

echo "testing build/$mode: ${#items[@]} programs and scripts"
if [ "$built" != 0 ]; then
    echo "FAIL  build: something did not compile, see above"
    echo "0 1 0" >"$LOGS/build.count"
fi
runnable=()
for item in "${items[@]}"; do
    if [ -e "$item" ]; then
        runnable+=("$item")
    else
        echo "FAIL  $(short_name "$item"): was not built"
        echo "0 1 0" >"$LOGS/missing-${item//\//-}.count"
    fi
done
if [ ${#runnable[@]} -gt 0 ]; then
    # shellcheck disable=SC2016  # it is the inner shell that expands it
    printf '%s\0' "${runnable[@]}" | xargs -0 -n 1 -P 2 bash -c 'run_one "$0"'
fi
rm -rf "$LOGS/tmp"

read -r passed failed skipped < <(cat "$LOGS"/*.count 2>/dev/null |
    awk '{ p += $1; f += $2; s += $3 } END { print p + 0, f + 0, s + 0 }')
rm -f "$LOGS"/*.count
echo
summary="$passed passed, $failed failed"
if [ "$skipped" != 0 ]; then summary+=", $skipped skipped"; fi
echo "$summary"
[ "$failed" = 0 ] && [ "$passed" != 0 ]
