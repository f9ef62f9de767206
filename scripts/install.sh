#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# install.sh install|uninstall BUILD_DIR DESTDIR PREFIX [LIBDIR]
# One list of files serves both ways, so that what is put in place can be taken away again.
set -euo pipefail
cd "$(dirname "$0")/.."
action=$1 build=$2 destdir=$3 prefix=$4 libdir=${5:-$4/lib}
for place in "$prefix" "$libdir"; do
    case $place in /*) ;; *) echo "PREFIX and LIBDIR must begin with /, not \"$place\"" >&2 && exit 2 ;; esac
done

put() { # MODE FILE... DIRECTORY
    local mode=$1 directory=${*: -1} file
    shift
    set -- "${@:1:$#-1}"
    if [ "$action" = install ]; then install -d "$destdir$directory"; fi
    for file in "$@"; do
        [ -f "$file" ] || continue
        if [ "$action" = install ]; then
            install -m "$mode" "$file" "$destdir$directory/"
        else
            rm -f "$destdir$directory/$(basename "$file")"
        fi
    done
}

link() { # TARGET NAME DIRECTORY
    if [ "$action" = install ]; then ln -sf "$1" "$destdir$3/$2"; else rm -f "$destdir$3/$2"; fi
}

own_directory() { # taken away too, unless somebody has put files of his own there
    if [ "$action" = uninstall ] && [ -d "$destdir$1" ]; then
        rmdir --ignore-fail-on-non-empty "$destdir$1"
    fi
}

version=$(sed -nE 's/^#define GW_VERSION "([^"]*)".*/\1/p' include/giveway/version.h)
mkdir -p "$build"
sed -e "s|@PREFIX@|$prefix|" -e "s|@LIBDIR@|$libdir|" -e "s|@VERSION@|$version|" \
    scripts/install/giveway.pc.in >"$build/giveway.pc"

put 755 "$build/giveway" "$prefix/bin"
put 644 "$build/installed/libgiveway.a" "$libdir"
# The shared library by the names that a dynamic linker (its first two numbers) and a compiler look for.
mkdir -p "$build/shared" && cp "$build/libgiveway.so" "$build/shared/libgiveway.so.$version"
put 644 "$build/shared/libgiveway.so.$version" "$libdir"
link "libgiveway.so.$version" "libgiveway.so.${version%.*}" "$libdir"
link "libgiveway.so.${version%.*}" libgiveway.so "$libdir"
put 644 "$build/giveway.pc" "$libdir/pkgconfig"
put 644 include/giveway/*.h "$prefix/include/giveway"
put 644 materials/* "$prefix/share/giveway/materials"
put 644 cases/* "$prefix/share/giveway/cases"
put 644 src/casefile/schema/*.json "$build/giveway-result-1.schema.json" "$prefix/share/giveway/schema"
put 644 src/cli/giveway.1 "$prefix/share/man/man1"
put 644 src/cli/giveway-case.5 "$prefix/share/man/man5"
put 644 src/cli/giveway-own-car.7 "$prefix/share/man/man7"
mkdir -p "$build/bash" && cp src/cli/completions/giveway.bash "$build/bash/giveway" # it is found by this name
put 644 "$build/bash/giveway" "$prefix/share/bash-completion/completions"
put 644 src/cli/completions/_giveway "$prefix/share/zsh/site-functions"
put 644 src/cli/completions/giveway.fish "$prefix/share/fish/vendor_completions.d"
put 644 examples/*.c examples/library.md "$prefix/share/doc/giveway/examples"
own_directory "$prefix/include/giveway"
own_directory "$prefix/share/doc/giveway/examples"
own_directory "$prefix/share/doc/giveway"
own_directory "$prefix/share/giveway/materials"
own_directory "$prefix/share/giveway/cases"
own_directory "$prefix/share/giveway/schema"
own_directory "$prefix/share/giveway"
