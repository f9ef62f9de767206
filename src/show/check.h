/* SPDX-License-Identifier: MIT */
/** What `check` shows of one case: its faults, what it can be used for, what it leaves out, what matters
 * most. */
#ifndef SHOW_CHECK_H
#define SHOW_CHECK_H

#include "base/buf.h"
#include "giveway/bands.h"
#include "giveway/faults.h"
#include "giveway/left_out.h"
#include "giveway/plausible.h"

/** What was found. */
typedef struct gw_check_made {
    const char *file;
    const gw_case *c;        /**< as far as it could be read */
    const gw_faults *faults; /**< and warnings               */
    bool clean;              /**< free of faults: what follows is filled in */
    int corners, bodies, joints;
    gw_uses uses;
    gw_left_out left;
    gw_bands_study bands;
    const char **matters; /**< paths of bands.n_needed figures, the one that makes most of the band first */
} gw_check_made;

/** Counts, and the order of what matters; `clean` must be set. GW_E_NOMEM. */
gw_status gw_check_gather(gw_check_made *made, gw_error *err);
void gw_check_free(gw_check_made *made);

/** Nothing where the case has faults: those are told as they are found. */
void gw_check_text(const gw_check_made *made, gw_buf *out);
void gw_check_json(const gw_check_made *made, gw_buf *out);

/** The heads once, then the rows of each case. */
void gw_check_csv_heads(gw_buf *out);
void gw_check_csv(const gw_check_made *made, gw_buf *out);

#endif
