#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Runs the examples of README.md: in a block marked ```console, each line "$ giveway ..." is run from
# the top of the tree, and what it prints must be what the following lines say. A line "..." stands
# for anything in between. "# exit N" at the end of a command says which exit status it has.
set -euo pipefail
cd "$(dirname "$0")/.."
B=${B:-build/release}
README=${1:-README.md}
PATH=$PWD/$B:$PATH
export LC_ALL=C NO_COLOR=1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

awk -v work="$work" '
    /^```/ { block = !block && /^```console/; if (!block) out = ""; next }
    block && /^\$ giveway / { n++; out = work "/" n ".want"; printf "" >out; print substr($0, 3) >(work "/" n ".command"); next }
    block && /^\$ / { out = ""; next }
    block && out != "" { print >out }
' "$README"

same() { # WANT GOT, with "..." for any number of lines
    awk '
        FILENAME == ARGV[1] { want[++w] = $0; next }
        { got[++g] = $0 }
        function fits(i, j,    k) {
            if (i > w) return j > g
            if (want[i] == "...") {
                for (k = j; k <= g + 1; k++) if (fits(i + 1, k)) return 1
                return 0
            }
            return j <= g && want[i] == got[j] && fits(i + 1, j + 1)
        }
        END { exit !fits(1, 1) }
    ' "$1" "$2"
}

count=0 status=0
for command in $(find "$work" -name '*.command' | sort -V); do
    count=$((count + 1))
    text=$(cat "$command")
    want_exit=$(sed -nE 's/.*# exit ([0-9]+)$/\1/p' "$command")
    got_exit=0
    bash -c "$text" >"$work/printed" 2>&1 </dev/null || got_exit=$?
    # Blank lines at the end are layout, in the block as in the output.
    printf '%s\n' "$(cat "$work/printed")" >"$work/got"
    printf '%s\n' "$(cat "${command%.command}.want")" >"$work/want"
    if [ "$got_exit" != "${want_exit:-0}" ]; then
        echo "not ok $count - $text"
        echo "exit status $got_exit, the README says ${want_exit:-0}"
        status=1
    elif same "$work/want" "$work/got"; then
        echo "ok $count - $text"
    else
        echo "not ok $count - $text"
        diff -u --label "README" --label "printed" "$work/want" "$work/got" || true
        status=1
    fi
done
if [ $count = 0 ]; then echo "ok - $README # SKIP has no examples yet"; fi
exit $status
