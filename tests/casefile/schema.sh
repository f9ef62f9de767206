#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The JSON Schemas of cases and materials say of every sample what the reader says.
set -euo pipefail
cd "$SOURCE"
. tests/support/_jsonschema.sh

# Every text that the unit tests of the reader hand to it, with its verdict.
for program in "$B"/tests/casefile/test_*; do
    case $program in *.[do]) continue ;; esac
    folder=$TMPDIR/samples/${program##*/}
    mkdir -p "$folder"
    GIVEWAY_SAMPLES=$folder "$program" >/dev/null 2>&1 || true # whether it passes is told elsewhere
done
PYTHONPATH=tests/support "$PYTHON" tests/casefile/schemas_agree.py "$B/tests/casefile/say_faults" "$TMPDIR/samples"
