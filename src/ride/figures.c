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

static double lane_square(const gw_lanes *a, int lane)
{
    return a->re[lane] * a->re[lane] + a->im[lane] * a->im[lane];
}

/* Weighted squared acceleration by one drive. */
static double felt(const gw_ride_sweep *sweep, const gw_lanes *x, double hz, int lane)
{
    double w2 = 2.0 * GW_PI * hz * 2.0 * GW_PI * hz, wk = gw_weight_wk(hz), wd = gw_weight_wd(hz);
    double z = lane_square(&x[sweep->model->chassis_z], lane);
    double along = lane_square(&x[sweep->model->chassis_x], lane);
    return w2 * w2 * (wk * wk * z + wd * wd * along);
}

/* One panel: what each drive does in it, weighted. */
typedef struct work {
    const double *hz;
    double middle;
    int drives;
    double density[GW_DRIVES][GW_LANES]; /* mean square of the drive, with the panel's weight */
    double comfort[GW_LANES], force[GW_DRIVES][GW_LANES], noise[GW_DRIVES][GW_LANES];
} work;

static void respond(gw_ride_sweep *sweep, const double weight[GW_LANES], work *w)
{
    gw_ride_model *model = sweep->model;
    gw_ride_respond_hz(model, w->hz, sweep->by[GW_BY_ROAD]);
    for (int l = 0; l < GW_LANES; l++)
        w->density[GW_BY_ROAD][l] = weight[l] * gw_ride_road_density(model->settings, w->hz[l]);
    w->drives = sweep->crackle.on ? GW_DRIVES : 1;
    if (!sweep->crackle.on) return;
    gw_crackle_push(model, &sweep->crackle, w->hz, sweep->by[GW_BY_CRACKLE]);
    gw_ride_backsolve(model, 0, sweep->by[GW_BY_CRACKLE]);
    for (int l = 0; l < GW_LANES; l++)
        w->density[GW_BY_CRACKLE][l] = weight[l] * gw_crackle_spectrum(sweep->crackle.rate, w->hz[l]);
}

static void find_comfort(const gw_ride_sweep *sweep, work *w)
{
    for (int d = 0; d < w->drives; d++)
        for (int l = 0; l < GW_LANES; l++)
            w->comfort[l] += w->density[d][l] * felt(sweep, sweep->by[d], w->hz[l], l);
}

static double *squares_of(const gw_ride_sweep *sweep, int drive)
{
    return sweep->squares + drive * sweep->model->n_paths * GW_LANES;
}

static void find_force(const gw_ride_sweep *sweep, work *w)
{
    gw_ride_path_squares(sweep->model, sweep->by[GW_BY_ROAD], NULL, squares_of(sweep, GW_BY_ROAD));
    if (w->drives > 1) {
        gw_lanes damper[GW_WHEELS];
        gw_crackle_dampers(sweep->model, &sweep->crackle, w->hz, damper);
        gw_ride_path_squares(sweep->model, sweep->by[GW_BY_CRACKLE], damper,
                             squares_of(sweep, GW_BY_CRACKLE));
    }
    for (int d = 0; d < w->drives; d++) {
        const double *squares = squares_of(sweep, d);
        for (int p = 0; p < sweep->model->n_paths; p++)
            for (int l = 0; l < GW_LANES; l++) w->force[d][l] += w->density[d][l] * squares[p * GW_LANES + l];
        for (int l = 0; l < GW_LANES; l++)
            w->noise[d][l] = w->force[d][l] * gw_weight_a(w->hz[l]) * gw_weight_a(w->hz[l]);
    }
}

static void add_paths(const gw_ride_sweep *sweep, const work *w, int drive)
{
    const double *squares = squares_of(sweep, drive);
    for (int p = 0; p < sweep->model->n_paths; p++)
        for (int l = 0; l < GW_LANES; l++)
            sweep->sum->path[p] += w->density[drive][l] * squares[p * GW_LANES + l];
}

static void add_force(const gw_ride_sweep *sweep, const work *w, int drive)
{
    gw_figures *sum = sweep->sum;
    int band = (int)lround(10.0 * log10(w->middle)) - GW_BAND_FIRST;
    bool harsh = w->middle > GW_HARSHNESS_LOW && w->middle < GW_HARSHNESS_HIGH;
    bool heard = w->middle > GW_NOISE_LOW && w->middle < GW_NOISE_HIGH;
    for (int l = 0; l < GW_LANES; l++) {
        if (band >= 0 && band < GW_BANDS) sum->band[band] += w->force[drive][l];
        if (harsh) sum->harshness += w->force[drive][l];
        if (heard) sum->noise += w->noise[drive][l];
        if (harsh && drive == GW_BY_CRACKLE) sum->crackle[0] += w->force[drive][l];
        if (heard && drive == GW_BY_CRACKLE) sum->crackle[1] += w->noise[drive][l];
    }
    if (harsh) add_paths(sweep, w, drive);
}

/* Both drives together. */
static bool is_smooth(const gw_ride_sweep *sweep, const work *w, double part[GW_DRIVES][GW_LANES])
{
    double sum[GW_LANES];
    for (int l = 0; l < GW_LANES; l++) sum[l] = part[0][l] + (w->drives > 1 ? part[1][l] : 0.0);
    return gw_panel_is_smooth_to(sum, sweep->smooth);
}

/* One panel: nothing is added until every integrand in it has proved smooth. */
static bool visit(void *context, const double hz[GW_LANES], const double weight[GW_LANES])
{
    gw_ride_sweep *sweep = context;
    work w = { .hz = hz, .middle = 0.5 * (hz[3] + hz[4]) };
    bool with_comfort = w.middle < GW_COMFORT_HIGH && sweep->with_comfort;
    bool with_force = w.middle > gw_band_low(GW_BAND_FIRST);
    respond(sweep, weight, &w);
    if (with_comfort) {
        find_comfort(sweep, &w);
        if (!gw_panel_is_smooth_to(w.comfort, sweep->smooth)) return false;
    }
    if (with_force) {
        find_force(sweep, &w);
        if (!is_smooth(sweep, &w, w.force) || !is_smooth(sweep, &w, w.noise)) return false;
        for (int d = 0; d < w.drives; d++) add_force(sweep, &w, d);
    }
    for (int l = 0; l < GW_LANES && with_comfort; l++) sweep->sum->comfort += w.comfort[l];
    return true;
}

gw_status gw_sweep_open(gw_ride_sweep *sweep, gw_ride_model *model, gw_arena *arena, gw_error *err)
{
    *sweep = (gw_ride_sweep){ .model = model, .smooth = GW_PANEL_SMOOTH, .with_comfort = true };
    for (int d = 0; d < GW_DRIVES; d++)
        sweep->by[d] = gw_arena_alloc(arena, (size_t)model->n, sizeof *sweep->by[d]);
    sweep->x = sweep->by[GW_BY_ROAD];
    sweep->squares =
        gw_arena_alloc(arena, (size_t)model->n_paths * GW_LANES * GW_DRIVES, sizeof *sweep->squares);
    sweep->poles = gw_arena_alloc(arena, (size_t)model->n, sizeof *sweep->poles);
    if (!sweep->x || !sweep->by[GW_BY_CRACKLE] || !sweep->squares || !sweep->poles)
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

gw_status gw_figures_body_force(gw_ride_sweep *sweep, double smooth, gw_figures *out, gw_error *err)
{
    cut_list cuts = cuts_between(GW_HARSHNESS_LOW, GW_NOISE_HIGH, false);
    double before = sweep->smooth;
    sweep->smooth = smooth;
    sweep->with_comfort = false;
    gw_status st = integrate(sweep, &cuts, out, err);
    sweep->smooth = before;
    sweep->with_comfort = true;
    return st;
}

gw_status gw_figures_part(gw_ride_sweep *sweep, double low, double high, gw_figures *out, gw_error *err)
{
    cut_list cuts = cuts_between(low, high, false);
    return integrate(sweep, &cuts, out, err);
}
