/* SPDX-License-Identifier: MIT */
/** The top of the page: what the template's slots of the cards are filled with. */
#ifndef PAGE_CARDS_H
#define PAGE_CARDS_H

#include "chart/style.h"
#include "page/page.h"
#include "page/template.h"

void gw_page_cards(const gw_page *p, gw_slots *slots);

#endif
