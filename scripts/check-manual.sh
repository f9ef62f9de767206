#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The manual page is well formed, and page, completions and program know the same commands.
set -euo pipefail
cd "$(dirname "$0")/.."
B=${B:-build/release}
page=src/cli/giveway.1
status=0

if ! command -v mandoc >/dev/null; then
    echo "ok - manual page # SKIP mandoc is not installed"
elif mandoc -T lint -W warning $page; then
    echo "ok - the manual page is well formed"
else
    echo "not ok - the manual page" && status=1
fi

# `giveway help` prints one command a line, indented, name first.
told=$("$B/giveway" help | sed -nE 's/^  ([a-z]+) .*/\1/p' | grep -vx help | sort)
if [ -z "$told" ]; then echo "not ok - giveway help lists no command" && exit 1; fi
page_commands=$(sed -nE 's/^\.It Cm ([a-z]+).*/\1/p' $page | grep -vx help | sort)
if [ "$told" = "$page_commands" ]; then
    echo "ok - the manual page describes the commands that there are"
else
    echo "not ok - the manual page describes other commands than giveway help" && status=1
    diff <(echo "$told") <(echo "$page_commands") | sed -n 's/^< /only in help: /p; s/^> /only in the page: /p'
fi
for file in src/cli/completions/*; do
    for command in $told; do
        grep -qw "$command" "$file" || { echo "not ok - $file lacks $command" && status=1; }
    done
done
exit $status
