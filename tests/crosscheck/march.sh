#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Linearised friction against marches in time with Coulomb friction, of a quarter car and of a whole corner whose joints
# rub as well, by a general integrator.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }
export OPENBLAS_NUM_THREADS=1
"$PYTHON" march.py "$GIVEWAY"
"$PYTHON" march_corner.py "$GIVEWAY"
