/* SPDX-License-Identifier: MIT */
/** Standard output and standard error: results to the one, everything else to the other. */
#ifndef CLI_OUTPUT_H
#define CLI_OUTPUT_H

#include "base/buf.h"
#include "giveway/faults.h"
#include "giveway/study.h"

/** A line on standard error for every load of a study that could not be carried, once for all kits of one
 * reason; GW_EXIT_MODEL where there is one, else `status`. */
int gw_tell_failed(const char *command, const gw_case *c, const gw_deflect_study *study, int status);

/** Writes a finished result to standard output; returns GW_EXIT_DONE or GW_EXIT_OUTPUT. */
int gw_emit(const gw_buf *text);

/**
 * The last thing a run does: what was printed must have arrived, since a full disk is not success.
 * Returns `status`, or GW_EXIT_OUTPUT with one line; a reader that went away (a closed pipe) gets none.
 */
int gw_close_output(int status);

/** Prints the one line of an error under the command's name and returns its exit status. */
int gw_complain(const char *command, const gw_error *err);

/** Faults of what was read on standard error, a line each, then its warnings unless `quiet`. */
void gw_print_faults(const gw_faults *faults, bool quiet);

/** GW_E_IO where there is a file of that name, which is left alone; `path` may be NULL. */
gw_status gw_refuse_existing(const char *path, gw_error *err);

/** The warnings of a study on standard error, a line each. */
void gw_print_warnings(bool quiet, const char **warnings, int n);

/** True where standard output is a terminal that wants bold text (NO_COLOR and TERM=dumb do not). */
bool gw_wants_bold(void);

/** Columns to lay text out in: those of the terminal between 40 and 160, else 100. */
int gw_output_width(void);

/** The same for what is wide by nature: where there is no terminal, 120. */
int gw_output_wide(void);

/**
 * A line of progress that the next one overwrites; only where standard error is a terminal and
 * `quiet` is false. NULL clears it.
 */
void gw_progress(bool quiet, const char *text);

#endif
