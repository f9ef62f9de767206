#!/bin/sh
# SPDX-License-Identifier: MIT
# Writes a C file that holds the given material files, so that the program runs from any folder.
# usage: scripts/embed_materials.sh materials/*.json > materials_embedded.c
set -eu
export LC_ALL=C

echo '/* Made by scripts/embed_materials.sh from materials; do not edit. */'
echo '#include "casefile/material_file.h"'
echo '#include <stddef.h>'

index=0
table=''
for file in "$@"; do
    printf 'static const unsigned char FILE_%d[] = {\n' "$index"
    od -An -v -t u1 "$file" | awk '{ for (i = 1; i <= NF; i++) printf "%s,", $i; print "" }'
    echo '};'
    table="$table    { \"$(basename "$file")\", FILE_$index, sizeof FILE_$index },
"
    index=$((index + 1))
done

echo 'const gw_embedded_file gw_embedded_materials[] = {'
printf '%s    { NULL, NULL, 0 }\n};\n' "$table"
