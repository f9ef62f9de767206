#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Completion as a shell asks for it: commands, words of options, names from the case on the command line.
set -euo pipefail
cd "$SOURCE"
status=0
verdict() { # TRUE_OR_FALSE WHAT
    if [ "$1" = true ]; then echo "ok - $2"; else echo "not ok - $2" && status=1; fi
}
holds() { if "$@" >&2; then echo true; else echo false; fi; }

. src/cli/completions/giveway.bash
offered() { # WORDS... the last one being typed: what is offered for it, a line each
    COMP_WORDS=(giveway "$@") COMP_CWORD=$#
    COMPREPLY=()
    _giveway
    printf '%s\n' "${COMPREPLY[@]}"
}
commands=$("$GIVEWAY" help | sed -nE 's/^  ([a-z]+) .*/\1/p' | sort)
verdict "$(holds test "$(offered '' | sort)" = "$commands")" "bash offers the commands that there are"
verdict "$(holds test "$(offered compare --cor)" = --corner)" "it completes an option"
verdict "$(holds test "$(offered compare --format j)" = json)" "it completes the word of an option"
verdict "$(holds test "$(offered compare cases/fas)" = cases/fast-saloon.json)" "it completes the name of a case"
if command -v python3 >/dev/null; then
    verdict "$(holds test "$(offered compare cases/fast-saloon.json --load 'hard')" = 'hard\ stop')" \
        "it completes the name of a load of that case"
fi
for shell in zsh fish; do
    file=src/cli/completions/_giveway
    if [ $shell = fish ]; then file=src/cli/completions/giveway.fish; fi
    if command -v $shell >/dev/null; then
        verdict "$(holds $shell -n $file)" "$shell reads its completions"
    else
        echo "ok - $shell reads its completions # SKIP $shell is not installed"
    fi
done
exit $status
