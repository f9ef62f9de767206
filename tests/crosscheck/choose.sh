#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The planner against brute force over every combination by the second readings of corner and ride. With ROAD=1 also of
# the whole car, which takes some minutes.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }

"$PYTHON" compare_choose.py "$GIVEWAY" ../../tests/cases/hatchback-by-rule.json
if [ -n "${ROAD:-}" ]; then "$PYTHON" compare_choose.py "$GIVEWAY" ../../tests/cases/hatchback-by-rule.json road; fi
