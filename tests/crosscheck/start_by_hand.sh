#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Anti-squat of a live axle by the lines of its links, and the wheel rate on a tyre by virtual work.
set -euo pipefail
"$PYTHON" "$SOURCE/tests/crosscheck/start.py" "$GIVEWAY" --by-hand
