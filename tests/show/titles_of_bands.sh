#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The sentences over charts of bands, as titles.sh does for all others: cars are drawn, which takes its time.
set -u
command -v gnuplot >/dev/null || { echo "gnuplot is not installed" && exit 77; }
"${PYTHON:-python3}" "$SOURCE/tests/show/titles.py" "$GIVEWAY" "$SOURCE" "${TMPDIR:-/tmp}" \
    spread
