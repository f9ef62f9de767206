#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Makes Debian packages in build/deb from scripts/debian, looks them over and tries what is in them.
# The tree is copied first, because dpkg wants its description at the top, and because it cleans up.
set -euo pipefail
cd "$(dirname "$0")/.."
export LC_ALL=C
out=$PWD/build/deb
version=$(sed -nE 's/^#define GW_VERSION "([^"]*)".*/\1/p' include/giveway/version.h)
tree=$out/giveway-$version

rm -rf "$out"
mkdir -p "$tree"
cp -a src include examples materials cases scripts Makefile README.md DEVELOPERS.md LICENSE "$tree/"
mv "$tree/scripts/debian" "$tree/debian"

# The date of the last change, so that the same source gives the same package.
date=$(git log -1 --format=%cD 2>/dev/null || date -R -r include/giveway/version.h)
sed -e "s|@VERSION@|$version|" -e "s|@DATE@|$date|" "$tree/debian/changelog.in" >"$tree/debian/changelog"
rm "$tree/debian/changelog.in"

echo "packing giveway $version (log: build/deb/log)"
if ! (cd "$tree" && env -u MAKEFLAGS -u MAKELEVEL -u MFLAGS dpkg-buildpackage -us -uc -b "-j${JOBS:-2}") >"$out/log" 2>&1; then
    tail -n 40 "$out/log" >&2
    exit 1
fi
rm -rf "$tree"

# As root lintian would complain of root; what it says of unprivileged users is the same.
echo "lintian:"
lintian --fail-on error,warning --allow-root "$out"/*.changes
echo "  no errors, no warnings"

SOURCE=$PWD bash tests/install/_package.sh "$out"
echo "packages:"
for package in "$out"/*.deb; do echo "  build/deb/${package##*/}"; done
