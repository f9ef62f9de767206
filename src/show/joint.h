/* SPDX-License-Identifier: MIT */
/** Joints in words. */
#ifndef SHOW_JOINT_H
#define SHOW_JOINT_H

#include "base/buf.h"
#include "giveway/contributors.h"

/** ", left" or ", right" of a joint that an axle has twice, of which the left one stands first; else nothing.
 */
const char *gw_joint_side(const gw_corner *corner, int joint);

/**
 * A joint in the words of the case: its label, or its name with blanks for underscores, with ", left" or
 * ", right" behind it where an axle has it twice. Not cleaned.
 */
void gw_joint_said(const gw_corner *corner, int joint, gw_buf *out);

/** A name of the case as words: "arm front" for arm_front. Lines break at blanks, in the middle of a name
 * nowhere well. */
void gw_name_in_words(const char *name, gw_buf *out);

/** "tension_inner 62 % out, rack_left 21 % in": the first `n` in words; nothing where there are none. */
void gw_contributors_words(const gw_contributor *list, int n, gw_angle which, gw_buf *out);

#endif
