#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# shellcheck disable=SC2317,SC2153,SC2016,SC2046,SC2086  # functions are called through expect; scripts are written as they are
#
# What fails around the program: disks, files, rights, gnuplot. The exit status is right, one line says why, and
# every file is whole or absent.
set -u
giveway=$GIVEWAY
source=$SOURCE
work=$(mktemp -d "${TMPDIR:-/tmp}/surroundings.XXXXXX")
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
chmod 755 "$work"
cd "$work" || exit 2
status=0
cp "$source/tests/fuzz/corpus/run/wishbone.json" case.json
mkdir plots # stand-ins for gnuplot, by what they do

ok() { echo "ok - $1"; }
not_ok() {
    echo "not ok - $1"
    sed 's/^/#   /' err
    status=1
}

# expect STATUS LINE NAME COMMAND...: that exit status, and LINE matches the only line of standard error that is
# no warning; "" stands for none.
expect() {
    local want=$1 line=$2 name=$3 got lines
    shift 3
    "$@" >out 2>err </dev/null
    got=$?
    sed -i '/^profiling:/d' err # a build that counts coverage wants to write its counters, which another user may not
    lines=$(grep -cv '^warning: ' err)
    if [ $got != "$want" ]; then
        not_ok "$name: exit status $got, not $want"
    elif [ -z "$line" ] && [ "$lines" != 0 ]; then
        not_ok "$name: something was said"
    elif [ -n "$line" ] && { [ "$lines" != 1 ] || ! grep -v '^warning: ' err | grep -Eq -e "$line"; }; then
        not_ok "$name: not one line that matches '$line'"
    else
        ok "$name"
    fi
}

holds() {
    local name=$1
    shift
    if "$@"; then ok "$name"; else not_ok "$name"; fi
}

whole_or_absent() { # DIR: no file left aside, every chart has its end
    local file
    [ -d "$1" ] || return 0
    [ -z "$(find "$1" -name '.*' ! -path "$1")" ] || return 1
    for file in "$1"/*; do
        case $file in
        *.svg) tail -c 8 "$file" | grep -q '</svg>' || return 1 ;;
        *.png) tail -c 8 "$file" | grep -q IEND || return 1 ;;
        *.html) tail -c 10 "$file" | grep -q '</html>' || return 1 ;;
        esac
    done
}

plotter() { # NAME SCRIPT: a gnuplot that does this
    mkdir "plots/$1"
    printf '#!/bin/sh\n%s\n' "$2" >"plots/$1/gnuplot"
    chmod +x "plots/$1/gnuplot"
}
with_plotter() { # NAME COMMAND...
    local name=$1
    shift
    PATH=$work/plots/$name:$PATH "$@"
}

# The words behind a command's name.
words_of() {
    case $1 in
    bench) echo "press.csv dynamic=rig.csv" ;;
    start) echo "--front strut --rear five_link" ;;
    match) echo "case.json --readings ramp.json" ;;
    spread | choose) echo "case.json --draws 100" ;;
    *) echo case.json ;;
    esac
}
cp "$source/cases/press.csv" "$source/cases/rig.csv" .
cat >ramp.json <<'END'
{ "format": "giveway-readings-1", "load_percent": 3, "readings": [
  { "name": "bump", "corner": "front", "travel_mm": [-20, 20], "toe_change_deg": [0.05, -0.05], "within_deg": 0.2 } ] }
END

# ---- gnuplot ----

mkdir plots/none
for tool in sed rm; do ln -s "$(command -v $tool)" plots/none/; done
without_gnuplot() { PATH=$work/plots/none "$@"; }
expect 0 'charts left out: gnuplot is not installed' "without gnuplot the tables come" \
    without_gnuplot "$giveway" compare case.json -o none
holds "and they are whole" grep -q . out
plotter failing 'echo "line 7: no such font" >&2; exit 3'
plotter killed 'kill -9 $$'
plotter idle 'cat >/dev/null'
plotter half 'sed -n "s/^f[0-9]* = .\(.*\).$/\1/p" | while read -r f; do printf "<svg width=" >"$f"; done'
plotter rude 'rm -rf "$PWD"; cat >/dev/null'
plotter deaf 'exec <&-; exit 1'
plotter blocked 'exit 0' && chmod -x plots/blocked/gnuplot
for command in compare travel ride report spread choose bench; do
    for name in failing killed idle half rude deaf; do
        case $name in
        failing) line='gnuplot failed with status 3; no charts: line 7: no such font' ;;
        killed) line='gnuplot was ended by signal 9; no charts' ;;
        idle | half) line='gnuplot left no chart, or half of one' ;;
        *) line=. ;;
        esac
        expect 4 "$line" "$command with a gnuplot that is $name" with_plotter $name "$giveway" $command $(words_of $command) -o "$command-$name" --quiet
        holds "leaves nothing by halves" whole_or_absent "$command-$name"
    done
done
holds "no folder is left in the folder for passing files" [ -z "$(find . -maxdepth 1 -name 'giveway-*')" ]

# ---- rights ----

nobody() { "$@"; }
if [ "$(id -u)" = 0 ]; then
    # Charts are drawn in a folder for passing files, which must be one that this user may write to.
    mkdir passing && chmod 1777 passing
    nobody() { setpriv --reuid=65534 --regid=65534 --clear-groups env TMPDIR="$work/passing" "$@"; }
fi
cp case.json secret.json && chmod 000 secret.json
mkdir locked materials && chmod 555 locked && chmod 000 materials
if nobody "$giveway" --version >/dev/null 2>&1 && nobody test -r case.json; then
    expect 1 'secret.json: cannot be read: Permission denied' "a case that may not be read" nobody "$giveway" compare secret.json
    expect 1 'materials: .*Permission denied' "materials that may not be read" nobody "$giveway" compare case.json --materials materials
    for command in compare travel ride align report spread choose bench; do
        expect 4 'locked/new: cannot make the directory: Permission denied' "$command into a folder that may not be written" \
            nobody env PATH="$source/tests/faults:$PATH" "$giveway" $command $(words_of $command) -o locked/new --quiet
        expect 4 'locked/.*: cannot write: Permission denied' "$command over files that may not be written" \
            nobody env PATH="$source/tests/faults:$PATH" "$giveway" $command $(words_of $command) -o locked --quiet
    done
    for written in "match $(words_of match) --case" "choose $(words_of choose) --case" "bench $(words_of bench) --bush" \
        "start $(words_of start) --sheet"; do
        expect 4 'locked/new.json: cannot write.*: Permission denied' "$written into a folder that may not be written" \
            nobody "$giveway" $written locked/new.json --quiet
    done
    holds "nothing is in it" [ -z "$(ls -A locked)" ]
else
    echo "ok - rights # SKIP no other user can run the program here"
fi

# ---- files ----

expect 1 'gone.json: cannot be read: No such file' "a case that is not there" "$giveway" compare gone.json
expect 1 'locked: cannot be read: Is a directory' "a folder in place of a case" "$giveway" compare locked
expect 1 'cannot be read|line 1' "an empty file" "$giveway" compare /dev/null
expect 1 'larger than 4 MiB' "a file without an end" "$giveway" compare /dev/zero
touch plain
expect 4 'plain: cannot make the directory: Not a directory' "a file in place of a folder for charts" \
    env PATH="$source/tests/faults:$PATH" "$giveway" compare case.json -o plain
expect 4 'plain: cannot make the directory: Not a directory' "a folder inside a file" env PATH="$source/tests/faults:$PATH" "$giveway" report case.json -o plain/x
expect 0 . "a folder that is there already" env PATH="$source/tests/faults:$PATH" "$giveway" report case.json -o twice
expect 0 . "is written again" env PATH="$source/tests/faults:$PATH" "$giveway" report case.json -o twice
sed 's/"vehicle":{/"vehicle":{"tyre_table":{"front":"gone.csv","rear":"gone.csv"},/' case.json >tyre.json
expect 1 'gone.csv: cannot be read' "a tyre table that is not there" sh -c "'$giveway' compare tyre.json 2>&1 >/dev/null | head -n 1 >&2; exit 1"

# ---- a closed pipe ----

# Who reads the first line alone ends it: no message, no half line, no hanging.
for command in check rates deflect compare travel ride align spread choose match bench start; do
    holds "$command into a pipe that is closed" sh -c "timeout 60 '$giveway' $command $(words_of $command) --quiet 2>err | head -n 1 | grep -q . && ! grep -v '^warning: ' err | grep -v 'cannot write to standard output: Broken pipe' | grep -q ."
done

# ---- full disks ----

limited() { # the largest file is N blocks of 1024 bytes
    (ulimit -f "$1" && shift && "$@")
}
for command in compare report spread choose bench; do
    expect 4 . "$command where files may only have 4 KiB" limited 4 "$giveway" $command $(words_of $command) -o "$command-small" --quiet
    holds "leaves nothing by halves" whole_or_absent "$command-small"
done
if [ -w /dev/full ]; then
    for command in check rates deflect compare travel ride align spread choose match bench start; do
        expect 4 'cannot write to standard output: No space left' "$command to a full disk" \
            sh -c "'$giveway' $command $(words_of $command) --quiet >/dev/full"
    done
fi
mkdir disk
if mount -t tmpfs -o size=64k tmpfs disk 2>/dev/null; then
    trap 'umount "$work/disk"; chmod -R u+w "$work"; rm -rf "$work"' EXIT
    for command in compare report; do
        TMPDIR=$work/disk expect 4 . "$command on a disk of 64 KiB" "$giveway" $command case.json -o disk/charts --quiet
        holds "leaves nothing by halves" whole_or_absent disk/charts
        rm -rf disk/*
    done
    umount disk
    trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
else
    echo "ok - a small disk # SKIP none can be mounted here"
fi
exit $status
