/* SPDX-License-Identifier: MIT */
#include "page/template.h"

#include <string.h>

/* A text, or an element of a list: then `inside` is there. */
typedef struct gw_slot {
    const char *name, *text;
    gw_slots *inside;
    struct gw_slot *next;
} gw_slot;

struct gw_slots {
    gw_arena *arena;
    const gw_slots *around;
    gw_slot *first, *last;
    bool failed; /* of the outermost alone */
};

static gw_slots *root_of(gw_slots *slots)
{
    while (slots && slots->around) slots = (gw_slots *)slots->around;
    return slots;
}

gw_slots *gw_slots_make(gw_arena *arena)
{
    gw_slots *slots = gw_arena_alloc(arena, 1, sizeof *slots);
    if (slots) slots->arena = arena;
    return slots;
}

static gw_slot *add(gw_slots *slots, const char *name)
{
    gw_slot *slot = slots ? gw_arena_alloc(slots->arena, 1, sizeof *slot) : NULL;
    if (!slot) {
        if (slots) root_of(slots)->failed = true;
        return NULL;
    }
    slot->name = name;
    if (slots->last)
        slots->last->next = slot;
    else
        slots->first = slot;
    slots->last = slot;
    return slot;
}

void gw_slots_text(gw_slots *slots, const char *name, const char *text)
{
    gw_slot *slot = add(slots, name);
    if (!slot) return;
    slot->text = gw_arena_strdup(slots->arena, text ? text : "");
    if (!slot->text) root_of(slots)->failed = true;
}

void gw_slots_fmt(gw_slots *slots, const char *name, const char *fmt, ...)
{
    gw_buf text = { 0 };
    va_list args;
    va_start(args, fmt);
    gw_buf_vfmt(&text, fmt, args);
    va_end(args);
    gw_slots_take(slots, name, &text);
}

void gw_slots_take(gw_slots *slots, const char *name, gw_buf *text)
{
    gw_slots_text(slots, name, gw_buf_str(text));
    if (text->failed && slots) root_of(slots)->failed = true;
    gw_buf_free(text);
}

void gw_slots_fill(gw_slots *slots, const gw_html_part *parts)
{
    for (; parts->name; parts++) gw_slots_text(slots, parts->name, parts->value);
}

void gw_slots_figure(gw_slots *slots, const char *name, gw_number figure, const char *unit)
{
    gw_buf text = { 0 };
    gw_html_figure(&text, figure, unit);
    gw_slots_take(slots, name, &text);
}

void gw_slots_signed_text(gw_slots *slots, const char *name, const char *text)
{
    gw_buf as_told = { 0 };
    gw_minus_signs(&as_told, text);
    gw_slots_take(slots, name, &as_told);
}

void gw_slots_flag(gw_slots *slots, const char *name, bool is_true)
{
    if (is_true) gw_slots_text(slots, name, "yes");
}

gw_slots *gw_slots_element(gw_slots *slots, const char *list)
{
    gw_slot *slot = add(slots, list);
    gw_slots *inside = slot ? gw_slots_make(slots->arena) : NULL;
    if (inside) inside->around = slots;
    if (slot) slot->inside = inside;
    if (slot && !inside) root_of(slots)->failed = true;
    return inside;
}

/* ---- filling ---- */

typedef struct gw_tag {
    const char *begin, *end; /* with its braces */
    char kind;               /* '#', '^', '/', '&'; ' ': a text; 0: there is none */
    const char *name;
    size_t n;
} gw_tag;

static gw_tag next_tag(const char *from, const char *end)
{
    gw_tag tag = { .kind = 0 };
    for (const char *at = from; at + 1 < end; at++) {
        if (at[0] != '{' || at[1] != '{') continue;
        const char *close = strstr(at, "}}");
        if (!close || close >= end) return tag;
        bool marked = strchr("#^/&", at[2]) != NULL;
        tag = (gw_tag){ at, close + 2, marked ? at[2] : ' ', at + 2 + marked, 0 };
        tag.n = (size_t)(close - tag.name);
        return tag;
    }
    return tag;
}

static bool is_named(const gw_slot *slot, const gw_tag *tag)
{
    return strncmp(slot->name, tag->name, tag->n) == 0 && slot->name[tag->n] == '\0';
}

static const gw_slot *first_of(const gw_slots *slots, const gw_tag *tag)
{
    for (; slots; slots = slots->around)
        for (const gw_slot *s = slots->first; s; s = s->next)
            if (is_named(s, tag)) return s;
    return NULL;
}

/* The {{/name}} that ends a part begun by `open`; those of the same name inside it are counted. */
static gw_tag end_of(const gw_tag *open, const char *end)
{
    int depth = 1;
    for (gw_tag t = next_tag(open->end, end); t.kind; t = next_tag(t.end, end)) {
        if (t.n != open->n || strncmp(t.name, open->name, t.n) != 0) continue;
        if (t.kind == '#' || t.kind == '^') depth++;
        if (t.kind == '/' && --depth == 0) return t;
    }
    return (gw_tag){ end, end, '/', open->name, open->n };
}

static void fill(const char *from, const char *end, const gw_slots *slots, gw_buf *out);

static void fill_part(const gw_tag *open, const gw_tag *close, const gw_slots *slots, gw_buf *out)
{
    const gw_slot *found = first_of(slots, open);
    bool there = found && (found->inside || (found->text && *found->text));
    if (open->kind == '^') {
        if (!there) fill(open->end, close->begin, slots, out);
        return;
    }
    if (there && !found->inside) fill(open->end, close->begin, slots, out);
    for (const gw_slot *s = found; s && found->inside; s = s->next)
        if (is_named(s, open)) fill(open->end, close->begin, s->inside, out);
}

static void fill(const char *from, const char *end, const gw_slots *slots, gw_buf *out)
{
    for (gw_tag tag = next_tag(from, end); tag.kind; tag = next_tag(from, end)) {
        gw_buf_bytes(out, from, (size_t)(tag.begin - from));
        from = tag.end;
        if (tag.kind == '#' || tag.kind == '^') {
            gw_tag close = end_of(&tag, end);
            fill_part(&tag, &close, slots, out);
            from = close.end;
            continue;
        }
        const gw_slot *found = first_of(slots, &tag);
        if (found && tag.kind == '&') gw_buf_add(out, found->text);
        if (found && tag.kind == ' ') gw_html_text(out, found->text ? found->text : "");
    }
    gw_buf_bytes(out, from, (size_t)(end - from));
}

void gw_template_fill(const char *template, const gw_slots *slots, gw_buf *out)
{
    if (!slots || slots->failed) out->failed = true;
    if (!out->failed) fill(template, template + strlen(template), slots, out);
}
