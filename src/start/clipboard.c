/* SPDX-License-Identifier: MIT */
/* The sheet for a clipboard: A4, a drawing of each corner that numbers its points, and lines to write on. */
#include "format/number.h"
#include "start/sheet.h"

#include <math.h>
#include <string.h>

static const char HEAD[] =
    "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>What to "
    "measure</title>\n<style>\n"
    "@page { size: A4; margin: 14mm }\nbody { font: 10pt sans-serif; max-width: 182mm; margin: auto }\n"
    "h2 { break-before: page } table { border-collapse: collapse; width: 100% } tr { break-inside: avoid }\n"
    "th, td { border: 0.3pt solid #555; padding: 1.2mm 1.5mm; text-align: left; font-weight: normal }\n"
    "th { background: #eee } td.w { width: 17mm } td.n { text-align: right } svg { width: 100%; height: auto "
    "}\n"
    "</style>\n</head>\n<body>\n<h1>What to measure</h1>\n"
    "<p>Left wheel; the car level, on its wheels, driver aboard. What stays empty stays as assumed. Beside a "
    "reading: plus or "
    "minus how much holds 95 of 100 readings. Under a lifted car never without stands.</p>\n";

/* What is drawn: height over the floor upwards, and one of forward (side view) or inward (from the front)
 * sideways. */
typedef struct view {
    const char *title;
    int along;
    double sign, left, low, high, scale, at;
} view;

static double place(const gw_start_corner *c, int p, int axis)
{
    return c->place[p][axis].v;
}

static void range_of(const gw_start_corner *c, int axis, double from, double to, double *low, double *high)
{
    *low = from;
    *high = to;
    for (int p = 0; p < c->parts.n_points; p++) {
        *low = fmin(*low, place(c, p, axis));
        *high = fmax(*high, place(c, p, axis));
    }
}

static double x_of(const view *v, double along)
{
    return v->at + (v->sign * along - v->left) * v->scale;
}

static double y_of(const view *v, double height)
{
    return 14 + (v->high - height) * v->scale;
}

static void stroke(gw_buf *out, const view *v, const gw_start_corner *c, int a, int b, const char *style)
{
    gw_number x1 = gw_fixed(x_of(v, place(c, a, v->along)), 1), y1 = gw_fixed(y_of(v, place(c, a, 2)), 1);
    gw_number x2 = gw_fixed(x_of(v, place(c, b, v->along)), 1), y2 = gw_fixed(y_of(v, place(c, b, 2)), 1);
    gw_buf_fmt(out, "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" %s/>\n", x1.s, y1.s, x2.s, y2.s, style);
}

/* Members as lines between their joints; spring and damper dashed. */
static void draw_members(gw_buf *out, const view *v, const gw_start_corner *c)
{
    const gw_start_parts *l = &c->parts;
    for (int i = 0; i < l->n_joints; i++)
        for (int j = i + 1; j < l->n_joints; j++) {
            const gw_start_joint *p = &l->joint[i], *q = &l->joint[j];
            bool shared = strcmp(p->body_b, q->body_a) == 0 ||
                          (strcmp(p->body_b, q->body_b) == 0 && strcmp(p->body_b, "upright") != 0);
            bool arm = p->bush == GW_START_TRAIL_RUBBER && q->bush == GW_START_TRAIL_RUBBER;
            if (shared || arm)
                stroke(out, v, c, gw_start_point_named(l, p->name), gw_start_point_named(l, q->name),
                       "stroke=\"#444\" stroke-width=\"1.6\"");
        }
    stroke(out, v, c, gw_start_point_named(l, "spring_seat"), gw_start_point_named(l, "spring_top"),
           "stroke=\"#444\" stroke-width=\"1.2\" stroke-dasharray=\"4 3\"");
}

static void draw_wheel(gw_buf *out, const view *v, const gw_start_corner *c)
{
    double r = c->radius.v, along = v->along == 0 ? 0 : c->track.v / 2, width = v->along == 0 ? r : 95;
    gw_number x = gw_fixed(fmin(x_of(v, along - width), x_of(v, along + width)), 1),
              y = gw_fixed(y_of(v, 2 * r), 1);
    gw_number w = gw_fixed(2 * width * v->scale, 1), h = gw_fixed(2 * r * v->scale, 1);
    gw_number round = gw_fixed((v->along == 0 ? r : 25) * v->scale, 1);
    gw_buf_fmt(
        out, "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" rx=\"%s\" fill=\"none\" stroke=\"#bbb\"/>\n",
        x.s, y.s, w.s, h.s, round.s);
}

typedef struct spot {
    double x, y;
} spot;

static bool near(spot a, spot b, double across, double up)
{
    return fabs(a.x - b.x) < across && fabs(a.y - b.y) < up;
}

/* The nearest place for a number, middle of its letters, that lies on no point and on no other number. */
static spot free_spot(const spot *point, int n, const spot *number, int p)
{
    static const double RING[] = { 11, 17, 24, 32, 42 };
    for (int r = 0; r < GW_START_COUNT(RING); r++)
        for (int turn = 0; turn < 12; turn++) {
            double angle = (turn + 0.5) * 3.14159265358979323846 / 6;
            const spot at = { point[p].x + RING[r] * cos(angle), point[p].y - RING[r] * sin(angle) };
            bool taken = false;
            for (int i = 0; i < n; i++)
                taken = taken || near(at, point[i], 10, 9) || (i < p && near(at, number[i], 15, 11));
            if (!taken) return at;
        }
    return (spot){ point[p].x + 11, point[p].y };
}

static void draw_points(gw_buf *out, const view *v, const gw_start_corner *c)
{
    spot point[GW_START_POINTS], number[GW_START_POINTS];
    const int n = c->parts.n_points;
    for (int p = 0; p < n; p++) point[p] = (spot){ x_of(v, place(c, p, v->along)), y_of(v, place(c, p, 2)) };
    for (int p = 0; p < n; p++) {
        number[p] = free_spot(point, n, number, p);
        gw_number x = gw_fixed(point[p].x, 1), y = gw_fixed(point[p].y, 1);
        gw_number text_x = gw_fixed(number[p].x, 1), text_y = gw_fixed(number[p].y + 4, 1);
        gw_buf_fmt(out,
                   "<circle cx=\"%s\" cy=\"%s\" r=\"3.2\"/><text x=\"%s\" y=\"%s\" font-size=\"11\" "
                   "text-anchor=\"middle\">%d</text>\n",
                   x.s, y.s, text_x.s, text_y.s, p + 1);
    }
}

static void draw_view(gw_buf *out, const gw_start_corner *c, view *v)
{
    double low, high;
    range_of(c, v->along, v->along == 0 ? -c->radius.v : c->track.v / 2 - 95,
             v->along == 0 ? c->radius.v : c->track.v / 2 + 95, &low, &high);
    range_of(c, 2, 0, 2 * c->radius.v, &v->low, &v->high);
    v->scale = 300 / fmax(fmax(high - low, v->high), 1);
    v->left = v->sign > 0 ? low : -high;
    draw_wheel(out, v, c);
    draw_members(out, v, c);
    draw_points(out, v, c);
    gw_number x = gw_fixed(v->at, 0);
    gw_buf_fmt(out, "<text x=\"%s\" y=\"340\" font-size=\"11\">%s</text>\n", x.s, v->title);
}

static void draw(gw_buf *out, const gw_start_corner *c, int a)
{
    view side = { .title = "from the left side, forward is left", .along = 0, .sign = -1, .at = 10 };
    view front = { .title = "from the front, outward is right", .along = 1, .sign = 1, .at = 380 };
    gw_buf_fmt(out, "<svg viewBox=\"0 0 700 350\" role=\"img\" aria-label=\"Points of the %s suspension\">\n",
               GW_AXLE_NAMES[a]);
    draw_view(out, c, &side);
    draw_view(out, c, &front);
    gw_buf_add(out, "</svg>\n");
}

static void figure_row(gw_buf *out, const gw_start_car *car, const gw_start_key *k)
{
    gw_number assumed = gw_exact(gw_start_figure_of(car, k)->v);
    gw_buf_fmt(out,
               "<tr><td>%s</td><td class=\"n\">%s %s</td><td class=\"w\"></td><td class=\"w\"></td></tr>\n",
               k->how, assumed.s, k->unit);
}

static void figures(gw_buf *out, const gw_start_car *car, const char *stem)
{
    gw_buf_add(out, "<table><tr><th>figure<th>assumed<th>read<th>plus or minus</tr>\n");
    for (int i = 0; i < GW_START_N_KEYS; i++)
        if (strncmp(GW_START_KEYS[i].of, stem, strlen(stem)) == 0) figure_row(out, car, &GW_START_KEYS[i]);
    gw_buf_add(out, "</table>\n");
}

static void points(gw_buf *out, const gw_start_corner *c)
{
    gw_buf_add(out, "<table><tr><th>no.<th>point<th>where<th>assumed x, y, z, mm<th>x forward<th>y from "
                    "middle<th>z over floor"
                    "<th>+-</tr>\n");
    for (int p = 0; p < c->parts.n_points; p++) {
        gw_number x = gw_fixed(place(c, p, 0), 0), y = gw_fixed(place(c, p, 1), 0),
                  z = gw_fixed(place(c, p, 2), 0);
        gw_buf_fmt(out, "<tr><td class=\"n\">%d</td><td>%s</td><td>%s</td><td class=\"n\">%s, %s, %s</td>",
                   p + 1, c->parts.point[p].name, c->parts.point[p].how, x.s, y.s, z.s);
        gw_buf_add(out, "<td class=\"w\"></td><td class=\"w\"></td><td class=\"w\"></td><td></td></tr>\n");
    }
    gw_buf_add(out, "</table>\n<p>Distances between numbers, where they are easier to reach: ");
    for (int i = 0; i < 4; i++) gw_buf_add(out, "____ to ____: ________ mm +- ____ &#160; ");
    gw_buf_add(out, "</p>\n");
}

static void hardnesses(gw_buf *out, const gw_start_car *car)
{
    gw_buf_add(
        out,
        "<table><tr><th>rubber, gauge A on its end face<th>assumed, points<th>read<th>plus or minus</tr>\n");
    for (int b = 0; b < GW_START_RUBBERS; b++) {
        if (!gw_start_uses(car, b)) continue;
        gw_number assumed = gw_fixed(car->hardness[b].v, 0);
        gw_buf_fmt(out,
                   "<tr><td>%s</td><td class=\"n\">%s</td><td class=\"w\"></td><td class=\"w\"></td></tr>\n",
                   GW_START_BUSH[b].name, assumed.s);
    }
    gw_buf_add(out, "</table>\n");
}

void gw_start_page(const gw_start_car *car, gw_buf *out)
{
    gw_buf_add(out, HEAD);
    figures(out, car, "vehicle.");
    gw_buf_add(out, "<p></p>\n");
    hardnesses(out, car);
    for (int a = 0; a < GW_AXLES; a++) {
        char stem[24] = "corners.";
        strcat(strcat(stem, GW_AXLE_NAMES[a]), ".");
        gw_buf_fmt(out, "<h2>%s</h2>\n", a == GW_FRONT ? "Front" : "Rear");
        draw(out, &car->corner[a], a);
        points(out, &car->corner[a]);
        figures(out, car, stem);
    }
    gw_buf_add(out, "</body>\n</html>\n");
}
