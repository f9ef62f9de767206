/* SPDX-License-Identifier: MIT */
/* What is chosen among and what is wanted of it, as lists that the rest can run through. */
#include "giveway/casefile.h"
#include "study/choose_parts.h"
#include "study/opened.h"

#include <math.h>

bool gw_plan_goes_on(const gw_planner *p, int more)
{
    const gw_choose_options *o = p->options;
    gw_plan_watch *w = p->watch;
    pthread_mutex_lock(&w->lock);
    w->done += more;
    if (!w->stopped && o->progress) w->stopped = !o->progress(o->context, w->done, p->out->combinations);
    bool goes_on = !w->stopped;
    pthread_mutex_unlock(&w->lock);
    return goes_on;
}

int gw_choices(const gw_planner *p)
{
    return p->out->offer.n_among;
}

static gw_status check_prices(const gw_planner *p, gw_error *err)
{
    const gw_choose *offer = &p->out->offer;
    for (int i = 0; i < offer->n_among; i++)
        for (int b = 0; b < offer->among[i].n_bushes; b++) {
            int bush = offer->among[i].bush[b];
            const char *lacks = gw_choose_lacks(p->c, &offer->among[i], bush);
            if (lacks)
                return gw_fail(err, GW_E_SCHEMA, "%s: bushes.%s: a bush on offer needs %s: give it",
                               p->c->path, p->c->bushes[bush].name, lacks);
        }
    return GW_OK;
}

static void narrow(gw_planner *p)
{
    gw_choose *offer = &p->out->offer;
    int n = 0;
    for (int i = 0; i < offer->n_among; i++)
        if (p->corner[offer->among[i].axle]) offer->among[n++] = offer->among[i];
    offer->n_among = n;
}

static gw_status check_first_kit(const gw_case *c, gw_error *err)
{
    gw_axle axle;
    int joint;
    if (!gw_choose_is_one_sided(c, &axle, &joint)) return GW_OK;
    return gw_fail(
        err, GW_E_SCHEMA,
        "%s: kits[0].fits: \"%s.%s\" is fitted on one side only: fit both sides alike there, a choice "
        "is of both",
        c->path, gw_axle_name(axle), gw_joint_as_written(&c->corners[axle], joint));
}

static gw_status name_joints(gw_planner *p, gw_error *err)
{
    const gw_choose *offer = &p->out->offer;
    gw_choose_study *out = p->out;
    gw_error name;
    size_t n = 1;
    for (int i = 0; i < offer->n_among; i++) n += (size_t)offer->among[i].n_joints;
    bool ok = (out->joint = gw_arena_alloc(p->arena, n, sizeof *out->joint)) != NULL;
    for (int i = 0; i < offer->n_among; i++)
        for (int j = 0; j < offer->among[i].n_joints && ok; j++) {
            const gw_among *among = &offer->among[i];
            gw_fail(&name, GW_OK, "%s.%s", gw_axle_name(among->axle),
                    gw_joint_as_written(&p->c->corners[among->axle], among->joint[j]));
            const char *kept = gw_arena_strdup(p->arena, name.msg);
            ok = kept != NULL;
            out->joint[out->n_joints++] = (gw_offered_joint){ i, j, kept };
        }
    return ok ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for what is on offer");
}

gw_status gw_plan_offer(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    const gw_case *c = p->c;
    gw_choose *offer = &p->out->offer;
    gw_status status = check_first_kit(c, err);
    *offer = c->choose;
    if (status == GW_OK && !c->choose.n_among) status = gw_choose_by_kits(c, p->arena, offer, err);
    if (status != GW_OK) return status;
    for (int a = 0; a < GW_AXLES; a++)
        p->corner[a] = c->has_corner[a] && (!wanted->only_axle || wanted->axle == (gw_axle)a);
    if (c->choose.n_among) {
        offer->among = gw_arena_alloc(p->arena, (size_t)offer->n_among, sizeof *offer->among);
        if (!offer->among) return gw_fail(err, GW_E_NOMEM, "out of memory for what is on offer");
        for (int i = 0; i < offer->n_among; i++) offer->among[i] = c->choose.among[i];
    }
    narrow(p);
    if (offer->n_among == 0)
        return gw_fail(err, GW_E_SCHEMA,
                       "%s: choose.among: nothing is on offer%s: give joints and bushes, or kits that differ",
                       c->path, wanted->only_axle ? " on this corner" : "");
    p->out->hourly_rate = offer->has_rate ? offer->hourly_rate : c->shop.has_labour ? c->shop.labour : 0.0;
    if ((status = check_prices(p, err)) != GW_OK) return status;
    return name_joints(p, err);
}

/* -- figures -- */

static bool speaks_of(const gw_planner *p, const gw_goal *goal, gw_axle axle, gw_wheel_side wheel)
{
    const gw_load *load = &p->c->loads[goal->load];
    if (!p->corner[axle] || (goal->one_corner && goal->axle != axle)) return false;
    if (load->kind == GW_LOAD_DIRECT && load->axle != axle) return false;
    return goal->one_wheel ? goal->wheel == wheel : gw_load_tells(p->c, load, wheel);
}

static void add_figures(gw_planner *p, const gw_goal *goal)
{
    for (int a = 0; a < GW_AXLES; a++)
        for (int w = 0; w < GW_WHEELS; w++) {
            if (!speaks_of(p, goal, (gw_axle)a, (gw_wheel_side)w)) continue;
            gw_chosen_figure *f = &p->out->figure[p->out->n_figures++];
            *f = (gw_chosen_figure){ goal->load,   (gw_axle)a,   (gw_wheel_side)w,
                                     goal->figure, goal->weight, goal->wanted };
            p->weights += goal->weight;
        }
}

/* A manoeuvre is solved once for all its figures. */
static void find_drives(gw_planner *p)
{
    for (int f = 0; f < p->out->n_figures; f++) {
        const gw_load *load = &p->c->loads[p->out->figure[f].load];
        p->drive_of[f] = -1;
        if (!p->run.on_road || load->kind != GW_LOAD_MANOEUVRE) continue;
        int d = 0;
        while (d < p->n_drives && !gw_same_manoeuvre(&p->drive[d], &load->manoeuvre)) d++;
        if (d == p->n_drives) p->drive[p->n_drives++] = load->manoeuvre;
        p->drive_of[f] = d;
        p->on_road = true;
    }
}

/* Without goals every toe change is one, as in the summary of `spread`. */
gw_status gw_plan_figures(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    const gw_case *c = p->c;
    const gw_choose *choose = &c->choose;
    int n = choose->n_goals ? choose->n_goals : c->n_loads;
    size_t room = (size_t)n * GW_AXLES * GW_WHEELS + 1;
    p->out->figure = gw_arena_alloc(p->arena, room, sizeof *p->out->figure);
    p->drive = gw_arena_alloc(p->arena, room, sizeof *p->drive);
    p->drive_of = gw_arena_alloc(p->arena, room, sizeof *p->drive_of);
    if (!p->out->figure || !p->drive || !p->drive_of)
        return gw_fail(err, GW_E_NOMEM, "out of memory for goals");
    for (int i = 0; i < n; i++) {
        const gw_goal toe = { .load = i, .figure = GW_GOAL_TOE, .weight = 1.0 };
        const gw_goal *goal = choose->n_goals ? &choose->goal[i] : &toe;
        if (!wanted->loads || wanted->loads[goal->load]) add_figures(p, goal);
    }
    p->out->in_mm = choose->n_goals && choose->goal[0].figure == GW_GOAL_FORE_AFT;
    if (c->n_loads == 0)
        return gw_fail(err, GW_E_SCHEMA, "%s: loads: the case has no loads; add at least one", c->path);
    if (!(p->weights > 0.0))
        return gw_fail(err, GW_E_SCHEMA, "%s: choose.goals: no goal is left of the loads and corners wanted",
                       c->path);
    find_drives(p);
    return GW_OK;
}

double gw_unsteady_part(const gw_chosen_figure *figure, double value)
{
    double f = value - figure->wanted;
    return figure->weight * f * f;
}

/* -- combinations -- */

/* The choices with most bushes are those to join or to shorten. */
static gw_status too_many(const gw_planner *p, double n, gw_error *err)
{
    const gw_choose *offer = &p->out->offer;
    int most = 0;
    for (int i = 1; i < offer->n_among; i++)
        if (offer->among[i].n_bushes > offer->among[most].n_bushes) most = i;
    int other = most == 0 ? offer->n_among - 1 : 0;
    for (int i = 0; i < offer->n_among; i++)
        if (i != most && offer->among[i].axle == offer->among[most].axle &&
            (other == most || offer->among[other].axle != offer->among[most].axle ||
             offer->among[i].n_bushes > offer->among[other].n_bushes))
            other = i;
    const gw_among *a = &offer->among[most], *b = &offer->among[other];
    return gw_fail(
        err, GW_E_RANGE,
        "%s: choose.among: %.0f combinations are more than the %d that are calculated: join joints that "
        "get the same bush (%s.%s and %s.%s), shorten lists, or take one axle with --corner",
        p->c->path, n, (int)GW_MOST_COMBINATIONS, gw_axle_name(a->axle),
        gw_joint_as_written(&p->c->corners[a->axle], a->joint[0]), gw_axle_name(b->axle),
        gw_joint_as_written(&p->c->corners[b->axle], b->joint[0]));
}

/* How far apart two combinations are numbered that differ by one bush of a choice: the last varies fastest.
 */
static int stride(const gw_planner *p, int choice)
{
    int n = 1;
    for (int i = choice + 1; i < gw_choices(p); i++) n *= p->out->offer.among[i].n_bushes;
    return n;
}

void gw_combination_options(const gw_planner *p, int number, int *option)
{
    for (int i = 0; i < gw_choices(p); i++)
        option[i] = number / stride(p, i) % p->out->offer.among[i].n_bushes;
}

void gw_kit_options(const gw_planner *p, gw_axle axle, int kit, int *option)
{
    for (int i = gw_choices(p) - 1; i >= 0; i--) {
        const gw_among *among = &p->out->offer.among[i];
        if (among->axle != axle) continue;
        option[i] = kit % among->n_bushes;
        kit /= among->n_bushes;
    }
}

static gw_status number_kits(gw_planner *p, gw_axle axle, int *option, gw_error *err)
{
    gw_axle_kits *kits = &p->axle[axle];
    kits->n = 1;
    for (int i = 0; i < gw_choices(p); i++)
        if (p->out->offer.among[i].axle == axle) kits->n *= p->out->offer.among[i].n_bushes;
    kits->part = gw_arena_alloc(p->arena, (size_t)kits->n, sizeof *kits->part);
    kits->unsteady = gw_arena_alloc(p->arena, (size_t)kits->n, sizeof *kits->unsteady);
    kits->harsh = gw_arena_alloc(p->arena, (size_t)kits->n, sizeof *kits->harsh);
    kits->loud = gw_arena_alloc(p->arena, (size_t)kits->n, sizeof *kits->loud);
    if (!kits->part || !kits->unsteady || !kits->harsh || !kits->loud)
        return gw_fail(err, GW_E_NOMEM, "out of memory for combinations");
    for (int k = 0; k < kits->n; k++) {
        gw_kit_options(p, axle, k, option);
        for (int i = 0; i < gw_choices(p); i++)
            if (p->out->offer.among[i].axle == axle) kits->part[k] += option[i] * stride(p, i);
    }
    return GW_OK;
}

gw_status gw_plan_kits(gw_planner *p, gw_error *err)
{
    double n = 1.0;
    for (int i = 0; i < gw_choices(p); i++) n *= p->out->offer.among[i].n_bushes;
    if (n > GW_MOST_COMBINATIONS) return too_many(p, n, err);
    p->out->combinations = (int)n;
    int *option = gw_arena_alloc(p->arena, (size_t)gw_choices(p), sizeof *option);
    p->unsteadiness = gw_arena_alloc(p->arena, (size_t)n, sizeof *p->unsteadiness);
    if (!option || !p->unsteadiness) return gw_fail(err, GW_E_NOMEM, "out of memory for combinations");
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) status = number_kits(p, (gw_axle)a, option, err);
    return status;
}
