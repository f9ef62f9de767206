#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The demonstration corners against rigid bodies and springs in CalculiX.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
command -v ccx >/dev/null || { echo "needs CalculiX (ccx)" && exit 77; }
"$PYTHON" corner_vs_ccx.py "$GIVEWAY"
