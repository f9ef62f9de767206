/* SPDX-License-Identifier: MIT */
/** What a deflect study is shown as: JSON, CSV, text. */
#ifndef SHOW_DEFLECT_H
#define SHOW_DEFLECT_H

#include "base/buf.h"
#include "format/csv.h"
#include "format/json.h"
#include "giveway/strength.h"
#include "giveway/study.h"

/** The result object of a study, for `deflect` and, by another name, for `compare`. */
void gw_deflect_json(const gw_case *c, const gw_deflect_study *study, const char *command, gw_buf *out);

/** The members of one item, inside an object that is already open. */
void gw_deflect_item_json(const gw_case *c, const gw_deflection *item, gw_json *json);

/** "hard stop: not carried: why" (with `kit` its kit in place of the load), a paragraph set in by two. */
void gw_failed_line(const gw_case *c, const gw_deflection *item, bool kit, int width, gw_buf *out);

/** The fields of one deflection, and their heads; the row is not ended. */
void gw_deflect_csv_heads(gw_csv *csv);
void gw_deflect_csv_row(const gw_case *c, const gw_deflection *item, gw_csv *csv);

/** One row a result, with a row of heads first. */
void gw_deflect_csv(const gw_case *c, const gw_deflect_study *study, gw_buf *out);

/**
 * Text for people: the wheel's movement, the joints that let it, and what is beyond a limit.
 * @param[in] all  every joint with its strength; otherwise the three that matter most.
 */
gw_status gw_deflect_text(const gw_case *c, const gw_deflect_study *study, const gw_strength_study *strength,
                          bool all, int width, bool bold, gw_buf *out, gw_error *err);

#endif
