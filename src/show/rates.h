/* SPDX-License-Identifier: MIT */
/** Rates of bushes as text, JSON, CSV and charts, in the units of the trade. */
#ifndef SHOW_RATES_H
#define SHOW_RATES_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/rates.h"
#include "record/paper.h"

/** What `rates` made: bushes of the case, the one named, or the one given on the command line. */
typedef struct gw_rates_made {
    gw_rates_plan plan;
    gw_bush given; /**< on the command line */
    int n;
    gw_rates_row *row; /**< owned */
} gw_rates_made;

void gw_rates_text(const gw_case *c, const void *made, gw_paper *paper);

/** Stiffness and loss angle of bushes over frequency, with the limits that the tolerances give. Of a whole
 * case only what changes with frequency is drawn. */
void gw_rates_charts(const gw_case *c, const void *made, gw_charts *charts);

/* parts of the text */

/** Words of gw_trust. */
extern const char *const GW_TRUST_WORDS[];

/** Where the closed forms of a type of bush come from. */
const char *gw_rates_handbook(gw_bush_type type);

/** The unit in which a quantity is shown. */
gw_unit gw_rates_unit(gw_quantity quantity);

/** Six right-hand columns for the six rates; their cells, and those of differences. */
void gw_rates_columns(gw_table *table);
void gw_rates_cells(gw_table *table, const gw_given_rates *rates);
void gw_rates_differences(gw_table *table, const gw_given_rates *difference);

/** How a bush's figures come about; every value of its compound with tolerance, trust and source. */
void gw_explain_text(const gw_rates_row *row, gw_paper *paper);
void gw_material_text(const gw_material *material, gw_paper *paper);

/** A value that a compound can have: (SI - zero) in `unit`, or in what `word` says. */
typedef struct gw_material_figure {
    const char *name, *word;
    gw_unit unit;
    double zero;
    size_t at;
} gw_material_figure;

int gw_material_figures(void);
const gw_material_figure *gw_material_figure_at(int index);
/** NULL: the compound does not have it. */
const gw_value *gw_material_given(const gw_material *material, int index);

/** Stops, play and friction of a bush; where `kind` is set, before them what kind of bush it is. */
void gw_rates_notes(const gw_rates_row *row, bool kind, gw_paper *paper);

/** What the kinds of bush in a list are and leave out, in a few sentences, each with a blank before it. */
void gw_rates_kinds(const gw_rates_row *rows, int n, gw_buf *out);

/** Dynamic stiffness as a table. */
void gw_dynamic_text(const gw_rates_made *made, gw_paper *paper);

#endif
