#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The limits told on the manual page are those of the headers.
set -euo pipefail
cd "$(dirname "$0")/.."
page=src/cli/giveway.1
status=0

told() { # WORDS: the first number on the line after .It WORDS
    grep -A1 -F ".It $1" $page | sed -nE '2s/^([0-9]+).*/\1/p'
}

defined() { # NAME: its value in the headers
    grep -hoE "\b$1 = [0-9]+( << [0-9]+)?" include/giveway/*.h | head -n 1 | sed 's/.*= //'
}

same() { # NAME WORDS [FACTOR]
    local value=$(($(defined "$1") / ${3:-1}))
    if [ "$(told "$2")" != $value ]; then
        echo "$page: LIMITS: $2: told $(told "$2"), but $1 makes it $value" && status=1
    fi
}

same GW_MAX_FILE_BYTES "largest file, also of materials and tables" 1048576
same GW_MAX_NESTING "nesting of brackets"
same GW_CORNER_BODIES "bodies of a corner"
same GW_CORNER_JOINTS "joints of a corner"
same GW_MAX_POINTS "points of a corner"
same GW_MAX_ADJUSTERS "adjusters of a corner"
same GW_MAX_BUSHES "bushes, those written in place included"
same GW_MAX_KITS "kits"
same GW_MAX_LOADS "loads"
same GW_MAX_MATERIALS "materials"
same GW_MAX_NAME_BYTES "a name"
same GW_MAX_TEXT_BYTES "a title or label"
same GW_MAX_FAULTS "faults listed of one file"
if [ $status = 0 ]; then echo "the limits on the manual page are those of the headers"; fi
exit $status
