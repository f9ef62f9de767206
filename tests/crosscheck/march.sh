#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Linearised friction against a march in time of a quarter car with Coulomb friction, by a general integrator.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }
OPENBLAS_NUM_THREADS=1 "$PYTHON" march.py "$GIVEWAY"
