#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Bands of spread against draws of an independent program on an independent reading of the mechanics, closed forms,
# and the shares of variance against Sobol's indices.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }

"$PYTHON" compare_spread.py "$GIVEWAY" --draws "${DRAWS:-12}" # 250 where there is time
