/* SPDX-License-Identifier: MIT */
/** The page for customer or workshop. */
#ifndef PAGE_PAGE_H
#define PAGE_PAGE_H

#include "page/charts.h"

/** How a page is to be made. */
typedef struct gw_page_wish {
    bool workshop;                        /**< bush tables, settings and order of work as well */
    const char *date;                     /**< YYYY-MM-DD                                      */
    const struct gw_choose_study *choose; /**< what to fit for the money; NULL: the case does not ask */
} gw_page_wish;

/** The whole page, self-contained. */
gw_status gw_report_page(const gw_report *report, const gw_page_charts *charts, const gw_page_wish *wish,
                         gw_buf *out, gw_error *err);

#endif
