#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Runs both commands of the README as a new user would: fresh.sh [SUITE] [--demo] [--able]
# Builds a bare Debian (the machine's own release, or SUITE) in a temporary folder from the machine's own sources,
# clones what is committed here into it and runs `make demo` and `make check` there. Everything is mounted in a
# namespace of its own, which ends with its last process, and the folder is removed, however the run ends; what a run
# that was killed has left is removed by the next. --demo stops after the first command. --able only says whether it
# can be done here: status 77 if not.
set -euo pipefail
cd "$(dirname "$0")/.."

suite="" able=no commands=("make demo" "make check")
for word in "$@"; do
    case $word in
    --able) able=yes ;;
    --demo) commands=("make demo") ;;
    -*) echo "usage: scripts/fresh.sh [SUITE] [--demo] [--able]" >&2 && exit 2 ;;
    *) suite=$word ;;
    esac
done

cannot() { echo "no bare Debian can be made here: $1" && exit 77; }
[ "$(id -u)" = 0 ] || cannot "it takes root"
command -v apt-get >/dev/null || cannot "this is no Debian system"
unshare --mount --pid --fork --propagation private true 2>/dev/null || cannot "mounts of its own are not allowed"
if ! command -v mmdebstrap >/dev/null; then
    mkdir -p build
    {
        apt-get update -q || true
        DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends mmdebstrap
    } >>build/setup.log 2>&1 || cannot "mmdebstrap cannot be installed (see build/setup.log)"
fi
if [ $able = yes ]; then exit 0; fi

base=${TMPDIR:-/var/tmp}
for old in "$base"/giveway-fresh.*; do # each run holds a lock on its own folder as long as it lives
    if [ -f "$old/lock" ] && flock -n "$old/lock" true; then rm -rf --one-file-system "$old"; fi
done
work=$(mktemp -d "$base/giveway-fresh.XXXXXX")
root=$work/root
exec 9>"$work/lock"
flock -n 9
away() { rm -rf --one-file-system "$work"; }
trap away EXIT
# A signal is answered at once, not when the command in the root is done: what runs there ends with its namespace.
running=
leave() {
    if [ -n "$running" ]; then kill -KILL "$running" 2>/dev/null && wait "$running" 2>/dev/null; fi
    exit "$1"
}
trap 'leave 129' HUP
trap 'leave 130' INT
trap 'leave 143' TERM

# The machine's own Debian sources, one a line; for another release than its own with that one's name in its place.
sources() {
    local own
    own=$(. /etc/os-release && echo "$VERSION_CODENAME")
    apt-get indextargets --format 'deb $(REPO_URI) $(RELEASE) $(COMPONENT)' "Created-By: Packages" "Origin: Debian" |
        sort -u | sed "s/ $own/ ${suite:-$own}/"
}

# How this machine reaches its packages: through what proxy, and whether dates are looked at.
apt_ways() {
    apt-config dump --no-empty |
        grep -E '^Acquire::(http|https|Check-[A-Za-z-]+|Retries)(::[A-Za-z:.-]+)? ' | grep -v -i auto-detect || true
}

# The same for npm, which stalls without it: one NAME=VALUE a line, for the environment. Keys to a registry stay here.
npm_ways() {
    local key value
    command -v npm >/dev/null || return 0
    for key in registry proxy https-proxy noproxy strict-ssl; do
        value=$(npm config get "$key" 2>/dev/null || true)
        case $value in '' | null | undefined) ;; *) echo "npm_config_${key//-/_}=$value" ;; esac
    done
}

certificates() { # the file with those that this machine trusts, if there is one
    local file
    for file in "${NODE_EXTRA_CA_CERTS:-}" "${SSL_CERT_FILE:-}" /etc/ssl/certs/ca-certificates.crt; do
        if [ -n "$file" ] && [ -f "$file" ]; then echo "$file" && return; fi
    done
}

bootstrap() {
    local -a options=()
    local line
    while IFS= read -r line; do options+=("--aptopt=$line"); done < <(apt_ways)
    sources >"$work/sources.list"
    [ -s "$work/sources.list" ] || { apt-get update -q >/dev/null 2>&1 && sources >"$work/sources.list"; }
    mmdebstrap --quiet --mode=root --variant=minbase --include=git,make,ca-certificates "${options[@]}" \
        "${suite:-$(. /etc/os-release && echo "$VERSION_CODENAME")}" "$root" - <"$work/sources.list" \
        2>"$work/bootstrap.log" 9>&- || { cat "$work/bootstrap.log" >&2 && return 1; }
}

furnish() { # names, certificates and the project
    local trusted
    rm -f "$root/etc/resolv.conf" "$root/etc/hosts"
    cp -L /etc/resolv.conf /etc/hosts "$root/etc/"
    trusted=$(certificates)
    if [ -n "$trusted" ]; then cp -L "$trusted" "$root/etc/ssl/certs/ca-certificates.crt"; fi
    echo force-unsafe-io >"$root/etc/dpkg/dpkg.cfg.d/quick" # it need not outlive a power cut
    mkdir -p "$root/home/someone"
    git -c safe.directory='*' clone -q --no-local "file://$PWD" "$root/home/someone/giveway"
}

# One command in the root, a process of its own (start it with &), with nothing of this machine's environment but the
# ways to its packages.
inside() {
    local -a ways=()
    local name
    mapfile -t ways < <(npm_ways)
    for name in http_proxy https_proxy no_proxy; do
        if [ -n "${!name:-}" ]; then ways+=("$name=${!name}"); fi
    done
    # shellcheck disable=SC2016  # it is the inner shell that expands it
    exec unshare --mount --pid --fork --kill-child --propagation private bash -c '
        set -e
        root=$1 && shift
        mount --bind /dev "$root/dev"
        mount --bind /dev/pts "$root/dev/pts"
        mount -t proc proc "$root/proc"
        exec chroot "$root" env -i "$@"
    ' bash "$root" PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin HOME=/root TERM=dumb \
        LANG=C.UTF-8 SSL_CERT_FILE=/etc/ssl/certs/ca-certificates.crt \
        NODE_EXTRA_CA_CERTS=/etc/ssl/certs/ca-certificates.crt \
        npm_config_cafile=/etc/ssl/certs/ca-certificates.crt npm_config_update_notifier=false "${ways[@]}" \
        bash -c "cd /home/someone/giveway && $*" 9>&- </dev/null
}

if [ -n "$(git status --porcelain 2>/dev/null)" ]; then echo "what is not committed here stays out"; fi
bootstrap
furnish
echo "bare Debian $(cat "$root/etc/debian_version") made in $SECONDS s; its packages: $(find "$root/var/lib/dpkg/info" -name '*.list' | wc -l)"
status=0
for command in "${commands[@]}"; do
    start=$SECONDS
    echo "in it: $command"
    inside "$command" &
    running=$!
    wait "$running" || status=$?
    running=
    echo "$command: $((SECONDS - start)) s, status $status"
    if [ $status != 0 ]; then (inside "tail -n 30 build/setup.log") || true; break; fi
done
exit $status
