#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Friction at the wheel against a second, independent reading of its definition, on the demonstration cases and on some
# with every kind of slider, of axles too.
set -euo pipefail
cd "$SOURCE/tests/crosscheck"
"$PYTHON" -c 'import numpy, scipy' 2>/dev/null || { echo "needs Python 3 with NumPy and SciPy" && exit 77; }

rub() { # CASE OUT: every joint that may rub does, and the dampers
    "$PYTHON" - "$1" "$2" <<'END'
import json, sys
case = json.load(open(sys.argv[1]))
for i, bush in enumerate(case["bushes"].values()):
    if isinstance(bush, dict) and bush.get("type") in ("ball_joint", "rates"):
        bush["breakaway_Nm"] = 0.3 + 0.11 * i
for corner in case["corners"].values():
    corner["damper"]["friction_N"] = 31.7
json.dump(case, open(sys.argv[2], "w"))
END
}
rub "$SOURCE/tests/cases/saloon-by-rule.json" "$TMPDIR/sliders.json"
rub "$SOURCE/cases/fast-saloon.json" "$TMPDIR/shared.json"   # subframes, rack and bars: what both wheels share rubs once
rub "$SOURCE/cases/hatchback.json" "$TMPDIR/beam.json"
rub "$SOURCE/cases/live-axle.json" "$TMPDIR/live.json"
"$PYTHON" friction_reference.py "$GIVEWAY" "$SOURCE/tests/cases/saloon-by-rule.json" "$SOURCE/tests/cases/hatchback-by-rule.json" "$TMPDIR/sliders.json" \
    "$SOURCE/cases/fast-saloon.json" "$TMPDIR/shared.json" "$TMPDIR/beam.json" "$TMPDIR/live.json"
