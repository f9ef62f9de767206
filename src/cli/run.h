/* SPDX-License-Identifier: MIT */
/** What every command that shows a result does, in one place. */
#ifndef CLI_RUN_H
#define CLI_RUN_H

#include "cli/command.h"

/**
 * Options, case, choice, study, warnings, output in the format asked for, files, charts; returns the exit
 * status. The command says what differs: see gw_command.
 */
int gw_run_command(const gw_args *args);

/** A result in the format asked for, into `out`, where memory that runs out sticks; `c` may be NULL. */
void gw_run_format(const gw_args *args, const gw_case *c, const gw_result *result, const void *made,
                   void (*text)(const gw_case *c, const void *made, gw_paper *paper), gw_buf *out);

/** With -o DIR the charts of a result; returns the exit status. */
int gw_run_draw(const gw_args *args, const gw_case *c, const void *made,
                void (*charts)(const gw_case *c, const void *made, gw_charts *charts));

#endif
