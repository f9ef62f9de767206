#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# A file knows only what lies below it. Read from the #include lines, and for the modules that
# compute also from the symbols of the objects: they print nothing, open nothing, never exit and
# hold no state.
set -euo pipefail
cd "$(dirname "$0")/.."
B=${B:-build/release}

# module: the modules it may know
declare -A knows=(
    [base]=""
    [bush]="base"
    [corner]="bush base"
    [vehicle]="corner bush base"
    [car]="vehicle corner bush base"
    [ride]="corner bush base"
    [fit]="bush base"
    [casefile]="fit ride car vehicle corner bush base"
    [study]="casefile fit ride car vehicle corner bush base"
    [format]="base"
    [start]="format casefile fit ride car vehicle corner bush base"
    [record]="format study casefile fit ride car vehicle corner bush base"
    [chart]="record format study casefile fit ride car vehicle corner bush base"
    [show]="chart record format study casefile fit ride car vehicle corner bush base"
    [page]="show chart record format study casefile fit ride car vehicle corner bush base"
    [cli]="page show start chart record format study casefile fit ride car vehicle corner bush base"
)

# A public header belongs to the module that it is named after, or that has a file of its name.
# Those without either are told here.
declare -A home=([travel]=study [deflect]=study [handling]=study [align]=study [spread]=study [bands]=study [match]=study [pair]=corner [road_car]=car [plausible]=study [units]=base [version]=base [api]=base [ride]=ride [names]=base [material]=bush [curve]=bush [verdict]=bush [case]=casefile [compare]=study [report]=study
    [materials]=casefile [giveway]=cli)
for header in include/giveway/*.h; do
    name=${header##*/} && name=${name%.h}
    if [ -n "${home[$name]:-}" ]; then continue; fi
    home[$name]=unknown
    for module in base bush corner vehicle ride car fit casefile study; do # those of the library
        if [ -z "${knows[$module]+there}" ]; then continue; fi
        if [ "${name%%_*}" = "$module" ] || [ -f "src/$module/$name.c" ]; then home[$name]=$module; fi
    done
done

faults=0
fault() { echo "$*" && faults=$((faults + 1)); }

may_know() { # MODULE OTHER
    [ "$1" = "$2" ] || case " ${knows[$1]} " in *" $2 "*) ;; *) false ;; esac
}

check_include() { # FILE MODULE INCLUDED
    local file=$1 module=$2 included=$3 other
    case $included in
    giveway/*) other=${included#giveway/} && other=${home[${other%.h}]:-unknown} ;;
    */*) other=${included%%/*} ;;
    *) other=$module ;; # beside the file
    esac
    may_know "$module" "$other" ||
        fault "$file: $module may not know $other ($included)"
}

check_system_include() { # FILE MODULE INCLUDED
    case $2/$3 in
    casefile/cjson/*) ;;
    */cjson/*) fault "$1: only casefile knows JSON ($3)" ;;
    bush/stdio.h | corner/stdio.h | car/stdio.h | vehicle/stdio.h | ride/stdio.h)
        fault "$1: $2 computes and prints nothing ($3)"
        ;;
    esac
}

for file in include/giveway/*.h src/*/*.c src/*/*.h; do
    [ -f "$file" ] || continue
    case $file in
    include/giveway/giveway.h) continue ;;
    include/*) name=${file##*/} && module=${home[${name%.h}]} ;;
    *) module=${file#src/} && module=${module%%/*} ;;
    esac
    if [ -z "${knows[$module]+there}" ]; then
        fault "$file: tell scripts/check-layers.sh which module it belongs to" && continue
    fi
    while read -r included; do
        case $included in
        \"*) included=${included#\"} && check_include "$file" "$module" "${included%\"*}" ;;
        \<*) included=${included#<} && check_system_include "$file" "$module" "${included%>*}" ;;
        esac
    done < <(sed -nE 's/^[[:space:]]*#[[:space:]]*include[[:space:]]+//p' "$file")
done

calls='printf|fprintf|vprintf|vfprintf|puts|fputs|putchar|putc|fputc|perror|fopen|open|exit|_exit|_Exit|quick_exit|abort|system|popen|getenv|setlocale|rand|srand|time'
for module in bush corner vehicle car ride; do
    for object in "$B/$module"/*.o; do
        source=src/$module/$(basename "$object" .o).c
        if [ "$(basename "$B")" != release ] || [ ! -f "$object" ] || [ ! -f "$source" ]; then continue; fi
        bad=$(nm "$object" | awk '$1 == "U" { print $2 }' | grep -xE "(__)?($calls)(_chk)?" | tr '\n' ' ' || true)
        if [ -n "$bad" ]; then fault "$source: computes, so may not call $bad"; fi
        bad=$(nm --format=sysv "$object" | awk -F'|' '$7 ~ /^\.(bss|data|tbss|tdata)( |$)|COM/ { print $1 }' | tr -s ' \n' ' ')
        if [ -n "${bad// /}" ]; then fault "$source: holds state between calls: $bad"; fi
    done
done

if [ $faults = 0 ]; then echo "every file knows only what lies below it"; fi
[ $faults = 0 ]
