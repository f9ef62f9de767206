/* SPDX-License-Identifier: MIT */
/*
 * Tilt of joints: the angle between the bush's axis in one body and in the other.
 *
 * The spin s of a free link about its own line d turns the axis w in the link and leaves the axis u in the
 * body at that end:
 *     cos tilt = (u.d)(w.d) + |u x d| |w x d| cos(s - s_end),
 * so each end has one best spin and its tilt only grows on either side of it. Between the best spins of the
 * two ends one tilt grows and the other falls; where their shares of the limits meet, the larger is smallest.
 */
#include "corner/workspace.h"
#include "giveway/corner_travel.h"

static const double FREE_SEAT = 1e-4; /* a seat this near the line lets the link spin [m]       */
static const double FREE_AXIS = 1e-9; /* an axis this near the line does not feel the spin [-]  */
enum { BISECTIONS = 60 };

/* One end of a free link, and the axis of its bush in the link and in the body beside it. */
typedef struct gw_link_end {
    int joint;
    gw_vec3 at;          /* in the link's design position */
    gw_vec3 own, beside; /* now */
    double limit;        /* [rad] */
} gw_link_end;

static double angle_between(gw_vec3 a, gw_vec3 b)
{
    return atan2(gw_norm(gw_cross(a, b)), gw_dot(a, b));
}

static double tilt_as_solved(const gw_link *link, const gw_state *state)
{
    gw_vec3 axis = gw_col(&link->frame, 2);
    return angle_between(gw_mul(&state->pose[link->a].r, axis), gw_mul(&state->pose[link->b].r, axis));
}

static bool on_line(gw_vec3 point, gw_vec3 from, gw_vec3 line)
{
    return gw_norm(gw_cross(gw_sub(point, from), line)) <= FREE_SEAT * gw_norm(line);
}

/* The two ends of a member that spins about the line between them; false where it does not. */
static bool free_ends(const gw_corner_ws *ws, int body, gw_link_end end[2])
{
    const gw_corner *corner = ws->corner;
    int n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_link *link = &ws->link[j];
        if (link->a != body && link->b != body) continue;
        if (n == 2 || !link->turns_freely) return false;
        end[n++] = (gw_link_end){ .joint = j, .at = link->a == body ? link->pa : link->pb };
    }
    if (n != 2) return false;
    gw_vec3 line = gw_sub(end[1].at, end[0].at);
    if (gw_norm(line) <= 1e-6) return false;
    for (int w = 0; w < ws->n_wheels; w++) {
        const gw_damper *damper = w == GW_LEFT_WHEEL ? &corner->damper : &corner->right_damper;
        gw_vec3 eye = gw_sub(damper->at, ws->datum);
        if (ws->wheel[w].spring_body == body && !on_line(ws->wheel[w].spring_at, end[0].at, line))
            return false;
        if (damper->present && damper->body == body && !on_line(eye, end[0].at, line)) return false;
    }
    return true;
}

static void place_end(const gw_corner_ws *ws, const gw_state *state, int body, gw_link_end *end)
{
    const gw_link *link = &ws->link[end->joint];
    int other = link->a == body ? link->b : link->a;
    gw_vec3 axis = gw_col(&link->frame, 2);
    end->own = gw_mul(&state->pose[body].r, axis);
    end->beside = gw_mul(&state->pose[other].r, axis);
}

/* The spin about the unit line `d` that tilts this end least; false where spin makes no difference to it. */
static bool best_spin(const gw_link_end *end, gw_vec3 d, double *spin)
{
    gw_vec3 w = gw_cross(d, end->own), u = gw_cross(d, end->beside);
    if (gw_norm(w) < FREE_AXIS || gw_norm(u) < FREE_AXIS) return false;
    *spin = atan2(gw_dot(d, gw_cross(w, u)), gw_dot(w, u));
    return true;
}

static double tilt_at(const gw_link_end *end, gw_vec3 d, double spin)
{
    gw_mat3 turn = gw_rot_exp(gw_scale(spin, d));
    return angle_between(end->beside, gw_mul(&turn, end->own));
}

/* Share of the limit at spin first + t (second - first). */
static double share(const gw_link_end *end, gw_vec3 d, double first, double second, double t)
{
    return tilt_at(end, d, first + t * (second - first)) / end->limit;
}

static double easiest_spin(const gw_link_end end[2], gw_vec3 d)
{
    double s[2] = { 0.0, 0.0 }, low = 0.0, high = 1.0;
    bool feels[2] = { best_spin(&end[0], d, &s[0]), best_spin(&end[1], d, &s[1]) };
    if (!feels[1] || !(end[1].limit > 0.0)) return s[0];
    if (!feels[0] || !(end[0].limit > 0.0)) return s[1];
    s[1] = s[0] + remainder(s[1] - s[0], 2.0 * acos(-1.0));
    if (share(&end[0], d, s[0], s[1], 0.0) >= share(&end[1], d, s[0], s[1], 0.0)) return s[0];
    if (share(&end[1], d, s[0], s[1], 1.0) >= share(&end[0], d, s[0], s[1], 1.0)) return s[1];
    for (int i = 0; i < BISECTIONS; i++) {
        double t = 0.5 * (low + high);
        if (share(&end[0], d, s[0], s[1], t) < share(&end[1], d, s[0], s[1], t))
            low = t;
        else
            high = t;
    }
    return s[0] + 0.5 * (low + high) * (s[1] - s[0]);
}

static void tilt_of_free_link(const gw_corner_ws *ws, const gw_state *state, int body, gw_link_end end[2],
                              const double *limit, double *tilt)
{
    gw_vec3 line = gw_mul(&state->pose[body].r, gw_sub(end[1].at, end[0].at));
    gw_vec3 d = gw_scale(1.0 / gw_norm(line), line);
    for (int i = 0; i < 2; i++) {
        place_end(ws, state, body, &end[i]);
        end[i].limit = limit[end[i].joint];
    }
    double spin = easiest_spin(end, d);
    for (int i = 0; i < 2; i++) tilt[end[i].joint] = tilt_at(&end[i], d, spin);
}

void gw_corner_tilt(const gw_corner_ws *ws, const gw_state *state, const double *limit, double *tilt)
{
    for (int j = 0; j < ws->corner->n_joints; j++) tilt[j] = tilt_as_solved(&ws->link[j], state);
    for (int b = GW_UPRIGHT + 1; b < ws->corner->n_bodies; b++) {
        gw_link_end end[2];
        if (free_ends(ws, b, end)) tilt_of_free_link(ws, state, b, end, limit, tilt);
    }
}
