/* SPDX-License-Identifier: MIT */
/** A case corrected by readings, printed. */
#ifndef SHOW_MATCH_H
#define SHOW_MATCH_H

#include "giveway/match.h"
#include "base/buf.h"

gw_status gw_match_text(const gw_case *c, const gw_readings *readings, const gw_match_study *study, int width,
                        bool bold, gw_buf *out, gw_error *err);
void gw_match_json(const gw_case *c, const gw_readings *readings, const gw_match_study *study, gw_buf *out);
void gw_match_csv(const gw_case *c, const gw_readings *readings, const gw_match_study *study, gw_buf *out);

#endif
