/* SPDX-License-Identifier: MIT */
/** What the files that look for figures that no car has share. */
#ifndef STUDY_PLAUSIBLE_PARTS_H
#define STUDY_PLAUSIBLE_PARTS_H

#include "giveway/plausible.h"

typedef struct gw_plausible_look {
    const gw_case *c;
    const gw_laws *laws;
    gw_axle axle; /**< that is looked at */
    gw_faults *faults;
} gw_plausible_look;

/** A figure in its trade unit and what is usual. */
typedef struct gw_usual {
    const char *path, *what, *unit; /**< unit with its space, or "" */
    double value, low, high;        /**< value NAN: it is not known, no doubt */
    const char *source;
} gw_usual;

/** A warning at a path of the case. */
void gw_doubt_say(const gw_plausible_look *d, const char *path, const char *fmt, ...)
    __attribute__((format(printf, 3, 4)));

/** A warning where the figure lies outside. */
void gw_doubt_figure(const gw_plausible_look *d, const gw_usual *u);

/** What the wheel of the axle gives under a force of 1 kN and a moment of 1 kN m, with the first kit. */
void gw_doubt_give(const gw_plausible_look *d);

#endif
