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

/** GW_E_SCHEMA where the case has no corner "to load", "to move" ...; or no loads. */
gw_status gw_wants_corner(const gw_case *c, const char *to_do, gw_error *err);
gw_status gw_wants_loads(const gw_case *c, gw_error *err);

#endif
