#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Figures of results by value: text and CSV against JSON, and relations between figures that hold whatever the
# program thinks of them.
set -u
"${PYTHON:-python3}" "$SOURCE/tests/show/values.py" "$GIVEWAY" "$SOURCE"
