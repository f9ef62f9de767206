/* SPDX-License-Identifier: MIT */
#include "format/html.h"

#include <string.h>

static const char *escape_of(char c)
{
    switch (c) {
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '&':
        return "&amp;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    default:
        return NULL;
    }
}

void gw_html_text(gw_buf *out, const char *s)
{
    gw_buf clean = { 0 };
    gw_buf_clean(&clean, s);
    for (const char *p = gw_buf_str(&clean); *p; p++) {
        const char *as = escape_of(*p);
        if (as)
            gw_buf_add(out, as);
        else
            gw_buf_bytes(out, p, 1);
    }
    gw_buf_drop(&clean, out);
}

void gw_html_put_to_null(gw_buf *out, const char *markup, ...)
{
    va_list texts;
    va_start(texts, markup);
    for (const char *slot; (slot = strstr(markup, "{}")); markup = slot + 2) {
        gw_buf_bytes(out, markup, (size_t)(slot - markup));
        gw_html_text(out, va_arg(texts, const char *));
    }
    va_end(texts);
    gw_buf_add(out, markup);
}

void gw_html_name(gw_buf *out, const char *s)
{
    gw_html_put(out, "<bdi>{}</bdi>", s);
}

void gw_html_figure(gw_buf *out, gw_number figure, const char *unit)
{
    const char *s = figure.s;
    if (s[0] == '-' && s[1]) {
        gw_buf_add(out, "\xE2\x88\x92"); /* U+2212 */
        s++;
    }
    gw_buf_add(out, s);
    gw_html_text(out, unit);
}

static const gw_html_part *part_at(const char *brace, const gw_html_part *parts)
{
    for (const gw_html_part *p = parts; p->name; p++) {
        size_t n = strlen(p->name);
        if (strncmp(brace + 1, p->name, n) == 0 && brace[1 + n] == '}') return p;
    }
    return NULL;
}

static void plain_text(gw_buf *out, const char *s)
{
    gw_buf_clean(out, s);
}

/* Words between parts go through `words`, parts through `value`. */
static void say(gw_buf *out, const char *sentence, const gw_html_part *parts,
                void (*words)(gw_buf *, const char *), void (*value)(gw_buf *, const char *))
{
    while (*sentence) {
        size_t plain = strcspn(sentence, "{");
        gw_buf text = { 0 };
        const gw_html_part *part = sentence[plain] ? part_at(sentence + plain, parts) : NULL;
        if (sentence[plain] && !part) plain++;
        gw_buf_bytes(&text, sentence, plain);
        words(out, gw_buf_str(&text));
        gw_buf_drop(&text, out);
        sentence += plain;
        if (!part) continue;
        value(out, part->value);
        sentence += strlen(part->name) + 2;
    }
}

void gw_html_say(gw_buf *out, const char *sentence, const gw_html_part *parts)
{
    say(out, sentence, parts, gw_html_text, gw_html_name);
}

void gw_plain_say(gw_buf *out, const char *sentence, const gw_html_part *parts)
{
    say(out, sentence, parts, plain_text, plain_text);
}

void gw_html_json(gw_buf *out, const char *json)
{
    while (*json) {
        size_t plain = strcspn(json, "<>&");
        gw_buf_bytes(out, json, plain);
        json += plain;
        if (*json) gw_buf_fmt(out, "\\u%04x", (unsigned)*json++);
    }
}

void gw_html_screen(gw_buf *out, bool begins)
{
    gw_buf_add(out, begins ? "<span class=\"screen\">" : "</span>");
}
