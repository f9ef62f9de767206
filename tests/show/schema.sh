#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The JSON Schema of results describes what every command prints, to the last key.
set -euo pipefail
cd "$SOURCE"
. tests/support/_jsonschema.sh
PYTHONPATH=tests/support "$PYTHON" tests/show/results_match.py "$GIVEWAY"
