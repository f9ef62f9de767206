#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Each rule of scripts/check-rules.sh sees what breaks it: broken once in a copy, it finds one line more.
set -euo pipefail
cd "$SOURCE"
[ "$MODE" = release ] || { echo "symbols are read from the release build alone" && exit 77; }
tree=$TMPDIR/tree
status=0
mkdir -p "$tree/scripts"
cp -r include src "$tree/"
mkdir -p "$tree/src/record" "$tree/src/format" "$tree/src/page"
cp scripts/check-rules.sh scripts/rules.txt "$tree/scripts/"
mkdir -p "$tree/tests" && cp tests/mutants.txt "$tree/tests/"
for room in "$B"/*/; do
    case $room in */tests/ | */logs/) continue ;; esac
    mkdir -p "$tree/$room"
    find "$room" -maxdepth 1 -name '*.o' -exec cp -t "$tree/$room" {} +
done
cp "$B/giveway" "$tree/$B/"
mkdir -p "$tree/$B/installed" && cp "$B/installed/libgiveway.a" "$tree/$B/installed/"
cd "$tree"
export B

found() { bash scripts/check-rules.sh --show "$1" | wc -l; }
add() { # FILE LINE...: a file more, and its object
    printf '%s\n' "${@:2}" >"src/$1"
    case $1 in *.c) ${CC:-cc} -c -o "$B/${1%.c}.o" "src/$1" ;; esac
    case $1 in bush/*.c) ar r "$B/installed/libgiveway.a" "$B/${1%.c}.o" ;; esac
}
remove() {
    rm -f src/*/zz_* "$B"/*/zz_*
    ar d "$B/installed/libgiveway.a" zz_a.o
}

# RULE FILE LINE [FILE LINE]: the rule finds more with these than without.
sees() {
    local rule=$1 before after
    before=$(found "$rule")
    shift
    for ((; $# > 0;)); do
        add "$1" "$2"
        shift 2
    done
    after=$(found "$rule")
    remove
    tried+=" $rule"
    if [ "$after" -gt "$before" ]; then echo "ok - $rule"; else echo "not ok - $rule: $before before, $after after" && status=1; fi
}

tried=
sees units show/zz_a.h '#include "giveway/units.h"'
sees exports bush/zz_a.c 'void gw_zz_hidden(void) {}'
sees prefix show/zz_a.c 'void zz_other(void) {}'
sees twice show/zz_a.c 'void gw_fail(void) {}'
sees strcmp show/zz_a.h 'static int zz(const char *a) { return strcmp(a, "Pa"); }'
sees bold show/zz_a.h 'static const char zz[] = "\033[1m";'
sees tags cli/zz_a.h 'static const char zz[] = "a<td>b";'
sees gnuplot show/zz_a.h 'static const char zz[] = "set label 1";'
sees results cli/cmd_zz.c 'enum { GW_OPT_FORMAT };'
sees calls show/zz_a.c 'void gw_corner_solve(void); void gw_zz(void) { gw_corner_solve(); }'
sees circles show/zz_a.c 'void gw_zz_b(void); void gw_zz_a(void) { gw_zz_b(); }' \
    show/zz_b.c 'void gw_zz_a(void); void gw_zz_b(void) { gw_zz_a(); }'
sees long show/zz_a.c "$(printf 'void gw_zz(void)\n{\n' && printf ';\n%.0s' {1..42} && echo '}')"

rm -f src/cli/cmd_zz.c
while read -r rule _; do
    case " $tried " in *" $rule "*) ;; *) echo "not ok - $rule is not tried here" && status=1 ;; esac
done < <(grep -v '^#' scripts/rules.txt)

# The numbers that are allowed: one too many fails, --lower writes down what was reached and never more.
sed -E 's/^long 0/long 5/; s/^gnuplot 0/gnuplot 3/' "$SOURCE/scripts/rules.txt" >scripts/rules.txt
bash scripts/check-rules.sh --lower >lowered
if grep -q '^long 0 ' scripts/rules.txt && grep -q 'lower that with' lowered; then echo "ok - numbers fall"; else echo "not ok - numbers fall" && status=1; fi
printf 'static const char zz[] = "set label";\n' >src/cli/zz.h
if bash scripts/check-rules.sh >more; then echo "not ok - one more than allowed passes" && status=1; else echo "ok - one more than allowed fails"; fi
if grep -q 'src/cli/zz.h:1:' more; then echo "ok - and is shown"; else echo "not ok - and is shown" && status=1; fi
exit $status
