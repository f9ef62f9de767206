#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The manual page is well formed, and page, completions and program know the same commands.
set -euo pipefail
cd "$(dirname "$0")/.."
B=${B:-build/release}
page=src/cli/giveway.1
formats=src/cli/giveway-case.5
way=src/cli/giveway-own-car.7
status=0

if ! command -v mandoc >/dev/null; then
    echo "ok - manual page # SKIP mandoc is not installed"
elif mandoc -T lint -W warning $page $formats $way; then
    echo "ok - the manual pages are well formed"
else
    echo "not ok - the manual pages" && status=1
fi

# `giveway help` prints one command a line, indented, name first.
told=$("$B/giveway" help | sed -nE 's/^  ([a-z]+) .*/\1/p' | grep -vx help | sort)
if [ -z "$told" ]; then echo "not ok - giveway help lists no command" && exit 1; fi
page_commands=$(sed -nE 's/^\.It Cm ([a-z]+).*/\1/p' $page | grep -vx help | sort)
if [ "$told" = "$page_commands" ]; then
    echo "ok - the manual page describes the commands that there are"
else
    echo "not ok - the manual page describes other commands than giveway help" && status=1
    diff <(echo "$told") <(echo "$page_commands") | sed -n 's/^< /only in help: /p; s/^> /only in the page: /p' || true
fi

# `giveway help COMMAND` prints one option a line, indented: "--name" or "-o, --name".
options=$(for command in $told; do "$B/giveway" help "$command"; done | sed -nE 's/^  (-[a-z], )?--([A-Za-z-]+).*/\2/p' | sort -u)
page_options=$(grep -oE 'Fl -[A-Za-z-]+' $page | sed 's/^Fl -//' | sort -u)
if [ "$options" = "$page_options" ]; then
    echo "ok - the manual page describes the options that there are"
else
    echo "not ok - the manual page describes other options than giveway help" && status=1
    diff <(echo "$options") <(echo "$page_options") | sed -n 's/^< /only in help: --/p; s/^> /only in the page: --/p' || true
fi

# The schemas name every key that the readers take, and are held equal to them by tests/casefile/schema.sh.
keys=$(python3 - src/casefile/schema/*.json <<'END' || true
import json, sys
def walk(node):
    if isinstance(node, dict):
        yield from node.get("properties", {})
        node = list(node.values())
    for part in node if isinstance(node, list) else []:
        yield from walk(part)
print("\n".join(sorted({key for path in sys.argv[1:] for key in walk(json.load(open(path)))})))
END
)
missing=$(for key in $keys; do grep -qw -- "$key" $formats || echo "$formats lacks $key"; done)
if [ -z "$keys" ]; then echo "ok - the manual page of files # SKIP no Python to read the schemas"
elif [ -z "$missing" ]; then echo "ok - the manual page of files names all $(wc -w <<<"$keys") keys"; else
    echo "not ok - the manual page of files" && echo "$missing" && status=1
fi

lacks=$(for file in src/cli/completions/*; do
    for word in $told $options; do
        grep -qE "(^|[^a-z-])(--|-l )?$word([^a-z-]|\$)" "$file" || echo "$file lacks $word"
    done
done)
if [ -z "$lacks" ]; then echo "ok - completions know every command and option"; else
    echo "not ok - completions" && echo "$lacks" && status=1
fi
exit $status
