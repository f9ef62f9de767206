#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# What is installed works from any folder, serves programs of others, and can be taken away.
set -euo pipefail
cd "$SOURCE"
root=$TMPDIR/root
status=0
verdict() { # TRUE_OR_FALSE WHAT
    if [ "$1" = true ]; then echo "ok - $2"; else echo "not ok - $2" && status=1; fi
}
holds() { if "$@" >&2; then echo true; else echo false; fi; }

scripts/install.sh install "$B" "" "$root"
for file in bin/giveway lib/libgiveway.a lib/pkgconfig/giveway.pc include/giveway/giveway.h \
    share/man/man1/giveway.1 share/giveway/materials/nr-50.json share/giveway/cases/fast-saloon.json \
    share/bash-completion/completions/giveway share/zsh/site-functions/_giveway \
    share/fish/vendor_completions.d/giveway.fish; do
    verdict "$(holds test -s "$root/$file")" "$file is put in place"
done

chmod -R a-w "$root"
verdict "$(cd / && holds "$root/bin/giveway" check "$root/share/giveway/cases/fast-saloon.json")" \
    "the installed program reads the installed case from another folder"

export PKG_CONFIG_PATH=$root/lib/pkgconfig
case $MODE in
asan) extra=("-fsanitize=address,undefined") ;;
coverage) extra=(--coverage) ;;
*) extra=() ;;
esac
read -ra flags < <(pkg-config --cflags --libs giveway)
verdict "$(holds "${CC:-cc}" -std=c11 -Wall -Werror "${extra[@]}" -o "$TMPDIR/uses" tests/install/uses_library.c "${flags[@]}")" \
    "a program builds against the installed library through pkg-config"
verdict "$(holds "$TMPDIR/uses")" "and that program gets the right answer"
version=$(pkg-config --modversion giveway)
verdict "$(holds test "$("$root/bin/giveway" --version)" = "giveway $version")" \
    "program and pkg-config agree on the version"

chmod -R u+w "$root"
echo mine >"$root/share/giveway/cases/my-own.json"
scripts/install.sh uninstall "$B" "" "$root"
verdict "$(holds test "$(find "$root" -type f | sed "s|$root/||")" = share/giveway/cases/my-own.json)" \
    "uninstall takes away all of it, and nothing of the user's"

staged=$TMPDIR/staged
scripts/install.sh install "$B" "$staged" /usr
verdict "$(holds grep -qx 'prefix=/usr' "$staged/usr/lib/pkgconfig/giveway.pc")" \
    "a staged installation names the place where it will be"
exit $status
