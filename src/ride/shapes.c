/* SPDX-License-Identifier: MIT */
/* What a mode looks like, by its shares of kinetic energy. */
#include "ride/modes.h"

#include "base/utf8.h"
#include "giveway/units.h"

#include <math.h>

enum { MAX_PARTS = 8 + GW_MAX_BODIES, NAME_BYTES = 25, WORDS_MAX = sizeof((gw_ride_mode){ 0 }.words) };

typedef struct part {
    const char *name;
    double share;
} part;

/* x^T M x over rows and columns first to end - 1. */
static double energy(const gw_ride_model *model, const double *x, int first, int end)
{
    double sum = 0.0;
    for (int r = first; r < end; r++)
        for (int c = model->start[r] > first ? model->start[r] : first; c <= r; c++)
            sum += (c < r ? 2.0 : 1.0) * model->mass[model->base[r] + c] * x[r] * x[c];
    return sum;
}

static bool is_right_upright(const gw_ride_model *model, int body)
{
    return gw_is_pair(model->corner) && body == model->corner->right_upright;
}

/* Where both sides move as one, a member stands for both. */
static const char *name_of(const gw_ride_model *model, int body)
{
    const gw_body *b = &model->corner->bodies[body];
    return model->alike && b->plain ? b->plain : b->name;
}

static double of_body(const gw_ride_model *model, const double *x, int body)
{
    int first = model->n, last = -1;
    for (int i = 0; i < 6; i++) {
        int dof = model->bodies[body].dof[i];
        if (dof < 0) continue;
        if (dof < first) first = dof;
        if (dof > last) last = dof;
    }
    return energy(model, x, first, last + 1);
}

/* Both wheels in one direction. */
static double of_wheels(const gw_ride_model *model, const double *x, int way)
{
    int left = model->wheel + way, right = model->right_wheel + way;
    double sum = energy(model, x, left, left + 1);
    return model->n_wheels > 1 && right != left ? sum + energy(model, x, right, right + 1) : sum;
}

/* The mean of both wheels' movement, so that a motion in which they go opposite ways is none. */
static double of_mean(const gw_ride_model *model, const double *x, int way)
{
    int left = model->wheel + way, right = model->right_wheel + way;
    if (model->n_wheels < 2 || right == left) return energy(model, x, left, left + 1);
    double mean = 0.5 * (x[left] + x[right]);
    return 2.0 * model->mass[model->base[left] + left] * mean * mean;
}

static int list_parts(const gw_ride_model *model, const double *x, part *out)
{
    static const char *const WHEEL[6] = { "wheel fore-aft", "wheel lateral", "wheel vertical",
                                          "wheel tilt",     "wheel wind-up", "wheel steer" };
    double total = energy(model, x, 0, model->n);
    int n = 0;
    out[n++] = (part){ "body vertical", energy(model, x, model->chassis_z, model->chassis_z + 1) / total };
    out[n++] = (part){ "body fore-aft", energy(model, x, model->chassis_x, model->chassis_x + 1) / total };
    for (int i = 0; i < 6; i++) out[n++] = (part){ WHEEL[i], of_wheels(model, x, i) / total };
    for (int b = GW_UPRIGHT + 1; b < model->corner->n_bodies; b++)
        if (model->bodies[b].hand > 0.0 && !is_right_upright(model, b))
            out[n++] = (part){ name_of(model, b), of_body(model, x, b) / total };
    return n;
}

/* The largest parts in falling order, as many as take at least a seventh, three at most. */
static void describe(part *parts, int n, char text[WORDS_MAX])
{
    size_t used = 0;
    text[0] = '\0';
    for (int count = 0; count < 3; count++) {
        gw_error piece;
        int most = 0;
        for (int i = 1; i < n; i++)
            if (parts[i].share > parts[most].share) most = i;
        if (count > 0 && parts[most].share < 1.0 / 7.0) return;
        gw_fail(&piece, GW_OK, "%s%.*s %.0f %%", count ? ", " : "", gw_utf8_fit(parts[most].name, NAME_BYTES),
                parts[most].name, 100.0 * parts[most].share);
        for (const char *c = piece.msg; *c && used < WORDS_MAX - 1; c++) text[used++] = *c;
        text[used] = '\0';
        parts[most].share = -1.0;
    }
}

/* Of the parts that both wheels share, the one that moves most. */
static void find_shared(const gw_ride_model *model, const double *x, double total, gw_ride_mode *out)
{
    const gw_corner *c = model->corner;
    for (int b = c->first_shared; gw_is_pair(c) && b < c->right_upright; b++) {
        double share = of_body(model, x, b) / total;
        if (!(share > out->shared)) continue;
        out->shared = share;
        out->shared_body = b;
    }
}

void gw_mode_describe(const gw_ride_model *model, const gw_mode_set *set, int index, gw_ride_mode *out)
{
    part parts[MAX_PARTS];
    double complex p = set->pole[index];
    int n = list_parts(model, &set->shape[index * set->n_dofs], parts);
    *out = (gw_ride_mode){ .hz = set->hz[index], .tracked = set->tracked[index] };
    out->body = parts[0].share;
    const double *x = &set->shape[index * set->n_dofs];
    double total = energy(model, x, 0, model->n);
    out->wheel_fore_aft = of_mean(model, x, 0) / total;
    out->wheel_vertical = of_mean(model, x, 2) / total;
    find_shared(model, x, total, out);
    out->damped_hz = out->tracked ? cimag(p) / (2.0 * GW_PI) : 0.0;
    out->zeta = out->tracked ? -creal(p) / cabs(p) : 1.0;
    describe(parts, n, out->words);
}
