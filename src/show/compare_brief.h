/* SPDX-License-Identifier: MIT */
/** The comparison on one screen. */
#ifndef SHOW_COMPARE_BRIEF_H
#define SHOW_COMPARE_BRIEF_H

#include "show/handling.h"

/** A sentence a kit, the loads with a column a kit, ride and prices with a row a kit. */
void gw_compare_brief(const gw_handling_page *p);

#endif
