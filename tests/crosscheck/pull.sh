#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# A kit that fits the sides of the car apart: how it pulls in an even stop, in every form in which it is told.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }
"$PYTHON" pull.py "$GIVEWAY"
