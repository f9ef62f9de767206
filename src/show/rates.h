/* SPDX-License-Identifier: MIT */
/** Rates of bushes as text, JSON and CSV, in the units of the trade. */
#ifndef SHOW_RATES_H
#define SHOW_RATES_H

#include "giveway/bush_report.h"
#include "show/buf.h"
#include "show/json.h"

/** One bush worked out. */
typedef struct gw_rates_row {
    const gw_bush *bush;
    gw_bush_report report;
} gw_rates_row;

/** A table; with `explain`, under it, every figure's formula, inputs and source. */
gw_status gw_rates_text(const gw_rates_row *rows, int n, bool explain, int width, bool bold, gw_buf *out,
                        gw_error *err);
void gw_rates_json(const gw_rates_row *rows, int n, bool explain,
                   gw_buf *out); /**< failures show in gw_buf_status */
void gw_rates_csv(const gw_rates_row *rows, int n, gw_buf *out);

/** The word of the case file for a type of bush, e.g. "bonded". */
const char *gw_bush_type_word(gw_bush_type type);

/** How a bush's figures come about, in text and as the member "explain". */
void gw_explain_text(const gw_rates_row *row, int width, gw_buf *out);
void gw_explain_json(const gw_rates_row *row, gw_json *json);

/** Rates in N/mm and N m/deg: radial 1, radial 2, axial, conical 1, conical 2, torsional. */
void gw_rates_of_law(const gw_bush_law *law, double v[6]);

#endif
