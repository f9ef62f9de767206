/* SPDX-License-Identifier: MIT */
/* What one metre of road does: movements, forces on the body, and where the power goes. */
#include "ride/model.h"

#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>

/* The road pushes up through the tyre, and by its slope it pushes the wheel back. */
static void road_push(const gw_ride_model *model, const gw_lanes *p, gw_lanes *vertical, gw_lanes *fore_aft)
{
    const gw_wheel *wheel = &model->corner->wheel;
    for (int l = 0; l < GW_LANES; l++) {
        double complex at = gw_lanes_get(p, l);
        double complex up = gw_tyre_upright(model, at),
                       back = -wheel->static_load * at / model->settings->speed;
        if (model->belt.on) {
            up *= gw_belt_passes(&model->belt, up, at);
            back *= gw_belt_passes(&model->belt, gw_tyre_along(model, at), at);
        }
        gw_lanes_put(vertical, l, up);
        gw_lanes_put(fore_aft, l, back);
    }
}

void gw_ride_respond(gw_ride_model *model, const gw_lanes *p, gw_lanes *x)
{
    for (int r = 0; r < model->n; r++) gw_lanes_fill(&x[r], 0.0);
    gw_lanes up, back;
    road_push(model, p, &up, &back);
    for (int w = 0; w < model->n_wheels; w++) {
        gw_lanes_axpy(&x[gw_ride_wheel(model, w) + 2], 1.0, &up);
        gw_lanes_axpy(&x[gw_ride_wheel(model, w)], 1.0, &back);
    }
    gw_ride_factorise(model, p, 1.0);
    gw_ride_backsolve(model, model->wheel, x);
}

void gw_ride_respond_hz(gw_ride_model *model, const double hz[GW_LANES], gw_lanes *x)
{
    gw_lanes p = { { 0 }, { 0 } };
    for (int l = 0; l < GW_LANES; l++) p.im[l] = 2.0 * GW_PI * hz[l];
    gw_ride_respond(model, &p, x);
}

void gw_ride_path_squares(const gw_ride_model *model, const gw_lanes *x, const gw_lanes *damper, double *out)
{
    for (int i = 0; i < model->n_paths * GW_LANES; i++) out[i] = 0.0;
    for (int k = 0; k < model->n_elements; k++) {
        const gw_ride_element *e = &model->elements[k];
        if (e->path < 0) continue;
        gw_lanes force = gw_element_force(model, e, x);
        if (damper && e->kind == GW_ELEMENT_DAMPER) gw_lanes_axpy(&force, 1.0, damper++);
        gw_lanes_add_square(&out[e->path * GW_LANES], &force);
    }
    for (int i = 0; i < model->n_paths * GW_LANES && model->n_wheels > 1; i++)
        out[i] *= gw_ride_one_wheel(model);
}

/* Mean power of a force and a velocity of given amplitudes. */
static double mean_power(double complex force, double complex velocity)
{
    return 0.5 * creal(force * conj(velocity));
}

gw_status gw_ride_power(gw_ride_model *model, double hz, double *put_in, double *lost, gw_error *err)
{
    gw_lanes *x = calloc((size_t)model->n, sizeof *x), p = { { 0 }, { 0 } };
    if (!x) return gw_fail(err, GW_E_NOMEM, "out of memory in the power balance");
    double complex at = gw_complex(0.0, 2.0 * GW_PI * hz);
    gw_lanes_fill(&p, at);
    gw_ride_respond(model, &p, x);
    double dissipated = 0.0, road = 0.0;
    for (int k = 0; k < model->n_elements; k++) {
        const gw_ride_element *e = &model->elements[k];
        gw_lanes moved = gw_element_deflection(e, x), rate = gw_element_stiffness(model, e);
        double complex stretch = gw_lanes_get(&moved, 0), k_now = gw_lanes_get(&rate, 0);
        if (e->kind == GW_ELEMENT_TYRE_VERTICAL) {
            stretch -= 1.0; /* the road end moves too */
            road += mean_power(-k_now * stretch, at);
        }
        dissipated += mean_power(k_now * stretch, at * stretch);
    }
    double complex push = -model->corner->wheel.static_load * at / model->settings->speed;
    for (int w = 0; w < model->n_wheels; w++)
        road += mean_power(push, at * gw_lanes_get(&x[gw_ride_wheel(model, w)], 0));
    *put_in = road;
    *lost = dissipated;
    free(x);
    return GW_OK;
}
