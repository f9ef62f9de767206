#!/bin/sh
# SPDX-License-Identifier: MIT
# Writes a C file that holds style and script of the report's page.
# usage: scripts/embed_page.sh report.css report.js > page_embedded.c
set -eu
export LC_ALL=C

if grep -niE '</(style|script)' "$@" >&2; then
    echo "embed_page.sh: this would end the style or script in the page" >&2
    exit 1
fi

bytes() { # NAME FILE
    printf 'const char %s[] = {\n' "$1"
    od -An -v -t d1 "$2" | awk '{ for (i = 1; i <= NF; i++) printf "%s,", $i; print "" }'
    printf '0 };\n'
}

echo '/* Made by scripts/embed_page.sh from src/show/page; do not edit. */'
echo '#include "show/report_page.h"'
bytes gw_page_style "$1"
bytes gw_page_script "$2"
