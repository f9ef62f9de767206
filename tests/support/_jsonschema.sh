# shellcheck shell=bash
# SPDX-License-Identifier: MIT
# Sourced: sets PYTHON to an interpreter with a JSON Schema validator, or ends the test as skipped.
has_validator() { "$1" -c 'from jsonschema import Draft202012Validator' 2>/dev/null; }

for candidate in "$PYTHON" /usr/bin/python3 python3; do
    if has_validator "$candidate"; then PYTHON=$candidate && break; fi
done
has_validator "$PYTHON" || { echo "needs python3-jsonschema" && exit 77; }
