/* SPDX-License-Identifier: MIT */
/** The quotation for the customer, and the sheets that the workshop fills in by hand. */
#ifndef PAGE_QUOTE_H
#define PAGE_QUOTE_H

#include "page/page.h"
#include "page/template.h"

/** A quotation a kit: parts, jobs, work, tax and total, and the alignment sheet's rows. */
void gw_page_quotes(const gw_page *p, gw_slots *slots);

#endif
