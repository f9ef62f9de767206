/* SPDX-License-Identifier: MIT */
/** --kit, --load, --corner and --method of a command line, against the names of a case. */
#ifndef CLI_SELECTION_H
#define CLI_SELECTION_H

#include "cli/command.h"
#include "giveway/study.h"

/** Options that narrow a run. */
#define GW_TAKES_SELECTION (GW_TAKES(KIT) | GW_TAKES(LOAD) | GW_TAKES(CORNER) | GW_TAKES(METHOD))

/** A selection with the flags that it points to. */
typedef struct gw_choice {
    gw_selection wanted;
    bool *kits, *loads; /**< owned */
    gw_laws laws;       /**< every bush of the case, worked out once a run; owned */
} gw_choice;

/**
 * Works the bushes out as well. Returns an exit status, having complained where a name is not in the case or
 * a bush cannot be worked out; free it whatever it is.
 */
int gw_choice_make(const gw_args *args, const gw_case *c, gw_choice *out);
void gw_choice_free(gw_choice *choice);

/** Kits and loads chosen; index of the first kit chosen. */
bool gw_choice_has_kit(const gw_choice *choice, int kit);
bool gw_choice_has_load(const gw_choice *choice, int load);

#endif
