#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The page of `giveway report` in a browser without a window. Skipped where Chromium, Node or the
# two packages that the test itself is written with are missing; they never come near the sources.
set -euo pipefail

source_dir=${SOURCE:-$(cd "$(dirname "$0")/../.." && pwd)}
GIVEWAY=${GIVEWAY:-${1:-$source_dir/build/release/giveway}}
modules=$source_dir/build/browser/node_modules
work=${TMPDIR:-/tmp}
own=
if [ -z "${TMPDIR:-}" ]; then own=$(mktemp -d) && work=$own && trap 'rm -rf "$own"' EXIT; fi

skip() { echo "$1" && exit 77; }
chromium=$(command -v chromium || command -v chromium-browser || true)
[ -n "$chromium" ] || skip "Chromium is not installed"
command -v node >/dev/null || skip "Node is not installed"
for module in playwright-core axe-core; do
    [ -d "$modules/$module" ] || skip "$module is not installed: scripts/setup.sh check --retry"
done
command -v gnuplot >/dev/null || skip "gnuplot is not installed"

# Modules are looked for beside the script, so the script goes beside the modules.
cp "$source_dir/tests/browser/report.test.mjs" "$source_dir/build/browser/report.test.mjs"
export GIVEWAY SOURCE=$source_dir TMPDIR=$work CHROMIUM=$chromium
node "$source_dir/build/browser/report.test.mjs"
