/* SPDX-License-Identifier: MIT */
/**
 * A page with slots. {{name}} is a text, escaped; {{&name}} mark-up of our own, as it is; {{#name}} ...
 * {{/name}} stands once for every element of a list, or once where the text is not empty; {{^name}} ...
 * {{/name}} where there is neither. A name that the innermost element does not hold is looked for in those
 * around it.
 */
#ifndef PAGE_TEMPLATE_H
#define PAGE_TEMPLATE_H

#include "base/buf.h"
#include "format/html.h"
#include "giveway/arena.h"

typedef struct gw_slots gw_slots;

/** An empty set of values; NULL when memory is out, which all functions here allow. */
gw_slots *gw_slots_make(gw_arena *arena);

/** Puts a text (copied), a formatted one, or an element of a list; names are literals. */
void gw_slots_text(gw_slots *slots, const char *name, const char *text);
void gw_slots_fmt(gw_slots *slots, const char *name, const char *fmt, ...)
    __attribute__((format(printf, 3, 4)));
gw_slots *gw_slots_element(gw_slots *slots, const char *list);

/** Several texts: GW_SLOTS(slots, { "front", front }, { "rear", rear }). What is not true is not there. */
#define GW_SLOTS(slots, ...) gw_slots_fill(slots, (const gw_html_part[]){ __VA_ARGS__, { NULL, NULL } })
void gw_slots_fill(gw_slots *slots, const gw_html_part *parts);
/** A number with a true minus sign, and its unit ("" for none); mark-up. */
void gw_slots_figure(gw_slots *slots, const char *name, gw_number figure, const char *unit);
/** A text of our own whose negative numbers get true minus signs. */
void gw_slots_signed_text(gw_slots *slots, const char *name, const char *text);
void gw_slots_flag(gw_slots *slots, const char *name, bool is_true);

/** A text that is taken over from a buffer, which is then empty; what failed there fails here. */
void gw_slots_take(gw_slots *slots, const char *name, gw_buf *text);

/** Fills the template into `out`; a slot that nobody has filled is left empty. */
void gw_template_fill(const char *template, const gw_slots *slots, gw_buf *out);

#endif
