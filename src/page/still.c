/* SPDX-License-Identifier: MIT */
/* The axle as it is shown first, from behind and from above, as pictures that need no script. */
#include "page/drawing.h"

#include <math.h>

enum { WIDE = 440, HIGH = 250, EDGE = 14, FIRST_FACTOR = 10, CORNERS = 24 };

int gw_page_first_factor(const gw_page *p)
{
    (void)p;
    return FIRST_FACTOR;
}

/* What is drawn: an axle, seen along an axis, at rest (`under` NULL) or in a state. */
typedef struct view {
    const gw_page *p;
    const gw_corner *pair;
    const gw_vec3 *mark;
    const gw_picture *under;
    double centre; /* of roll: the height that the body leans about [m] */
    bool above;
    double scale, mid; /* pixels per metre, what stands in the middle of the height [m] */
} view;

/* The body leans about its roll centre and rises as it does, at its true size; the left wheel is the outer
 * one. */
static gw_vec3 leaned(const view *v, gw_vec3 at)
{
    double roll = v->under->roll, over = at.z - v->centre;
    return gw_v3(at.x, at.y * cos(roll) + over * sin(roll),
                 v->centre + over * cos(roll) - at.y * sin(roll) + v->under->rise);
}

/* In the body's axes the height moves it as it is; what the load adds is exaggerated. */
static gw_vec3 in_body(const view *v, int body, gw_vec3 at)
{
    if (body == GW_CHASSIS) return at;
    const gw_part_move *height = &v->under->by_travel[body], *moved = &v->under->moved[body];
    gw_vec3 turn = gw_axpy(height->turn, FIRST_FACTOR, gw_sub(moved->turn, height->turn));
    gw_vec3 move = gw_axpy(height->move, FIRST_FACTOR, gw_sub(moved->move, height->move));
    gw_mat3 r = gw_rot_exp(turn);
    return gw_add(gw_add(gw_mul(&r, gw_sub(at, v->mark[body])), v->mark[body]), move);
}

static gw_vec3 placed(const view *v, int body, gw_vec3 at)
{
    return v->under ? leaned(v, in_body(v, body, at)) : at;
}

/* From behind, left is left and up is up; from above, left is left and forward is up. */
static void point(const view *v, gw_buf *out, gw_vec3 at, bool first)
{
    gw_buf_fmt(out, "%s%.1f %.1f", first ? "M" : "L", WIDE / 2 - v->scale * at.y,
               HIGH / 2 - v->scale * ((v->above ? at.x : at.z) - v->mid));
}

static gw_vec3 middle(const view *v, int body)
{
    return placed(v, body, v->mark[body]);
}

/* Each part is drawn from its mark to its joints. */
static void parts(const view *v, gw_buf *out)
{
    for (int j = 0; j < v->pair->n_joints; j++) {
        const gw_joint *joint = &v->pair->joints[j];
        const int both[] = { joint->body_a, joint->body_b };
        for (int i = 0; i < 2; i++) {
            if (both[i] == GW_CHASSIS) continue;
            point(v, out, middle(v, both[i]), true);
            point(v, out, placed(v, both[i], joint->at), false);
        }
    }
}

static void rim(const view *v, gw_buf *out, int body, gw_vec3 centre, double side)
{
    double radius = v->pair->wheel.loaded_radius;
    for (int i = 0; i <= CORNERS; i++) {
        double a = 2.0 * acos(-1.0) * i / CORNERS;
        gw_vec3 at = gw_v3(centre.x + radius * cos(a), centre.y + side, centre.z + radius * sin(a));
        point(v, out, placed(v, body, at), i == 0);
    }
}

static void wheels(const view *v, gw_buf *out)
{
    gw_vec3 c = v->pair->wheel.centre;
    for (int w = 0; w < 2; w++)
        for (int side = -1; side <= 1; side += 2)
            rim(v, out, w ? v->pair->right_upright : GW_UPRIGHT, w ? gw_v3(c.x, -c.y, c.z) : c, 0.1 * side);
}

static void layer(view v, const char *kind, const gw_picture *under, gw_buf *out)
{
    v.under = under;
    gw_buf_fmt(out, "<path class=\"%s\" d=\"", kind);
    parts(&v, out);
    wheels(&v, out);
    gw_buf_add(out, "\"/>\n");
}

static void picture(view v, const char *id, gw_words name, const gw_picture *under, gw_buf *out)
{
    gw_buf_fmt(out, "<figure><svg viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s-name\" id=\"%s\">",
               WIDE, HIGH, id, id);
    gw_buf_fmt(out, "<title id=\"%s-name\">", id);
    gw_html_text(out, gw_words_text(name));
    gw_buf_add(out, "</title>\n");
    layer(v, "rest", NULL, out);
    if (under) layer(v, "loaded", under, out);
    gw_buf_add(out, "</svg><figcaption>");
    gw_html_text(out, gw_words_text(name));
    gw_buf_add(out, "</figcaption></figure>\n");
}

void gw_page_first_pictures(const gw_page *p, gw_buf *out)
{
    const gw_axle_pictures *of = gw_pictures_find(&p->r->pictures, p->kit, p->axle);
    const gw_corner *pair = &p->c->pairs[p->axle];
    gw_vec3 centre = pair->wheel.centre;
    double half = fabs(centre.y) + 0.25;
    view v = { .p = p,
               .pair = pair,
               .mark = p->r->pictures.mark[p->axle],
               .centre = centre.z,
               .scale = (WIDE / 2 - EDGE) / half };
    if (of && isfinite(of->roll_centre)) v.centre += of->roll_centre - pair->wheel.loaded_radius;
    const gw_picture *under = of && p->load >= 0 && of->load[p->load].solved ? &of->load[p->load] : NULL;
    v.mid = centre.z + 0.12;
    picture(v, "behind", GW_WORDS_PAGE_BEHIND, under, out);
    v.above = true;
    v.mid = centre.x;
    picture(v, "above", GW_WORDS_PAGE_ABOVE, under, out);
}
