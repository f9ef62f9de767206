/* SPDX-License-Identifier: MIT */
/** Loads and kits in plain words. */
#ifndef SHOW_PHRASE_H
#define SHOW_PHRASE_H

#include "base/buf.h"
#include "giveway/case.h"

/** "under a 1.00 g stop", "in a 0.90 g corner", ... or "under the load NAME"; begins in lower case. */
void gw_phrase_load(const gw_load *load, gw_buf *out);

/** What is said of a kit: its label, or its name where it has none. Owned by the case, not cleaned. */
const char *gw_kit_said(const gw_case *c, int kit);

/** "left" or "right": where a side drift takes the car (gw_braking_pull). */
const char *gw_phrase_pulled(double offset);

/**
 * "front lower arm, rear bush (lower_rear)" for bushes.lower_rear, "front tie rod, inner end: height" for a
 * coordinate of a point; what is neither stays the path that it is.
 */
void gw_phrase_unsure(const gw_case *c, const char *path, gw_buf *out);

#endif
