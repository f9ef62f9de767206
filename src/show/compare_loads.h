/* SPDX-License-Identifier: MIT */
/** The loads of a comparison, a column a kit. */
#ifndef SHOW_COMPARE_LOADS_H
#define SHOW_COMPARE_LOADS_H

#include "show/handling.h"

/**
 * Toe, camber and fore-aft of every load and wheel: a row each where the page is wide enough, with toe at the
 * rim if it still fits; two rows each, the rim among them, where it is not.
 */
void gw_compare_loads(const gw_handling_page *p);

#endif
