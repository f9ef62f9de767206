/* SPDX-License-Identifier: MIT */
/*
 * D = L diag(d) L^T on a skyline, for eight frequencies at once, without pivoting: loss makes the
 * imaginary part of D positive, which keeps the pivots away from zero (Higham, Accuracy and Stability
 * of Numerical Algorithms, 2002, ch. 10, on complex symmetric matrices with definite parts).
 */
#include "bush/dynamic.h"
#include "ride/model.h"

#include "giveway/units.h"

#include <math.h>

/* Bush laws know real frequencies only; a complex p counts by its size. */
static void update_zener(const gw_dynamic_law *law, const gw_lanes *p, gw_lanes *out)
{
    const gw_dynamic_law zener = { .ratio = 1.0,
                                   .zener_gain = law->zener_gain,
                                   .zener_tau = law->zener_tau,
                                   .zener_alpha = law->zener_alpha };
    for (int l = 0; l < GW_LANES; l++) {
        double size = p->re[l] == 0.0 ? fabs(p->im[l]) : hypot(p->re[l], p->im[l]);
        gw_lanes_put(out, l, gw_dynamic_factor(&zener, size / (2.0 * GW_PI), 0.0));
    }
}

static void update_laws(gw_ride_model *model, const gw_lanes *p)
{
    for (int i = 0; i < model->n_zeners; i++) {
        update_zener(model->zener[i], p, &model->zener_now[i]);
        for (int l = 0; l < GW_LANES; l++) model->zener_now[i].im[l] *= model->draw.loss;
    }
}

static inline void add_element(gw_ride_model *model, const gw_ride_element *e)
{
    for (int i = 0; i < e->n; i++)
        for (int j = 0; j < e->n; j++)
            if (e->dof[i] >= e->dof[j])
                gw_lanes_axpy(&model->factor[model->base[e->dof[i]] + e->dof[j]], e->row[i] * e->row[j],
                              e->now);
}

/* Sliders beside a joint's rates; where they are not let in, what they alone resist is held. */
static inline void add_dashpots(gw_ride_model *model, const gw_lanes *p, gw_damping_share share)
{
    gw_lanes part = *p;
    for (int l = 0; l < GW_LANES; l++) part.re[l] *= share;
    for (int l = 0; l < GW_LANES; l++) part.im[l] *= share;
    for (int i = 0; i < model->n_entries; i++)
        if (model->dash[i] != 0.0) gw_lanes_axpy(&model->factor[i], model->dash[i], &part);
    for (int r = 0; r < model->n && share < 1.0; r++)
        for (int l = 0; model->dashed[r] && l < GW_LANES; l++)
            model->factor[model->base[r] + r].re[l] += (1.0 - share) * GW_RIDE_GROUND;
}

/* All the pure elements of a law. */
static inline void add_law(gw_ride_model *model, int law, gw_damping_share share)
{
    const double *sum = model->zener_sum + (size_t)law * (size_t)model->n_entries;
    gw_lanes k = model->zener_now[law];
    for (int l = 0; l < GW_LANES; l++) k.im[l] *= share;
    for (int i = 0; i < model->n_entries; i++)
        if (sum[i] != 0.0) gw_lanes_axpy(&model->factor[i], sum[i], &k);
}

GW_WIDE void gw_ride_assemble(gw_ride_model *model, const gw_lanes *p, gw_damping_share share)
{
    gw_lanes p2 = gw_lanes_product(p, p);
    for (int i = 0; i < model->n_entries; i++) {
        gw_lanes *d = &model->factor[i];
        double re = creal(model->fixed[i]), im = share * cimag(model->fixed[i]), m = model->mass[i];
        for (int l = 0; l < GW_LANES; l++) d->re[l] = re + m * p2.re[l];
        for (int l = 0; l < GW_LANES; l++) d->im[l] = im + m * p2.im[l];
    }
    update_laws(model, p);
    for (int i = 0; i < model->n_zeners; i++) add_law(model, i, share);
    if (model->n_sliders) add_dashpots(model, p, share);
    for (int k = 0; k < model->n_elements; k++) {
        gw_ride_element *e = &model->elements[k];
        if (e->constant || e->pure) continue;
        gw_element_update(model, e, p, share);
        add_element(model, e);
    }
}

typedef void sub_products(gw_lanes *restrict y, const gw_lanes *restrict a, const gw_lanes *restrict b,
                          const gw_stretch_of_row *run, int n_runs);

/* Entry (r, c) less the part of the columns before c, for one row. */
static inline void reduce_row(gw_ride_model *model, int r, sub_products *sub)
{
    gw_lanes *row = model->factor + model->base[r];
    const gw_stretch_of_row *run = model->row_run + model->first_row_run[r];
    const int n_runs = model->first_row_run[r + 1] - model->first_row_run[r];
    for (int i = 0; i < n_runs; i++)
        for (int c = run[i].first; c < run[i].first + run[i].n; c++) {
            const int *first = model->first_run + model->base[r] + c;
            sub(&row[c], row, model->factor + model->base[c], model->run + first[0], first[1] - first[0]);
        }
    for (int i = 0; i < n_runs; i++)
        for (int c = run[i].first; c < run[i].first + run[i].n; c++) {
            gw_lanes scaled = gw_lanes_product(&row[c], &model->pivot[c]);
            gw_lanes_sub_product(&row[r], &row[c], &scaled);
            row[c] = scaled;
        }
    model->pivot[r] = gw_lanes_inverse(&row[r]);
}

GW_WIDE static void reduce(gw_ride_model *model)
{
    for (int r = 0; r < model->n; r++) reduce_row(model, r, gw_lanes_sub_products);
}

#ifdef GW_EIGHT
GW_EIGHT static void reduce_eight(gw_ride_model *model)
{
    for (int r = 0; r < model->n; r++) reduce_row(model, r, gw_lanes_sub_products_of_eight);
}
#endif

void gw_ride_factorise(gw_ride_model *model, const gw_lanes *p, gw_damping_share share)
{
    gw_ride_assemble(model, p, share);
    model->evaluations += GW_LANES;
#ifdef GW_EIGHT
    if (GW_HAS_EIGHT) {
        reduce_eight(model);
        return;
    }
#endif
    reduce(model);
}

GW_WIDE void gw_ride_backsolve(const gw_ride_model *model, int first, gw_lanes *x)
{
    for (int r = first + 1; r < model->n; r++) {
        const gw_lanes *row = model->factor + model->base[r];
        for (int i = model->first_row_run[r]; i < model->first_row_run[r + 1]; i++) {
            const gw_stretch_of_row run = model->row_run[i];
            for (int c = run.first > first ? run.first : first; c < run.first + run.n; c++)
                gw_lanes_sub_product(&x[r], &row[c], &x[c]);
        }
    }
    for (int r = first; r < model->n; r++) x[r] = gw_lanes_product(&x[r], &model->pivot[r]);
    for (int r = model->n - 1; r >= 0; r--) {
        const gw_lanes *row = model->factor + model->base[r];
        for (int i = model->first_row_run[r]; i < model->first_row_run[r + 1]; i++) {
            const gw_stretch_of_row run = model->row_run[i];
            for (int c = run.first; c < run.first + run.n; c++) gw_lanes_sub_product(&x[c], &row[c], &x[r]);
        }
    }
}

static inline void add_dash_slope(const gw_ride_model *model, gw_damping_share share, const gw_lanes *x,
                                  gw_lanes *y)
{
    for (int r = 0; r < model->n; r++) {
        const double *b = model->dash + model->base[r];
        for (int c = model->start[r]; c <= r; c++) {
            if (b[c] == 0.0) continue;
            gw_lanes_axpy(&y[r], share * b[c], &x[c]);
            if (c < r) gw_lanes_axpy(&y[c], share * b[c], &x[r]);
        }
    }
}

GW_WIDE void gw_ride_slope_times(const gw_ride_model *model, const gw_lanes *p, gw_damping_share share,
                                 const gw_lanes *x, gw_lanes *y)
{
    for (int r = 0; r < model->n; r++) gw_lanes_fill(&y[r], 0.0);
    for (int r = 0; r < model->n; r++) {
        const double *m = model->mass + model->base[r];
        for (int c = model->start[r]; c <= r; c++) {
            if (m[c] == 0.0) continue;
            gw_lanes_axpy(&y[r], 2.0 * m[c], &x[c]);
            if (c < r) gw_lanes_axpy(&y[c], 2.0 * m[c], &x[r]);
        }
    }
    for (int r = 0; r < model->n; r++) y[r] = gw_lanes_product(&y[r], p);
    if (model->n_sliders) add_dash_slope(model, share, x, y);
    for (int k = 0; k < model->n_elements; k++) {
        const gw_ride_element *e = &model->elements[k];
        if (e->constant || e->kind == GW_ELEMENT_BUSH) continue;
        gw_lanes slope, moved = gw_element_deflection(e, x);
        gw_element_slope(model, e, p, share, &slope);
        slope = gw_lanes_product(&slope, &moved);
        for (int i = 0; i < e->n; i++) gw_lanes_axpy(&y[e->dof[i]], e->row[i], &slope);
    }
}
