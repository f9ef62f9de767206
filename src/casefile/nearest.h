/* SPDX-License-Identifier: MIT */
/** "Did you mean": the known name that is nearest to one that is not known. */
#ifndef GW_CASEFILE_NEAREST_H
#define GW_CASEFILE_NEAREST_H

/** Start with `{ .want = name }`, offer every known name, then ask for the hint. */
typedef struct gw_nearest {
    const char *want;
    const char *best; /**< borrowed; NULL: nothing is near */
    int distance;
} gw_nearest;

enum { GW_HINT_MAX = 120 };

void gw_nearest_offer(gw_nearest *near, const char *name);

/** "; did you mean "best"?" or "", in `hint`, which is returned. */
const char *gw_nearest_hint(const gw_nearest *near, char hint[GW_HINT_MAX]);

#endif
