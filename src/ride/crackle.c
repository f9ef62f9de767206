/* SPDX-License-Identifier: MIT */
#include "ride/crackle.h"

#include "giveway/units.h"

#include <math.h>

gw_crackle gw_crackle_of(const gw_ride_model *model, double speed, double acceleration)
{
    gw_crackle out = { .acceleration = sqrt(0.5 * GW_PI) * acceleration };
    for (int i = 0; i < model->n_sliders; i++)
        if (!model->sliders[i].sticks && model->sliders[i].way > 0.0) out.on = true;
    out.on = out.on && speed > 0.0 && acceleration > 0.0;
    if (out.on) out.rate = acceleration / (GW_PI * speed);
    return out;
}

double gw_crackle_spectrum(double rate, double hz)
{
    double corner = rate / (GW_PI - 2.0);
    return 2.0 * rate / (GW_PI * GW_PI) / (hz * hz + corner * corner);
}

double complex gw_crackle_ramp(double x)
{
    if (fabs(x) < 1e-3) return gw_complex(1.0 - 0.25 * x * x, -2.0 / 3.0 * x);
    double complex turned = gw_complex(cos(x), -sin(x));
    return 2.0 * (gw_complex(1.0, x) * turned - 1.0) / (x * x);
}

static double complex ramp_of(const gw_ride_slider *slider, const gw_crackle *crackle, double hz)
{
    if (!(slider->winds_up > 0.0)) return 1.0;
    double tau = 2.0 * sqrt(slider->strength / (slider->winds_up * slider->way * crackle->acceleration));
    return gw_crackle_ramp(2.0 * GW_PI * hz * tau);
}

/* Against its lengthening, so along its shortening where the wheel lengthens it: F_d P k_t / (k_t + p c). */
static gw_lanes damper_push(const gw_ride_model *model, const gw_ride_slider *slider,
                            const gw_crackle *crackle, const double hz[GW_LANES])
{
    const gw_ride_element *e = &model->elements[slider->element];
    gw_lanes out;
    for (int l = 0; l < GW_LANES; l++) {
        double complex mount = 1.0;
        if (e->series > 0.0)
            mount = gw_quotient(e->series, gw_complex(e->series, 2.0 * GW_PI * hz[l] * e->rate));
        gw_lanes_put(&out, l,
                     copysign(slider->strength, -slider->turn[0]) * ramp_of(slider, crackle, hz[l]) * mount);
    }
    return out;
}

static bool crackles(const gw_ride_slider *slider)
{
    return !slider->sticks && slider->way > 0.0;
}

void gw_crackle_dampers(const gw_ride_model *model, const gw_crackle *crackle, const double hz[GW_LANES],
                        gw_lanes out[GW_WHEELS])
{
    for (int w = 0; w < GW_WHEELS; w++) gw_lanes_fill(&out[w], 0.0);
    for (int i = 0; crackle->on && i < model->n_sliders; i++) {
        const gw_ride_slider *slider = &model->sliders[i];
        if (slider->joint < 0 && crackles(slider))
            out[slider->wheel] = damper_push(model, slider, crackle, hz);
    }
}

static void add_push(gw_lanes *y, const gw_ride_element *row, double factor, const gw_lanes *push)
{
    for (int i = 0; i < row->n; i++) gw_lanes_axpy(&y[row->dof[i]], -factor * row->row[i], push);
}

void gw_crackle_push(const gw_ride_model *model, const gw_crackle *crackle, const double hz[GW_LANES],
                     gw_lanes *y)
{
    for (int r = 0; r < model->n; r++) gw_lanes_fill(&y[r], 0.0);
    for (int s = 0; s < model->n_sliders; s++) {
        const gw_ride_slider *slider = &model->sliders[s];
        gw_lanes push;
        if (!crackles(slider)) continue;
        if (slider->joint < 0) {
            push = damper_push(model, slider, crackle, hz);
            add_push(y, &slider->row[0], 1.0, &push);
            continue;
        }
        for (int l = 0; l < GW_LANES; l++)
            gw_lanes_put(&push, l, slider->strength * ramp_of(slider, crackle, hz[l]));
        for (int i = 0; i < slider->n_rows; i++)
            add_push(y, &slider->row[i], slider->turn[i] / slider->way, &push);
    }
}
