#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Puts into README.md what its examples print now: see scripts/readme.py, whose arguments it takes.
set -euo pipefail
cd "$(dirname "$0")/.."
PATH=$PWD/${B:-build/release}:$PATH
exec "${PYTHON:-python3}" scripts/readme.py "$@"
