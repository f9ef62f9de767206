#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The corner against a second, independent reading of the same mechanics, on random cases and on those
# in tests/cases/; first that reading against itself.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }

"$PYTHON" corner_reference.py selfcheck
"$PYTHON" compare_corner.py "$GIVEWAY" --cases "${CASES:-8}"
