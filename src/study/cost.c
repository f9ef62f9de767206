/* SPDX-License-Identifier: MIT */
#include "giveway/cost.h"

#include <math.h>
#include <string.h>

int gw_joint_count_on_car(const gw_corner *corner, int joint)
{
    const double near = 1e-6; /* m */
    gw_vec3 p = corner->joints[joint].at;
    if (gw_is_pair(corner)) return 1; /* it lists both sides' joints, each where it is */
    if (fabs(p.y) < near) return 1;
    for (int j = 0; j < corner->n_joints; j++) {
        gw_vec3 q = corner->joints[j].at;
        if (fabs(p.x - q.x) < near && fabs(p.y + q.y) < near && fabs(p.z - q.z) < near) return 1;
    }
    return 2;
}

static void add(const gw_bush *bush, int n, gw_car_cost *cost)
{
    cost->parts += n;
    if (bush->price >= 0.0)
        cost->price += n * bush->price;
    else
        cost->unpriced += n;
    if (bush->fit_minutes >= 0.0)
        cost->minutes += n * bush->fit_minutes;
    else
        cost->untimed += n;
}

/* At a joint of the pair: one side of the car. */
static bool changes(const gw_case *c, const gw_kit *kit, gw_axle axle, int place)
{
    int fitted = kit->fits[axle][place];
    const gw_bush *bush = &c->bushes[fitted];
    if (kit == &c->kits[0]) return bush->price >= 0.0 || bush->fit_minutes >= 0.0;
    return fitted != c->kits[0].fits[axle][place];
}

bool gw_job_joint_changes(const gw_case *c, const gw_kit *kit, const gw_shop_joint *at)
{
    int twin = c->pairs[at->axle].joints[at->joint].twin;
    return changes(c, kit, at->axle, at->joint) || changes(c, kit, at->axle, twin);
}

/* The same joint on the other side of the car, in the pair; itself: the car has one of it. */
static int other_side(const gw_case *c, gw_axle axle, int place)
{
    const gw_corner *corner = &c->corners[axle];
    int twin = c->pairs[axle].joints[place].twin, listed = place < corner->n_joints ? place : twin;
    return gw_is_pair(corner) || gw_joint_count_on_car(corner, listed) == 2 ? twin : place;
}

/* Where a joint of the corner is on the car, into `place`: there, and on the side that the corner does not
 * list. */
static int places_of(const gw_case *c, gw_axle axle, int joint, int place[GW_WHEELS])
{
    place[0] = joint;
    place[1] = other_side(c, axle, joint);
    return place[1] >= c->corners[axle].n_joints ? 2 : 1;
}

static void sum_up(const gw_shop *shop, gw_car_cost *cost)
{
    cost->labour = shop->has_labour ? shop->labour * cost->minutes / 60.0 : (double)NAN;
    double net = cost->price + (shop->has_labour ? cost->labour : 0.0);
    cost->tax = shop->has_tax ? shop->tax * net : 0.0;
    cost->total = net + cost->tax;
}

/* Jobs have figures of their own, also where no bush has one. */
static gw_cost_sum sum_of(double value, int parts, int without)
{
    bool known = parts == 0 || parts > without || value > 0.0;
    return (gw_cost_sum){ .value = value, .known = known, .more = known && without > 0 };
}

gw_cost_sum gw_cost_price(const gw_car_cost *cost)
{
    return sum_of(cost->price, cost->parts, cost->unpriced);
}

gw_cost_sum gw_cost_time(const gw_car_cost *cost)
{
    return sum_of(cost->minutes, cost->parts, cost->untimed);
}

gw_cost_sum gw_cost_total(const gw_car_cost *cost)
{
    gw_cost_sum price = gw_cost_price(cost), time = gw_cost_time(cost);
    bool labour = isfinite(cost->labour), known = price.known || (labour && time.known);
    bool lacks = cost->unpriced > 0 || (labour && cost->untimed > 0);
    return (gw_cost_sum){ .value = cost->total, .known = known, .more = known && lacks };
}

/* A job is done once, as soon as one of its joints gets another bush, or a new one. */
gw_shared_job gw_shared_job_of(const gw_case *c, const gw_shop_job *job, const gw_kit *kit)
{
    gw_shared_job shared = { .job = job };
    for (int i = 0; i < job->n_joints; i++) shared.joints += gw_job_joint_changes(c, kit, &job->joints[i]);
    if (shared.joints > 1) shared.saved = (shared.joints - 1) * job->minutes;
    return shared;
}

double gw_shared_minutes_saved(const gw_case *c, int kit)
{
    double saved = 0.0;
    for (int i = 0; i < c->n_jobs; i++) saved += gw_shared_job_of(c, &c->jobs[i], &c->kits[kit]).saved;
    return saved;
}

/* Both sides at once where they get the same. */
static void add_joint(const gw_case *c, const gw_kit *kit, const int *fits, gw_axle axle, int joint,
                      gw_car_cost *cost)
{
    int place[GW_WHEELS], n = places_of(c, axle, joint, place), changed = 0;
    for (int i = 0; i < n; i++) changed += changes(c, kit, axle, place[i]);
    if (changed == 2 && fits[place[0]] == fits[place[1]]) {
        add(&c->bushes[fits[joint]], 2, cost);
        return;
    }
    for (int i = 0; i < n; i++)
        if (changes(c, kit, axle, place[i])) add(&c->bushes[fits[place[i]]], 1, cost);
}

/* The joints that `kit` changes, with the bushes of `fitted`. */
static gw_car_cost cost_of(const gw_case *c, int kit, int fitted)
{
    gw_car_cost cost = { 0 };
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int j = 0; c->has_corner[a] && j < c->corners[a].n_joints; j++)
            add_joint(c, &c->kits[kit], c->kits[fitted].fits[a], a, j, &cost);
    for (int i = 0; i < c->n_jobs; i++)
        if (gw_shared_job_of(c, &c->jobs[i], &c->kits[kit]).joints) {
            cost.price += c->jobs[i].price;
            cost.minutes += c->jobs[i].minutes;
        }
    sum_up(&c->shop, &cost);
    return cost;
}

gw_car_cost gw_car_cost_of(const gw_case *c, int kit)
{
    return cost_of(c, kit, kit);
}

gw_car_cost gw_car_cost_renewed(const gw_case *c, int kit)
{
    return cost_of(c, kit, 0);
}

int gw_joint_image(const gw_case *c, gw_axle axle, int joint)
{
    int twin = c->pairs[axle].joints[joint].twin;
    return twin < c->corners[axle].n_joints ? twin : joint;
}

bool gw_joint_is_bolted(const gw_case *c, gw_axle axle, int joint)
{
    const gw_corner *corner = &c->corners[axle];
    const gw_joint *j = &corner->joints[joint];
    const char *a = gw_body_as_written(corner, j->body_a), *b = gw_body_as_written(corner, j->body_b);
    return c->bushes[j->bush].type != GW_BUSH_RIGID && strcmp(a, b) != 0;
}

int gw_joint_count_both(const gw_case *c, gw_axle axle, int joint)
{
    int image = gw_joint_image(c, axle, joint), n = gw_joint_count_on_car(&c->corners[axle], joint);
    return image != joint ? n + gw_joint_count_on_car(&c->corners[axle], image) : n;
}

/* The place on the other side that is told with one, because it gets the same; the place itself: none. */
static int told_with(const gw_case *c, int kit, gw_axle axle, int place)
{
    const int *fits = c->kits[kit].fits[axle];
    int other = other_side(c, axle, place);
    return fits[other] == fits[place] && changes(c, &c->kits[kit], axle, other) ? other : place;
}

static gw_quote_line bushes_line(const gw_case *c, int kit, gw_axle axle, int joint, int place)
{
    int fitted = c->kits[kit].fits[axle][place], n = told_with(c, kit, axle, place) != place ? 2 : 1;
    const gw_bush *bush = &c->bushes[fitted];
    return (gw_quote_line){ .axle = axle,
                            .joint = joint,
                            .bush = fitted,
                            .count = n,
                            .of_pair = n == 1 && other_side(c, axle, place) != place ? place : -1,
                            .price = bush->price >= 0.0 ? n * bush->price : (double)NAN,
                            .minutes = bush->fit_minutes >= 0.0 ? n * bush->fit_minutes : (double)NAN };
}

/* The lines of one joint of a corner behind the `n` that there are; how many there are then. */
static int joint_lines(const gw_case *c, int kit, gw_axle axle, int joint, gw_quote_line *out, int most,
                       int n)
{
    int place[GW_WHEELS], places = places_of(c, axle, joint, place);
    for (int i = 0; i < places; i++) {
        if (!changes(c, &c->kits[kit], axle, place[i]) || told_with(c, kit, axle, place[i]) < place[i])
            continue;
        if (n < most) out[n] = bushes_line(c, kit, axle, joint, place[i]);
        n++;
    }
    return n;
}

int gw_quote_lines(const gw_case *c, int kit, gw_quote_line *out, int most)
{
    int n = 0;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int j = 0; c->has_corner[a] && j < c->corners[a].n_joints; j++)
            n = joint_lines(c, kit, a, j, out, most, n);
    for (int i = 0; i < c->n_jobs; i++) {
        const gw_shop_job *job = &c->jobs[i];
        if (!gw_shared_job_of(c, job, &c->kits[kit]).joints) continue;
        if (n < most)
            out[n] = (gw_quote_line){
                .job = job->label, .count = 1, .of_pair = -1, .price = job->price, .minutes = job->minutes
            };
        n++;
    }
    return n;
}
