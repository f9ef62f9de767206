/* SPDX-License-Identifier: MIT */
/* Understeer budget by cornering compliance. Bundorf, SAE 670078; Bundorf & Leffert, SAE 760713. */
#include "giveway/balance.h"

#include "giveway/units.h"

#include <math.h>

enum { MAX_STEPS = 200 };

double gw_budget_axle(const gw_budget *budget, gw_axle axle)
{
    double sum = 0.0;
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) sum += budget->entry[axle][i];
    return sum;
}

double gw_budget_understeer(const gw_budget *budget)
{
    return gw_budget_axle(budget, GW_FRONT) - gw_budget_axle(budget, GW_REAR);
}

/* The tyres' aligning torque, trail times all lateral force, must be held by a pair of forces at the axles.
 */
double gw_aligning_force(const gw_vehicle *v, gw_axle axle, double g)
{
    double pair = v->mass * g * GW_G0 * v->pneumatic_trail / v->wheelbase;
    return axle == GW_FRONT ? pair : -pair;
}

/* What is added to a wheel's own slip (into the turn) and its lean into the turn. */
typedef struct gw_attitude {
    double slip, lean;
} gw_attitude;

static gw_attitude attitude_of(const gw_wheel_state *wheel, gw_side side)
{
    double toe = 0.0, camber = 0.0, sign = side == GW_OUTER ? 1.0 : -1.0;
    for (int i = 0; i < GW_TOE_PARTS; i++) toe += wheel->toe[i];
    for (int i = 0; i < GW_CAMBER_PARTS; i++) camber += wheel->camber[i];
    return (gw_attitude){ sign * toe, -sign * camber };
}

/* Both wheels of the axle at one slip: force, slopes of each. */
typedef struct gw_pair {
    gw_tyre_force wheel[2];
    double force, cornering;
} gw_pair;

static gw_status pair_at(const gw_tyre *tyre, const gw_axle_state *s, const gw_attitude at[2], double slip,
                         gw_pair *out, gw_error *err)
{
    for (gw_side i = GW_OUTER; i <= GW_INNER; i++) {
        gw_status status =
            gw_tyre_lateral(tyre, slip + at[i].slip, s->wheel[i].vertical, at[i].lean, &out->wheel[i], err);
        if (status != GW_OK) return status;
    }
    out->force = out->wheel[GW_OUTER].force + out->wheel[GW_INNER].force;
    out->cornering = out->wheel[GW_OUTER].cornering + out->wheel[GW_INNER].cornering;
    return GW_OK;
}

/* The slip at which both tyres together give `force`, by Newton from zero: the curve bends down, so that a
 * step never passes the answer. Where it has bent over, there is none. */
static gw_status slip_for(const gw_tyre *tyre, const gw_axle_state *s, const gw_attitude at[2], double force,
                          double *slip, gw_pair *pair, gw_error *err)
{
    double x = 0.0;
    for (int i = 0; i < MAX_STEPS; i++) {
        gw_status status = pair_at(tyre, s, at, x, pair, err);
        if (status == GW_E_NUMERIC) break;
        if (status != GW_OK) return status;
        double miss = force - pair->force;
        if (fabs(miss) <= 1e-10 * fmax(1.0, fabs(force))) {
            *slip = x;
            return GW_OK;
        }
        if (!(pair->cornering > 0.0)) break;
        x += miss / pair->cornering;
    }
    return gw_fail(err, GW_E_NUMERIC, "the tyres cannot carry %.0f N of lateral force on one axle at %.2f g",
                   force, s->g);
}

/* Slip that stands for a toe of the outer and inner wheel: toe-in of the outer one steers into the turn. */
static double of_toe(const gw_pair *p, const gw_axle_state *s, int part)
{
    double into = p->wheel[GW_OUTER].cornering * s->wheel[GW_OUTER].toe[part] -
                  p->wheel[GW_INNER].cornering * s->wheel[GW_INNER].toe[part];
    return -into / p->cornering;
}

/* The same for camber: an outer wheel leaning outboard pushes out of the turn. */
static double of_camber(const gw_pair *p, const gw_axle_state *s, int part)
{
    double out = p->wheel[GW_OUTER].camber * s->wheel[GW_OUTER].camber[part] -
                 p->wheel[GW_INNER].camber * s->wheel[GW_INNER].camber[part];
    return out / p->cornering;
}

static void fill(const gw_axle_state *s, const gw_pair *p, double slip, double *e)
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

gw_status gw_budget_entries(const gw_tyre *tyre, const gw_axle_state *s, double *entry, gw_error *err)
{
    const gw_attitude bare[2] = { { 0, 0 }, { 0, 0 } };
    const gw_attitude whole[2] = { attitude_of(&s->wheel[GW_OUTER], GW_OUTER),
                                   attitude_of(&s->wheel[GW_INNER], GW_INNER) };
    double e[GW_BUDGET_ENTRIES], slip = 0.0, all = 0.0;
    gw_pair pair = { 0 }, last = { 0 };
    gw_status status = slip_for(tyre, s, bare, s->force, &slip, &pair, err);
    if (status == GW_OK) status = slip_for(tyre, s, whole, s->force + s->aligning, &all, &last, err);
    if (status != GW_OK) return status;
    fill(s, &pair, slip, e);
    double sum = 0.0;
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) sum += e[i];
    if (gw_tyre_is_curved(tyre)) e[GW_BUDGET_CURVE] = all - sum;
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) entry[i] = e[i] / s->g;
    return GW_OK;
}
