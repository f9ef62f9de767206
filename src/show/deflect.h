/* SPDX-License-Identifier: MIT */
/** What a study of deflections is shown as. */
#ifndef SHOW_DEFLECT_H
#define SHOW_DEFLECT_H

#include "giveway/strength.h"
#include "giveway/study.h"
#include "record/paper.h"

/** What `deflect` works out. */
typedef struct gw_deflect_made {
    gw_deflect_study deflect;
    gw_strength_study strength; /**< what is beyond a limit */
} gw_deflect_made;

/** Rows over a gw_deflect_made, and over one deflection of it. */
extern const gw_result GW_DEFLECT_RESULT;
extern const gw_record GW_DEFLECTION_RECORD;

/** "hard stop: not carried: why" (with `kit` its kit in place of the load), a paragraph set in by two. */
void gw_failed_line(const gw_case *c, const gw_deflection *item, bool kit, gw_paper *paper);

/** The wheel's movement, the joints that let it, and what is beyond a limit; with `detail` every joint. */
void gw_deflect_text(const gw_case *c, const void *made, gw_paper *paper);

#endif
