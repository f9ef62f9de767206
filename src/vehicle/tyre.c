/* SPDX-License-Identifier: MIT */
/* One tyre's lateral force. A table is one bicubic surface over slip and load for each lean. */
#include "giveway/tyre.h"

#include <gsl/gsl_interp2d.h>
#include <math.h>
#include <stdlib.h>

struct gw_tyre {
    gw_tyre_data data;
    gsl_interp2d **plane; /**< one a lean of the table; NULL with coefficients */
};

static bool rises(const double *x, int n)
{
    for (int i = 0; i < n; i++)
        if (!isfinite(x[i]) || (i > 0 && !(x[i] > x[i - 1]))) return false;
    return true;
}

static gw_status check_table(const gw_tyre_table *t, gw_error *err)
{
    if (t->n_slip < 4 || t->n_load < 4 || t->n_lean < 1)
        return gw_fail(err, GW_E_RANGE,
                       "the tyre table has %d slip angles, %d loads and %d cambers: give at least 4, 4 and 1",
                       t->n_slip, t->n_load, t->n_lean);
    if (!rises(t->slip, t->n_slip) || !rises(t->load, t->n_load) || !rises(t->lean, t->n_lean))
        return gw_fail(err, GW_E_RANGE, "slip angles, loads and cambers of the tyre table must rise");
    if (!(t->slip[0] <= 0.0) || !(t->slip[t->n_slip - 1] > 0.0) || !(t->load[0] > 0.0))
        return gw_fail(err, GW_E_RANGE,
                       "the tyre table must take in slip angle 0 and more, at loads above 0");
    for (int i = 0; i < t->n_slip * t->n_load * t->n_lean; i++)
        if (!isfinite(t->force[i]))
            return gw_fail(err, GW_E_RANGE, "the tyre table holds a force that is no number");
    return GW_OK;
}

static gw_status check(const gw_tyre_data *d, gw_error *err)
{
    if (d->table) return check_table(d->table, err);
    if (!(d->cornering > 0.0 && isfinite(d->cornering)) || !(d->camber >= 0.0 && isfinite(d->camber)))
        return gw_fail(err, GW_E_RANGE,
                       "a tyre needs a cornering stiffness above 0 and a camber stiffness of 0 or more");
    if (!(d->rated_load > 0.0 && isfinite(d->rated_load)))
        return gw_fail(err, GW_E_RANGE, "a tyre's coefficients need the load they hold at, above 0");
    return GW_OK;
}

static const double *plane_of(const gw_tyre_table *t, int lean)
{
    return &t->force[(size_t)lean * (size_t)t->n_load * (size_t)t->n_slip];
}

static gw_status make_planes(gw_tyre *tyre, gw_error *err)
{
    const gw_tyre_table *t = tyre->data.table;
    size_t nx = (size_t)t->n_slip, ny = (size_t)t->n_load;
    tyre->plane = calloc((size_t)t->n_lean, sizeof *tyre->plane);
    for (int i = 0; tyre->plane && i < t->n_lean; i++) {
        tyre->plane[i] = gsl_interp2d_alloc(gsl_interp2d_bicubic, nx, ny);
        if (!tyre->plane[i]) break;
        if (gsl_interp2d_init(tyre->plane[i], t->slip, t->load, plane_of(t, i), nx, ny) != 0)
            return gw_fail(err, GW_E_RANGE, "the tyre table cannot be interpolated");
    }
    if (!tyre->plane || !tyre->plane[t->n_lean - 1])
        return gw_fail(err, GW_E_NOMEM, "out of memory for a tyre table");
    return GW_OK;
}

gw_status gw_tyre_open(const gw_tyre_data *data, gw_tyre **out, gw_error *err)
{
    *out = NULL;
    gw_status status = check(data, err);
    if (status != GW_OK) return status;
    gw_tyre *tyre = calloc(1, sizeof *tyre);
    if (!tyre) return gw_fail(err, GW_E_NOMEM, "out of memory for a tyre");
    tyre->data = *data;
    if (data->table) status = make_planes(tyre, err);
    if (status != GW_OK) {
        gw_tyre_close(tyre);
        return status;
    }
    *out = tyre;
    return GW_OK;
}

void gw_tyre_close(gw_tyre *tyre)
{
    if (!tyre) return;
    for (int i = 0; tyre->plane && i < tyre->data.table->n_lean; i++)
        if (tyre->plane[i]) gsl_interp2d_free(tyre->plane[i]);
    free(tyre->plane);
    free(tyre);
}

static double hold(double x, const double *axis, int n)
{
    return fmin(fmax(x, axis[0]), axis[n - 1]);
}

/* Force and slope in slip on one plane. */
static bool on_plane(const gw_tyre *tyre, int lean, double slip, double load, double out[2])
{
    const gw_tyre_table *t = tyre->data.table;
    const double *z = plane_of(t, lean);
    const gsl_interp2d *p = tyre->plane[lean];
    return gsl_interp2d_eval_e(p, t->slip, t->load, z, slip, load, NULL, NULL, &out[0]) == 0 &&
           gsl_interp2d_eval_deriv_x_e(p, t->slip, t->load, z, slip, load, NULL, NULL, &out[1]) == 0;
}

/* Linear between the two planes beside `lean`; beyond the last one the force stays. */
static bool between_planes(const gw_tyre *tyre, double slip, double load, double lean, gw_tyre_force *out)
{
    const gw_tyre_table *t = tyre->data.table;
    double low[2], high[2];
    int i = 0;
    if (t->n_lean == 1) {
        if (!on_plane(tyre, 0, slip, load, low)) return false;
        *out = (gw_tyre_force){ low[0], low[1], 0.0 };
        return true;
    }
    while (i < t->n_lean - 2 && lean > t->lean[i + 1]) i++;
    if (!on_plane(tyre, i, slip, load, low) || !on_plane(tyre, i + 1, slip, load, high)) return false;
    double width = t->lean[i + 1] - t->lean[i], part = (hold(lean, t->lean, t->n_lean) - t->lean[i]) / width;
    out->force = low[0] + part * (high[0] - low[0]);
    out->cornering = low[1] + part * (high[1] - low[1]);
    out->camber = (high[0] - low[0]) / width;
    return true;
}

/* What an upright wheel gives at zero slip: conicity and ply steer. Without an upright wheel in the table it
 * cannot be told from camber, and counts as none. */
static bool at_zero(const gw_tyre *tyre, double load, double *force)
{
    const gw_tyre_table *t = tyre->data.table;
    gw_tyre_force f = { 0 };
    bool upright = t->n_lean == 1 || (t->lean[0] <= 0.0 && t->lean[t->n_lean - 1] >= 0.0);
    if (upright && !between_planes(tyre, 0.0, load, 0.0, &f)) return false;
    *force = f.force;
    return true;
}

/* What the table does not reach on one side comes from the other, turned about the force at zero slip. */
static bool turned_over(const gw_tyre *tyre, double slip, double load, double lean, gw_tyre_force *out)
{
    double zero = 0.0;
    if (!at_zero(tyre, load, &zero) || !between_planes(tyre, -slip, load, -lean, out)) return false;
    out->force = 2.0 * zero - out->force; /* the slopes of an odd function are even */
    return true;
}

static gw_status from_table(const gw_tyre *tyre, double slip, double load, double lean, gw_tyre_force *out,
                            gw_error *err)
{
    const gw_tyre_table *t = tyre->data.table;
    bool direct = slip >= t->slip[0] && slip <= t->slip[t->n_slip - 1];
    gw_tyre_force f;
    if (!(fabs(slip) <= gw_tyre_reach(tyre)))
        return gw_fail(err, GW_E_NUMERIC, "more slip angle than the tyre table holds");
    load = hold(load, t->load, t->n_load);
    if (!(direct ? between_planes : turned_over)(tyre, slip, load, lean, &f))
        return gw_fail(err, GW_E_NUMERIC, "the tyre table cannot be read at this load");
    *out = f;
    return GW_OK;
}

gw_status gw_tyre_lateral(const gw_tyre *tyre, double slip, double load, double lean, gw_tyre_force *out,
                          gw_error *err)
{
    const gw_tyre_data *d = &tyre->data;
    if (!isfinite(slip) || !isfinite(lean) || !(load >= 0.0 && isfinite(load)))
        return gw_fail(err, GW_E_RANGE, "a tyre needs finite angles and a load of 0 or more");
    if (d->table) return from_table(tyre, slip, load, lean, out, err);
    double part = load / d->rated_load;
    *out = (gw_tyre_force){ part * (d->cornering * slip + d->camber * lean), part * d->cornering,
                            part * d->camber };
    return GW_OK;
}

gw_status gw_tyre_chord(const gw_tyre *tyre, double slip, double load, double lean, double width,
                        gw_tyre_force *out, gw_error *err)
{
    gw_tyre_force at = { 0 }, low = { 0 }, high = { 0 };
    double reach = gw_tyre_reach(tyre);
    double from = fmax(slip - width, -reach), to = fmin(slip + width, reach);
    gw_status status = gw_tyre_lateral(tyre, slip, load, lean, &at, err);
    if (status == GW_OK) status = gw_tyre_lateral(tyre, from, load, lean, &low, err);
    if (status == GW_OK) status = gw_tyre_lateral(tyre, to, load, lean, &high, err);
    if (status != GW_OK) return status;
    *out =
        (gw_tyre_force){ at.force, (high.force - low.force) / (to - from), 0.5 * (low.camber + high.camber) };
    return GW_OK;
}

double gw_tyre_reach(const gw_tyre *tyre)
{
    const gw_tyre_table *t = tyre->data.table;
    return t ? fmax(t->slip[t->n_slip - 1], -t->slip[0]) : (double)INFINITY;
}

const gw_tyre_table *gw_tyre_measured(const gw_tyre *tyre)
{
    return tyre->data.table;
}

bool gw_tyre_within(const gw_tyre *tyre, double load, double lean)
{
    const gw_tyre_table *t = tyre->data.table;
    if (!t) return 1;
    bool loads = load >= t->load[0] && load <= t->load[t->n_load - 1];
    bool leans = t->n_lean == 1 || (lean >= t->lean[0] && lean <= t->lean[t->n_lean - 1]);
    return loads && leans;
}

bool gw_tyre_is_curved(const gw_tyre *tyre)
{
    return tyre->data.table != NULL;
}
