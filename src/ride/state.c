/* SPDX-License-Identifier: MIT */
/* The model as it stands: with a draw of what is not known for sure, at the amplitudes and slips of its
 * bushes. */
#include "bush/dynamic.h"
#include "ride/model.h"

#include <math.h>
#include <string.h>

/* Loss factor of links and lugs. */
static const double LUG_LOSS = 0.02;

static double complex soft_of(const gw_ride_model *model, const gw_ride_element *e)
{
    const gw_ride_draw *draw = &model->draw;
    double complex soft = 0.0;
    if (e->series > 0.0)
        soft += gw_quotient(1.0, e->series * draw->bracket * gw_complex(1.0, draw->bracket_loss));
    if (e->shifts && draw->give > 0.0) soft += gw_quotient(draw->give, gw_complex(1.0, LUG_LOSS));
    return soft;
}

/* Bearings and ball joints are steel: no draw changes them. */
static double complex steady_of(const gw_ride_model *model, const gw_ride_element *e)
{
    const gw_bush_law *law = &model->fit[e->joint].law;
    const gw_ride_draw *draw = &model->draw;
    gw_dynamic_law steady = law->dynamic;
    steady.zener_gain = 0.0;
    double complex k = e->rate * gw_dynamic_factor(&steady, 0.0, model->amplitude[e->joint]);
    if (!law->elastic) return k;
    double factor = model->changed && model->changed[e->joint] ? draw->changed : draw->kept;
    return factor * gw_complex(creal(k), draw->loss * cimag(k));
}

/* What of an element changes with draw, amplitudes and sliders. */
static void set_element(const gw_ride_model *model, gw_ride_element *e)
{
    if (e->kind == GW_ELEMENT_SPRING) e->k = e->rate;
    if (e->kind != GW_ELEMENT_BUSH && e->kind != GW_ELEMENT_WOUND) return;
    e->steady = steady_of(model, e);
    e->soft = e->kind == GW_ELEMENT_BUSH ? soft_of(model, e) : 0.0;
    e->pure = e->kind == GW_ELEMENT_BUSH && e->zener >= 0 && cabs(e->soft) == 0.0;
    if (e->constant) e->k = gw_quotient(e->steady, 1.0 + e->steady * e->soft);
}

static void add_fixed(gw_ride_model *model, const gw_ride_element *e)
{
    for (int i = 0; i < e->n; i++)
        for (int j = 0; j < e->n; j++)
            if (e->dof[i] >= e->dof[j])
                model->fixed[model->base[e->dof[i]] + e->dof[j]] += e->k * (e->row[i] * e->row[j]);
}

/* What is the same at every frequency but for its law; a law of frequency has no other loss. */
static void add_pure(gw_ride_model *model, const gw_ride_element *e)
{
    double *sum = model->zener_sum + (size_t)e->zener * (size_t)model->n_entries, rate = creal(e->steady);
    for (int i = 0; i < e->n; i++)
        for (int j = 0; j < e->n; j++)
            if (e->dof[i] >= e->dof[j])
                sum[model->base[e->dof[i]] + e->dof[j]] += rate * (e->row[i] * e->row[j]);
}

void gw_ride_model_set(gw_ride_model *model, const gw_ride_draw *draw)
{
    const double ground = GW_RIDE_GROUND;
    bool with_belt = model->belt.on;
    model->draw = *draw;
    model->belt = gw_belt_of(&model->corner->wheel, draw->belt);
    model->belt.on = with_belt;
    memset(model->fixed, 0, (size_t)model->n_entries * sizeof *model->fixed);
    memset(model->zener_sum, 0,
           (size_t)model->n_zeners * (size_t)model->n_entries * sizeof *model->zener_sum);
    for (int k = 0; k < model->n_elements; k++) {
        gw_ride_element *e = &model->elements[k];
        set_element(model, e);
        if (e->constant) add_fixed(model, e);
        if (e->pure) add_pure(model, e);
    }
    for (int r = 0; r < model->n; r++)
        if (model->held[r]) model->fixed[model->base[r] + r] += ground;
}
