#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Axles and the whole car against what a textbook works out by hand.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" axle_by_hand.py "$GIVEWAY"
