#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# What the shared library shows is what the public headers declare, no more and no less, to C and to C++.
set -euo pipefail
cd "$SOURCE"
CC=${CC:-cc} CXX=${CXX:-c++}
if [ -z "${TMPDIR:-}" ]; then TMPDIR=$(mktemp -d) && trap 'rm -rf "$TMPDIR"' EXIT; fi
library=$B/libgiveway.so
status=0
verdict() { # TRUE_OR_FALSE WHAT
    if [ "$1" = true ]; then echo "ok - $2"; else echo "not ok - $2" && status=1; fi
}
holds() { if "$@" >&2; then echo true; else echo false; fi; }
case $MODE in
asan) extra=("-fsanitize=address,undefined") ;;
coverage) extra=(--coverage) ;;
*) extra=() ;;
esac

# The functions and constants that the headers declare; comments, macros and functions in the headers aside.
echo '#include "giveway/giveway.h"' >"$TMPDIR/all.c"
$CC -std=c11 -E -P -Iinclude "$TMPDIR/all.c" | grep -v "^#" | tr "\n" " " | sed -E 's/__attribute__ *\(\([^;]*\)\)//g; s/[;{}]/&\n/g' >"$TMPDIR/text"
{
    grep -vE '^ *(typedef|static|return|#)' "$TMPDIR/text" | grep -oE '\bgw_[a-z0-9_]+ ?\([^()]*\) *;' |
        sed -E 's/ ?\(.*//'
    grep -E '^ *extern ' "$TMPDIR/text" | sed -E 's/\[[^]]*\]//g' | grep -oE '\bGW_[A-Z0-9_]+' || true
} | sort -u >"$TMPDIR/declared"
nm -D --defined-only "$library" | awk '$2 ~ /[TRDBi]/ { print $3 }' | grep -vE '^(__gcov|mangle_path|__sanitizer|__asan)' |
    sort >"$TMPDIR/shown"
verdict "$(holds test "$(wc -l <"$TMPDIR/declared")" -gt 150)" "the headers declare $(wc -l <"$TMPDIR/declared") symbols"
verdict "$(holds diff "$TMPDIR/declared" "$TMPDIR/shown")" "the shared library shows these and no others"
verdict "$(holds test -z "$(grep -vE '^(gw|GW)_' "$TMPDIR/shown")")" "all of them begin with gw_"

# One rounding where there should be two, and another processor gives other bytes.
verdict "$(holds test -z "$(objdump -d "$library" | grep -oE '\bvfn?m(add|sub)[a-z0-9]*' | sort -u)")" \
    "no product is fused with a sum"

version=$(sed -nE 's/^#define GW_VERSION "([^"]*)".*/\1/p' include/giveway/version.h)
verdict "$(holds grep -q "SONAME *libgiveway.so.${version%.*}\$" <(objdump -p "$library"))" \
    "it is called libgiveway.so.${version%.*}"

command -v "$CXX" >/dev/null || { echo "ok - C++ # SKIP there is no C++ compiler" && exit $status; }
ln -sf "$PWD/$library" "$TMPDIR/libgiveway.so.${version%.*}"
# Every symbol's address taken from C++: the linker finds each only under the name that C gives it.
{
    echo '#include <giveway/giveway.h>'
    echo 'void (*const every[])() = {'
    grep '^gw_' "$TMPDIR/declared" | sed 's/.*/    reinterpret_cast<void (*)()>(\&&),/'
    echo '};'
    sed -nE 's/^(GW_.*)/const void *const of_\1 = \&\1;/p' "$TMPDIR/declared"
    echo 'int main() { return every[0] == nullptr; }'
} >"$TMPDIR/every.cpp"
cxx() { "$CXX" -std=c++11 -pedantic -Wall -Wextra -Wshadow -Werror -Iinclude "${extra[@]}" "$@"; }
verdict "$(holds cxx -o "$TMPDIR/every" "$TMPDIR/every.cpp" "$library" "-Wl,-rpath,$TMPDIR")" \
    "a C++ program links with every one of them"
verdict "$(holds "$TMPDIR/every")" "and runs"
verdict "$(holds cxx -o "$TMPDIR/uses" tests/install/uses_library.cpp "$library" "-Wl,-rpath,$TMPDIR")" \
    "a C++ program that works out a bush compiles without a warning"
verdict "$(holds "$TMPDIR/uses")" "and gets the right answer"
exit $status
