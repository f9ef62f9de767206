#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Axles with shared parts and the whole car on the road against a second, independent reading of both.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }

LOADS="push,kerb" TRAVEL="rear.poly" "$PYTHON" compare_car.py "$GIVEWAY" ../casefile/samples/shared-parts.json poly
LOADS="bend" "$PYTHON" compare_car.py "$GIVEWAY" ../../cases/live-axle.json rubber
