/* SPDX-License-Identifier: MIT */
/** What nearly every command begins with: the materials and the case it was given. */
#ifndef CLI_SESSION_H
#define CLI_SESSION_H

#include "cli/command.h"
#include "giveway/readings.h"
#include "giveway/study.h"

typedef struct gw_session {
    gw_material_set materials;
    gw_case c;
    gw_faults faults;
    gw_faults *told; /**< lines that were told before; NULL: none */
} gw_session;

/**
 * Reads the materials (those of the program, then --materials) and, unless `path` is NULL, the case.
 * Every fault and, without --quiet, every warning goes to standard error, a line each.
 * Returns an exit status; close the session whatever it is.
 */
int gw_session_open(const gw_args *args, const char *path, gw_session *session);

/** The same, one of several: a line that is in `told` is not told again, and what is told is added there. */
int gw_session_open_among(const gw_args *args, const char *path, gw_faults *told, gw_session *session);

/** Whether the car of the case stands with every kit (gw_study_standing), told like the faults of reading. */
int gw_session_stand(const gw_args *args, gw_session *session);
void gw_session_close(gw_session *session);

/** What there is of one kind in a case. */
typedef struct gw_name_list {
    int n;
    const gw_case *of;
    const char *(*name)(const gw_case *c, int i);
} gw_name_list;

/** Says that the case has no `what` of this name, with the nearest or the first that it has; GW_E_SCHEMA. */
gw_status gw_session_missing(const char *what, const char *name, const gw_name_list *names, gw_error *err);

/** Complains, that the case has no `what` (kit, bush ...) called `name`, with the one that is nearest or,
 * where none is near, with what there is; GW_EXIT_INPUT. */
int gw_session_no_such(const gw_args *args, const char *what, const char *name, const gw_name_list *names);

/** Reads them for the case of the session; faults go to standard error. Returns an exit status. */
int gw_session_readings(const gw_args *args, gw_session *session, gw_readings *out);

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
