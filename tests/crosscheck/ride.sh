#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Ride against a second, independent reading of the same definitions: dense matrices, a node for every
# bracket, plain quadrature; on the cases in tests/cases/, on variations of them and on random corners.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }

"$PYTHON" compare_ride.py "$GIVEWAY" --cases "${CASES:-9}"
