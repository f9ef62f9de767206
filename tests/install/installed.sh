#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# What is installed works for anybody from any folder, serves programs of others, and can be taken away.
set -euo pipefail
cd "$SOURCE"
. tests/install/_as_user.sh
place=$(open_folder)
root=$place/root
status=0
verdict() { # TRUE_OR_FALSE WHAT
    if [ "$1" = true ]; then echo "ok - $2"; else echo "not ok - $2" && status=1; fi
}
holds() { if "$@" >&2; then echo true; else echo false; fi; }
# shellcheck disable=SC2317  # the trap calls it
tidy() {
    chmod -R u+w "$place"
    if [ "$place" != "$TMPDIR" ]; then rm -rf "$place"; fi
}
trap tidy EXIT

scripts/install.sh install "$B" "" "$root"
for file in bin/giveway lib/libgiveway.a lib/libgiveway.so share/doc/giveway/examples/library.md lib/pkgconfig/giveway.pc include/giveway/giveway.h \
    share/man/man1/giveway.1 share/man/man5/giveway-case.5 share/man/man7/giveway-own-car.7 share/giveway/materials/nr-50.json \
    share/giveway/cases/fast-saloon.json \
    share/giveway/schema/giveway-case-1.schema.json share/giveway/schema/giveway-material-1.schema.json \
    share/giveway/schema/giveway-result-1.schema.json share/bash-completion/completions/giveway \
    share/zsh/site-functions/_giveway share/fish/vendor_completions.d/giveway.fish; do
    verdict "$(holds test -s "$root/$file")" "$file is put in place"
done
private=$(find "$root" ! -perm -o=r)
verdict "$(holds test -z "$private")" "everybody may read all of it"

chmod -R a-w "$root"
touch "$TMPDIR/before-runs"
case=$root/share/giveway/cases/fast-saloon.json
verdict "$(holds as_user "$root/bin/giveway" check "$case")" \
    "the installed program reads the installed case from another folder"
own_folder "$place/charts"
some=(compare "$case" --method handbook --kit rubber --load "hard stop")
verdict "$(holds as_user "$root/bin/giveway" "${some[@]}" -o "$place/charts")" \
    "somebody without rights compares the kits of a read-only installation"
verdict "$(holds test -n "$(find "$place/charts" -name '*.svg')")" "and gets charts in a folder of his own"
if [ "$(id -u)" != 0 ] || can_be_nobody; then
    refused=0
    as_user "$root/bin/giveway" "${some[@]}" -o "$root/charts" >/dev/null || refused=$?
    verdict "$(holds test $refused = 4)" "charts that may not be written are said to be so (status 4)"
fi
verdict "$(holds test -z "$(find "$root" -newer "$TMPDIR/before-runs")")" "no run writes into the installation"

export PKG_CONFIG_PATH=$root/lib/pkgconfig
# Runs a program that was linked with the shared library, which lies in no place that is searched.
with_library() { LD_LIBRARY_PATH=$root/lib "$@"; }
case $MODE in
asan) extra=("-fsanitize=address,undefined") ;;
coverage) extra=(--coverage) ;;
*) extra=() ;;
esac
read -ra flags < <(pkg-config --cflags --libs giveway)
verdict "$(holds "${CC:-cc}" -std=c11 -Wall -Werror "${extra[@]}" -o "$TMPDIR/uses" tests/install/uses_library.c "${flags[@]}")" \
    "a program builds against the installed library through pkg-config"
verdict "$(holds with_library "$TMPDIR/uses")" "and that program gets the right answer"
verdict "$(holds grep -q 'NEEDED.*libgiveway\.so\.[0-9]' <(objdump -p "$TMPDIR/uses"))" \
    "it asks for the shared library by a name with a number"
read -ra static < <(pkg-config --cflags --libs giveway | sed "s|-lgiveway|$root/lib/libgiveway.a|")
verdict "$(holds "${CC:-cc}" -std=c11 -Wall -Werror "${extra[@]}" -o "$TMPDIR/carries" tests/install/uses_library.c "${static[@]}")" \
    "and builds with the static one"
verdict "$(holds "$TMPDIR/carries")" "which it then carries along"

# The page of the example, as it is read: its first command builds the program beside it.
mkdir -p "$TMPDIR/example"
cp "$root/share/doc/giveway/examples/braked_toe.c" "$TMPDIR/example/"
build_line=$(sed -n '/^cc /{p;q}' "$root/share/doc/giveway/examples/library.md")
if [ ${#extra[@]} != 0 ]; then build_line="$build_line ${extra[*]}"; fi
verdict "$(cd "$TMPDIR/example" && holds bash -c "${build_line/#cc/${CC:-cc} -Wall -Wextra -Werror}")" \
    "the example builds as its page says"
with_library "$TMPDIR/example/braked_toe" "$case" "hard stop" >"$TMPDIR/toe" || true
"$root/bin/giveway" deflect "$case" --load "hard stop" --format csv --quiet |
    awk -F, 'NR == 1 { for (i = 1; i <= NF; i++) at[$i] = i; next } !NF { exit }
        { printf "%-10s %-5s %+.3f deg\n", $at["kit"], $at["corner"], $at["toe_change_deg"] }' >"$TMPDIR/told"
verdict "$(holds test -s "$TMPDIR/told")" "there is something to compare it with"
verdict "$(holds diff "$TMPDIR/told" "$TMPDIR/toe")" "it prints the toe that deflect tells"
wrong=0
with_library "$TMPDIR/example/braked_toe" "$case" "no such load" 2>/dev/null || wrong=$?
verdict "$(holds test $wrong = 1)" "and ends with status 1 where there is no such load"

version=$(pkg-config --modversion giveway)
verdict "$(holds test "$("$root/bin/giveway" --version)" = "giveway $version")" \
    "program and pkg-config agree on the version"

chmod -R u+w "$root"
echo mine >"$root/share/giveway/cases/my-own.json"
scripts/install.sh uninstall "$B" "" "$root"
verdict "$(holds test "$(find "$root" ! -type d | sed "s|$root/||")" = share/giveway/cases/my-own.json)" \
    "uninstall takes away all of it, and nothing of the user's"

staged=$TMPDIR/staged
scripts/install.sh install "$B" "$staged" /usr /usr/lib64
verdict "$(holds grep -qx 'prefix=/usr' "$staged/usr/lib64/pkgconfig/giveway.pc")" \
    "a staged installation names the place where it will be"
scripts/install.sh uninstall "$B" "$staged" /usr /usr/lib64
verdict "$(holds test -z "$(find "$staged" ! -type d)")" "and is taken away from there"
exit $status
