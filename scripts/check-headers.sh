#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Every header compiles alone, without a warning, so that it can be included first and anywhere;
# giveway.h takes in every public one.
set -euo pipefail
cd "$(dirname "$0")/.."
CC=${CC:-cc}
faults=0

read -ra packages < <(pkg-config --cflags gsl libcjson)
alone() { # FILE INCLUDED FLAG...
    local file=$1 included=$2
    shift 2
    printf '#include "%s"\n#include "%s"\nextern int not_empty;\n' "$included" "$included" |
        $CC -std=c11 -D_POSIX_C_SOURCE=200809L -pedantic -Wall -Wextra -Wshadow -Wconversion -Werror \
            -fsyntax-only -Iinclude "$@" "${packages[@]}" -x c - || {
        echo "$file does not compile alone"
        faults=$((faults + 1))
    }
}

for header in include/giveway/*.h; do
    alone "$header" "${header#include/}"
done
for header in src/*/*.h; do
    if [ -f "$header" ]; then alone "$header" "${header#src/}" -Isrc "-I${B:-build/release}"; fi
done

# What a header declares is for C++ too, and to be seen in the shared library.
declares() { grep -qE '^(extern |[a-z].*[a-z0-9_]\()' "$1"; }
for header in include/giveway/*.h; do
    if declares "$header" && ! { grep -qx GW_API_BEGIN "$header" && grep -qx GW_API_END "$header"; }; then
        echo "$header does not put its declarations between GW_API_BEGIN and GW_API_END (giveway/api.h)"
        faults=$((faults + 1))
    fi
    if command -v "${CXX:-c++}" >/dev/null; then
        printf '#include "%s"\n' "${header#include/}" | ${CXX:-c++} -std=c++11 -pedantic -Wall -Wextra -Wshadow -Werror \
            -fsyntax-only -Iinclude -x c++ - || {
            echo "$header does not compile alone in C++"
            faults=$((faults + 1))
        }
    fi
done

if [ -f include/giveway/giveway.h ]; then
    for header in include/giveway/*.h; do
        name=${header#include/}
        if [ "$name" != giveway/giveway.h ] && ! grep -qF "#include \"$name\"" include/giveway/giveway.h; then
            echo "include/giveway/giveway.h does not take in $name"
            faults=$((faults + 1))
        fi
    done
fi
if [ $faults = 0 ]; then echo "every header compiles alone"; fi
[ $faults = 0 ]
