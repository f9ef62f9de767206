/* SPDX-License-Identifier: MIT */
/* What a mode looks like, by its shares of kinetic energy. */
#include "ride/modes.h"

#include "giveway/units.h"

#include <math.h>

enum { MAX_PARTS = 8 + GW_MAX_BODIES, WORDS_MAX = sizeof((gw_ride_mode){ 0 }.words) };

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

static int list_parts(const gw_ride_model *model, const double *x, part *out)
{
    static const char *const WHEEL[6] = { "wheel fore-aft", "wheel lateral", "wheel vertical",
                                          "wheel tilt",     "wheel wind-up", "wheel steer" };
    double total = energy(model, x, 0, model->n);
    int n = 0;
    out[n++] = (part){ "body vertical", energy(model, x, model->chassis_z, model->chassis_z + 1) / total };
    out[n++] = (part){ "body fore-aft", energy(model, x, model->chassis_x, model->chassis_x + 1) / total };
    for (int i = 0; i < 6; i++) {
        int r = model->wheel + i;
        out[n++] = (part){ WHEEL[i], energy(model, x, r, r + 1) / total };
    }
    for (int b = GW_UPRIGHT + 1; b < model->corner->n_bodies; b++) {
        int first = model->bodies[b].dof[0], end = model->bodies[b].dof[5] + 1;
        out[n++] = (part){ model->corner->bodies[b].name, energy(model, x, first, end) / total };
    }
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
        gw_fail(&piece, GW_OK, "%s%.25s %.0f %%", count ? ", " : "", parts[most].name,
                100.0 * parts[most].share);
        for (const char *c = piece.msg; *c && used < WORDS_MAX - 1; c++) text[used++] = *c;
        text[used] = '\0';
        parts[most].share = -1.0;
    }
}

void gw_mode_describe(const gw_ride_model *model, const gw_mode_set *set, int index, gw_ride_mode *out)
{
    part parts[MAX_PARTS];
    double complex p = set->pole[index];
    int n = list_parts(model, &set->shape[index * set->n_dofs], parts);
    *out = (gw_ride_mode){ .hz = set->hz[index], .tracked = set->tracked[index] };
    out->body = parts[0].share;
    out->wheel_fore_aft = parts[2].share;
    out->wheel_vertical = parts[4].share;
    out->damped_hz = out->tracked ? cimag(p) / (2.0 * GW_PI) : 0.0;
    out->zeta = out->tracked ? -creal(p) / cabs(p) : 1.0;
    describe(parts, n, out->words);
}
