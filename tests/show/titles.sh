#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The sentence over every chart that -o writes: each figure in it against the results, and the kit, load or part that
# it names is the one that stands out.
set -u
command -v gnuplot >/dev/null || { echo "gnuplot is not installed" && exit 77; }
"${PYTHON:-python3}" "$SOURCE/tests/show/titles.py" "$GIVEWAY" "$SOURCE" "${TMPDIR:-/tmp}" \
    travel deflect compare ride rates align choose match
