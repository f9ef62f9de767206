#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The laws in files of a press and of a test rig against a second reading with NumPy and SciPy.
set -euo pipefail
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }
"$PYTHON" "$SOURCE/tests/crosscheck/compare_bench.py" "$GIVEWAY"
