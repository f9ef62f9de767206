/* SPDX-License-Identifier: MIT */
/** Strain of rubber and load of bearings against their limits: words, tables, JSON. */
#ifndef SHOW_STRENGTH_H
#define SHOW_STRENGTH_H

#include "giveway/strength.h"
#include "record/paper.h"

/** The value or the limit of a verdict with the unit of the trade: "31 %", "12000 N", "3.27 MPa". */
void gw_verdict_figure(const gw_verdict *verdict, double value, gw_buf *out);

/** "kit rubber, front lateral_inner (lateral_rubber), hard stop: compressive strain ... 31 %, limit 25 %". */
void gw_overload_words(const gw_case *c, const gw_overload *overload, gw_buf *out);

/** A paragraph an overload under a heading; nothing where all holds. */
void gw_overloads_text(const gw_case *c, const gw_strength_study *study, gw_paper *paper);

/** Every check of every joint under one load; nothing where no bush is known from inside. */
void gw_strength_text(const gw_case *c, const gw_deflection *item, gw_paper *paper);

#endif
