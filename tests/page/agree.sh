#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# What the plotting program has drawn, measured in its pictures, against the page's own data and what the commands
# print; and the pictures that -o writes against those of the page.
set -u
command -v gnuplot >/dev/null || { echo "gnuplot is not installed" && exit 77; }
"${PYTHON:-python3}" "$SOURCE/tests/page/agree.py" "$GIVEWAY" "$SOURCE" "${TMPDIR:-/tmp}"
