/* SPDX-License-Identifier: MIT */
/** How near to their limits the parts of a kit work. */
#ifndef PAGE_STAND_H
#define PAGE_STAND_H

#include "page/say.h"

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

#endif
