/* SPDX-License-Identifier: MIT */
/* Every kit in every corner under every load: where the wheel goes, and by which bush. */
#include "giveway/study.h"

#include <stdlib.h>
#include <string.h>

/* What a run of the study carries along. */
typedef struct gw_run {
    const gw_case *c;
    const gw_selection *wanted;
    gw_laws laws;
    gw_vehicle vehicle; /**< with roll-centre heights filled in */
    gw_fit fit[GW_MAX_JOINTS];
    gw_state state;
    gw_corner_ws *ws;
    gw_deflect_study *out;
} gw_run;

static bool kit_wanted(const gw_run *run, int kit)
{
    return !run->wanted->kits || run->wanted->kits[kit];
}

static bool axle_wanted(const gw_run *run, gw_axle axle)
{
    return run->c->has_corner[axle] && (!run->wanted->only_axle || run->wanted->axle == axle);
}

static bool load_wanted(const gw_run *run, int load, gw_axle axle)
{
    const gw_load *l = &run->c->loads[load];
    if (run->wanted->loads && !run->wanted->loads[load]) return false;
    return l->kind == GW_LOAD_MANOEUVRE || l->axle == axle;
}

static int count_items(const gw_run *run)
{
    int n = 0;
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int l = 0; l < run->c->n_loads; l++)
                n += kit_wanted(run, k) && axle_wanted(run, a) && load_wanted(run, l, a);
    return n;
}

static gw_status keep_warnings(gw_run *run, int kit, gw_error *err)
{
    gw_deflect_study *out = run->out;
    int n = gw_corner_warnings(run->ws);
    if (!n) return GW_OK;
    const char **all = gw_arena_alloc(&out->arena, (size_t)(out->n_warnings + n), sizeof *all);
    if (!all) return gw_fail(err, GW_E_NOMEM, "out of memory for warnings");
    if (out->n_warnings) memcpy(all, out->warning, (size_t)out->n_warnings * sizeof *all);
    for (int i = 0; i < n; i++) {
        gw_error text = { 0 };
        gw_fail(&text, GW_OK, "kit %s: %s", run->c->kits[kit].name, gw_corner_warning(run->ws, i));
        if (!(all[out->n_warnings + i] = gw_arena_strdup(&out->arena, text.msg)))
            return gw_fail(err, GW_E_NOMEM, "out of memory for warnings");
    }
    out->warning = all;
    out->n_warnings += n;
    return GW_OK;
}

static void close_corner(gw_run *run)
{
    gw_state_free(&run->state);
    gw_corner_close(run->ws);
    run->ws = NULL;
}

static gw_status open_corner(gw_run *run, int kit, gw_axle axle, gw_error *err)
{
    const gw_corner *corner = &run->c->corners[axle];
    gw_error inner = { 0 };
    gw_fit_kit(run->c, &run->laws, kit, axle, run->fit);
    gw_status status = gw_corner_open(corner, run->fit, &run->ws, &inner);
    if (status == GW_OK) status = gw_state_alloc(corner, &run->state, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: kit %s: %s", run->c->path, run->c->kits[kit].name, inner.msg);
    return GW_OK;
}

/* The height left out: half the track times dy/dz of the contact patch at S0, with the first kit. */
static gw_status roll_centre(gw_run *run, gw_axle axle, gw_error *err)
{
    gw_path path;
    gw_status status = open_corner(run, 0, axle, err);
    if (status == GW_OK)
        status = gw_corner_path_at(run->ws, gw_corner_reference(run->ws), GW_AT_TRAVEL, &path, err);
    if (status == GW_OK)
        run->vehicle.roll_centre[axle] = 0.5 * run->vehicle.track[axle] * path.patch.y / path.patch.z;
    close_corner(run);
    return status;
}

static bool needs_roll_centre(const gw_run *run)
{
    if (!run->c->has_vehicle || run->vehicle.has_roll_centre) return false;
    for (int l = 0; l < run->c->n_loads; l++)
        if (run->c->loads[l].kind == GW_LOAD_MANOEUVRE) return true;
    return false;
}

static gw_status find_roll_centres(gw_run *run, gw_error *err)
{
    gw_status status = GW_OK;
    run->vehicle = run->c->vehicle;
    if (needs_roll_centre(run))
        for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
            if (!run->c->has_corner[a])
                return gw_fail(
                    err, GW_E_RANGE,
                    "%s: vehicle.roll_centre_height_mm: give both heights, since the case has no %s "
                    "corner to work one out from",
                    run->c->path, a == GW_FRONT ? "front" : "rear");
            status = roll_centre(run, a, err);
        }
    memcpy(run->out->roll_centre, run->vehicle.roll_centre, sizeof run->out->roll_centre);
    return status;
}

/* Travel under the longitudinal forces and load transfer alone, with the spring on its law. */
static gw_status dive_travel(gw_run *run, const gw_wheel_load *wheel, double *dive, gw_error *err)
{
    gw_corner_load along = { 0 };
    along.patch_force = gw_v3(wheel->patch_force.x, 0, wheel->vertical_long);
    along.hub_force = wheel->hub_force;
    gw_status status = gw_corner_solve(run->ws, &along, GW_ON_SPRING, &run->state, err);
    if (status == GW_OK) *dive = run->state.load.travel;
    return status;
}

static gw_status apply_manoeuvre(gw_run *run, const gw_load *load, gw_deflection *item, gw_error *err)
{
    gw_wheel_load wheel;
    gw_status status = gw_vehicle_wheel_load(&run->vehicle, &load->manoeuvre, item->axle, &wheel, err);
    if (status != GW_OK) return status;
    if ((status = dive_travel(run, &wheel, &item->dive, err)) != GW_OK) return status;
    item->manoeuvre = true;
    item->side = load->manoeuvre.side;
    item->roll = wheel.roll;
    item->applied = (gw_corner_load){ wheel.patch_force, wheel.patch_moment, wheel.hub_force,
                                      wheel.roll_travel + item->dive };
    return GW_OK;
}

static gw_status solve_item(gw_run *run, gw_deflection *item, gw_error *err)
{
    const gw_load *load = &run->c->loads[item->load];
    gw_status status = GW_OK;
    item->applied = load->direct;
    if (load->kind == GW_LOAD_MANOEUVRE) status = apply_manoeuvre(run, load, item, err);
    if (status != GW_OK) return status;
    status = gw_corner_solve(run->ws, &item->applied, GW_AT_TRAVEL, &run->state, err);
    if (status != GW_OK) return status;
    gw_corner_report(run->ws, &run->state, &item->result);
    item->static_camber = gw_corner_static_camber(run->ws);
    item->off_centre = gw_kit_is_off_centre(run->c, item->kit, item->axle);
    item->camber_to_road = item->result.camber + (item->side == GW_OUTER ? item->roll : -item->roll);
    return GW_OK;
}

static gw_status add_item(gw_run *run, int kit, gw_axle axle, int load, gw_error *err)
{
    gw_deflection *item = &run->out->item[run->out->n];
    gw_error inner = { 0 };
    item->kit = kit;
    item->axle = axle;
    item->load = load;
    item->result.joints =
        gw_arena_alloc(&run->out->arena, (size_t)run->c->corners[axle].n_joints, sizeof *item->result.joints);
    if (!item->result.joints) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    gw_status status = solve_item(run, item, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: load \"%s\", kit %s: %s", run->c->path, run->c->loads[load].name,
                       run->c->kits[kit].name, inner.msg);
    run->out->n++;
    return GW_OK;
}

static gw_status run_corner(gw_run *run, int kit, gw_axle axle, gw_error *err)
{
    gw_status status = open_corner(run, kit, axle, err);
    if (status == GW_OK) status = keep_warnings(run, kit, err);
    for (int l = 0; l < run->c->n_loads && status == GW_OK; l++)
        if (load_wanted(run, l, axle)) status = add_item(run, kit, axle, l, err);
    close_corner(run);
    return status;
}

static gw_status run_all(gw_run *run, gw_error *err)
{
    gw_status status = gw_laws_make(run->c, run->wanted->method, &run->laws, err);
    if (status == GW_OK) status = find_roll_centres(run, err);
    if (status != GW_OK) return status;
    run->out->item = gw_arena_alloc(&run->out->arena, (size_t)count_items(run), sizeof *run->out->item);
    if (!run->out->item) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            if (kit_wanted(run, k) && axle_wanted(run, a)) {
                status = run_corner(run, k, a, err);
                if (status != GW_OK) return status;
            }
    return GW_OK;
}

gw_status gw_study_deflect(const gw_case *c, const gw_selection *wanted, gw_deflect_study *out, gw_error *err)
{
    gw_deflect_study study = { 0 };
    gw_run run = { .c = c, .wanted = wanted, .out = &study };
    gw_status status = run_all(&run, err);
    gw_laws_free(&run.laws);
    if (status != GW_OK) {
        gw_deflect_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_deflect_study_free(gw_deflect_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_deflect_study){ 0 };
}

const gw_deflection *gw_deflect_find(const gw_deflect_study *study, int kit, gw_axle axle, int load)
{
    for (int i = 0; i < study->n; i++) {
        const gw_deflection *item = &study->item[i];
        if (item->kit == kit && item->axle == axle && item->load == load) return item;
    }
    return NULL;
}
