/* SPDX-License-Identifier: MIT */
/** The table of options, for the parser and for help. */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include "cli/command.h"

typedef struct gw_option_spec {
    const char *name;   /**< without the dashes                                  */
    const char *dashed; /**< with them                                          */
    gw_option_kind kind;
    const char *values; /**< what it takes, as help shows it; choices with '|'  */
    const char *text;
} gw_option_spec;

extern const gw_option_spec GW_OPTIONS[GW_OPTION_COUNT];

#endif
