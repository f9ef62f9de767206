#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The Debian packages in the folder $1, unpacked beside the system, work: `make deb` runs this.
set -euo pipefail
cd "$SOURCE"
packages=$1
TMPDIR=$packages/tried
mkdir -p "$TMPDIR"
. tests/install/_as_user.sh
place=$(open_folder)
root=$place/root
# shellcheck disable=SC2317  # the trap calls it
tidy() {
    chmod -R u+w "$place"
    rm -rf "$place" "$TMPDIR"
}
trap tidy EXIT
status=0
verdict() { # TRUE_OR_FALSE WHAT
    if [ "$1" = true ]; then echo "ok - $2"; else echo "not ok - $2" && status=1; fi
}
holds() { if "$@" >&2; then echo true; else echo false; fi; }

mkdir "$root"
for package in "$packages"/*.deb; do dpkg-deb -x "$package" "$root"; done
library=$(dirname "$(find "$root/usr/lib" -name libgiveway.a)")
for file in bin/giveway include/giveway/giveway.h share/man/man1/giveway.1.gz share/man/man5/giveway-case.5.gz share/man/man7/giveway-own-car.7.gz \
    share/giveway/materials/nr-50.json \
    share/giveway/schema/giveway-case-1.schema.json share/bash-completion/completions/giveway \
    share/zsh/vendor-completions/_giveway share/fish/vendor_completions.d/giveway.fish; do
    verdict "$(holds test -s "$root/usr/$file")" "$file is in the packages"
done

chmod -R a-w "$root"
case=$root/usr/share/giveway/cases/fast-saloon.json
as_user "$root/usr/bin/giveway" compare "$case" >"$TMPDIR/compared" || verdict false "compare ran"
verdict "$(holds grep -q 'hard stop' "$TMPDIR/compared")" \
    "somebody without rights compares the kits of the packaged case, read-only and from another folder"

export PKG_CONFIG_PATH=$library/pkgconfig PKG_CONFIG_SYSROOT_DIR=$root
read -ra flags < <(PKG_CONFIG_SYSTEM_INCLUDE_PATH=/none PKG_CONFIG_SYSTEM_LIBRARY_PATH=/none \
    pkg-config --cflags --libs giveway)
verdict "$(holds "${CC:-cc}" -std=c11 -Wall -Werror -o "$TMPDIR/uses" tests/install/uses_library.c "${flags[@]}")" \
    "a program builds against the packaged library through pkg-config"
verdict "$(holds env "LD_LIBRARY_PATH=$library" "$TMPDIR/uses")" "and that program gets the right answer"
exit $status
