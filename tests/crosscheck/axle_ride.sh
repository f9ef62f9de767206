#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Ride of axles with shared parts against a second, independent reading with both sides as they stand.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }

cases=../../cases
"$PYTHON" compare_axle_ride.py "$GIVEWAY" $cases/live-axle.json rubber rear $cases/hatchback.json rubber rear \
    $cases/fast-saloon.json rubber front
