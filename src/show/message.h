/* SPDX-License-Identifier: MIT */
/**
 * What the title of a chart says: one sentence, written from the figures that are drawn. Direction and size
 * are those of the figures; where the order of the kits is open the sentence says so.
 */
#ifndef SHOW_MESSAGE_H
#define SHOW_MESSAGE_H

#include "chart/chart.h"

/** What is compared from kit to kit, in the unit that is shown. */
typedef struct gw_message {
    const char *of;   /**< one thing, as "Front toe change under a 1.00 g stop" */
    const char *unit; /**< "deg"                                              */
    int decimals;
    bool is_signed;  /**< printed with its sign; what grows or shrinks is its size */
    bool over_first; /**< figures are over the first kit's, as dB are          */
} gw_message;

/** One kit's figure. */
typedef struct gw_told {
    const char *kit;
    double value; /**< not finite: it has none                              */
    bool close;   /**< its order to the first kit's is too close to call    */
} gw_told;

/** "Front toe change under a 1.00 g stop halves with Bearings: -0.39 to -0.18 deg": of the kit that changes
 * most and is not too close to call, against told[0]. */
void gw_message_kits(const gw_message *m, const gw_told *told, int n, gw_buf *out);

/** "Front toe change under a 1.00 g stop comes mostly from NAME: -0.32 of -0.63 deg with KIT", of the largest
 * `value`; one that works against the whole, or is more than
 * it, is told as that. Without a sign (shares) the whole is not told. */
void gw_message_part(const gw_message *m, const char *const *name, const double *value, int n, double whole,
                     const char *kit, gw_buf *out);

#endif
