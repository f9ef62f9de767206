/* SPDX-License-Identifier: MIT */
#include "study/car_work.h"

#include "giveway/compare.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static int base_of(const gw_car_plan *plan, const gw_car_slot *slot)
{
    int first = plan->n_slots;
    for (int s = 0; s < plan->n_slots; s++) {
        const gw_car_slot *b = &plan->slot[s];
        if (b->kit != plan->first_kit || b->load != slot->load || b->axle != slot->axle) continue;
        if (b->wheel == slot->wheel) return s;
        if (first == plan->n_slots) first = s; /* the first kit's wheels are alike, so one was told */
    }
    return first;
}

static bool same_bushes(const gw_case *c, int a, int b, gw_axle axle)
{
    const size_t size = (size_t)c->pairs[axle].n_joints * sizeof *c->kits[a].fits[axle];
    return memcmp(c->kits[a].fits[axle], c->kits[b].fits[axle], size) == 0;
}

/* Kits often differ at one axle alone; the other is then worked out once. */
static int like_of(const gw_car_plan *plan, const gw_car_slot *slot)
{
    for (int s = 0; s < plan->n_slots; s++) {
        const gw_car_slot *e = &plan->slot[s];
        if (e->kit < slot->kit && e->axle == slot->axle && e->load == slot->load && e->wheel == slot->wheel &&
            same_bushes(plan->c, e->kit, slot->kit, slot->axle))
            return s;
    }
    return -1;
}

static void add_slot(gw_car_plan *plan, int kit, gw_axle axle, int load, int wheel, bool sided)
{
    gw_car_slot *slot = &plan->slot[plan->n_slots];
    const gw_load *l = load >= 0 ? &plan->c->loads[load] : NULL;
    *slot = (gw_car_slot){ .kit = kit, .axle = axle, .load = load, .first = plan->n_columns };
    slot->manoeuvre = l && l->kind == GW_LOAD_MANOEUVRE;
    slot->wheel = (gw_wheel_side)wheel;
    slot->sided = sided && !slot->manoeuvre;
    if (slot->manoeuvre) slot->side = l->manoeuvre.side;
    if (slot->manoeuvre && l->both) slot->side = gw_side_of_wheel(slot->wheel);
    slot->base = base_of(plan, slot);
    slot->like = like_of(plan, slot);
    plan->n_columns += load >= 0 ? (int)GW_CAR_COLUMNS : (int)GW_SPREAD_RIDE_QUANTITIES;
    plan->n_slots++;
}

static bool bears(const gw_case *c, int load, gw_axle axle)
{
    return c->loads[load].kind == GW_LOAD_MANOEUVRE || c->loads[load].axle == axle;
}

static bool is_wanted(const gw_selection *wanted, int kit, gw_axle axle, int load)
{
    if (!wanted) return true;
    if (wanted->only_axle && wanted->axle != axle) return false;
    return (!wanted->kits || wanted->kits[kit]) && (load < 0 || !wanted->loads || wanted->loads[load]);
}

gw_status gw_car_plan_make(const gw_case *c, bool ride, const gw_selection *wanted, gw_arena *arena,
                           gw_car_plan *out, gw_error *err)
{
    size_t room = (size_t)c->n_kits * GW_AXLES * (GW_WHEELS * (size_t)c->n_loads + 1) + 1;
    *out = (gw_car_plan){ .c = c, .ride = ride, .slot = gw_arena_alloc(arena, room, sizeof *out->slot) };
    if (!out->slot) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    out->first_kit = gw_selection_first_kit(c, wanted);
    for (int k = 0; k < c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!c->has_corner[a] || !is_wanted(wanted, k, a, -1)) continue;
            for (int l = 0; l < c->n_loads; l++) {
                int told = bears(c, l, a) && is_wanted(wanted, k, a, l) ? gw_wheels_told(c, k, a, l) : 0;
                for (int w = 0; w < told; w++) add_slot(out, k, a, l, w, told == GW_WHEELS);
            }
            if (ride) add_slot(out, k, a, -1, 0, false);
        }
    return GW_OK;
}

/* Where a slot's states are looked for, and where they are kept. */
static void point_at(gw_car_work *w, int s)
{
    bool known = w->from && w->from->kept[s];
    w->run.near_dive = known ? &w->from->dive[s] : NULL;
    w->run.near = known ? &w->from->state[s] : NULL;
    const gw_car_slot *slot = &w->plan->slot[s];
    int mark = slot->kit * (1 + w->plan->c->n_loads) + 1 + slot->load;
    bool marked = w->from && w->from->run.marked && w->from->run.marked[mark];
    w->run.near_road = marked && w->from->run.road[slot->kit] ? &w->from->run.mark[mark] : NULL;
    w->run.keep_dive = w->states && w->states->dive[s].pose ? &w->states->dive[s] : NULL;
}

static void keep_state(gw_car_work *w, int s)
{
    if (!w->states || !w->states->state[s].pose || !w->run.ws) return;
    gw_corner_keep(&w->run.c->corners[w->run.axle], &w->run.state, &w->states->state[s]);
    if (w->keep) w->keep->kept[s] = true;
}

static void solve(gw_car_work *w, int s)
{
    const gw_car_slot *slot = &w->plan->slot[s];
    const gw_case *c = w->run.c;
    const gw_load *load = &c->loads[slot->load];
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_deflection item = { .result.joints = joints, .wheel = slot->wheel };
    gw_manoeuvre m = load->manoeuvre;
    gw_error inner = { 0 }, why = { 0 };
    m.side = slot->side;
    point_at(w, s);
    gw_status status = slot->manoeuvre ? gw_run_manoeuvre(&w->run, &m, &item, &inner)
                                       : gw_run_direct(&w->run, &load->direct, load->other, &item, &inner);
    if (status != GW_OK) {
        gw_fail(&why, status, "%s: load \"%s\", kit %s: %s", c->path, load->name, c->kits[slot->kit].name,
                inner.msg);
        gw_car_note(w, status, &why);
        return;
    }
    keep_state(w, s);
    w->row[slot->first + GW_SPREAD_TOE] = item.result.toe_change;
    w->row[slot->first + GW_SPREAD_CAMBER] = item.result.camber_change;
    w->row[slot->first + GW_SPREAD_FORE_AFT] = item.result.wheel_centre.x;
    w->row[slot->first + GW_CAR_CASTER] = item.result.caster_change;
    w->row[slot->first + GW_CAR_TO_ROAD] = item.camber_to_road;
}

/* The open corner becomes one to start from. */
static void keep_corner(gw_car_work *w)
{
    int at = w->run.kit * GW_AXLES + (int)w->run.axle;
    gw_error why = { 0 };
    if (!w->keep) return;
    if (w->run.ws) gw_car_note(w, gw_corner_learn(w->run.ws, &why), &why);
    w->keep->run.ws[at] = w->run.ws;
    w->keep->run.right[at] = w->run.right;
    w->run.ws = w->run.right = NULL;
}

/* Where the car stands becomes a place to start from. */
static void mark_road(gw_car_work *w, int kit, int load)
{
    gw_car_guide *keep = w->keep;
    const int at = kit * (1 + w->plan->c->n_loads) + 1 + load;
    if (!keep || !w->run.road || keep->run.marked[at]) return;
    if (load >= 0 && !w->run.drives) return;
    gw_error why = { 0 };
    gw_status status = gw_road_mark_make(w->run.road, &keep->arena, &keep->run.mark[at], &why);
    gw_car_note(w, status, &why);
    if (status != GW_OK) return;
    gw_road_mark_take(w->run.road, load < 0, &keep->run.mark[at]);
    keep->run.marked[at] = true;
}

/* What cars that differ little take their one step with. */
static void learn_tangents(gw_car_work *w, int kit)
{
    const gw_case *c = w->plan->c;
    gw_car_guide *keep = w->keep;
    for (int l = -1; l < c->n_loads && w->run.road; l++) {
        const int at = kit * (1 + c->n_loads) + 1 + l;
        gw_error why = { 0 };
        if (!keep->run.marked[at]) continue;
        gw_status status = gw_road_mark_learn(w->run.road, l < 0 ? NULL : &w->run.c->loads[l].manoeuvre,
                                              &keep->arena, &keep->run.mark[at], &why);
        gw_car_note(w, status, &why);
    }
}

static bool on_road(const gw_car_work *w, const gw_car_slot *slot)
{
    return slot->manoeuvre && w->run.on_road;
}

/* What is solved with a corner open. */
static bool is_own(const gw_car_work *w, const gw_car_slot *slot)
{
    return slot->load >= 0 && !on_road(w, slot);
}

static void take_over(gw_car_work *w, const gw_car_slot *slot, int n)
{
    memcpy(w->row + slot->first, w->row + w->plan->slot[slot->like].first, (size_t)n * sizeof *w->row);
}

void gw_car_work_corner(gw_car_work *w, int s, int end)
{
    gw_error why = { 0 };
    int n = 0;
    for (int i = s; i < end; i++) {
        const gw_car_slot *slot = &w->plan->slot[i];
        if (is_own(w, slot) && slot->like >= 0) take_over(w, slot, GW_CAR_COLUMNS);
        n += is_own(w, slot) && slot->like < 0;
    }
    if (!n) return;
    gw_status opened = gw_run_open_corner(&w->run, w->plan->slot[s].kit, w->plan->slot[s].axle, &why);
    gw_car_note(w, opened, &why);
    for (int i = s; i < end && opened == GW_OK; i++)
        if (is_own(w, &w->plan->slot[i])) solve(w, i);
    keep_corner(w);
    gw_run_close_corner(&w->run);
}

void gw_car_work_road(gw_car_work *w, int kit)
{
    const gw_car_plan *plan = w->plan;
    w->run.kit = kit;
    for (int l = 0; l < plan->c->n_loads; l++)
        for (int s = 0; s < plan->n_slots; s++) {
            if (plan->slot[s].kit != kit || plan->slot[s].load != l || !on_road(w, &plan->slot[s])) continue;
            w->run.axle = plan->slot[s].axle;
            solve(w, s);
            mark_road(w, kit, -1);
            mark_road(w, kit, l);
        }
    if (w->keep) {
        learn_tangents(w, kit);
        w->keep->run.road[kit] = w->run.road;
        w->run.road = NULL;
    }
    gw_run_close_corner(&w->run);
}

static void work_kits(gw_car_work *w)
{
    const gw_car_plan *plan = w->plan;
    for (int s = 0, end; s < plan->n_slots; s = end) {
        end = gw_car_slots_end(plan, s);
        gw_car_work_corner(w, s, end);
    }
    for (int k = 0; k < plan->c->n_kits && w->run.on_road; k++) gw_car_work_road(w, k);
}

/* Decibels over the first kit of the same car. */
static void put_difference(const gw_ride_result *result, const gw_ride_result *base, double *row)
{
    gw_ride_difference difference;
    gw_ride_compare(result, base, &difference);
    row[GW_SPREAD_HARSHNESS] = difference.harshness;
    row[GW_SPREAD_NOISE] = difference.noise;
}

/* A kit's figures stay out where the first kit's could not be had. */
static void work_ride(gw_car_work *w)
{
    const gw_car_plan *plan = w->plan;
    gw_run *run = &w->run;
    double *row = w->row;
    const gw_ride_options bare = { .no_range = true, .no_curve = true, .no_obstacle = true };
    gw_ride_result base[GW_AXLES] = { { 0 } };
    bool known[GW_AXLES] = { false };
    for (int s = 0; s < plan->n_slots; s++) {
        const gw_car_slot *slot = &plan->slot[s];
        gw_ride_result result = { 0 };
        gw_error why = { 0 };
        if (slot->load >= 0) continue;
        if (slot->like >= 0) {
            take_over(w, slot, GW_SPREAD_RIDE_QUANTITIES);
            continue;
        }
        gw_fit_kit(run->c, &run->laws, slot->kit, slot->axle, run->fit);
        gw_status status =
            gw_ride_solve(&run->c->corners[slot->axle], run->fit, &run->c->ride, &bare, &result, &why);
        gw_car_note(w, status, &why);
        if (status == GW_OK && slot->kit == 0) {
            base[slot->axle] = result;
            known[slot->axle] = true;
        }
        if (status == GW_OK && known[slot->axle])
            put_difference(&result, &base[slot->axle], row + slot->first);
        if (slot->kit > 0) gw_ride_result_free(&result);
    }
    for (int a = 0; a < GW_AXLES; a++) gw_ride_result_free(&base[a]);
}

void gw_car_guide_free(gw_car_guide *guide)
{
    for (int i = 0; i < guide->n_corners; i++) {
        gw_corner_close(guide->run.ws[i]);
        gw_corner_close(guide->run.right[i]);
    }
    for (int k = 0; k < guide->n_corners / GW_AXLES && guide->run.road; k++)
        gw_road_close(guide->run.road[k]);
    for (int s = 0; s < guide->n_slots; s++) {
        gw_state_free(&guide->dive[s]);
        gw_state_free(&guide->state[s]);
    }
    free(guide->run.ws);
    free(guide->run.right);
    free(guide->run.road);
    free(guide->run.mark);
    free(guide->run.marked);
    gw_arena_free(&guide->arena);
    free(guide->dive);
    free(guide->state);
    free(guide->kept);
    *guide = (gw_car_guide){ 0 };
}

static gw_status make_room(const gw_car_plan *plan, const gw_case *c, gw_car_guide *out, gw_error *err)
{
    const size_t corners = (size_t)plan->c->n_kits * GW_AXLES, slots = (size_t)plan->n_slots;
    const size_t kits = (size_t)plan->c->n_kits, marks = kits * (1 + (size_t)plan->c->n_loads);
    gw_status status = GW_OK;
    *out = (gw_car_guide){ .run = { .ws = calloc(corners + 1, sizeof *out->run.ws),
                                    .right = calloc(corners + 1, sizeof *out->run.right),
                                    .road = calloc(kits + 1, sizeof *out->run.road),
                                    .mark = calloc(marks + 1, sizeof *out->run.mark),
                                    .marked = calloc(marks + 1, sizeof *out->run.marked) },
                           .dive = calloc(slots + 1, sizeof *out->dive),
                           .state = calloc(slots + 1, sizeof *out->state),
                           .kept = calloc(slots + 1, sizeof *out->kept) };
    if (!out->run.road || !out->run.mark || !out->run.marked)
        return gw_fail(err, GW_E_NOMEM, "out of memory for a car");
    if (!out->run.ws || !out->run.right || !out->dive || !out->state || !out->kept)
        return gw_fail(err, GW_E_NOMEM, "out of memory for a car");
    out->n_corners = (int)corners;
    out->n_slots = plan->n_slots;
    for (int s = 0; s < plan->n_slots && status == GW_OK; s++) {
        const gw_corner *corner = &c->corners[plan->slot[s].axle];
        if (plan->slot[s].load < 0) continue;
        status = gw_state_alloc(corner, &out->dive[s], err);
        if (status == GW_OK) status = gw_state_alloc(corner, &out->state[s], err);
    }
    return status;
}

gw_status gw_car_work_out(const gw_car_plan *plan, const gw_case *c, const gw_selection *wanted,
                          const gw_car_guide *from, gw_car_guide *keep, double *row, gw_error *err)
{
    gw_car_work w = { .plan = plan, .from = from, .keep = keep, .states = keep, .row = row, .err = err };
    gw_error why = { 0 };
    for (int i = 0; i < plan->n_columns; i++) row[i] = NAN;
    gw_status status = keep ? make_room(plan, c, keep, err) : GW_OK;
    if (status != GW_OK) return status;
    gw_status opened = gw_run_open_near(&w.run, c, wanted, from ? &from->run : NULL, &why);
    gw_car_note(&w, opened, &why);
    if (keep) {
        keep->c = c;
        keep->laws = w.run.laws;
        keep->row = row;
        memcpy(keep->roll_centre, w.run.vehicle.roll_centre, sizeof keep->roll_centre);
    }
    if (opened == GW_OK) work_kits(&w);
    if (opened == GW_OK && plan->ride) work_ride(&w);
    gw_run_close(&w.run);
    return w.first;
}
