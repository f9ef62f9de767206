/* SPDX-License-Identifier: MIT */
/*
 * Free motions. A link with ball joints at both ends turns about its own line: harmless, and held. A free
 * motion that moves the upright is a mechanism, and an error.
 *
 * What is free does not depend on how stiff a bush is, only on which of its rates are zero. So the test
 * gives every rate that is there the value one (rotations over a length of 0.3 m), adds one more constraint,
 * and looks for the null space: soft bushes beside stiff ones cannot blur it. The one more is the wheel's
 * travel, which a load prescribes, and in a second look the spring's length, which carries the wheel in its
 * place. With travel as unknown and the spring's force as answer, the equations have a solution only where
 * both hold all: a wheel without a tie rod that rises as it steers is held by its travel, but by no force.
 *
 * A hold is a link to the chassis that resists turning about one line and nothing else. The motion it holds
 * is free, so it carries no moment, unless a spring seat lies off the line.
 */
#include "bush/panels.h"
#include "corner/eigen.h"
#include "corner/workspace.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <string.h>

static const double NOTHING = 1e-12; /* eigenvalue, of the largest, that counts as none            */
static const double CLEARLY = 8e-12; /* above this, all are something whatever the rounding        */
static const double MOVES = 1e-5;    /* share of the upright in a free motion that makes it matter */
static const double HOLD = 1e10;     /* [N m/rad]: 100 N m turn a held link by less than 1e-6 deg  */
static const double SEAT_OFF = 1e-4; /* distance off the joint line that is worth a warning [m]    */

static void add_hold(gw_corner_ws *ws, int body, gw_vec3 axis)
{
    gw_link *link = &ws->link[ws->n_links++];
    gw_vec3 e3 = gw_scale(1.0 / gw_norm(axis), axis);
    gw_vec3 away = fabs(e3.x) < 0.7 ? gw_v3(1, 0, 0) : gw_v3(0, 1, 0);
    gw_vec3 e1 = gw_axpy(away, -gw_dot(away, e3), e3);
    e1 = gw_scale(1.0 / gw_norm(e1), e1);
    memset(link, 0, sizeof *link);
    link->a = GW_CHASSIS;
    link->b = body;
    link->frame = gw_mat3_from_columns(e1, gw_cross(e3, e1), e3);
    link->hand = 1.0;
    link->law = gw_bush_law_zero();
    link->law.c[2] = HOLD;
    link->linear = true;
}

static double off_line(gw_vec3 point, gw_vec3 from, gw_vec3 unit)
{
    return gw_norm(gw_cross(gw_sub(point, from), unit));
}

static void warn_seat(gw_corner_ws *ws, const char *what, int body, const char *also, double distance)
{
    if (distance <= SEAT_OFF) return;
    gw_fail(
        gw_next_warning(ws), GW_OK,
        "%s corner: the %s on %s lies %.1f mm off the line between its two free joints%s; the member would "
        "roll over, so its spin about that line is held",
        ws->corner->name, what, ws->corner->bodies[body].name, 1e3 * distance, also);
}

static int joints_on(const gw_corner_ws *ws, int body, bool *all_free)
{
    int count = 0;
    *all_free = true;
    for (int j = 0; j < ws->corner->n_joints; j++) {
        const gw_link *link = &ws->link[j];
        if (!gw_link_is_on(link, body)) continue;
        *all_free = *all_free && link->turns_freely;
        count++;
    }
    return count;
}

/* A member with two joints that both turn freely: a drop link, a tie rod. It holds no other from spinning. */
static bool is_free_link(const gw_corner_ws *ws, int body)
{
    bool all_free;
    return body != GW_CHASSIS && !gw_is_upright(ws, body) && joints_on(ws, body, &all_free) == 2 && all_free;
}

static bool reaches_upright(const gw_corner_ws *ws, int body)
{
    for (int j = 0; j < ws->corner->n_joints; j++) {
        const gw_link *link = &ws->link[j];
        if (link->a == body && gw_is_upright(ws, link->b)) return true;
        if (link->b == body && gw_is_upright(ws, link->a)) return true;
    }
    return false;
}

/* A bar's link: it follows the member that it hangs on, where a tie rod is held by the wheel. */
static bool is_bar_link(const gw_corner_ws *ws, int body)
{
    return is_free_link(ws, body) && !reaches_upright(ws, body);
}

/* A joint of a member is beside its line where the member has two others and this one leads to a bar's link.
 */
static bool is_beside(const gw_corner_ws *ws, int body, const gw_link *link)
{
    bool all_free;
    return joints_on(ws, body, &all_free) > 2 && is_bar_link(ws, link->a == body ? link->b : link->a);
}

/* The two joints of a member that all turn freely, those beside its line left out; false where it has others.
 */
static bool free_pair(const gw_corner_ws *ws, int body, gw_vec3 end[2])
{
    int count = 0;
    for (int j = 0; j < ws->corner->n_joints; j++) {
        const gw_link *link = &ws->link[j];
        if (!gw_link_is_on(link, body)) continue;
        if (!link->turns_freely) return false;
        if (is_beside(ws, body, link)) continue;
        if (count == 2) return false;
        end[count++] = link->a == body ? link->pa : link->pb;
    }
    return count == 2 && gw_norm(gw_sub(end[0], end[1])) > 1e-6;
}

/* A bar's link off the line rolls the member over, as a spring seat does. */
static void warn_links(gw_corner_ws *ws, int body, gw_vec3 from, gw_vec3 unit)
{
    for (int j = 0; j < ws->corner->n_joints; j++) {
        const gw_link *link = &ws->link[j];
        if (gw_link_is_on(link, body) && is_beside(ws, body, link))
            warn_seat(ws, "link", body, "", off_line(link->a == body ? link->pa : link->pb, from, unit));
    }
}

/* Springs and dampers of an axle are mirror images: the left one speaks for both. */
static void warn_seats(gw_corner_ws *ws, int body, gw_vec3 from, gw_vec3 unit)
{
    const gw_corner *corner = ws->corner;
    const gw_damper *damper = &corner->damper;
    const char *also = gw_is_pair(corner) && body < corner->first_shared ? ", as on the right" : "";
    if (ws->wheel[GW_LEFT_WHEEL].spring_body == body)
        warn_seat(ws, "spring seat", body, also, off_line(ws->wheel[GW_LEFT_WHEEL].spring_at, from, unit));
    if (damper->present && damper->body == body)
        warn_seat(ws, "damper eye", body, also, off_line(gw_sub(damper->at, ws->datum), from, unit));
}

void gw_freedom_hold_links(gw_corner_ws *ws)
{
    for (int b = GW_UPRIGHT + 1; b < ws->corner->n_bodies; b++) {
        gw_vec3 end[2];
        if (gw_is_upright(ws, b) || !free_pair(ws, b, end)) continue;
        gw_vec3 line = gw_sub(end[1], end[0]), unit = gw_scale(1.0 / gw_norm(line), line);
        add_hold(ws, b, unit);
        warn_seats(ws, b, end[0], unit);
        warn_links(ws, b, end[0], unit);
    }
}

/* Two bodies at most are in a row. */
static void add_row(gsl_matrix *gram, const double *row)
{
    size_t used[12], n = 0;
    for (size_t i = 0; i < gram->size1; i++)
        if (row[i] != 0.0) used[n++] = i;
    for (size_t i = 0; i < n; i++) {
        double *target = gram->data + used[i] * gram->tda;
        for (size_t j = 0; j < n; j++) target[used[j]] += row[used[i]] * row[used[j]];
    }
}

static void fill_row(double *row, size_t n, const gw_link *link, const double b[6], double scale)
{
    memset(row, 0, n * sizeof *row);
    for (int j = 0; j < 6; j++) {
        double value = scale * b[j] / (j < 3 ? 1.0 : GW_MOTION_LENGTH);
        if (link->b != GW_CHASSIS) row[6 * (link->b - 1) + j] += value;
        if (link->a != GW_CHASSIS) row[6 * (link->a - 1) + j] -= value;
    }
}

static void fill_force_row(double *row, size_t n, int body, gw_vec3 at, gw_vec3 along)
{
    gw_vec3 lever = gw_scale(1.0 / GW_MOTION_LENGTH, gw_cross(at, along));
    const double six[6] = { along.x, along.y, along.z, lever.x, lever.y, lever.z };
    memset(row, 0, n * sizeof *row);
    memcpy(row + 6 * (body - 1), six, sizeof six);
}

static void fill_travel_row(double *row, size_t n, const gw_wheel_ws *wheel)
{
    fill_force_row(row, n, wheel->upright, wheel->hub, gw_v3(0, 0, 1));
}

static void fill_spring_row(double *row, size_t n, const gw_wheel_ws *wheel)
{
    gw_vec3 line = gw_sub(wheel->spring_at, wheel->spring_to);
    fill_force_row(row, n, wheel->spring_body, wheel->spring_at, gw_scale(1.0 / gw_norm(line), line));
}

static void fill_gram(const gw_corner_ws *ws, bool with_spring, gsl_matrix *gram, double *row)
{
    size_t n = gram->size1;
    gsl_matrix_set_zero(gram);
    for (int j = 0; j < ws->n_links; j++) {
        const gw_link *link = &ws->link[j];
        double b[6][6];
        gw_link_jacobian(&link->frame, link->at, b);
        for (int i = 0; i < 6; i++) {
            double rate = i < 3 ? link->law.k[i] : link->law.c[i - 3];
            if (rate == 0.0) continue;
            fill_row(row, n, link, b[i], i < 3 ? 1.0 : GW_MOTION_LENGTH);
            add_row(gram, row);
        }
    }
    for (int w = 0; w < ws->n_wheels; w++) {
        if (with_spring)
            fill_spring_row(row, n, &ws->wheel[w]);
        else
            fill_travel_row(row, n, &ws->wheel[w]);
        add_row(gram, row);
    }
}

/* Of the free motions `null` (columns), the one that moves the uprights most; false where none does. */
static bool moves_upright(const gw_corner_ws *ws, const gsl_matrix *vectors, size_t n_null, double *motion)
{
    size_t n = vectors->size1, row = 0;
    double best = 0.0;
    for (size_t i = 0; i < 6 * (size_t)ws->n_wheels; i++) {
        size_t at = 6 * (size_t)(ws->wheel[i / 6].upright - 1) + i % 6;
        double sum = 0.0;
        for (size_t k = 0; k < n_null; k++) sum += pow(gsl_matrix_get(vectors, at, k), 2);
        if (sum > best) {
            best = sum;
            row = at;
        }
    }
    if (best < MOVES * MOVES) return false;
    for (size_t i = 0; i < n; i++) {
        motion[i] = 0.0;
        for (size_t k = 0; k < n_null; k++)
            motion[i] += gsl_matrix_get(vectors, row, k) * gsl_matrix_get(vectors, i, k);
    }
    return true;
}

static gw_status report_mechanism(const gw_corner_ws *ws, const double *motion, gw_error *err)
{
    char names[160] = "";
    size_t used = 0;
    int mover = gw_motion_mover(ws, motion);
    for (int b = GW_UPRIGHT; b < ws->corner->n_bodies; b++) {
        const char *name = ws->corner->bodies[b].name;
        size_t length = strlen(name);
        if (b == mover || (b == GW_UPRIGHT && ws->n_wheels == 1)) continue;
        if (gw_motion_share(ws, motion, b) < 1e-3 * gw_motion_share(ws, motion, mover)) continue;
        if (used + length + 3 > sizeof names) break;
        memcpy(names + used, used ? ", " : "", used ? 2 : 0);
        used += used ? 2 : 0;
        memcpy(names + used, name, length + 1);
        used += length;
    }
    return gw_fail(err, GW_E_MECHANISM,
                   "the %s %s is a mechanism: %s%s %s without resistance%s%s; add a joint or give "
                   "a bush a rate in that direction",
                   ws->corner->name, gw_corner_or_axle(ws), gw_motion_article(ws, mover),
                   ws->corner->bodies[mover].name, gw_motion_way(ws, motion, mover),
                   used ? ", together with " : "", names);
}

static void column_of(const gsl_matrix *vectors, double *motion)
{
    for (size_t i = 0; i < vectors->size1; i++) motion[i] = gsl_matrix_get(vectors, i, 0);
}

static gw_status report_loose(const gw_corner_ws *ws, const double *motion, gw_error *err)
{
    int most = GW_UPRIGHT;
    for (int b = GW_UPRIGHT; b < ws->corner->n_bodies; b++)
        if (gw_motion_share(ws, motion, b) > gw_motion_share(ws, motion, most)) most = b;
    return gw_fail(err, GW_E_MECHANISM,
                   "the %s %s has a member that nothing holds in place: %s %s; give one of its joints a rate",
                   ws->corner->name, gw_corner_or_axle(ws), ws->corner->bodies[most].name,
                   gw_motion_way(ws, motion, most));
}

static bool is_loosened(const gw_corner_ws *ws, int body)
{
    for (int j = 0; j < ws->corner->n_joints; j++)
        if (gw_link_is_on(&ws->link[j], body) && ws->link[j].law.loosened) return true;
    return false;
}

/* Hold the member that a harmless free motion turns most; what both wheels share must be held by the case. */
static gw_status hold_motion(gw_corner_ws *ws, const gsl_matrix *vectors, int room, double *motion,
                             gw_error *err)
{
    const gw_corner *corner = ws->corner;
    int best = -1;
    double most = 0.0;
    gw_vec3 axis = { 0, 0, 0 };
    column_of(vectors, motion);
    for (int b = GW_UPRIGHT + 1; b < corner->n_bodies; b++) {
        const double *m = &motion[6 * (b - 1) + 3];
        gw_vec3 v = gw_v3(m[0], m[1], m[2]);
        if (gw_is_upright(ws, b) || !(gw_norm(v) > most)) continue;
        most = gw_norm(v);
        best = b;
        axis = v;
    }
    bool shared = best >= corner->first_shared && best < corner->first_shared + corner->n_shared;
    shared = shared && !is_loosened(ws, best);
    if (best < 0 || most < MOVES || shared || ws->n_links >= room) return report_loose(ws, motion, err);
    add_hold(ws, best, axis);
    return GW_OK;
}

/*
 * Most corners have nothing free, and that is told without eigenvalues: a symmetric matrix less a multiple of
 * the identity has a Cholesky factor only if all its eigenvalues lie above that multiple, but for rounding,
 * which is at most n (n + 1) unit roundoffs of the largest one (Higham, Accuracy and Stability of
 * Numerical Algorithms, 2nd ed. 2002, section 10.1): 4e-12 of it for the 31 bodies a corner may have. No row
 * sum of magnitudes lies below the largest (Gershgorin). So what passes at eight times the limit has nothing
 * below it, and whatever does not pass is looked at closely. `work` holds the factor.
 */
static bool is_held(const gsl_matrix *gram, gsl_matrix *work)
{
    double largest = 0.0;
    for (size_t i = 0; i < gram->size1; i++) {
        gsl_vector_const_view row = gsl_matrix_const_row(gram, i);
        largest = fmax(largest, gsl_blas_dasum(&row.vector));
    }
    gsl_matrix_memcpy(work, gram);
    gsl_vector_view diagonal = gsl_matrix_diagonal(work);
    gsl_vector_add_constant(&diagonal.vector, -CLEARLY * largest);
    const int n = (int)work->size1;
    const gw_lower lower = { .data = work->data, .step = work->tda + 1, .n = n, .reach = n - 1 };
    return gw_panels_factor(&lower, n, NULL) == GW_OK;
}

static size_t count_null(const gsl_vector *values)
{
    size_t n = 0;
    double largest = gsl_vector_get(values, values->size - 1);
    while (n < values->size && gsl_vector_get(values, n) < NOTHING * largest) n++;
    return n;
}

typedef struct gw_null_search {
    gw_eigen eigen; /* of the Gram matrix */
    double *row;
} gw_null_search;

static gw_status find_null(gw_null_search *s, const gw_corner_ws *ws, bool with_spring, size_t *n_null,
                           gw_error *err)
{
    gw_eigen *e = &s->eigen;
    fill_gram(ws, with_spring, e->a, s->row);
    *n_null = 0;
    if (is_held(e->a, e->vectors)) return GW_OK;
    if (!gw_eigen_solve(e))
        return gw_fail(err, GW_E_NUMERIC, "the %s %s: eigenvalues not found", ws->corner->name,
                       gw_corner_or_axle(ws));
    *n_null = count_null(e->values);
    return GW_OK;
}

/* With the travel given: harmless motions are held one by one, one that moves the upright is an error. */
static gw_status settle_at_travel(gw_null_search *s, gw_corner_ws *ws, gw_error *err)
{
    int room = ws->corner->n_joints + 3 * ws->corner->n_bodies;
    size_t n_null = 0;
    gw_status status;
    while ((status = find_null(s, ws, false, &n_null, err)) == GW_OK && n_null > 0) {
        if (moves_upright(ws, s->eigen.vectors, n_null, s->row)) return report_mechanism(ws, s->row, err);
        if ((status = hold_motion(ws, s->eigen.vectors, room, s->row, err)) != GW_OK) return status;
    }
    return status;
}

/* On the spring: what is harmless is held by now, so only what moves the upright is left to find. */
static gw_status check_on_spring(gw_null_search *s, const gw_corner_ws *ws, gw_error *err)
{
    size_t n_null = 0;
    gw_status status = find_null(s, ws, true, &n_null, err);
    if (status == GW_OK && n_null > 0 && moves_upright(ws, s->eigen.vectors, n_null, s->row))
        status = report_mechanism(ws, s->row, err);
    return status;
}

gw_status gw_freedom_settle(gw_corner_ws *ws, gw_error *err)
{
    gw_null_search search;
    size_t n = 6 * (size_t)(ws->corner->n_bodies - 1);
    gw_status status;
    search.row = gw_arena_alloc(&ws->arena, n, sizeof *search.row);
    if (gw_eigen_open(&search.eigen, n) && search.row) {
        gw_freedom_hold_links(ws);
        status = settle_at_travel(&search, ws, err);
        if (status == GW_OK) status = check_on_spring(&search, ws, err);
    } else {
        status = gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", ws->corner->name);
    }
    gw_eigen_close(&search.eigen);
    return status;
}
