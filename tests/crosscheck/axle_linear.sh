#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Axles with shared parts against rigid bodies and springs in CalculiX.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
command -v ccx >/dev/null || { echo "needs CalculiX (ccx)" && exit 77; }
"$PYTHON" axle_vs_ccx.py "$GIVEWAY"
