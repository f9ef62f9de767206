/* SPDX-License-Identifier: MIT */
/** What is said of a kit in one sentence: toe, warnings, how near to a limit. */
#ifndef SHOW_VERDICTS_H
#define SHOW_VERDICTS_H

#include "giveway/reversal.h"
#include "giveway/stand.h"
#include "show/handling.h"

/** "front upper arm, front bush", or "front upper_front" where the joint has no label. */
void gw_phrase_joint(const gw_case *c, gw_axle axle, int joint, gw_buf *out);

/** "rear toe in a 0.90 g corner: out 0.09 deg instead of in 0.14". */
void gw_phrase_reversal(const gw_case *c, const gw_reversal *turned, gw_buf *out);

/** One paragraph on a kit. */
void gw_verdict_text(const gw_handling_page *p, int kit);

/** In one line which angles change to the other side, with the kits; nothing where none does. */
void gw_changes_text(const gw_handling_page *p);

/** Of all kits together: how near to a limit, how many joints could not be judged, and what it takes. */
void gw_limits_text(const gw_handling_page *p);

#endif
