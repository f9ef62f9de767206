#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The corner against a second, independent reading of the same mechanics, on random cases and on those
# in cases/; first that reading against itself.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy' 2>/dev/null || { echo "needs Python 3 with NumPy" && exit 77; }

if "$PYTHON" corner_reference.py selfcheck; then echo "ok - the second reading holds by itself"; else
    echo "not ok - the second reading by itself" && exit 1
fi
if "$PYTHON" compare_corner.py "$GIVEWAY" --cases "${CASES:-8}"; then echo "ok - both readings of the corner agree"; else
    echo "not ok - the two readings of the corner differ" && exit 1
fi
