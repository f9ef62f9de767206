#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Settings and sensitivities against a second, independent reading of the same corner.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }

"$PYTHON" compare_align.py "$GIVEWAY" --cases "${CASES:-3}"
