#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Rates of rubber bushes against three-dimensional finite-element models in CalculiX.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
command -v ccx >/dev/null || { echo "needs CalculiX (ccx)" && exit 77; }
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }
"$PYTHON" bush_vs_ccx.py "$GIVEWAY"
