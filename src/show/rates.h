/* SPDX-License-Identifier: MIT */
/** Rates of bushes as text, JSON, CSV and charts, in the units of the trade. */
#ifndef SHOW_RATES_H
#define SHOW_RATES_H

#include "base/buf.h"
#include "chart/chart.h"
#include "format/json.h"
#include "format/table.h"
#include "giveway/bush_report.h"
#include "giveway/dynamic_band.h"

/** One bush worked out. */
typedef struct gw_rates_row {
    const gw_bush *bush;
    gw_bush_report report;
    bool has_beside;       /**< the other method stands beside: `beside` are the closed forms */
    gw_given_rates beside; /**< [N/m], [N m/rad]                                              */
} gw_rates_row;

/** What is wanted besides the static rates. */
typedef struct gw_rates_view {
    bool explain;     /**< every figure's formula, inputs and source         */
    bool dynamic;     /**< complex stiffness at `hz` and `amplitude`         */
    double hz;        /**< [Hz], > 0                                         */
    double amplitude; /**< [m], >= 0                                         */
} gw_rates_view;

gw_status gw_rates_text(const gw_rates_row *rows, int n, const gw_rates_view *view, int width, bool bold,
                        gw_buf *out, gw_error *err);
/** Failures show in gw_buf_status. */
void gw_rates_json(const gw_rates_row *rows, int n, const gw_rates_view *view, gw_buf *out);
void gw_rates_csv(const gw_rates_row *rows, int n, const gw_rates_view *view, gw_buf *out);

/** Stiffness and loss angle of one bush over frequency, with the limits that the tolerances give. */
gw_status gw_rates_charts(const gw_rates_row *row, double amplitude, gw_charts *charts, gw_error *err);

/* rates_figures.c: what a row means in figures */

enum { GW_RATES = 6 };

/** The word of the case file for a type of bush, e.g. "bonded". */
const char *gw_bush_type_word(gw_bush_type type);

bool gw_rates_is_rubber(const gw_bush *bush);

/** "solved", "handbook", "contact" or "given". */
const char *gw_rates_method_word(const gw_rates_row *row);

/** What the material is of which the law was made; NULL for other kinds of bush. */
const gw_material *gw_rates_material(const gw_bush *bush);

/** Rates in N/mm and N m/deg: radial 1, radial 2, axial, conical 1, conical 2, torsional. */
void gw_rates_of_law(const gw_bush_law *law, double v[GW_RATES]);
void gw_rates_of_given(const gw_given_rates *rates, double v[GW_RATES]);

/** By how much the closed forms differ from the solution [%]; not a number where nothing resists. */
void gw_rates_difference(const gw_rates_row *row, double percent[GW_RATES]);

/** True where the tolerance of the material leaves a band. */
bool gw_rates_has_band(const gw_rates_row *row);

gw_dynamic_band gw_rates_dynamic(const gw_rates_row *row, double hz, double amplitude);

/** Six right-hand columns for them. */
void gw_rates_columns(gw_table *table);
void gw_rates_cells(gw_table *table, const double v[GW_RATES]);

/* parts of the text */

/** How a bush's figures come about, in text and as the member "explain". */
void gw_explain_text(const gw_rates_row *row, int width, gw_buf *out);
void gw_explain_json(const gw_rates_row *row, gw_json *json);

/** Every value of the compound with its tolerance, trust and source; the member "material". */
void gw_material_text(const gw_material *material, int width, gw_buf *out);
void gw_material_json(const gw_material *material, gw_json *json);

/** Stops, play and friction of a bush; where `kind` is set, before them what kind of bush it is. */
void gw_rates_notes(const gw_rates_row *row, bool kind, int width, gw_buf *out);

/** What the kinds of bush in a list are and leave out, in a few sentences, each with a blank before it. */
void gw_rates_kinds(const gw_rates_row *rows, int n, gw_buf *out);

/** Dynamic stiffness as a table, and as the member "dynamic" of a bush. */
gw_status gw_dynamic_text(const gw_rates_row *rows, int n, const gw_rates_view *view, int width, bool bold,
                          gw_buf *out, gw_error *err);
void gw_dynamic_json(const gw_rates_row *row, const gw_rates_view *view, gw_json *json);

/** Where the closed forms of a type of bush come from. */
const char *gw_rates_handbook(gw_bush_type type);

#endif
