/* SPDX-License-Identifier: MIT */
#include "study/run.h"

#include "giveway/casefile.h"
#include "study/opened.h"

#include <stdlib.h>
#include <string.h>

/* The height left out: half the track times dy/dz of the contact patch at S0, with the first kit. */
static gw_status roll_centre(gw_run *run, gw_axle axle, gw_error *err)
{
    gw_path path[GW_WHEELS];
    gw_status status = gw_run_open_corner(run, 0, axle, err);
    if (status == GW_OK)
        status = gw_axle_path_at(run->ws, gw_corner_reference(run->ws), GW_AT_TRAVEL, GW_OTHER_OPPOSITE, path,
                                 err);
    if (status == GW_OK)
        run->vehicle.roll_centre[axle] = 0.5 * run->vehicle.track[axle] * path[0].patch.y / path[0].patch.z;
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
    if (run->guide && run->on_road) return GW_OK; /* no movement of a wheel hangs on them there */
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

/* The car of the guide with this kit, where it was stood up. */
static const gw_road *guide_road(const gw_run *run, int kit)
{
    const gw_run_guide *g = run->guide;
    return g && g->road && g->road[kit] && g->marked[kit * (1 + run->c->n_loads)] ? g->road[kit] : NULL;
}

/* What joints do not give of the roll stiffness of the vehicle, with the first kit. */
static gw_status make_up(gw_run *run, gw_axle axle, gw_error *err)
{
    const gw_corner *pair = &run->c->pairs[axle];
    double wanted = run->c->vehicle.roll_stiffness[axle];
    gw_corner_ws *ws = NULL;
    gw_error inner = { 0 };
    if (pair->has_bar || !(wanted > 0.0)) return GW_OK;
    gw_fit_pair(run->c, &run->laws, 0, axle, run->fit);
    const gw_road *near = guide_road(run, 0);
    gw_status status =
        near ? gw_corner_open_near(pair, run->fit, gw_road_axle_ws(near, axle), run->guide->how, &ws, &inner)
             : gw_corner_open_like(pair, run->fit, gw_opened_pair(run->wanted->opened, run->c, 0, axle), &ws,
                                   &inner);
    if (status == GW_OK) status = gw_road_make_up(ws, wanted, &run->made_up[axle], &inner);
    gw_corner_close(ws);
    if (status != GW_OK) return gw_fail(err, status, "%s: %s", run->c->path, inner.msg);
    return GW_OK;
}

static gw_status make_ready_for_road(gw_run *run, gw_error *err)
{
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && run->on_road && status == GW_OK; a++)
        status = make_up(run, (gw_axle)a, err);
    return status;
}

int gw_selection_first_kit(const gw_case *c, const gw_selection *wanted)
{
    int k = 0;
    while (wanted && wanted->kits && k < c->n_kits - 1 && !wanted->kits[k]) k++;
    return k;
}

gw_status gw_run_open(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err)
{
    return gw_run_open_near(run, c, wanted, NULL, err);
}

gw_status gw_run_open_on_ramp(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err)
{
    *run = (gw_run){ .c = c, .wanted = wanted, .owns_laws = !wanted->laws, .vehicle = c->vehicle };
    if (run->owns_laws) return gw_laws_make(c, wanted->method, &run->laws, err);
    run->laws = *wanted->laws;
    return GW_OK;
}

gw_status gw_run_open_near(gw_run *run, const gw_case *c, const gw_selection *wanted,
                           const gw_run_guide *guide, gw_error *err)
{
    gw_status status = gw_run_open_on_ramp(run, c, wanted, err);
    run->guide = guide;
    run->on_road = gw_case_on_road(c);
    if (status == GW_OK) status = find_roll_centres(run, err);
    if (status == GW_OK) status = make_ready_for_road(run, err);
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

/* As the guide's, where there is one. */
static gw_status open_ws(const gw_run *run, bool right, gw_corner_ws **out, gw_error *err)
{
    const gw_corner *corner = &run->c->corners[run->axle];
    const gw_run_guide *g = run->guide;
    const gw_corner_ws *near = g ? (right ? g->right : g->ws)[run->kit * GW_AXLES + (int)run->axle] : NULL;
    const gw_corner_ws *like = gw_opened_corner(run->wanted->opened, run->c, run->kit, run->axle, right);
    return near ? gw_corner_open_near(corner, run->fit, near, g->how, out, err)
                : gw_corner_open_like(corner, run->fit, like, out, err);
}

gw_status gw_run_open_corner(gw_run *run, int kit, gw_axle axle, gw_error *err)
{
    const gw_corner *corner = &run->c->corners[axle];
    gw_error inner = { 0 };
    run->kit = kit;
    run->axle = axle;
    gw_fit_kit(run->c, &run->laws, kit, axle, run->fit);
    gw_status status = open_ws(run, false, &run->ws, &inner);
    if (status == GW_OK && !corner->shared && gw_kit_is_lopsided(run->c, kit, axle)) {
        gw_fit_right(run->c, &run->laws, kit, axle, run->fit);
        status = open_ws(run, true, &run->right, &inner);
        gw_fit_kit(run->c, &run->laws, kit, axle, run->fit);
    }
    if (status == GW_OK) status = gw_state_alloc(corner, &run->state, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: kit %s: %s", run->c->path, run->c->kits[kit].name, inner.msg);
    return GW_OK;
}

void gw_run_close_corner(gw_run *run)
{
    gw_state_free(&run->state);
    gw_corner_close(run->ws);
    gw_corner_close(run->right);
    gw_road_close(run->road);
    run->ws = run->right = NULL;
    run->road = NULL;
    run->drives = run->on_right = false;
    run->refused = (gw_error){ 0 };
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

/* Where a wheel is solved: in its axle, where that shares parts, else in its corner. */
static gw_corner_ws *ws_of(const gw_run *run, gw_wheel_side wheel)
{
    return wheel == GW_RIGHT_WHEEL && run->right ? run->right : run->ws;
}

/* The load that a corner's own solution looks at is the left one. */
static gw_status solve_wheel(gw_run *run, const gw_corner_load load[GW_WHEELS], gw_wheel_side wheel,
                             gw_drive drive, gw_error *err)
{
    const gw_state *near = drive == GW_ON_SPRING ? run->near_dive : run->near;
    const gw_corner_load own[GW_WHEELS] = { load[wheel], load[wheel] };
    bool pair = gw_is_pair(&run->c->corners[run->axle]);
    return gw_axle_solve_near(pair ? run->ws : ws_of(run, wheel), pair ? load : own, drive, near, &run->state,
                              err);
}

gw_status gw_run_look(gw_run *run, const gw_corner_load load[GW_WHEELS], gw_wheel_side wheel, gw_drive drive,
                      gw_corner_result *out, gw_error *err)
{
    gw_status status = solve_wheel(run, load, wheel, drive, err);
    if (status != GW_OK) return status;
    bool pair = gw_is_pair(&run->c->corners[run->axle]);
    gw_corner_report_of(ws_of(run, wheel), &run->state, pair ? wheel : GW_LEFT_WHEEL, out);
    return GW_OK;
}

double gw_run_static_camber(const gw_run *run, gw_wheel_side wheel)
{
    bool pair = gw_is_pair(&run->c->corners[run->axle]);
    return gw_corner_static_camber_of(ws_of(run, wheel), pair ? wheel : GW_LEFT_WHEEL);
}

static const gw_corner_load *load_as_solved(const gw_run *run, gw_wheel_side wheel)
{
    bool right = wheel == GW_RIGHT_WHEEL && gw_is_pair(&run->c->corners[run->axle]);
    return right ? &run->state.right_load : &run->state.load;
}

static void fill_item(gw_run *run, gw_deflection *item)
{
    gw_corner_ws *ws = ws_of(run, item->wheel);
    bool pair = gw_is_pair(&run->c->corners[run->axle]);
    gw_wheel_side wheel = pair ? item->wheel : GW_LEFT_WHEEL;
    item->kit = run->kit;
    item->axle = run->axle;
    item->applied = *load_as_solved(run, item->wheel);
    gw_corner_report_of(ws, &run->state, wheel, &item->result);
    item->static_camber = gw_corner_static_camber_of(ws, wheel);
    item->off_centre = gw_kit_is_off_centre(run->c, run->kit, run->axle);
    item->camber_to_road = item->result.camber + (item->side == GW_OUTER ? item->roll : -item->roll);
}

gw_status gw_run_direct(gw_run *run, const gw_corner_load *load, gw_other_wheel other, gw_deflection *item,
                        gw_error *err)
{
    gw_corner_load both[GW_WHEELS];
    gw_axle_loads(&run->c->corners[run->axle], load, other, both);
    gw_status status = solve_wheel(run, both, item->wheel, GW_AT_TRAVEL, err);
    if (status == GW_OK) fill_item(run, item);
    return status;
}

/* Travel under the longitudinal forces and load transfer alone, with the spring on its law. */
static gw_status dive_travel(gw_run *run, const gw_wheel_load *wheel, gw_wheel_side side,
                             double dive[GW_WHEELS], gw_error *err)
{
    gw_corner_load along = { 0 };
    along.patch_force = gw_v3(wheel->patch_force.x, 0, wheel->vertical_long);
    along.hub_force = wheel->hub_force;
    const gw_corner_load both[GW_WHEELS] = { along, along };
    gw_status status = solve_wheel(run, both, side, GW_ON_SPRING, err);
    if (status != GW_OK) return status;
    for (int w = 0; w < GW_WHEELS; w++) dive[w] = load_as_solved(run, (gw_wheel_side)w)->travel;
    if (run->keep_dive) gw_corner_keep(&run->c->corners[run->axle], &run->state, run->keep_dive);
    return GW_OK;
}

/* What is known of an axle: the corner that is open, where it holds both wheels, or what was opened before.
 */
static const gw_corner_ws *like_pair(const gw_run *run, int axle)
{
    bool open = run->ws && axle == (int)run->axle && gw_is_pair(gw_corner_of(run->ws));
    return open ? run->ws : gw_opened_pair(run->wanted->opened, run->c, run->kit, (gw_axle)axle);
}

/* The car with this kit, stood on its wheels once. */
static gw_status stand_up(gw_run *run, gw_error *err)
{
    gw_road_part part[GW_AXLES];
    gw_fit *fit = NULL;
    const int front = run->c->pairs[GW_FRONT].n_joints, all = front + run->c->pairs[GW_REAR].n_joints;
    if (run->road) return GW_OK;
    if (!(fit = calloc((size_t)all + 1, sizeof *fit)))
        return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    for (int a = 0; a < GW_AXLES; a++) {
        gw_fit *own = fit + (a == GW_REAR ? front : 0);
        const gw_fit *of = own;
        gw_fit_pair(run->c, &run->laws, run->kit, (gw_axle)a, own);
        if (run->set && a == (int)run->axle) of = run->set;
        part[a] = (gw_road_part){ &run->c->pairs[a], of, run->made_up[a], like_pair(run, a) };
    }
    const gw_road *near = run->set ? NULL : guide_road(run, run->kit);
    const gw_road_mark *guess = near ? &run->guide->mark[run->kit * (1 + run->c->n_loads)] : NULL;
    gw_status status =
        near ? gw_road_open_near(&run->vehicle, part, near, guess, run->guide->how, &run->road, err)
             : gw_road_open(&run->vehicle, part, &run->road, err);
    free(fit);
    return status;
}

/* Joints of the pair as the corner lists them. */
static void take_joints(const gw_run *run, gw_wheel_side wheel, const gw_joint_result *all,
                        gw_joint_result *out)
{
    for (int j = 0; j < run->c->corners[run->axle].n_joints; j++)
        out[j] = all[gw_joint_of_wheel(run->c, run->axle, wheel, j)];
}

/* Where the next manoeuvre of the car starts: as told, or where a study before drove it. */
static const gw_road_mark *road_guess(const gw_run *run, const gw_manoeuvre *m)
{
    if (run->near_road || run->guide) return run->near_road;
    return gw_opened_mark(run->wanted->opened, run->c, run->kit, m);
}

/* The car in a manoeuvre, which it stands in already where it was driven last; what it did not carry it is
 * not asked again. */
static gw_status carry(gw_run *run, const gw_manoeuvre *m, gw_error *err)
{
    const bool again = gw_same_manoeuvre(m, &run->driven);
    if (run->drives && again) return GW_OK;
    if (run->refused.msg[0] && again) return gw_fail(err, run->refused.code, "%s", run->refused.msg);
    run->drives = false;
    run->refused = (gw_error){ 0 };
    run->driven = *m;
    gw_status status =
        gw_road_solve_near(run->road, m, road_guess(run, m), run->untold ? NULL : &run->refused);
    run->drives = status == GW_OK;
    return run->drives ? GW_OK : gw_fail(err, status, "%s", run->refused.msg);
}

static gw_status drive_on_road(gw_run *run, const gw_manoeuvre *m, gw_deflection *item, gw_error *err)
{
    gw_joint_result joints[GW_MAX_JOINTS], *own = item->result.joints;
    gw_road_result r = { .wheel.joints = own ? joints : NULL };
    gw_status status = stand_up(run, err);
    if (status == GW_OK) status = carry(run, m, err);
    if (status != GW_OK) return status;
    item->wheel = gw_wheel_of_side(m->side);
    gw_road_applied(run->road, run->axle, gw_wheel_beside(item->wheel), &item->beside);
    gw_road_applied(run->road, run->axle, item->wheel, &item->applied);
    gw_road_report(run->road, run->axle, item->wheel, &r);
    item->kit = run->kit;
    item->axle = run->axle;
    item->manoeuvre = item->on_road = true;
    item->side = m->side;
    item->roll = r.roll;
    item->pitch = r.pitch;
    item->heave = r.heave;
    item->dive = r.dive;
    item->camber_to_road = r.camber_to_road;
    item->static_camber = gw_corner_static_camber_of(gw_road_axle_ws(run->road, run->axle), item->wheel);
    item->off_centre = gw_kit_is_off_centre(run->c, run->kit, run->axle);
    item->result = r.wheel;
    item->result.joints = own;
    if (own) take_joints(run, item->wheel, joints, own);
    return GW_OK;
}

static gw_status drive_by_rule(gw_run *run, const gw_manoeuvre *manoeuvre, gw_deflection *item, gw_error *err)
{
    gw_wheel_load wheel[GW_WHEELS];
    gw_corner_load load[GW_WHEELS];
    double dive[GW_WHEELS] = { 0.0 };
    gw_status status = GW_OK;
    item->wheel = gw_wheel_of_side(manoeuvre->side);
    for (int w = 0; w < GW_WHEELS && status == GW_OK; w++) {
        gw_manoeuvre m = *manoeuvre;
        m.side = gw_side_of_wheel((gw_wheel_side)w);
        status = gw_vehicle_wheel_load(&run->vehicle, &m, run->axle, &wheel[w], err);
    }
    if (status == GW_OK) status = dive_travel(run, &wheel[0], item->wheel, dive, err);
    if (status != GW_OK) return status;
    for (int w = 0; w < GW_WHEELS; w++)
        load[w] = (gw_corner_load){ wheel[w].patch_force, wheel[w].patch_moment, wheel[w].hub_force,
                                    wheel[w].roll_travel + dive[w] };
    status = solve_wheel(run, load, item->wheel, GW_AT_TRAVEL, err);
    if (status != GW_OK) return status;
    item->manoeuvre = true;
    item->side = manoeuvre->side;
    item->roll = wheel[0].roll;
    item->dive = dive[item->wheel];
    fill_item(run, item);
    item->beside = load[gw_wheel_beside(item->wheel)];
    return GW_OK;
}

gw_status gw_run_manoeuvre(gw_run *run, const gw_manoeuvre *manoeuvre, gw_deflection *item, gw_error *err)
{
    return run->on_road ? drive_on_road(run, manoeuvre, item, err) : drive_by_rule(run, manoeuvre, item, err);
}
