/* SPDX-License-Identifier: MIT */
/** What the sections of the page share: what is shown first, and what they say alike. */
#ifndef PAGE_SAY_H
#define PAGE_SAY_H

#include "chart/style.h"
#include "format/html.h"
#include "format/number.h"
#include "giveway/card.h"
#include "page/page.h"
#include "page/template.h"
#include "show/phrase.h"
#include "show/words.h"

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

/** What a bush is called: its label, or its name with blanks for underscores. */
const char *gw_page_bush(const gw_page *p, const gw_bush *bush);
const char *gw_page_axle(gw_axle axle);     /**< "front", in words of the page           */
const char *gw_page_wheel_of(gw_axle axle); /**< "Front wheel", likewise                 */
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
/** "front upper arm, front bush", or "front upper front" where the joint has no label; plain text. */
const char *gw_page_joint(const gw_page *p, gw_axle axle, int joint);
/** In a table of one axle: without the axle, and with the side where both stand in it. */
const char *gw_page_joint_of_table(const gw_page *p, gw_axle axle, int joint);
gw_number gw_page_price(double price); /**< with hundredths only where there are any */

#endif
