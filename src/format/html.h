/* SPDX-License-Identifier: MIT */
/**
 * Markup (HTML and the SVG in it) from texts that may hold anything. Whatever comes from a case goes
 * through here: control characters go, bytes that are not UTF-8 become U+FFFD, and what means
 * something in markup is escaped, in text and in attributes alike.
 */
#ifndef FORMAT_HTML_H
#define FORMAT_HTML_H

#include "base/buf.h"
#include "format/number.h"

/** Text, or an attribute in double quotes. */
void gw_html_text(gw_buf *out, const char *s);

/** Mark-up of our own with texts in it: each {} becomes the next text, as by gw_html_text. */
#define gw_html_put(out, ...) gw_html_put_to_null(out, __VA_ARGS__, (const char *)NULL)
void gw_html_put_to_null(gw_buf *out, const char *markup, ...) __attribute__((sentinel));

/** A name from a case in the flow of a sentence: <bdi>, so that letters read from the right stay in their
 * place. */
void gw_html_name(gw_buf *out, const char *s);

/** A space that does not break. */
#define GW_NBSP "\xC2\xA0"

/** A number with a true minus sign, and its unit ("" for none). */
void gw_html_figure(gw_buf *out, gw_number figure, const char *unit);

/** What stands for {name} in a sentence; plain text. */
typedef struct gw_html_part {
    const char *name, *value;
} gw_html_part;

/** A sentence with its parts put in, each as by gw_html_name. `parts` ends with a NULL name; what it does not
 * name stays. */
void gw_html_say(gw_buf *out, const char *sentence, const gw_html_part *parts);

/** The same as plain text, each part as by gw_buf_clean. */
void gw_plain_say(gw_buf *out, const char *sentence, const gw_html_part *parts);

/** JSON for a <script> of type application/json: nothing in it can end the script or begin markup. */
void gw_html_json(gw_buf *out, const char *json);

/** Begins, or ends, words that stand on the screen and not in print. */
void gw_html_screen(gw_buf *out, bool begins);

#endif
