#!/bin/sh
# SPDX-License-Identifier: MIT
# Writes a C file that holds a text file.
# usage: scripts/embed_text.sh NAME HEADER FILE > embedded.c
set -eu
export LC_ALL=C
printf '/* Made by scripts/embed_text.sh from %s; do not edit. */\n#include "%s"\n' "$3" "$2"
printf 'const char %s[] = {\n' "$1"
od -An -v -t d1 "$3" | awk '{ for (i = 1; i <= NF; i++) printf "%s,", $i; print "" }'
printf '0 };\n'
