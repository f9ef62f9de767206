/* SPDX-License-Identifier: MIT */
/* Understeer budget by cornering compliance. Bundorf, SAE 670078; Bundorf & Leffert, SAE 760713. */
#include "giveway/balance.h"

#include "giveway/units.h"
#include "vehicle/pair.h"

void gw_budget_sum(gw_budget *budget)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        budget->axle[a] = 0.0;
        for (int i = 0; i < GW_BUDGET_ENTRIES; i++) budget->axle[a] += budget->entry[a][i];
    }
    budget->understeer = budget->axle[GW_FRONT] - budget->axle[GW_REAR];
}

/* The tyres' aligning torque, trail times all lateral force, must be held by a pair of forces at the axles.
 */
double gw_aligning_force(const gw_vehicle *v, gw_axle axle, double g)
{
    double pair = v->mass * g * GW_G0 * v->pneumatic_trail / v->wheelbase;
    return axle == GW_FRONT ? pair : -pair;
}

static gw_attitude attitude_of(const gw_wheel_state *wheel, gw_side side)
{
    double toe = 0.0, camber = 0.0, sign = side == GW_OUTER ? 1.0 : -1.0;
    for (int i = 0; i < GW_TOE_PARTS; i++) toe += wheel->toe[i];
    for (int i = 0; i < GW_CAMBER_PARTS; i++) camber += wheel->camber[i];
    return (gw_attitude){ sign * toe, -sign * camber };
}

static gw_status slip_for(const gw_pair *pair, double force, double g, double *slip, gw_error *err)
{
    gw_status status = gw_pair_slip(pair, force, slip, err);
    if (status != GW_E_NUMERIC) return status;
    return gw_fail(err, GW_E_NUMERIC, "the tyres cannot carry %.0f N of lateral force on one axle at %.2f g",
                   force, g);
}

/* Slip that stands for a toe of the outer and inner wheel: toe-in of the outer one steers into the turn. */
static double of_toe(const gw_pair_force *p, const gw_axle_state *s, int part)
{
    double into = p->wheel[GW_OUTER].cornering * s->wheel[GW_OUTER].toe[part] -
                  p->wheel[GW_INNER].cornering * s->wheel[GW_INNER].toe[part];
    return -into / p->cornering;
}

/* The same for camber: an outer wheel leaning outboard pushes out of the turn. */
static double of_camber(const gw_pair_force *p, const gw_axle_state *s, int part)
{
    double out = p->wheel[GW_OUTER].camber * s->wheel[GW_OUTER].camber[part] -
                 p->wheel[GW_INNER].camber * s->wheel[GW_INNER].camber[part];
    return out / p->cornering;
}

static void fill(const gw_axle_state *s, const gw_pair_force *p, double slip, double *e)
{
    e[GW_BUDGET_TYRE] = slip;
    e[GW_BUDGET_ALIGNING] = s->aligning / p->cornering;
    e[GW_BUDGET_SETTING] = of_toe(p, s, GW_TOE_SETTING) + of_camber(p, s, GW_CAMBER_SETTING);
    e[GW_BUDGET_ROLL_STEER] = of_toe(p, s, GW_TOE_TRAVEL);
    e[GW_BUDGET_LOAD_STEER] = of_toe(p, s, GW_TOE_LOAD);
    e[GW_BUDGET_LATERAL_STEER] = of_toe(p, s, GW_TOE_LATERAL);
    e[GW_BUDGET_ALIGNING_STEER] = of_toe(p, s, GW_TOE_ALIGNING);
    e[GW_BUDGET_ROLL_CAMBER] = of_camber(p, s, GW_CAMBER_ROLL);
    e[GW_BUDGET_COMPLIANCE_CAMBER] = of_camber(p, s, GW_CAMBER_COMPLIANCE);
    e[GW_BUDGET_CURVE] = 0.0;
}

/* Turning one way; `turned` the other. */
static gw_status entries_of(const gw_tyre *tyre, const gw_axle_state *s, bool turned, double *e,
                            gw_error *err)
{
    gw_pair bare = { .tyre = tyre, .turned = turned };
    double slip = 0.0, all = 0.0, sum = 0.0;
    gw_pair_force slopes;
    for (gw_side i = GW_OUTER; i <= GW_INNER; i++) bare.load[i] = s->wheel[i].vertical;
    gw_pair whole = bare;
    for (gw_side i = GW_OUTER; i <= GW_INNER; i++) whole.at[i] = attitude_of(&s->wheel[i], i);
    gw_status status = slip_for(&bare, s->force, s->g, &slip, err);
    if (status == GW_OK) status = gw_pair_slopes(&bare, slip, &slopes, err);
    if (status == GW_OK) status = slip_for(&whole, s->force + s->aligning, s->g, &all, err);
    if (status != GW_OK) return status;
    fill(s, &slopes, slip, e);
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) sum += e[i];
    if (gw_tyre_is_curved(tyre)) e[GW_BUDGET_CURVE] = all - sum;
    return GW_OK;
}

gw_status gw_budget_entries(const gw_tyre *tyre, const gw_axle_state *s, double *entry, gw_error *err)
{
    double one[GW_BUDGET_ENTRIES], other[GW_BUDGET_ENTRIES];
    gw_status status = entries_of(tyre, s, false, one, err);
    if (status == GW_OK) status = entries_of(tyre, s, true, other, err);
    if (status != GW_OK) return status;
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) entry[i] = 0.5 * (one[i] + other[i]) / s->g;
    return GW_OK;
}
