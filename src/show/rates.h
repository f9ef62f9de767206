/* SPDX-License-Identifier: MIT */
/** Rates of bushes as text, JSON and CSV, in the units of the trade. */
#ifndef SHOW_RATES_H
#define SHOW_RATES_H

#include "giveway/bush_law.h"
#include "show/buf.h"

/** One bush worked out. */
typedef struct gw_rates_row {
    const gw_bush *bush;
    gw_method method;
    gw_bush_law law;      /**< by `method`                               */
    bool has_handbook;    /**< rubber: the closed forms stand beside it  */
    gw_bush_law handbook; /**< by GW_METHOD_HANDBOOK                     */
} gw_rates_row;

gw_status gw_rates_text(const gw_rates_row *rows, int n, int width, bool bold, gw_buf *out, gw_error *err);
void gw_rates_json(const gw_rates_row *rows, int n, gw_buf *out); /**< failures show in gw_buf_status */
void gw_rates_csv(const gw_rates_row *rows, int n, gw_buf *out);

/** The word of the case file for a type of bush, e.g. "bonded". */
const char *gw_bush_type_word(gw_bush_type type);

#endif
