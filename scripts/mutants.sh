#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Plants the faults of tests/mutants.txt: see scripts/mutants.py, whose arguments it takes. Not part of `make check`.
set -euo pipefail
cd "$(dirname "$0")/.."
exec "${PYTHON:-python3}" scripts/mutants.py "$@"
