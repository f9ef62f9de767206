#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Makes the pictures of the README anew: pictures.sh [PROGRAM]. Needs gnuplot, Chromium and ImageMagick.
set -euo pipefail
cd "$(dirname "$0")/.."
giveway=${1:-build/release/giveway}
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
mkdir -p scripts/pictures
"$giveway" compare cases/fast-saloon.json -o "$made" --quiet >/dev/null
"$giveway" report cases/fast-saloon.json -o "$made" --date 2026-11-25 --quiet
chromium --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking \
    --user-data-dir="$made/profile" --hide-scrollbars --screenshot="$made/page.png" --window-size=1280,800 \
    "file://$made/report.html" >/dev/null 2>&1
# Few colours keep them small; charts and page use few.
convert "$made/page.png" -colors 64 PNG8:scripts/pictures/report.png
convert "$made/toe-braking-front.png" -colors 64 PNG8:scripts/pictures/toe-braking-front.png
