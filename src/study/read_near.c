/* SPDX-License-Identifier: MIT */
/* A car is read and its balances are kept; one that differs little is read from them. */
#include "study/car_work.h"
#include "study/read_model.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct gw_read_guide {
    gw_drawn drawn;
    const gw_readings *readings;
    double factor;
    gw_corner_ws **ws;  /* [kit * GW_AXLES + axle]; NULL: no reading of it         */
    gw_read_spot *from; /* [the same] travel 0 with the spring out                 */
    gw_read_spot *spot; /* of all states of all readings, in their order           */
    bool *had;          /* [reading] */
    int n_spots, n_places;
};

static int place_of(const gw_reading *r)
{
    return r->kit * GW_AXLES + (int)r->axle;
}

static int count_states(const gw_readings *readings)
{
    int n = 0;
    for (int i = 0; i < readings->n; i++) n += readings->reading[i].n_states;
    return n;
}

void gw_read_guide_free(gw_read_guide *guide)
{
    if (!guide) return;
    for (int i = 0; guide->spot && i < guide->n_spots; i++) gw_state_free(&guide->spot[i].state);
    for (int i = 0; guide->from && i < guide->n_places; i++) gw_state_free(&guide->from[i].state);
    for (int i = 0; guide->ws && i < guide->n_places; i++) gw_corner_close(guide->ws[i]);
    free(guide->spot);
    free(guide->from);
    free(guide->ws);
    free(guide->had);
    gw_drawn_free(&guide->drawn);
    free(guide);
}

static gw_status make_room(gw_read_guide *g, gw_error *err)
{
    g->n_spots = count_states(g->readings);
    g->n_places = g->drawn.c.n_kits * GW_AXLES;
    g->spot = calloc((size_t)g->n_spots + 1, sizeof *g->spot);
    g->from = calloc((size_t)g->n_places + 1, sizeof *g->from);
    g->ws = calloc((size_t)g->n_places + 1, sizeof(gw_corner_ws *));
    g->had = calloc((size_t)g->readings->n + 1, sizeof *g->had);
    if (g->spot && g->from && g->ws && g->had) return GW_OK;
    return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
}

/* The state just found goes over, and the run gets another. */
static gw_status keep(gw_run *run, double travel, bool spring_out, gw_read_spot *spot, gw_error *err)
{
    gw_state fresh;
    gw_status status = gw_state_alloc(&run->c->corners[run->axle], &fresh, err);
    if (status != GW_OK) return status;
    spot->state = run->state;
    spot->load = run->state.load.patch_force.z;
    run->state = fresh;
    return spring_out ? gw_read_spring_out_goes_on(run, travel, spot, err) : GW_OK;
}

static gw_status read_and_keep(gw_run *run, gw_read_guide *g, const gw_reading *r,
                               const gw_read_changes *from, gw_read_spot *spot, double *y, gw_error *err)
{
    gw_status status = GW_OK;
    for (int s = 0; s < r->n_states && status == GW_OK; s++) {
        status = gw_read_at(run, r, s, g->factor, from, NULL, y, err);
        if (status == GW_OK) status = keep(run, r->state[s].travel, r->state[s].spring_out, &spot[s], err);
    }
    return status;
}

/* All readings on one corner and kit; the corner stays open in the guide. */
static gw_status read_place(gw_run *run, gw_read_guide *g, int place, bool skip, double *y, gw_error *err)
{
    gw_read_changes from = { { 0 } };
    gw_read_spot *spot = g->spot;
    bool known = false;
    gw_status status = gw_run_open_corner(run, place / GW_AXLES, (gw_axle)(place % GW_AXLES), err);
    for (int i = 0; i < g->readings->n && status == GW_OK; i++) {
        const gw_reading *r = &g->readings->reading[i];
        gw_error why = { 0 };
        if (place_of(r) == place) {
            if (r->state[0].spring_out && !known) {
                status = gw_read_spring_out(run, 0.0, NULL, &from, &why);
                if (status == GW_OK) status = keep(run, 0.0, true, &g->from[place], &why);
                known = status == GW_OK;
            }
            if (status == GW_OK) status = read_and_keep(run, g, r, &from, spot, y, &why);
            g->had[i] = status == GW_OK;
            for (int v = 0; v < r->n_values && status != GW_OK; v++) y[v] = (double)NAN;
            if (status == GW_E_NOMEM || (status != GW_OK && !skip))
                return gw_fail(err, status, "%s", why.msg);
            status = GW_OK;
        }
        y += r->n_values;
        spot += r->n_states;
    }
    g->ws[place] = run->ws;
    run->ws = NULL;
    return status;
}

static bool is_read(const gw_readings *readings, int place)
{
    for (int i = 0; i < readings->n; i++)
        if (place_of(&readings->reading[i]) == place) return true;
    return false;
}

gw_status gw_read_car(const gw_draws *draws, gw_drawer *drawer, const double *z, const gw_readings *readings,
                      double factor, bool skip, gw_read_guide **out, double *y, gw_error *err)
{
    gw_read_guide *g = calloc(1, sizeof *g);
    if (!g) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    g->readings = readings;
    g->factor = factor;
    gw_status status = gw_drawn_make(draws, drawer, z, &g->drawn, err);
    if (status == GW_OK) status = make_room(g, err);
    for (int place = 0; place < g->n_places && status == GW_OK; place++) {
        gw_run run = { .c = &g->drawn.c, .wanted = &g->drawn.wanted, .laws = g->drawn.laws };
        if (!is_read(readings, place)) continue;
        status = read_place(&run, g, place, skip, y, err);
        gw_run_close_corner(&run);
    }
    if (status != GW_OK) {
        gw_read_guide_free(g);
        return status;
    }
    *out = g;
    return GW_OK;
}

/* Neither the corner's figures nor what is fitted in it differ. */
static bool is_untouched(const gw_read_guide *g, const gw_drawn *drawn, int place)
{
    const gw_axle axle = (gw_axle)(place % GW_AXLES);
    const gw_corner *was = &g->drawn.c.corners[axle], *is = &drawn->c.corners[axle];
    gw_fit then[GW_MAX_JOINTS], now[GW_MAX_JOINTS];
    const size_t size = (size_t)was->n_joints * sizeof *now;
    if (!gw_same_corner(was, is)) return false;
    memset(then, 0, size); /* what lies between the members, too */
    memset(now, 0, size);
    gw_fit_kit(&g->drawn.c, &g->drawn.laws, place / GW_AXLES, axle, then);
    gw_fit_kit(&drawn->c, &drawn->laws, place / GW_AXLES, axle, now);
    return memcmp(then, now, size) == 0;
}

static gw_status near_place(gw_run *run, const gw_read_guide *g, int place, double factor, double *y,
                            gw_error *err)
{
    gw_read_changes from = { { 0 } };
    const gw_corner *corner = &run->c->corners[place % GW_AXLES];
    const gw_read_spot *spot = g->spot;
    run->kit = place / GW_AXLES;
    run->axle = (gw_axle)(place % GW_AXLES);
    gw_fit_kit(run->c, &run->laws, run->kit, run->axle, run->fit);
    gw_status status = gw_corner_open_near(corner, run->fit, g->ws[place], GW_NEAR_ONCE, &run->ws, err);
    if (status == GW_OK) status = gw_state_alloc(corner, &run->state, err);
    if (status == GW_OK && g->from[place].state.pose)
        status = gw_read_spring_out(run, 0.0, &g->from[place], &from, err);
    for (int i = 0; i < g->readings->n && status == GW_OK; i++) {
        const gw_reading *r = &g->readings->reading[i];
        for (int s = 0; s < r->n_states && status == GW_OK && g->had[i] && place_of(r) == place; s++)
            status = gw_read_at(run, r, s, factor, &from, &spot[s], y, err);
        y += r->n_values;
        spot += r->n_states;
    }
    gw_run_close_corner(run);
    return status;
}

gw_status gw_read_near(const gw_read_guide *g, const gw_draws *draws, gw_drawer *drawer, const double *z,
                       double factor, int figure, const double *same, double *y, gw_error *err)
{
    gw_drawn drawn;
    gw_status status = gw_drawn_make_near(draws, drawer, &g->drawn, z, figure, &drawn, err);
    if (status != GW_OK) return status;
    gw_run run = { .c = &drawn.c, .wanted = &drawn.wanted, .laws = drawn.laws };
    for (int v = 0; v < g->readings->n_values; v++) y[v] = same ? same[v] : (double)NAN;
    for (int place = 0; place < g->n_places && status == GW_OK; place++) {
        if (!g->ws[place] || (same && factor == g->factor && is_untouched(g, &drawn, place))) continue;
        status = near_place(&run, g, place, factor, y, err);
    }
    gw_drawn_free(&drawn);
    return status;
}
