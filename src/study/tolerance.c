/* SPDX-License-Identifier: MIT */
#include "giveway/tolerance.h"

#include "casefile/reach.h"
#include "giveway/pick.h"

#include <math.h>
#include <stdlib.h>

typedef struct gw_ends {
    const gw_case *c;
    const gw_selection *wanted;
    const gw_laws *laws;
    bool *loads; /**< the stop and the corner */
} gw_ends;

/* What resists being turned is rubber; ball joints and bearings given by their rates do not. */
static bool varies(const gw_bush *bush)
{
    const gw_given_rates *r = &bush->rates;
    if (bush->type == GW_BUSH_RATES) return r->conical[0] > 0.0 || r->conical[1] > 0.0 || r->torsional > 0.0;
    return gw_bush_is_rubber(bush);
}

static double hardness_of(const gw_bush *bush)
{
    const gw_value *stated = &bush->annulus.material.hardness_irhd;
    return bush->type != GW_BUSH_RATES && stated->known ? stated->v : GW_HARDNESS_USUAL;
}

static int count_bushes(const gw_case *c, int kit, gw_axle axle)
{
    int n = 0;
    for (int j = 0; j < c->corners[axle].n_joints; j++) n += varies(&c->bushes[c->kits[kit].fits[axle][j]]);
    return n;
}

/* All rates of a bush scale with its modulus, so what was worked out from its shape is taken over. */
static gw_bush_law law_at(const gw_bush *bush, const gw_bush_law *law, double points)
{
    if (!varies(bush)) return *law;
    return gw_bush_law_times(law, exp(gw_scale_of_hardness(2.0 * points, hardness_of(bush))));
}

static gw_status solve_end(const gw_ends *e, double points, gw_deflect_study *out, gw_error *err)
{
    gw_laws laws = { e->laws->n, calloc((size_t)e->laws->n + 1, sizeof *laws.law) };
    gw_selection wanted = *e->wanted;
    if (!laws.law) return gw_fail(err, GW_E_NOMEM, "out of memory for the hardness of rubber");
    for (int b = 0; b < laws.n; b++) laws.law[b] = law_at(&e->c->bushes[b], &e->laws->law[b], points);
    wanted.loads = e->loads;
    wanted.laws = &laws;
    gw_status status = gw_study_deflect(e->c, &wanted, out, err);
    gw_laws_free(&laws);
    return status;
}

/* Both ends hold the same items in the same order. */
static gw_status fill(const gw_case *c, const gw_deflect_study ends[2], gw_tolerance_study *out,
                      gw_error *err)
{
    out->item = gw_arena_alloc(&out->arena, (size_t)ends[0].n + 1, sizeof *out->item);
    if (!out->item) return gw_fail(err, GW_E_NOMEM, "out of memory for the hardness of rubber");
    for (int i = 0; i < ends[0].n; i++) {
        gw_tolerance_item *item = &out->item[out->n++];
        const gw_deflection *of = &ends[0].item[i];
        *item = (gw_tolerance_item){ .kit = of->kit, .load = of->load, .axle = of->axle };
        item->bushes = count_bushes(c, of->kit, of->axle);
        for (int e = 0; e < 2; e++) {
            item->failed = item->failed || ends[e].item[i].failed;
            item->toe[e] = ends[e].item[i].result.toe_change;
            item->camber[e] = ends[e].item[i].result.camber_change;
        }
    }
    return GW_OK;
}

static gw_status both_ends(const gw_ends *e, gw_tolerance_study *out, gw_error *err)
{
    static const double POINTS[2] = { -GW_HARDNESS_TOLERANCE, GW_HARDNESS_TOLERANCE };
    gw_deflect_study ends[2] = { { .n = 0 }, { .n = 0 } };
    gw_status status = GW_OK;
    for (int i = 0; i < 2 && status == GW_OK; i++) status = solve_end(e, POINTS[i], &ends[i], err);
    if (status == GW_OK) status = fill(e->c, ends, out, err);
    if (status == GW_E_NUMERIC) status = GW_OK; /* an end at which the car does not stand has no answer */
    for (int i = 0; i < 2; i++) gw_deflect_study_free(&ends[i]);
    return status;
}

gw_status gw_study_tolerance(const gw_case *c, const gw_selection *wanted, const gw_deflect_study *study,
                             gw_tolerance_study *out, gw_error *err)
{
    int stop = gw_pick_load(c, study, GW_PICK_STOP), turn = gw_pick_load(c, study, GW_PICK_CORNER);
    gw_tolerance_study made = { 0 };
    gw_laws laws = { 0 };
    gw_ends e = { c, wanted, wanted->laws ? wanted->laws : &laws,
                  calloc((size_t)c->n_loads + 1, sizeof *e.loads) };
    gw_status status = e.loads ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for the hardness of rubber");
    if (status == GW_OK && !wanted->laws) status = gw_laws_make(c, wanted->method, &laws, err);
    if (e.loads && stop >= 0) e.loads[stop] = true;
    if (e.loads && turn >= 0) e.loads[turn] = true;
    if (status == GW_OK && (stop >= 0 || turn >= 0)) status = both_ends(&e, &made, err);
    free(e.loads);
    gw_laws_free(&laws);
    if (status != GW_OK) {
        gw_tolerance_study_free(&made);
        return status;
    }
    *out = made;
    return GW_OK;
}

void gw_tolerance_study_free(gw_tolerance_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_tolerance_study){ 0 };
}

const gw_tolerance_item *gw_tolerance_find(const gw_tolerance_study *study, int kit, gw_axle axle, int load)
{
    for (int i = 0; i < study->n; i++) {
        const gw_tolerance_item *item = &study->item[i];
        if (item->kit == kit && item->axle == axle && item->load == load) return item;
    }
    return NULL;
}
