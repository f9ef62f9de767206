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

#endif
