# fish completion for giveway
# SPDX-License-Identifier: MIT

complete -c giveway -f
complete -c giveway -n __fish_use_subcommand -a check -d 'is the case sound? every fault at once'
complete -c giveway -n __fish_use_subcommand -a rates -d 'how stiff is this bush, each way'
complete -c giveway -n __fish_use_subcommand -a deflect -d 'where the wheel goes under load'
complete -c giveway -n __fish_use_subcommand -a compare -d 'the kits side by side'
complete -c giveway -n __fish_use_subcommand -a travel -d 'camber, toe and caster through travel'
complete -c giveway -n __fish_use_subcommand -a ride -d 'what reaches the body'
complete -c giveway -n __fish_use_subcommand -a align -d 'what reaches the camber and toe target'
complete -c giveway -n __fish_use_subcommand -a report -d 'a page for customer and workshop'
complete -c giveway -n __fish_use_subcommand -a help -d 'how a command is used'
complete -c giveway -n 'not __fish_use_subcommand' -k -a '(__fish_complete_suffix .json)'
complete -c giveway -l kit -x -d 'only this kit'
complete -c giveway -l load -x -d 'only this load'
complete -c giveway -l corner -x -a 'front rear' -d 'only this corner'
complete -c giveway -l format -x -a 'text json csv' -d 'how results are printed'
complete -c giveway -l materials -r -a '(__fish_complete_directories)' -d 'more materials'
complete -c giveway -l method -x -a 'solved handbook' -d 'how rates of rubber are worked out'
complete -c giveway -s o -r -a '(__fish_complete_directories)' -d 'write charts there'
complete -c giveway -l quiet -d 'no progress and no warnings'
complete -c giveway -l help -d 'how the command is used'
complete -c giveway -l version -d 'the version'
