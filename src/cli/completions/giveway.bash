# bash completion for giveway                              -*- shell-script -*-
# SPDX-License-Identifier: MIT

_giveway_names() { # ARRAY CASE: the names in an array of the case file
    command -v python3 >/dev/null || return
    python3 - "$1" "$2" 2>/dev/null <<'PY'
import json, sys
for entry in json.load(open(sys.argv[2])).get(sys.argv[1], []):
    print(entry["name"])
PY
}

_giveway() {
    local options="--kit --load --corner --format --materials --method -o --out --format-charts --quiet --help --version"
    local commands="check rates deflect compare travel ride align match spread choose report bench start help"
    local start_options="--front --rear --mass-kg --front-mass-fraction --wheelbase-mm --front-track-mm --rear-track-mm"
    start_options+=" --wheel-radius-mm --cg-height-mm --brake-front-fraction --driven --rack --subframe --front-bar-mm --rear-bar-mm --title --sheet --from --as-read"
    local bench_options="--bush --detail"
    local travel_options="--from-mm --to-mm --step-mm --wheels --detail"
    local bush_options="--type --material --inner-mm --outer-mm --length-mm --explain --frequency-Hz --amplitude-mm"
    local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD - 1]}
    local word case_file=
    for word in "${COMP_WORDS[@]:1}"; do
        if [[ $word == *.json && -f $word ]]; then case_file=$word; fi
    done

    if [[ ${COMP_WORDS[1]} == rates ]]; then options+=" $bush_options"; fi
    if [[ ${COMP_WORDS[1]} == @(deflect|compare|ride) ]]; then options+=" --detail"; fi
    if [[ ${COMP_WORDS[1]} == ride ]]; then options+=" --explain"; fi
    if [[ ${COMP_WORDS[1]} == @(compare|report) ]]; then options+=" --no-bands"; fi
    if [[ ${COMP_WORDS[1]} == travel ]]; then options+=" $travel_options"; fi
    if [[ ${COMP_WORDS[1]} == start ]]; then options+=" $start_options"; fi
    if [[ ${COMP_WORDS[1]} == bench ]]; then options+=" $bench_options"; fi

    if [[ ${COMP_WORDS[1]} == spread ]]; then options+=" --draws --seed --ride --readings"; fi
    if [[ ${COMP_WORDS[1]} == choose ]]; then options+=" --draws --case --detail"; fi
    if [[ ${COMP_WORDS[1]} == match ]]; then options+=" --readings --case --sheet"; fi
    if [[ ${COMP_WORDS[1]} == report ]]; then options+=" --for --date"; fi

    local IFS=$'\n'
    COMPREPLY=()
    case $previous in
    --corner) mapfile -t COMPREPLY < <(compgen -W $'front\nrear' -- "$current") && return ;;
    --format) mapfile -t COMPREPLY < <(compgen -W $'text\njson\ncsv' -- "$current") && return ;;
    --format-charts) mapfile -t COMPREPLY < <(compgen -W $'svg\npng\nboth' -- "$current") && return ;;
    --for) mapfile -t COMPREPLY < <(compgen -W $'customer\nworkshop' -- "$current") && return ;;
    --method) mapfile -t COMPREPLY < <(compgen -W $'solved\nhandbook' -- "$current") && return ;;
    --type) mapfile -t COMPREPLY < <(compgen -W $'bonded\nunbonded' -- "$current") && return ;;
    -o | --out | --materials) mapfile -t COMPREPLY < <(compgen -d -- "$current") && return ;;
    --kit | --load)
        mapfile -t COMPREPLY < <(compgen -W "$(_giveway_names "${previous#--}s" "$case_file")" -- "$current")
        COMPREPLY=("${COMPREPLY[@]// /\\ }")
        return
        ;;
    esac
    if [[ $COMP_CWORD == 1 || $previous == help ]]; then
        mapfile -t COMPREPLY < <(compgen -W "${commands// /$'\n'}" -- "$current")
    elif [[ $current == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "${options// /$'\n'}" -- "$current")
    else
        mapfile -t COMPREPLY < <(compgen -f -X '!*.json' -- "$current" && compgen -d -S / -- "$current")
    fi
}
complete -o filenames -F _giveway giveway
