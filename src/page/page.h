/* SPDX-License-Identifier: MIT */
/** The page for customer or workshop. Public part: gw_report_page; the rest is shared by its sections. */
#ifndef PAGE_PAGE_H
#define PAGE_PAGE_H

#include "base/buf.h"
#include "chart/chart.h"
#include "chart/style.h"
#include "format/html.h"
#include "format/number.h"
#include "giveway/card.h"
#include "giveway/report.h"
#include "page/template.h"
#include "show/words.h"

/** How a page is to be made. */
typedef struct gw_page_wish {
    bool workshop;                        /**< bush tables, settings and order of work as well */
    const char *date;                     /**< YYYY-MM-DD                                      */
    const struct gw_choose_study *choose; /**< what to fit for the money; NULL: the case does not ask */
} gw_page_wish;

/** One chart as it came from gnuplot, ready to stand in the page. */
typedef struct gw_page_chart {
    char *stem, *title, *what;
    gw_buf svg;
} gw_page_chart;

typedef struct gw_page_charts {
    gw_page_chart *chart;
    int n;
    bool left_out; /**< gnuplot is not installed */
} gw_page_charts;

/** Charts of the report, drawn in a folder of their own that is gone afterwards. */
gw_status gw_page_charts_draw(const gw_report *report, bool workshop, gw_page_charts *out, gw_error *err);
void gw_page_charts_free(gw_page_charts *charts);

/** Lays out every chart of the page. */
void gw_page_charts_gather(const gw_report *report, bool workshop, gw_charts *charts);

/** The whole page, self-contained. */
gw_status gw_report_page(const gw_report *report, const gw_page_charts *charts, const gw_page_wish *wish,
                         gw_buf *out, gw_error *err);

/* ---- shared by the sections ---- */

/** Where the camber of the outer wheel goes in a corner, kit by kit; one chart an axle. */
void gw_page_budget_charts(const gw_report *report, gw_charts *charts);

typedef struct gw_page {
    const gw_report *r;
    const gw_case *c;
    const gw_page_charts *charts;
    const gw_page_wish *wish;
    gw_buf *out;
    gw_arena *arena;             /**< keeps what the sections say                        */
    gw_axle axle;                /**< shown first                                        */
    int kit;                     /**< shown first: the first that is not the baseline    */
    int brake_load, corner_load; /**< the loads that sentences speak of; -1: none        */
    int load;                    /**< shown first                                        */
    const gw_card_study *cards;  /**< what a customer feels of each kit                   */
} gw_page;

/** Adds a sentence with its parts: GW_SAY(out, PAGE_STATE_LOAD, { "kit", name }, ...). */
#define GW_SAY(out, which, ...) GW_SAY_ID(out, GW_WORDS_##which, __VA_ARGS__)
#define GW_SAY_ID(out, id, ...)                                                                              \
    gw_html_say(out, gw_words_text(id), (const gw_html_part[]){ __VA_ARGS__, { NULL, NULL } })
/** The same as plain text. */
#define GW_SAY_PLAIN(out, which, ...)                                                                        \
    gw_plain_say(out, GW_TOLD(which), (const gw_html_part[]){ __VA_ARGS__, { NULL, NULL } })
/** Words without parts; adds them. */
#define GW_TOLD(which)      gw_words_text(GW_WORDS_##which)
#define GW_TELL(out, which) gw_html_text(out, GW_TOLD(which))

/** A text as the page keeps it, freed; "" where memory is out, which sticks in the page. */
const char *gw_page_kept(const gw_page *p, gw_buf *text);
const char *gw_page_fmt(const gw_page *p, const char *fmt, ...) __attribute__((format(printf, 2, 3)));

const char *gw_page_kit(const gw_page *p, int kit); /**< label for people                        */
const char *gw_page_bush(const gw_bush *bush);      /**< likewise                                */
const char *gw_page_axle(gw_axle axle);             /**< "front", in words of the page           */
const char *gw_page_wheel_of(gw_axle axle);         /**< "Front wheel", likewise                 */
/** "in a 1.00 g stop"; plain text */
const char *gw_page_load_said(const gw_page *p, int load);
const gw_deflection *gw_page_find(const gw_page *p, int kit, gw_axle axle, int load);
bool gw_page_has_kit(const gw_page *p, int kit);
/** There is more than one kit on the page. */
bool gw_page_compares(const gw_page *p);
bool gw_page_has_axle(const gw_page *p, gw_axle axle);
/** An angle [rad] as "-0.39°" with a true minus; `sign`: with a plus as well. */
void gw_page_angle(gw_buf *out, double angle, bool sign);
const char *gw_page_angle_said(const gw_page *p, double angle, bool sign);
void gw_page_minutes(gw_buf *out, double minutes); /**< "11 h 30 min"; plain text                   */
/** "726 EUR", below 100 with hundredths where there are any; with a plus sign where some parts carry no
 * figure; plain text. */
const char *gw_page_money_said(const gw_page *p, double sum, bool more);
/** "726.00 EUR": as a quotation says it. */
const char *gw_page_sum(const gw_page *p, double sum);
/** The planner's cost, which is without tax, with the tax of the shop: as every other sum of the page. */
const char *gw_page_planned(const gw_page *p, double cost);
/** "Best value, quietest": what a recommendation is; NULL where an earlier one says it, being the same. */
const char *gw_page_pick(const gw_page *p, int which);
/** A kit as the template shows it: kit, style, number (where there are more kits than colours), label. */
void gw_page_put_kit(const gw_page *p, gw_slots *slots, int kit);
/** "front upper arm, front bush", or "front upper_front" where the joint has no label; plain text. */
const char *gw_page_joint(const gw_page *p, gw_axle axle, int joint);
gw_number gw_page_price(double price);       /**< with hundredths only where there are any */
gw_words gw_page_question(const gw_page *p); /**< that the page answers */

/* Sections, in the order of the page. */
void gw_page_answer(const gw_page *p);
void gw_page_data(const gw_page *p); /**< numbers for the script, as JSON */

/** What is embedded when the program is built: report.css, report.js and report.html of src/page, and the
 * hashes by which the page's policy lets the first two in. */
extern const char gw_page_style[], gw_page_script[], gw_page_template[], gw_page_style_hash[],
    gw_page_script_hash[];

enum { GW_PAGE_FAILURES = 40 };

/** One figure beyond its limit. */
typedef struct gw_page_failure {
    gw_axle axle;
    int joint, load; /**< load -1: as the adjusters are set */
    gw_verdict verdict;
} gw_page_failure;

/** Those of one kit; of more than GW_PAGE_FAILURES the first. */
typedef struct gw_page_failures {
    int n;      /**< all of them               */
    int joints; /**< joints that have any      */
    gw_page_failure item[GW_PAGE_FAILURES];
} gw_page_failures;

gw_page_failures gw_page_failures_of(const gw_page *p, int kit);

/** The figure that comes nearest to its limit, in one joint or (joint -1) in the whole kit; NULL: none is
 * known. */
const gw_overload *gw_page_nearest(const gw_page *p, int kit, gw_axle axle, int joint);

gw_number gw_page_percent_of_limit(const gw_overload *overload);

/** "compression" for "compressive strain of the wall". */
const char *gw_page_figure_word(const gw_verdict *verdict);

/** The value or the limit of a verdict, with its unit. */
const char *gw_page_verdict_said(const gw_page *p, const gw_verdict *verdict, double value);

/** A list with a table a wheel, of a row a joint and a column a kit: what stands in each. */
typedef void gw_page_joint_cell(const gw_page *p, gw_slots *cell, int kit, gw_axle axle, int joint);
void gw_page_joint_tables(const gw_page *p, gw_slots *slots, const char *list, gw_page_joint_cell *put);

/** The kits in one table; what to fit for the money; charts. */
void gw_page_glance(const gw_page *p, gw_slots *slots);
void gw_page_choose(const gw_page *p, gw_slots *slots);
void gw_page_figures(const gw_page *p, gw_slots *slots);

/** For the workshop: both wheels of an axle; bush tables, and how near to its limit every joint works. */
void gw_page_sides(const gw_page *p, gw_slots *slots);
void gw_page_bushes(const gw_page *p, gw_slots *slots);
void gw_page_limits(const gw_page *p, gw_slots *slots);

/** What will stand it, and what will not; alignment; for the workshop adjusters, verdicts, order of work. */
void gw_page_stand(const gw_page *p, gw_slots *slots);
void gw_page_sheet(const gw_page *p, gw_slots *slots);
void gw_page_settings(const gw_page *p, gw_slots *slots);

/** How far to trust it; what went in. */
void gw_page_trust(const gw_page *p, gw_slots *slots);
void gw_page_inputs(const gw_page *p, gw_slots *slots);

/** A quotation a kit: parts, jobs, work, tax and total, and the alignment sheet's rows. */
void gw_page_quotes(const gw_page *p, gw_slots *slots);

void gw_page_cards(const gw_page *p, gw_slots *slots);

/** The wheel that moves: buttons, sliders, the first state and what makes it. */
void gw_page_wheel(const gw_page *p, gw_slots *slots);

#endif
