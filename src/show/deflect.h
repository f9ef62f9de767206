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

/** The value or the limit of a verdict with the unit of the trade: "31 %", "12000 N", "3.27 MPa". */
void gw_verdict_figure(const gw_verdict *verdict, double value, gw_buf *out);

/** "kit rubber, front lateral_inner (lateral_rubber), hard stop: compressive strain ... 31 %, limit 25 %". */
void gw_overload_words(const gw_case *c, const gw_overload *overload, gw_buf *out);

/** A paragraph an overload under a heading; nothing where all holds. */
void gw_overloads_text(const gw_case *c, const gw_strength_study *study, gw_paper *paper);

/** Every check of every joint under one load; nothing where no bush is known from inside. */
void gw_strength_text(const gw_case *c, const gw_deflection *item, gw_paper *paper);

#endif
