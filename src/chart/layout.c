/* SPDX-License-Identifier: MIT */
#include "chart/layout.h"

#include "chart/style.h"
#include "chart/type.h"
#include "format/number.h"

#include <math.h>
#include <string.h>

/* Room for one more of `size` bytes; an arena gives nothing back, so the old place is left behind. */
static void *grown(gw_layout *l, void *old, int n, int *cap, size_t size)
{
    if (n < *cap) return old;
    int more = *cap ? 2 * *cap : 64;
    void *place = gw_arena_alloc(l->arena, (size_t)more, size);
    if (!place) {
        l->failed = true;
        return NULL;
    }
    if (n) memcpy(place, old, (size_t)n * size);
    *cap = more;
    return place;
}

gw_point *gw_layout_shape(gw_layout *l, gw_shape shape)
{
    gw_shape *place = grown(l, l->shape, l->n_shapes, &l->shapes_cap, sizeof *place);
    gw_point *at = gw_arena_alloc(l->arena, (size_t)shape.n + 1, sizeof *at);
    if (place) l->shape = place;
    if (!place || !at) {
        l->failed = true;
        return NULL;
    }
    shape.at = at;
    l->shape[l->n_shapes++] = shape;
    return at;
}

void gw_layout_line(gw_layout *l, gw_point from, gw_point to, gw_pen pen)
{
    gw_point *at = gw_layout_shape(l, (gw_shape){ .kind = GW_SHAPE_LINE,
                                                  .colour = pen.colour,
                                                  .dash = pen.dash ? pen.dash : "solid",
                                                  .width = pen.width,
                                                  .n = 2 });
    if (!at) return;
    at[0] = from;
    at[1] = to;
}

void gw_layout_box(gw_layout *l, gw_box box, const char *colour, int hatching)
{
    gw_point *at =
        gw_layout_shape(l, (gw_shape){ .kind = GW_SHAPE_BOX, .colour = colour, .pattern = hatching, .n = 2 });
    if (!at) return;
    at[0] = (gw_point){ fmin(box.x0, box.x1), fmin(box.y0, box.y1) };
    at[1] = (gw_point){ fmax(box.x0, box.x1), fmax(box.y0, box.y1) };
}

void gw_layout_marker(gw_layout *l, gw_point where, int marker, double size, const char *colour)
{
    gw_point *at = gw_layout_shape(
        l, (gw_shape){ .kind = GW_SHAPE_MARKER, .colour = colour, .pattern = marker, .width = size, .n = 1 });
    if (at) *at = where;
}

void gw_layout_disc(gw_layout *l, gw_point where, double across, const char *colour)
{
    gw_point *at =
        gw_layout_shape(l, (gw_shape){ .kind = GW_SHAPE_DISC, .colour = colour, .width = across, .n = 1 });
    if (at) *at = where;
}

static gw_box box_of(double x, double y, const char *s, int size, gw_text_side side)
{
    double w = gw_text_room(s, size, size == GW_TYPE_TITLE), h = gw_text_height(size);
    double left = side == GW_TEXT_LEFT ? x : side == GW_TEXT_RIGHT ? x - w : x - 0.5 * w;
    return (gw_box){ left, y - 0.5 * h, left + w, y + 0.5 * h };
}

const char *gw_layout_words(gw_layout *l, const char *s)
{
    gw_buf text = { 0 };
    gw_minus_signs(&text, s ? s : "");
    return gw_buf_keep(&text, l->arena);
}

void gw_layout_text_at(gw_layout *l, double x, double y, const char *s, int size, const char *colour,
                       gw_text_side side)
{
    gw_layout_text *place = grown(l, l->text, l->n_texts, &l->texts_cap, sizeof *place);
    const char *copy = gw_layout_words(l, s);
    if (place) l->text = place;
    if (!place || !copy) {
        l->failed = true;
        return;
    }
    l->text[l->n_texts++] = (gw_layout_text){ .s = copy,
                                              .x = x,
                                              .y = y,
                                              .side = side,
                                              .size = size,
                                              .bold = size == GW_TYPE_TITLE,
                                              .colour = colour,
                                              .box = box_of(x, y, s, size, side) };
}

double gw_box_overlap(const gw_box *a, const gw_box *b)
{
    double w = fmin(a->x1, b->x1) - fmax(a->x0, b->x0), h = fmin(a->y1, b->y1) - fmax(a->y0, b->y0);
    return w > 0 && h > 0 ? w * h : 0.0;
}

double gw_layout_taken(const gw_layout *l, gw_box box)
{
    double area = 0.0;
    for (int i = 0; i < l->n_texts; i++) area += gw_box_overlap(&box, &l->text[i].box);
    return area;
}
