#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The same input gives the same bytes, whatever the locale, the time zone or the number of processors: of what
# is printed, of every chart and of the page.
set -u
work=$(mktemp -d "${TMPDIR:-/tmp}/same.XXXXXX")
trap 'rm -rf "$work"' EXIT
case=$SOURCE/tests/cases/saloon-by-rule.json
status=0
unset OMP_NUM_THREADS
export TMPDIR=$work

# Every command in every format, and the page, which has every kind of chart in it.
everything() { # DIR
    mkdir -p "$1"
    for command in check rates deflect compare travel ride align; do
        for format in text json csv; do
            "$GIVEWAY" $command "$case" --format $format >"$1/$command.$format" 2>"$1/$command.$format.err" || true
        done
    done
    for format in text json csv; do
        "$GIVEWAY" spread "$case" --draws 100 --format $format >"$1/spread.$format" 2>"$1/spread.$format.err" || true
        "$GIVEWAY" bench "$SOURCE/cases/press.csv" "dynamic=$SOURCE/cases/rig.csv" --format $format >"$1/bench.$format" 2>&1 || true
    done
    "$GIVEWAY" choose "$SOURCE/tests/cases/hatchback-by-rule.json" --corner rear --draws 100 -o "$1/choose" --quiet >"$1/choose.txt" 2>/dev/null || true
    "$GIVEWAY" match "$SOURCE/tests/cases/hatchback-by-rule.json" --readings "$SOURCE/cases/hatchback-ramp.csv" --format json >"$1/match.json" 2>&1 || true
    "$GIVEWAY" start --front strut --rear five_link >"$1/start.json" 2>&1 || true
    "$GIVEWAY" report "$case" --for workshop -o "$1" --quiet >/dev/null || return 1
}

compare_with() { # NAME DIR
    if diff -rq "$work/plain" "$2" >"$work/different"; then
        echo "ok - $1"
    else
        echo "not ok - $1"
        head -n 5 "$work/different" | sed 's/^/#   /'
        status=1
    fi
    rm -rf "$2"
}

LC_ALL=C TZ=UTC everything "$work/plain" || exit 1
if ! grep -q . "$work/plain/compare.json" || [ ! -s "$work/plain/report.html" ]; then
    echo "not ok - there is nothing to compare" && exit 1
fi

# A locale with a decimal comma, made here.
if localedef -i de_DE -f UTF-8 "$work/de_DE.UTF-8" >/dev/null 2>&1 || [ -d "$work/de_DE.UTF-8" ]; then
    export LOCPATH=$work
    if [ "$(LC_ALL=de_DE.UTF-8 /usr/bin/printf '%.1f' 0,5 2>/dev/null)" = 0,5 ]; then
        LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8 everything "$work/german"
        compare_with "in a locale with a decimal comma" "$work/german"
    else
        echo "ok - in a locale with a decimal comma # SKIP it does not take hold"
    fi
    unset LOCPATH
else
    echo "ok - in a locale with a decimal comma # SKIP localedef cannot make one"
fi

TZ=XXX-13:45 everything "$work/zone"
compare_with "in another time zone" "$work/zone"

# What the program is told of the processors; the threads it then starts are real.
cat >"$work/processors.c" <<'END'
#include <stdlib.h>
#include <unistd.h>
long sysconf(int name)
{
    const char *n = getenv("PROCESSORS");
    return name == _SC_PAGESIZE ? 4096 : n ? atol(n) : 1;
}
END
if [ "${MODE:-release}" != asan ] && cc -shared -fPIC -o "$work/processors.so" "$work/processors.c" 2>/dev/null; then
    for n in 1 5; do
        LD_PRELOAD=$work/processors.so PROCESSORS=$n everything "$work/processors"
        compare_with "on $n processors" "$work/processors"
    done
else
    echo "ok - on other numbers of processors # SKIP no shared object can be put before the library"
fi
if command -v taskset >/dev/null; then
    (taskset -p -c 0 $BASHPID >/dev/null && everything "$work/one")
    compare_with "all threads on one processor" "$work/one"
fi
exit $status
