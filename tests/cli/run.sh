#!/bin/sh
# The program as a user types it: every command line runs in an empty directory, in the C locale, and
# its exit status, standard output and standard error are looked at.
#
#   tests/cli/run.sh [PROGRAM] [PATTERN]   PROGRAM: default build/release/giveway
#                                          PATTERN: only the scripts whose name it matches
#
# The cases are the files tests/cli/*.test, plain shell that calls `expect` and `holds`:
#
#   expect STATUS OUT ERR ARGUMENTS...     run giveway ARGUMENTS and compare. OUT and ERR are extended regular
#                                          expressions that must match somewhere; "" means: nothing was
#                                          printed there; "*" means: whatever it was. An ERR that begins with
#                                          "1:" must besides be the only line.
#   holds NAME COMMAND...                  the shell command succeeds; $out and $err are files with what the
#                                          last expect printed.
#
# $root is the source tree, $giveway the program; a file case.json with two bushes lies ready.
set -u
LC_ALL=C
export LC_ALL
unset NO_COLOR COLUMNS

root=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
giveway=${1:-$root/build/release/giveway}
pattern=${2:-}
case $giveway in /*) ;; *) giveway=$PWD/$giveway ;; esac
[ -x "$giveway" ] || { echo "run.sh: no program at $giveway: build it first" >&2; exit 2; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
trap 'exit 130' INT TERM
out=$work/out
err=$work/err
passed=0
failed=0

pass() { passed=$((passed + 1)); }

fail() {
    failed=$((failed + 1))
    echo "FAILED ($script): $1"
    echo "  standard output: $(head -c 600 "$out")"
    echo "  standard error:  $(head -c 600 "$err")"
}

# matches FILE EXPRESSION
matches() {
    case $2 in
    '*') return 0 ;;
    '') [ ! -s "$1" ] ;;
    1:*) [ "$(wc -l <"$1")" -eq 1 ] && grep -Eq -e "${2#1:}" "$1" ;;
    *) grep -Eq -e "$2" "$1" ;;
    esac
}

expect() {
    want=$1 want_out=$2 want_err=$3
    shift 3
    "$giveway" "$@" >"$out" 2>"$err" </dev/null
    got=$?
    if [ "$got" -ne "$want" ]; then
        fail "giveway $*: exit status $got, not $want"
    elif ! matches "$out" "$want_out"; then
        fail "giveway $*: standard output does not match '$want_out'"
    elif ! matches "$err" "$want_err"; then
        fail "giveway $*: standard error does not match '$want_err'"
    else
        pass
    fi
}

holds() {
    name=$1
    shift
    if "$@" >/dev/null 2>&1; then pass; else fail "$name"; fi
}

small_case() {
    cat <<'EOF'
{ "format": "giveway-case-1", "title": "Two bushes",
  "bushes": {
    "soft": { "type": "rates", "radial_N_per_mm": [400, 1600], "axial_N_per_mm": 300,
              "conical_Nm_per_deg": 2, "torsional_Nm_per_deg": 1 },
    "hard": { "type": "bonded", "material": "nr-55", "inner_diameter_mm": 20, "outer_diameter_mm": 50,
              "length_mm": 60 } } }
EOF
}

for file in "$root"/tests/cli/*.test; do
    script=$(basename "$file" .test)
    case $script in *"$pattern"*) ;; *) continue ;; esac
    mkdir "$work/$script" && cd "$work/$script" || exit 2
    small_case >case.json
    . "$file"
    cd "$root" || exit 2
done

echo "command line: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
