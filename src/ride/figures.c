/* SPDX-License-Identifier: MIT */
/* The figures of ride, each an integral of a response to the road over frequency. */
#include "ride/figures.h"

#include "giveway/units.h"

#include <math.h>

/* Ends of the figures [Hz]; between two of them every integrand is smooth. */
static const double ENDS[] = { GW_COMFORT_LOW,  GW_HARSHNESS_LOW,  GW_NOISE_LOW,
                               GW_COMFORT_HIGH, GW_HARSHNESS_HIGH, GW_NOISE_HIGH };
enum { N_ENDS = sizeof ENDS / sizeof *ENDS, MAX_CUTS = N_ENDS + GW_BANDS + 3 };

typedef struct cut_list {
    int n;
    double at[MAX_CUTS];
} cut_list;

static void add_cut(cut_list *cuts, double hz)
{
    int i = cuts->n++;
    for (; i > 0 && cuts->at[i - 1] > hz; i--) cuts->at[i] = cuts->at[i - 1];
    cuts->at[i] = hz;
}

static cut_list cuts_between(double low, double high, bool with_bands)
{
    cut_list cuts = { 0 };
    add_cut(&cuts, low);
    add_cut(&cuts, high);
    for (int i = 0; i < N_ENDS; i++)
        if (ENDS[i] > low && ENDS[i] < high) add_cut(&cuts, ENDS[i]);
    for (int b = GW_BAND_FIRST; with_bands && b <= GW_BAND_LAST + 1; b++)
        if (gw_band_low(b) > low && gw_band_low(b) < high) add_cut(&cuts, gw_band_low(b));
    return cuts;
}

/* Mean square per hertz of one metre's response: road spectrum, averaged over the contact. */
static double road_density(const gw_ride *s, double hz)
{
    double filter = gw_road_contact_filter(s->contact_length, s->speed, hz);
    return gw_road_spectrum(s->roughness, s->speed, hz) * filter * filter;
}

static double lane_square(const gw_lanes *a, int lane)
{
    return a->re[lane] * a->re[lane] + a->im[lane] * a->im[lane];
}

/* Weighted squared acceleration per squared metre of road. */
static double felt(const gw_ride_sweep *sweep, double hz, int lane)
{
    double w2 = 2.0 * GW_PI * hz * 2.0 * GW_PI * hz, wk = gw_weight_wk(hz), wd = gw_weight_wd(hz);
    double z = lane_square(&sweep->x[sweep->model->chassis_z], lane);
    double x = lane_square(&sweep->x[sweep->model->chassis_x], lane);
    return w2 * w2 * (wk * wk * z + wd * wd * x);
}

static void add_comfort(gw_figures *sum, const double *comfort)
{
    for (int l = 0; l < GW_LANES; l++) sum->comfort += comfort[l];
}

static void add_force(const gw_ride_sweep *sweep, double middle, const double *density, const double *force,
                      const double *noise)
{
    gw_figures *sum = sweep->sum;
    int band = (int)lround(10.0 * log10(middle)) - GW_BAND_FIRST;
    bool harsh = middle > GW_HARSHNESS_LOW && middle < GW_HARSHNESS_HIGH;
    for (int l = 0; l < GW_LANES; l++) {
        if (band >= 0 && band < GW_BANDS) sum->band[band] += force[l];
        if (harsh) sum->harshness += force[l];
        if (middle > GW_NOISE_LOW && middle < GW_NOISE_HIGH) sum->noise += noise[l];
    }
    for (int p = 0; harsh && p < sweep->model->n_paths; p++)
        for (int l = 0; l < GW_LANES; l++) sum->path[p] += density[l] * sweep->squares[p * GW_LANES + l];
}

/* One panel: nothing is added until every integrand in it has proved smooth. */
static bool visit(void *context, const double hz[GW_LANES], const double weight[GW_LANES])
{
    gw_ride_sweep *sweep = context;
    double density[GW_LANES], comfort[GW_LANES], force[GW_LANES] = { 0 }, noise[GW_LANES];
    double middle = 0.5 * (hz[3] + hz[4]);
    bool with_comfort = middle<GW_COMFORT_HIGH, with_force = middle> gw_band_low(GW_BAND_FIRST);
    gw_ride_respond_hz(sweep->model, hz, sweep->x);
    for (int l = 0; l < GW_LANES; l++) density[l] = weight[l] * road_density(sweep->model->settings, hz[l]);
    if (with_comfort) {
        for (int l = 0; l < GW_LANES; l++) comfort[l] = density[l] * felt(sweep, hz[l], l);
        if (!gw_panel_is_smooth(comfort)) return false;
    }
    if (with_force) {
        gw_ride_path_squares(sweep->model, sweep->x, sweep->squares);
        for (int p = 0; p < sweep->model->n_paths; p++)
            for (int l = 0; l < GW_LANES; l++) force[l] += density[l] * sweep->squares[p * GW_LANES + l];
        for (int l = 0; l < GW_LANES; l++) noise[l] = force[l] * gw_weight_a(hz[l]) * gw_weight_a(hz[l]);
        if (!gw_panel_is_smooth(force) || !gw_panel_is_smooth(noise)) return false;
        add_force(sweep, middle, density, force, noise);
    }
    if (with_comfort) add_comfort(sweep->sum, comfort);
    return true;
}

gw_status gw_sweep_open(gw_ride_sweep *sweep, gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    *sweep = (gw_ride_sweep){ .model = model };
    sweep->x = gw_arena_alloc(arena, (size_t)model->n, sizeof *sweep->x);
    sweep->squares = gw_arena_alloc(arena, (size_t)model->n_paths * GW_LANES, sizeof *sweep->squares);
    sweep->poles = gw_arena_alloc(arena, (size_t)model->n, sizeof *sweep->poles);
    if (!sweep->x || !sweep->squares || !sweep->poles)
        return gw_fail(err, GW_E_NOMEM, "out of memory while sweeping over frequency");
    return GW_OK;
}

static gw_status integrate(gw_ride_sweep *sweep, const cut_list *cuts, gw_figures *out, gw_error *err)
{
    double *path = out->path;
    *out = (gw_figures){ .path = path };
    for (int p = 0; p < sweep->model->n_paths; p++) path[p] = 0.0;
    sweep->sum = out;
    return gw_panels_integrate(sweep->poles, sweep->n_poles, cuts->at, cuts->n, visit, sweep, err);
}

gw_status gw_figures_all(gw_ride_sweep *sweep, gw_figures *out, gw_error *err)
{
    cut_list cuts = cuts_between(GW_COMFORT_LOW, gw_band_high(GW_BAND_LAST), true);
    return integrate(sweep, &cuts, out, err);
}

gw_status gw_figures_body_force(gw_ride_sweep *sweep, gw_figures *out, gw_error *err)
{
    cut_list cuts = cuts_between(GW_HARSHNESS_LOW, GW_NOISE_HIGH, false);
    return integrate(sweep, &cuts, out, err);
}

gw_status gw_figures_part(gw_ride_sweep *sweep, double low, double high, gw_figures *out, gw_error *err)
{
    cut_list cuts = cuts_between(low, high, false);
    return integrate(sweep, &cuts, out, err);
}
