#!/bin/sh
# SPDX-License-Identifier: MIT
# Writes a C file that holds the report's page: style, script, template, and the hashes by which the policy in the
# page lets the first two in.
# usage: scripts/embed_page.sh report.css report.js report.html > page_embedded.c
set -eu
export LC_ALL=C

if grep -niE '</(style|script)' "$1" "$2" >&2; then
    echo "embed_page.sh: this would end the style or script in the page" >&2
    exit 1
fi

bytes() { # NAME FILE
    printf 'const char %s[] = {\n' "$1"
    od -An -v -t d1 "$2" | awk '{ for (i = 1; i <= NF; i++) printf "%s,", $i; print "" }'
    printf '0 };\n'
}

# SHA-256 in base 64, as a policy names it: each pair of hexadecimal digits becomes a byte.
hash() { # NAME FILE
    hex=$(sha256sum "$2" | cut -c 1-64)
    octal=$(echo "$hex" | awk '{ digits = "0123456789abcdef"
        for (i = 1; i < 64; i += 2)
            printf "\\%03o", 16 * (index(digits, substr($0, i, 1)) - 1) + index(digits, substr($0, i + 1, 1)) - 1 }')
    printf 'const char %s[] = "sha256-%s";\n' "$1" "$(printf "$octal" | base64)"
}

echo '/* Made by scripts/embed_page.sh from src/page; do not edit. */'
echo '#include "page/embedded.h"'
bytes gw_page_style "$1"
bytes gw_page_script "$2"
bytes gw_page_template "$3"
hash gw_page_style_hash "$1"
hash gw_page_script_hash "$2"
