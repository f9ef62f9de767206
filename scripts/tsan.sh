#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Every study and every command on several threads, under the thread sanitizer: any race ends with status 66.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 2
B=build/tsan status=0
export TSAN_OPTIONS=exitcode=66 LC_ALL=C NO_COLOR=1 CMOCKA_MESSAGE_OUTPUT=TAP
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
if [ "$(getconf _NPROCESSORS_ONLN)" = 1 ]; then echo "1..0 # SKIP one processor: no threads to race" && exit 0; fi

try() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >"$out/log" 2>&1; then echo "ok - $what"; else
        echo "not ok - $what" && tail -n 40 "$out/log" && status=1
    fi
}

for test in "$B"/tests/study/test_*; do
    case $test in *.[od]) ;; *) try "${test##*/}" "$test" ;; esac
done
for case in cases/*.json; do
    for command in $("$B/giveway" help | sed -nE 's/^  ([a-z]+) .*/\1/p' | grep -vxE 'help|report'); do
        try "$command $case" "$B/giveway" "$command" "$case"
    done
    try "compare --detail $case" "$B/giveway" compare --detail "$case"
    try "report $case" "$B/giveway" report "$case" --for workshop -o "$out/page"
done
exit $status
