#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The path through bump and rebound against a second, independent reading of the same mechanics, on random
# cases and on those in tests/cases/.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }

"$PYTHON" compare_travel.py "$GIVEWAY" --cases "${CASES:-3}"
