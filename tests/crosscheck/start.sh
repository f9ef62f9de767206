#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# First cases of every pair of layouts and of options at their ends lie where cars of these layouts lie.
set -euo pipefail
"$PYTHON" "$SOURCE/tests/crosscheck/start.py" "$GIVEWAY"
