# shellcheck shell=bash
# SPDX-License-Identifier: MIT
# Sourced: runs a command as somebody who owns nothing of the installation and stands in another folder.
# Tests often run as root, who may write anywhere; "nobody" may not.

can_be_nobody() { [ "$(id -u)" = 0 ] && setpriv --reuid=65534 --regid=65534 --clear-groups true 2>/dev/null; }

as_user() { # COMMAND...
    if [ "$(id -u)" != 0 ]; then
        (cd / && env -i PATH="$PATH" "$@")
    else
        (cd / && env -i PATH="$PATH" setpriv --reuid=65534 --regid=65534 --clear-groups "$@")
    fi
}

# A folder below which nobody can reach the installation: $TMPDIR, unless a home folder bars the way.
open_folder() {
    local folder=$TMPDIR
    if can_be_nobody && ! as_user test -x "$folder"; then folder=$(mktemp -d /tmp/giveway-install-XXXXXX); fi
    chmod 755 "$folder"
    echo "$folder"
}

# A folder that this user, and nobody else, may write to.
own_folder() { # PATH
    mkdir -p "$1"
    if [ "$(id -u)" = 0 ]; then chown 65534:65534 "$1"; fi
}
