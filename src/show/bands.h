/* SPDX-License-Identifier: MIT */
/** Bands beside the figures of a comparison: rows, and the words for what is too close to call. */
#ifndef SHOW_BANDS_H
#define SHOW_BANDS_H

#include "giveway/bands.h"
#include "record/paper.h"

/** Rows over a gw_bands_study; of its gw_bands_item the bands alone. */
extern const gw_record GW_BANDS_RECORD, GW_BAND_FIGURES_RECORD;

/** The band of a deflection; NULL where bands are left out. */
const gw_bands_item *gw_band_of(const gw_bands_study *bands, const gw_deflection *item);

/** Its toe change and the first kit's are too close to call; false where bands are left out. */
bool gw_band_is_close(const gw_bands_study *bands, const gw_deflection *item);

/** The two may be the same: for a toe change that is told by its angles, the other way or far more, not by
 * its size. */
bool gw_band_may_be_same(const gw_bands_study *bands, const gw_deflection *item);

/** Under the tables of a comparison: what the bands hold and leave out, which kits cannot be told apart, and
 * how many figures matter. A paragraph or two. */
void gw_bands_words(const gw_case *c, const gw_bands_study *bands, gw_paper *paper);

#endif
