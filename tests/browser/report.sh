#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The page of `giveway report` in a browser without a window, which the test speaks to itself (chromium.mjs). Skipped
# where Chromium, Node 18 or gnuplot is missing; without axe-core the check of accessibility alone is left out.
set -euo pipefail

source_dir=${SOURCE:-$(cd "$(dirname "$0")/../.." && pwd)}
GIVEWAY=${GIVEWAY:-${1:-$source_dir/build/release/giveway}}
axe=$source_dir/build/browser/node_modules/axe-core/axe.min.js
work=${TMPDIR:-/tmp}
own=
if [ -z "${TMPDIR:-}" ]; then own=$(mktemp -d) && work=$own && trap 'rm -rf "$own"' EXIT; fi

skip() { echo "$1" && exit 77; }
chromium=$(command -v chromium || command -v chromium-browser || true)
[ -n "$chromium" ] || skip "Chromium is not installed"
command -v node >/dev/null || skip "Node is not installed"
major=$(node -p 'process.versions.node.split(".")[0]')
[ "$major" -ge 18 ] || skip "Node $major is too old: 18 is needed"
command -v gnuplot >/dev/null || skip "gnuplot is not installed"
if [ ! -f "$axe" ]; then axe=; fi

export GIVEWAY SOURCE=$source_dir TMPDIR=$work CHROMIUM=$chromium AXE_CORE=$axe
node "$source_dir/tests/browser/report.test.mjs"
