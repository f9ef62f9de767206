#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# mutants.sh [PATTERN]: plants the faults of tests/mutants.txt one at a time in a copy of the tree, builds, and runs
# the tests named beside them. A fault that every one of them lets through lives, and this ends with status 1.
# Not part of `make check`: it builds the program once a fault.
set -uo pipefail
cd "$(dirname "$0")/.."
list=$PWD/tests/mutants.txt
tree=$PWD/build/mutants
export CFLAGS=${CFLAGS:--O1} LC_ALL=C TZ=UTC NO_COLOR=1 PYTHON=${PYTHON:-python3}
mkdir -p "$tree" && git ls-files -z --cached --others --exclude-standard | tar --null -T - -c | tar -x -C "$tree"
cd "$tree" || exit 1
${MAKE:-make} -s all >log 2>&1 || { tail log && exit 1; }

killed() { # TESTS
    local test
    for test in ${1//,/ }; do
        case $test in
        *.sh) GIVEWAY=$tree/build/release/giveway SOURCE=$tree TMPDIR=$(mktemp -d) timeout 300 bash "$test" >log 2>&1 || return 0 ;;
        *.test) timeout 300 sh tests/cli/run.sh "$tree/build/release/giveway" "$(basename "$test" .test)" >log 2>&1 || return 0 ;;
        *) ${MAKE:-make} -s "build/release/$test" >log 2>&1 && timeout 300 "build/release/$test" >log 2>&1 || return 0 ;;
        esac
    done
    return 1
}

planted=0 lived=0
while IFS='|' read -r file from to tests; do
    case $file in '' | '#'*) continue ;; esac
    case "$file|$from" in *"${1:-}"*) ;; *) continue ;; esac
    cp "$file" kept
    if ! python3 - "$file" "$from" "$to" <<'END'; then echo "no such line any more: $file: $from" && lived=$((lived + 1)) && continue; fi
import sys
path, old, new = sys.argv[1:]
text = open(path).read()
if old not in text: sys.exit(1)
open(path, "w").write(text.replace(old, new, 1))
END
    planted=$((planted + 1))
    if ${MAKE:-make} -s all >log 2>&1 && ! killed "$tests"; then
        lived=$((lived + 1)) && echo "lives: $file: $from -> $to ($tests)"
    fi
    cp kept "$file"
done <"$list"
echo "$planted faults planted, $lived live"
[ $lived = 0 ]
