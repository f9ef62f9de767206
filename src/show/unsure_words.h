/* SPDX-License-Identifier: MIT */
/** What is uncertain, as a workshop says it. */
#ifndef SHOW_UNSURE_WORDS_H
#define SHOW_UNSURE_WORDS_H

#include "base/buf.h"
#include "giveway/case.h"

/**
 * "front lower arm, rear bush (lower_rear)" for bushes.lower_rear, "front tie rod, inner end: height" for a
 * coordinate of a point; what is neither stays the path that it is.
 */
void gw_phrase_unsure(const gw_case *c, const char *path, gw_buf *out);

#endif
