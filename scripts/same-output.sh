#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# same-output.sh COMMIT [COMMAND...]: does the program print what it printed at COMMIT? Builds that commit
# beside this tree and compares standard output, standard error, exit status and every file written, command
# by command: text, JSON, CSV, details, narrowed runs, mistakes. The charts and the page, which take longest,
# only without CHARTS=0. Pictures in PNG are left out: what they show is in the SVG.
set -euo pipefail
cd "$(dirname "$0")/.."
[ $# -ge 1 ] || { echo "same-output.sh COMMIT [COMMAND...]" >&2 && exit 2; }
commit=$(git rev-parse --short "$1^{commit}") && shift
commands=${*:-check rates deflect compare travel ride align report}
then=$PWD/build/same/$commit
now=${NOW:-$PWD/build/release/giveway}

if [ ! -x "$then/build/release/giveway" ]; then
    mkdir -p "$then" && git archive "$commit" | tar -x -C "$then"
    ${MAKE:-make} -s -C "$then" MODE=release all >"$then/log" 2>&1 || { tail "$then/log" >&2 && exit 1; }
fi

work=$(mktemp -d) && trap 'rm -rf "$work"' EXIT
cp -r cases tests/casefile/samples "$work"
cp tests/cases/*.json "$work/samples"
cp -r materials "$work" # so that --materials finds the same folder in both runs
runs=0 different=0
export NO_COLOR=1 LC_ALL=C TZ=UTC

# Both programs in the same empty folder, one after the other, so that no path differs.
both() { # ARGUMENTS
    runs=$((runs + 1))
    for which in then now; do
        local program=$now && [ $which = now ] || program=$then/build/release/giveway
        rm -rf "$work/out" && mkdir -p "$work/$which"
        (cd "$work" && "$program" "$@" >"$work/stdout" 2>"$work/stderr" </dev/null) && echo 0 >"$work/status" || echo $? >"$work/status"
        rm -rf "${work:?}/$which" && mkdir "$work/$which"
        mv "$work/stdout" "$work/stderr" "$work/status" "$work/$which"
        if [ -d "$work/out" ]; then find "$work/out" -name '*.png' -delete && mv "$work/out" "$work/$which"; fi
    done
    if diff -r "$work/then" "$work/now" >"$work/diff"; then return; fi
    different=$((different + 1))
    echo "not the same: giveway $*"
    head -n "${LINES_SHOWN:-6}" "$work/diff" | cut -c1-240 | sed 's/^/    /'
}

in_every_format() { # ARGUMENTS
    for format in text json csv; do both "$@" --format $format; done
}

# What every command takes; those that do not take an option answer with the same line.
files=(cases/fast-saloon.json cases/hatchback.json samples/saloon-by-rule.json samples/hatchback-by-rule.json samples/every-key.json
    samples/other-choices.json)
for command in $commands; do
    if [ "$command" = report ]; then
        if [ "${CHARTS:-1}" = 0 ]; then continue; fi
        for who in customer workshop; do
            for file in "${files[@]}"; do both report "$file" --for $who -o out --date 2026-03-01; done
        done
        continue
    fi
    for file in "${files[@]}"; do
        in_every_format "$command" "$file"
        both "$command" "$file" --detail
        both "$command" "$file" --quiet
        if [ "${CHARTS:-1}" != 0 ]; then both "$command" "$file" -o out --quiet; fi
    done
    in_every_format "$command" cases/fast-saloon.json --kit rubber --corner front
    in_every_format "$command" cases/fast-saloon.json --load "hard stop"
    both "$command" cases/fast-saloon.json --load "hard stop" --corner rear --detail
    both "$command" cases/fast-saloon.json --kit nothing
    both "$command" cases/fast-saloon.json --load nothing
    both "$command" cases/none.json
    both "$command" cases/fast-saloon.json --frmat json
    both "$command" cases/fast-saloon.json --materials materials --format json
    both "$command"
    both "$command" --help
done
for command in $commands; do
    case $command in
    travel)
        in_every_format travel cases/hatchback.json --from-mm -33.3 --to-mm 41 --step-mm 3.7
        both travel cases/hatchback.json --from-mm 10 --to-mm -10
        both travel cases/hatchback.json --step-mm 0.01
        ;;
    rates)
        in_every_format rates samples/every-key.json --frequency-Hz 20 --amplitude-mm 0.3
        in_every_format rates cases/hatchback.json --explain
        in_every_format rates cases/hatchback.json --method handbook
        in_every_format rates --type bonded --material nr-55 --inner-mm 16 --outer-mm 40 --length-mm 50
        both rates --type bonded --material nr-55 --inner-mm 46 --outer-mm 40 --length-mm 50
        both rates cases/hatchback.json nothing
        ;;
    esac
done
echo "$runs runs, $different not as at $commit"
[ $different = 0 ]
