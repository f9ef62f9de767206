/* SPDX-License-Identifier: MIT */
#include "study/run.h"

#include <string.h>

/* The height left out: half the track times dy/dz of the contact patch at S0, with the first kit. */
static gw_status roll_centre(gw_run *run, gw_axle axle, gw_error *err)
{
    gw_path path;
    gw_status status = gw_run_open_corner(run, 0, axle, err);
    if (status == GW_OK)
        status = gw_corner_path_at(run->ws, gw_corner_reference(run->ws), GW_AT_TRAVEL, &path, err);
    if (status == GW_OK)
        run->vehicle.roll_centre[axle] = 0.5 * run->vehicle.track[axle] * path.patch.y / path.patch.z;
    gw_run_close_corner(run);
    return status;
}

/* Without manoeuvres a missing height hurts nobody, unless it can be worked out for other studies anyway. */
static bool needs_roll_centre(const gw_case *c)
{
    if (!c->has_vehicle || c->vehicle.has_roll_centre) return false;
    if (c->has_corner[GW_FRONT] && c->has_corner[GW_REAR]) return true;
    for (int l = 0; l < c->n_loads; l++)
        if (c->loads[l].kind == GW_LOAD_MANOEUVRE) return true;
    return false;
}

static gw_status find_roll_centres(gw_run *run, gw_error *err)
{
    gw_status status = GW_OK;
    run->vehicle = run->c->vehicle;
    if (!needs_roll_centre(run->c)) return GW_OK;
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
        if (!run->c->has_corner[a])
            return gw_fail(err, GW_E_SCHEMA,
                           "%s: vehicle.roll_centre_height_mm: give both heights, since the case has no %s "
                           "corner to work one out from",
                           run->c->path, gw_axle_name(a));
        status = roll_centre(run, a, err);
    }
    return status;
}

gw_status gw_run_open(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err)
{
    *run = (gw_run){ .c = c, .wanted = wanted };
    gw_status status = GW_OK;
    run->owns_laws = !wanted->laws;
    if (wanted->laws)
        run->laws = *wanted->laws;
    else
        status = gw_laws_make(c, wanted->method, &run->laws, err);
    if (status == GW_OK) status = find_roll_centres(run, err);
    return status;
}

void gw_run_close(gw_run *run)
{
    gw_run_close_corner(run);
    if (run->owns_laws) gw_laws_free(&run->laws);
}

bool gw_run_wants_kit(const gw_run *run, int kit)
{
    return !run->wanted->kits || run->wanted->kits[kit];
}

bool gw_run_wants_axle(const gw_run *run, gw_axle axle)
{
    return run->c->has_corner[axle] && (!run->wanted->only_axle || run->wanted->axle == axle);
}

bool gw_run_wants_load(const gw_run *run, int load, gw_axle axle)
{
    const gw_load *l = &run->c->loads[load];
    if (run->wanted->loads && !run->wanted->loads[load]) return false;
    return l->kind == GW_LOAD_MANOEUVRE || l->axle == axle;
}

gw_status gw_run_open_corner(gw_run *run, int kit, gw_axle axle, gw_error *err)
{
    const gw_corner *corner = &run->c->corners[axle];
    gw_error inner = { 0 };
    run->kit = kit;
    run->axle = axle;
    gw_fit_kit(run->c, &run->laws, kit, axle, run->fit);
    gw_status status = gw_corner_open(corner, run->fit, &run->ws, &inner);
    if (status == GW_OK) status = gw_state_alloc(corner, &run->state, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: kit %s: %s", run->c->path, run->c->kits[kit].name, inner.msg);
    return GW_OK;
}

void gw_run_close_corner(gw_run *run)
{
    gw_state_free(&run->state);
    gw_corner_close(run->ws);
    run->ws = NULL;
}

gw_status gw_run_add_warnings(gw_arena *arena, const char ***list, int *n, const char **more, int n_more,
                              gw_error *err)
{
    if (!n_more) return GW_OK;
    const char **all = gw_arena_alloc(arena, (size_t)(*n + n_more), sizeof *all);
    if (!all) return gw_fail(err, GW_E_NOMEM, "out of memory for warnings");
    if (*n) memcpy(all, *list, (size_t)*n * sizeof *all);
    memcpy(all + *n, more, (size_t)n_more * sizeof *all);
    *list = all;
    *n += n_more;
    return GW_OK;
}

gw_status gw_run_warn(const gw_run *run, const char *how, const char *text, gw_arena *arena,
                      const char ***list, int *n, gw_error *err)
{
    gw_error line = { 0 };
    gw_fail(&line, GW_OK, "kit %s%s: %s", run->c->kits[run->kit].name, how, text);
    const char *kept = gw_arena_strdup(arena, line.msg);
    if (!kept) return gw_fail(err, GW_E_NOMEM, "out of memory for warnings");
    return gw_run_add_warnings(arena, list, n, &kept, 1, err);
}

gw_status gw_run_corner_warnings(const gw_run *run, const char *how, gw_arena *arena, const char ***list,
                                 int *n, gw_error *err)
{
    gw_status status = GW_OK;
    for (int i = 0; status == GW_OK && i < gw_corner_warnings(run->ws); i++)
        status = gw_run_warn(run, how, gw_corner_warning(run->ws, i), arena, list, n, err);
    return status;
}

static void fill_item(gw_run *run, gw_deflection *item)
{
    item->kit = run->kit;
    item->axle = run->axle;
    item->applied = run->state.load;
    gw_corner_report(run->ws, &run->state, &item->result);
    item->static_camber = gw_corner_static_camber(run->ws);
    item->off_centre = gw_kit_is_off_centre(run->c, run->kit, run->axle);
    item->camber_to_road = item->result.camber + (item->side == GW_OUTER ? item->roll : -item->roll);
}

gw_status gw_run_direct(gw_run *run, const gw_corner_load *load, gw_deflection *item, gw_error *err)
{
    gw_status status = gw_corner_solve(run->ws, load, GW_AT_TRAVEL, &run->state, err);
    if (status == GW_OK) fill_item(run, item);
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

gw_status gw_run_manoeuvre(gw_run *run, const gw_manoeuvre *manoeuvre, gw_deflection *item, gw_error *err)
{
    gw_wheel_load wheel;
    double dive = 0.0;
    gw_status status = gw_vehicle_wheel_load(&run->vehicle, manoeuvre, run->axle, &wheel, err);
    if (status == GW_OK) status = dive_travel(run, &wheel, &dive, err);
    if (status != GW_OK) return status;
    const gw_corner_load load = { wheel.patch_force, wheel.patch_moment, wheel.hub_force,
                                  wheel.roll_travel + dive };
    status = gw_corner_solve(run->ws, &load, GW_AT_TRAVEL, &run->state, err);
    if (status != GW_OK) return status;
    item->manoeuvre = true;
    item->side = manoeuvre->side;
    item->roll = wheel.roll;
    item->dive = dive;
    fill_item(run, item);
    return GW_OK;
}
