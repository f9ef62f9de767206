/* SPDX-License-Identifier: MIT */
/* One kit in hand: fitted, and what one axle alone decides. */
#include "giveway/compare.h"
#include "study/choose_parts.h"

#include <stdlib.h>
#include <string.h>

bool gw_is_serious(gw_status status)
{
    return status != GW_OK && status != GW_E_NUMERIC && status != GW_E_MECHANISM;
}

/* The first kit stays the first; what is in hand is the second. */
gw_status gw_bench_kit_open(const gw_planner *p, gw_bench_kit **out, gw_error *err)
{
    gw_bench_kit *kit = calloc(1, sizeof *kit);
    bool ok = kit && (kit->option = calloc((size_t)gw_choices(p) + 1, sizeof *kit->option));
    for (int a = 0; a < GW_AXLES && ok; a++)
        ok = (kit->kit[1].fits[a] = calloc((size_t)p->c->pairs[a].n_joints + 1, sizeof(int))) != NULL;
    if (!ok) {
        gw_bench_kit_close(kit);
        return gw_fail(err, GW_E_NOMEM, "out of memory for a kit");
    }
    kit->c = *p->c;
    kit->kit[0] = p->c->kits[0];
    kit->kit[1].name = kit->kit[1].label = "on offer";
    kit->c.kits = kit->kit;
    kit->c.n_kits = 2;
    kit->run = p->run;
    kit->run.c = &kit->c;
    *out = kit;
    return GW_OK;
}

void gw_bench_kit_close(gw_bench_kit *kit)
{
    if (!kit) return;
    for (int a = 0; a < GW_AXLES; a++) {
        free(kit->kit[1].fits[a]);
        gw_corner_close(kit->pair[a]);
        gw_corner_close(kit->like[a]);
    }
    free(kit->option);
    free(kit);
}

int gw_choose_bush(const gw_case *c, const gw_choose *offer, const int *option, int choice, int joint)
{
    const gw_among *among = &offer->among[choice];
    return option[choice] < 0 ? c->kits[0].fits[among->axle][among->joint[joint]]
                              : among->bush[option[choice]];
}

void gw_bench_kit_fit(const gw_planner *p, gw_bench_kit *kit)
{
    for (int a = 0; a < GW_AXLES; a++)
        if (p->c->has_corner[a])
            memcpy(kit->kit[1].fits[a], kit->kit[0].fits[a], (size_t)p->c->pairs[a].n_joints * sizeof(int));
    for (int i = 0; i < gw_choices(p); i++) {
        const gw_among *among = &p->out->offer.among[i];
        int *fits = kit->kit[1].fits[among->axle];
        for (int j = 0; j < among->n_joints; j++) {
            int joint = among->joint[j];
            fits[joint] = gw_choose_bush(p->c, &p->out->offer, kit->option, i, j);
            fits[p->c->pairs[among->axle].joints[joint].twin] = fits[joint];
        }
    }
}

double gw_figure_value(const gw_corner_result *wheel, double camber_to_road, gw_goal_figure figure)
{
    switch (figure) {
    case GW_GOAL_TOE:
        return wheel->toe_change;
    case GW_GOAL_CAMBER:
        return wheel->camber_change;
    case GW_GOAL_CASTER:
        return wheel->caster_change;
    case GW_GOAL_FORE_AFT:
        return wheel->wheel_centre.x;
    case GW_GOAL_TO_ROAD:
        break;
    }
    return camber_to_road;
}

static gw_status solve(gw_bench_kit *kit, const gw_chosen_figure *f, gw_deflection *item, gw_error *err)
{
    const gw_load *load = &kit->c.loads[f->load];
    gw_manoeuvre m = load->manoeuvre;
    item->wheel = f->wheel;
    m.side = gw_side_of_wheel(f->wheel);
    return load->kind == GW_LOAD_MANOEUVRE ? gw_run_manoeuvre(&kit->run, &m, item, err)
                                           : gw_run_direct(&kit->run, &load->direct, load->other, item, err);
}

/* Several figures of one load and wheel are read off one solution. */
static bool same_solution(const gw_chosen_figure *a, const gw_chosen_figure *b)
{
    return a->load == b->load && a->axle == b->axle && a->wheel == b->wheel;
}

static gw_status solve_all(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, double *value, gw_error *err)
{
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_deflection item = { .result.joints = joints };
    const gw_chosen_figure *last = NULL;
    for (int f = 0; f < p->out->n_figures; f++) {
        const gw_chosen_figure *figure = &p->out->figure[f];
        if (figure->axle != axle || p->drive_of[f] >= 0) continue;
        gw_status status = last && same_solution(last, figure) ? GW_OK : solve(kit, figure, &item, err);
        if (status != GW_OK) return status;
        last = figure;
        value[f] = gw_figure_value(&item.result, item.camber_to_road, figure->figure);
    }
    return GW_OK;
}

/* What is asked of the same corner next need not look anew. */
static void keep_corner(gw_bench_kit *kit, gw_axle axle)
{
    if (!kit->run.ws) return;
    gw_corner_close(kit->like[axle]);
    kit->like[axle] = kit->run.ws;
    kit->run.ws = NULL;
}

gw_status gw_kit_alone(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, double *value, gw_error *err)
{
    bool any = false;
    for (int f = 0; f < p->out->n_figures; f++)
        any = any || (p->out->figure[f].axle == axle && p->drive_of[f] < 0);
    if (!any) return GW_OK;
    gw_status status = gw_run_open_corner(&kit->run, 1, axle, err);
    if (status == GW_OK) status = solve_all(p, kit, axle, value, err);
    keep_corner(kit, axle);
    gw_run_close_corner(&kit->run);
    return status;
}

/* Of a kit of the case with the very bushes that are in hand on the axle; NULL: not known. */
static const gw_ride_result *known_ride(const gw_planner *p, const gw_bench_kit *kit, gw_axle axle)
{
    const size_t size = (size_t)p->c->pairs[axle].n_joints * sizeof(int);
    for (int k = 0; p->options->ride && k < p->c->n_kits; k++) {
        const gw_ride_item *item = gw_ride_find(p->options->ride, k, axle);
        if (item && !memcmp(p->c->kits[k].fits[axle], kit->kit[1].fits[axle], size)) return &item->result;
    }
    return NULL;
}

static gw_status work_ride_out(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, double *harsh,
                               double *loud, gw_error *err)
{
    const gw_ride_options bare = {
        .no_range = true, .no_curve = true, .no_obstacle = true, .no_modes = true, .like = kit->like[axle]
    };
    const gw_corner *corner = &p->c->corners[axle];
    gw_ride_result result = { 0 };
    gw_error inner = { 0 };
    gw_fit_kit(&kit->c, &kit->run.laws, 1, axle, kit->run.fit);
    gw_status status = gw_ride_solve(corner, kit->run.fit, &p->c->ride, &bare, &result, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: %s corner: %s", p->c->path, corner->name, inner.msg);
    *harsh = result.harshness[0];
    *loud = result.noise[0];
    gw_ride_result_free(&result);
    return GW_OK;
}

gw_status gw_kit_ride(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, double *harsh, double *loud,
                      gw_error *err)
{
    const gw_ride_result *known = known_ride(p, kit, axle);
    if (!known) return work_ride_out(p, kit, axle, harsh, loud, err);
    *harsh = known->harshness[0];
    *loud = known->noise[0];
    return GW_OK;
}

gw_status gw_kit_pair(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, gw_corner_ws **out, gw_error *err)
{
    gw_fit_pair(&kit->c, &kit->run.laws, 1, axle, kit->run.fit);
    const gw_corner_ws *like = gw_is_pair(&p->c->corners[axle]) ? kit->like[axle] : NULL;
    return gw_corner_open_like(&p->c->pairs[axle], kit->run.fit, like, out, err);
}
