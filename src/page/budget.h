/* SPDX-License-Identifier: MIT */
#ifndef PAGE_BUDGET_H
#define PAGE_BUDGET_H

#include "chart/chart.h"
#include "giveway/report.h"

/** Where the camber of the outer wheel goes in a corner, kit by kit; one chart an axle. */
void gw_page_budget_charts(const gw_report *report, gw_charts *charts);

#endif
