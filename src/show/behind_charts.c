/* SPDX-License-Identifier: MIT */
#include "show/compare_charts.h"

#include "format/number.h"
#include "giveway/pick.h"
#include "record/unit.h"
#include "show/phrase.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { TEXT = 240, MARKS = 12, KEYS = 5 };

/* Colours of what is drawn, none of them a kit's. */
enum { BODY = 0, OUTER = 1, INNER = 2, SHARED = 3, CENTRE = 4 };

static const double HALF_TYRE = 0.1;   /* drawn; no case gives it [m]                     */
static const double FARTHEST = 1.0;    /* a roll centre beyond is told and not drawn [m]  */
static const double FLAG_ABOVE = 0.15; /* the body's middle is drawn up to there [m]      */

/* The axle as it stands, or in a state (`under`). */
typedef struct gw_behind {
    const gw_case *c;
    const gw_corner *pair;
    const gw_vec3 *mark;
    const gw_picture *under;
    double turns_at; /* height that stays in the middle as the body leans [m] */
    double ground;   /* [m] */
    double camber[GW_WHEELS];
} gw_behind;

/* A path that may break off and begin anew; across to the right of the car, up from the ground [mm]. */
typedef struct gw_trace {
    double *x, *y;
    int n, room;
    bool failed;
} gw_trace;

static void put(gw_trace *t, double x, double y)
{
    if (t->n < t->room) {
        t->x[t->n] = x;
        t->y[t->n++] = y;
    } else {
        t->failed = true;
    }
}

static void lift(gw_trace *t)
{
    if (t->n) put(t, (double)NAN, (double)NAN);
}

/* Of a point of a body in the chassis: there, with its movement drawn larger. */
static gw_vec3 moved(const gw_behind *v, int body, gw_vec3 at)
{
    if (!v->under || body == GW_CHASSIS) return at;
    const gw_part_move *by = &v->under->moved[body];
    gw_mat3 r = gw_rot_exp(gw_scale(GW_BEHIND_FACTOR, by->turn));
    gw_vec3 mark = v->mark[body];
    return gw_axpy(gw_add(gw_mul(&r, gw_sub(at, mark)), mark), GW_BEHIND_FACTOR, by->move);
}

/* Of a point in the chassis: over the road. The left wheel is the outer one, so that the body leans to it. */
static gw_vec3 leaned(const gw_behind *v, gw_vec3 at)
{
    if (!v->under) return at;
    double angle = GW_BEHIND_FACTOR * v->under->roll, above = at.z - v->turns_at;
    double y = at.y * cos(angle) + above * sin(angle), z = above * cos(angle) - at.y * sin(angle);
    return gw_v3(at.x, y, v->turns_at + z + GW_BEHIND_FACTOR * v->under->rise);
}

static void point(const gw_behind *v, gw_trace *t, gw_vec3 over_road)
{
    put(t, gw_unit_out(GW_UNIT_MM, -over_road.y), gw_unit_out(GW_UNIT_MM, over_road.z - v->ground));
}

static void stroke(const gw_behind *v, gw_trace *t, int body, gw_vec3 from, int other, gw_vec3 to)
{
    lift(t);
    point(v, t, leaned(v, moved(v, body, from)));
    point(v, t, leaned(v, moved(v, other, to)));
}

/* Each part from its mark to its joints; springs to the body. */
static void trace_parts(const gw_behind *v, gw_wheel_side side, gw_trace *t)
{
    const gw_corner *pair = v->pair;
    for (int j = 0; j < pair->n_joints; j++) {
        const int both[] = { pair->joints[j].body_a, pair->joints[j].body_b };
        for (int i = 0; i < 2; i++)
            if (both[i] != GW_CHASSIS && gw_body_side(pair, both[i]) == side)
                stroke(v, t, both[i], v->mark[both[i]], both[i], pair->joints[j].at);
    }
    if (side != GW_RIGHT_WHEEL && gw_body_side(pair, pair->spring.body) == side)
        stroke(v, t, pair->spring.body, pair->spring.at, GW_CHASSIS, pair->spring.to);
    if (side != GW_LEFT_WHEEL && gw_body_side(pair, pair->right_spring.body) == side)
        stroke(v, t, pair->right_spring.body, pair->right_spring.at, GW_CHASSIS, pair->right_spring.to);
}

/* Where the line from `top` through `middle` meets the ground: a tyre stands on it, however it gives. */
static gw_vec3 foot(const gw_behind *v, gw_vec3 top, gw_vec3 middle)
{
    gw_vec3 along = gw_sub(middle, top);
    return gw_axpy(top, (v->ground - top.z) / along.z, along);
}

/* Outline of a tyre, with its setting. */
static void trace_tyre(const gw_behind *v, gw_wheel_side side, gw_trace *t)
{
    const gw_wheel *wheel = &v->pair->wheel;
    double out = side == GW_LEFT_WHEEL ? 1.0 : -1.0, camber = v->camber[side];
    int upright = side == GW_LEFT_WHEEL ? GW_UPRIGHT : v->pair->right_upright;
    gw_vec3 centre = gw_v3(wheel->centre.x, out * wheel->centre.y, wheel->centre.z);
    gw_vec3 top[2], bottom[2];
    for (int i = 0; i < 2; i++) {
        double across = i ? HALF_TYRE : -HALF_TYRE, up = wheel->loaded_radius;
        gw_vec3 axle = gw_v3(0, out * across * cos(camber), -across * sin(camber));
        gw_vec3 middle = gw_add(centre, axle);
        gw_vec3 above = gw_add(middle, gw_v3(0, out * up * sin(camber), up * cos(camber)));
        top[i] = leaned(v, moved(v, upright, above));
        bottom[i] = foot(v, top[i], leaned(v, moved(v, upright, middle)));
    }
    const gw_vec3 ring[] = { bottom[0], top[0], top[1], bottom[1], bottom[0] };
    lift(t);
    for (size_t i = 0; i < sizeof ring / sizeof *ring; i++) point(v, t, ring[i]);
}

/* ---- the body: the hull of what is fixed to it, and its middle ---- */

typedef struct gw_flat {
    double y, z;
} gw_flat;

static int by_place(const void *a, const void *b)
{
    const gw_flat *p = a, *q = b;
    if (p->y != q->y) return p->y < q->y ? -1 : 1;
    return p->z < q->z ? -1 : p->z > q->z;
}

static double turn_of(gw_flat a, gw_flat b, gw_flat c)
{
    return (b.y - a.y) * (c.z - a.z) - (b.z - a.z) * (c.y - a.y);
}

/* Andrew's monotone chain (1979): the corners of the hull in order; `out` has room for 2 n. */
static int hull(gw_flat *at, int n, gw_flat *out)
{
    int k = 0;
    qsort(at, (size_t)n, sizeof *at, by_place);
    for (int pass = 0; pass < 2; pass++) {
        int first = k;
        for (int i = 0; i < n; i++) {
            gw_flat p = at[pass ? n - 1 - i : i];
            while (k >= first + 2 && turn_of(out[k - 2], out[k - 1], p) <= 0) k--;
            out[k++] = p;
        }
        k--; /* the last one begins the way back */
    }
    return k;
}

static int fixed_points(const gw_corner *pair, gw_flat *out)
{
    int n = 0;
    for (int j = 0; j < pair->n_joints; j++)
        if (pair->joints[j].body_a == GW_CHASSIS || pair->joints[j].body_b == GW_CHASSIS)
            out[n++] = (gw_flat){ pair->joints[j].at.y, pair->joints[j].at.z };
    out[n++] = (gw_flat){ pair->spring.to.y, pair->spring.to.z };
    out[n++] = (gw_flat){ pair->right_spring.to.y, pair->right_spring.to.z };
    return n;
}

static void trace_body(const gw_behind *v, gw_trace *t)
{
    gw_flat at[GW_MAX_JOINTS + 2], ring[2 * (GW_MAX_JOINTS + 2)];
    int n = fixed_points(v->pair, at);
    double top = v->turns_at;
    for (int i = 0; i < n; i++) top = fmax(top, at[i].z);
    n = hull(at, n, ring);
    lift(t);
    for (int i = 0; i <= n; i++) point(v, t, leaned(v, gw_v3(0, ring[i % n].y, ring[i % n].z)));
    lift(t);
    point(v, t, leaned(v, gw_v3(0, 0, v->turns_at)));
    point(v, t, leaned(v, gw_v3(0, 0, top + FLAG_ABOVE)));
}

/* ---- the figure ---- */

typedef struct gw_behind_sheet {
    gw_charts *charts; /* whose memory it is */
    gw_chart_mark mark[MARKS];
    const char *key[KEYS];
    int key_style[KEYS];
    int n_marks, n_keys;
} gw_behind_sheet;

static gw_trace begin(gw_behind_sheet *s, const gw_corner *pair)
{
    int room = 8 * (pair->n_joints + 8);
    gw_trace t = { gw_charts_room(s->charts, room, sizeof(double)),
                   gw_charts_room(s->charts, room, sizeof(double)), 0, room, false };
    if (!t.x || !t.y) t.room = 0;
    return t;
}

static void end(gw_behind_sheet *s, const gw_trace *t, int style, bool faint)
{
    s->charts->failed = s->charts->failed || t->failed;
    if (t->n)
        s->mark[s->n_marks++] = (gw_chart_mark){ .kind = GW_MARK_LINE,
                                                 .x = t->x,
                                                 .y = t->y,
                                                 .n = t->n,
                                                 .style = style,
                                                 .bare = style == BODY,
                                                 .drawn = true,
                                                 .faint = faint };
}

static void trace_wheel(const gw_behind *v, gw_behind_sheet *s, gw_wheel_side side, int style)
{
    gw_trace t = begin(s, v->pair);
    trace_parts(v, side, &t);
    if (side != GW_WHEELS) trace_tyre(v, side, &t);
    end(s, &t, style, !v->under);
}

static void trace_all(const gw_behind *v, gw_behind_sheet *s)
{
    gw_trace body = begin(s, v->pair);
    trace_body(v, &body);
    end(s, &body, BODY, !v->under);
    trace_wheel(v, s, GW_WHEELS, SHARED);
    trace_wheel(v, s, GW_LEFT_WHEEL, OUTER);
    trace_wheel(v, s, GW_RIGHT_WHEEL, INNER);
}

static void key(gw_behind_sheet *s, const char *text, int style)
{
    s->key[s->n_keys] = text;
    s->key_style[s->n_keys++] = style;
}

/* "roll centre, 62 mm above the ground" */
static void put_centre(gw_behind_sheet *s, double height)
{
    double mm = gw_unit_out(GW_UNIT_MM, height);
    double *at = gw_charts_room(s->charts, 2, sizeof *at);
    bool near = fabs(height) <= FARTHEST;
    gw_buf words = { 0 };
    if (!at || !isfinite(height)) return;
    at[0] = 0.0;
    at[1] = mm;
    gw_buf_fmt(&words, "roll centre, %s mm %s the ground%s", gw_fixed(fabs(mm), 0).s,
               mm < 0 ? "below" : "above", near ? "" : ", not drawn");
    key(s, gw_charts_kept(s->charts, &words), CENTRE);
    if (!near) return;
    s->mark[s->n_marks++] =
        (gw_chart_mark){ .kind = GW_MARK_POINT, .x = at, .y = at + 1, .n = 1, .style = CENTRE };
}

static void put_keys(const gw_behind *v, gw_behind_sheet *s)
{
    gw_buf words = { 0 };
    gw_buf_fmt(&words, "body, leaning %s deg", gw_fixed(gw_unit_out(GW_UNIT_DEG, v->under->roll), 2).s);
    key(s, gw_charts_kept(s->charts, &words), BODY);
    key(s, "outer wheel, its parts", OUTER);
    key(s, "inner wheel, its parts", INNER);
    if (v->pair->n_shared) key(s, "what they share", SHARED);
}

/* So that the middle of the car is the middle of the picture. */
static double half_width(const gw_behind_sheet *s)
{
    double half = 0.0;
    for (int m = 0; m < s->n_marks; m++)
        for (int i = 0; i < s->mark[m].n; i++) half = fmax(half, fabs(s->mark[m].x[i]));
    return 1.04 * half;
}

static void draw(gw_behind v, gw_behind_sheet *s, double height, const char *title, const char *what,
                 const char *stem)
{
    char note[TEXT];
    const gw_picture *under = v.under;
    v.under = NULL;
    trace_all(&v, s);
    v.under = under;
    trace_all(&v, s);
    s->mark[s->n_marks++] = (gw_chart_mark){ .kind = GW_MARK_LEVEL, .from = 0.0, .name = "ground" };
    put_keys(&v, s);
    put_centre(s, height);
    snprintf(note, sizeof note,
             "Roll and every movement are drawn %d times as large; grey: standing still. "
             "The roll centre is that of a little roll about standing still.",
             (int)GW_BEHIND_FACTOR);
    const double half = half_width(s);
    const gw_figure figure = { .words = { title, v.c->title, "to the right of the car's middle (mm)",
                                          "above the ground (mm)", note, what },
                               .x = { .fixed = true, .from = -half, .to = half },
                               .true_shape = true,
                               .mark = s->mark,
                               .n = s->n_marks,
                               .keys = s->key,
                               .key_styles = s->key_style,
                               .n_keys = s->n_keys };
    gw_charts_figure(s->charts, stem, &figure);
}

void gw_behind_chart(const gw_case *c, const gw_picture_study *pictures, const gw_axle_pictures *of, int load,
                     const char *stem, gw_charts *charts)
{
    const gw_picture *under = &of->load[load];
    const gw_corner *pair = &c->pairs[of->axle];
    if (!under->solved) return;
    double ground = pair->wheel.centre.z - pair->wheel.loaded_radius;
    bool near = isfinite(of->roll_centre) && fabs(of->roll_centre) <= FARTHEST;
    gw_behind v = {
        .c = c, .pair = pair, .mark = pictures->mark[of->axle], .under = under, .ground = ground
    };
    v.turns_at = near ? ground + of->roll_centre : pair->wheel.centre.z;
    for (int w = 0; w < GW_WHEELS; w++) v.camber[w] = of->static_camber[w];
    gw_behind_sheet s = { .charts = charts };
    gw_buf title = { 0 }, what = { 0 };
    gw_buf_add(&what, "The axle from behind (mm), ");
    gw_phrase_load(&c->loads[load], &what);
    gw_buf_fmt(&title, "The body leans %s deg over the %s axle with %s",
               gw_fixed(gw_unit_out(GW_UNIT_DEG, under->roll), 2).s, gw_axle_name(of->axle),
               gw_kit_said(c, of->kit));
    draw(v, &s, of->roll_centre, gw_charts_kept(charts, &title), gw_charts_kept(charts, &what), stem);
}

void gw_behind_charts(const gw_case *c, const gw_deflect_study *deflect, const gw_picture_study *pictures,
                      gw_charts *charts)
{
    int load = gw_pick_load(c, deflect, GW_PICK_CORNER);
    for (int i = 0; load >= 0 && i < pictures->n; i++) {
        const gw_axle_pictures *of = &pictures->item[i];
        gw_behind_chart(
            c, pictures, of, load,
            gw_charts_fmt(charts, "axle-%s-%.120s", gw_axle_name(of->axle), c->kits[of->kit].name), charts);
    }
}
