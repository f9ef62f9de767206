#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Compares the kits of the demonstration case and says where the charts are: demo.sh BUILD_DIR
set -euo pipefail
cd "$(dirname "$0")/.."
program=$1/giveway
case=cases/fast-saloon.json
out=build/demo

echo "\$ giveway compare $case -o $out"
echo
"$program" compare "$case" -o "$out"
echo
mapfile -t charts < <(find "$out" -maxdepth 1 \( -name '*.svg' -o -name '*.png' -o -name '*.html' \) | sort)
if [ ${#charts[@]} = 0 ]; then
    echo "no chart was written; is gnuplot installed?"
    exit 1
fi
echo "charts in $PWD/$out:"
for chart in "${charts[@]}"; do echo "  $(basename "$chart")"; done
