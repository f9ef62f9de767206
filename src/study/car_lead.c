/* SPDX-License-Identifier: MIT */
/* Where the balances of a draw are looked for: the guide's, moved on by what each figure does to them to
 * first order. */
#include "study/car_work.h"

#include "base/wide.h"
#include "corner/lead.h"

#include <stdlib.h>
#include <string.h>

/* The corner of a slot whose states are known; NULL: of the others there is nothing to lead to. */
static const gw_corner *corner_of(const gw_car_guide *guide, const gw_car_plan *plan, int s)
{
    return guide->kept[s] ? &guide->c->corners[plan->slot[s].axle] : NULL;
}

/* The dive's screws, then those of the load. */
static long length_of(const gw_car_guide *guide, const gw_car_plan *plan)
{
    long n = 0;
    for (int s = 0; s < plan->n_slots; s++)
        if (corner_of(guide, plan, s)) n += 2 * gw_lead_length(corner_of(guide, plan, s));
    return n;
}

gw_status gw_car_lead_open(const gw_car_plan *plan, const gw_car_guide *guide, int n_figures,
                           gw_car_lead *out, gw_error *err)
{
    *out = (gw_car_lead){ .plan = plan, .guide = guide, .n = n_figures, .length = length_of(guide, plan) };
    out->screw = calloc((size_t)out->length * (size_t)n_figures + 1, sizeof *out->screw);
    out->moves = calloc((size_t)plan->n_slots * (size_t)n_figures + 1, sizeof *out->moves);
    return out->screw && out->moves ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
}

void gw_car_lead_close(gw_car_lead *lead)
{
    free(lead->screw);
    free(lead->moves);
    *lead = (gw_car_lead){ 0 };
}

void gw_car_lead_learn(gw_car_lead *lead, int figure, const gw_car_guide *there, double by)
{
    double *at = lead->screw + lead->length * figure;
    for (int s = 0; s < lead->plan->n_slots; s++) {
        const gw_corner *corner = corner_of(lead->guide, lead->plan, s);
        if (!corner) continue;
        const int n = 2 * gw_lead_length(corner);
        gw_lead_add(corner, &lead->guide->dive[s], &there->dive[s], by, at);
        gw_lead_add(corner, &lead->guide->state[s], &there->state[s], by, at + n / 2);
        for (int i = 0; i < n; i++)
            if (at[i] != 0.0) lead->moves[lead->plan->n_slots * figure + s] = true;
        at += n;
    }
}

void gw_car_led_close(gw_car_guide *led)
{
    for (int s = 0; s < led->n_slots && led->dive && led->state; s++) {
        gw_state_free(&led->dive[s]);
        gw_state_free(&led->state[s]);
    }
    free(led->dive);
    free(led->state);
    *led = (gw_car_guide){ 0 };
}

gw_status gw_car_led_open(const gw_car_lead *lead, gw_car_guide *out, gw_error *err)
{
    const size_t slots = (size_t)lead->plan->n_slots + 1;
    gw_status status = GW_OK;
    *out = *lead->guide;
    out->dive = calloc(slots, sizeof *out->dive);
    out->state = calloc(slots, sizeof *out->state);
    if (!out->dive || !out->state) status = gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
    for (int s = 0; s < lead->plan->n_slots && status == GW_OK; s++) {
        const gw_corner *corner = corner_of(lead->guide, lead->plan, s);
        if (!corner) continue;
        status = gw_state_alloc(corner, &out->dive[s], err);
        if (status == GW_OK) status = gw_state_alloc(corner, &out->state[s], err);
    }
    return status;
}

static GW_WIDE void add_times(double *restrict sum, double by, const double *restrict screw, int n)
{
    for (int i = 0; i < n; i++) sum[i] += by * screw[i];
}

/* Every figure's part in the way to one slot's states. */
static void gather(const gw_car_lead *lead, const double *by, int s, long at, int n, double *sum)
{
    memset(sum, 0, (size_t)n * sizeof *sum);
    for (int j = 0; j < lead->n && by; j++)
        if (lead->moves[lead->plan->n_slots * j + s])
            add_times(sum, by[j], lead->screw + lead->length * j + at, n);
}

void gw_car_lead_follow(const gw_car_lead *lead, const double *by, gw_car_guide *led)
{
    double way[2 * 6 * GW_MAX_BODIES];
    long at = 0;
    for (int s = 0; s < lead->plan->n_slots; s++) {
        const gw_corner *corner = corner_of(lead->guide, lead->plan, s);
        if (!corner) continue;
        const int n = 2 * gw_lead_length(corner);
        gather(lead, by, s, at, n, way);
        gw_lead_follow(corner, &lead->guide->dive[s], way, &led->dive[s]);
        gw_lead_follow(corner, &lead->guide->state[s], way + n / 2, &led->state[s]);
        at += n;
    }
}
