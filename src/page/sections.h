/* SPDX-License-Identifier: MIT */
/** Sections of the page, in its order. */
#ifndef PAGE_SECTIONS_H
#define PAGE_SECTIONS_H

#include "page/say.h"

gw_words gw_page_question(const gw_page *p); /**< that the page answers */
void gw_page_answer(const gw_page *p);
void gw_page_data(const gw_page *p); /**< numbers for the script, as JSON */

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
