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
mapfile -t charts < <(find "$out" -maxdepth 1 -name '*.png' | sort)
if [ ${#charts[@]} = 0 ]; then
    echo "no chart was written; is gnuplot installed?"
    exit 1
fi
echo "${#charts[@]} charts, each as SVG and PNG, in $PWD/$out. To begin with:"
first() { # FILE WHAT
    if [ -s "$out/$1" ]; then printf '  %-36s %s\n' "$1" "$2"; fi
}
first toe-braking-front.png "the front wheel's toe as the car brakes harder, kit by kit"
first contributions-braking-front.png "which bush lets it move"
first grip-against-harshness-front.png "what steadiness costs"
first understeer-budget.png "what a kit does to the balance of the car"
