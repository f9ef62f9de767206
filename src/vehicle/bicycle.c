/* SPDX-License-Identifier: MIT */
/*
 * Two degrees of freedom, side slip beta and yaw rate r:
 *     (beta', r') = A (beta, r) + B steer.
 * Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6; Milliken & Milliken, Race Car Vehicle
 * Dynamics (SAE, 1995), ch. 5.
 */
#include "giveway/bicycle.h"

#include "giveway/units.h"

#include <math.h>

double gw_vehicle_yaw_inertia(const gw_vehicle *v)
{
    double front = (1.0 - v->front_mass_fraction) * v->wheelbase, rear = v->wheelbase - front;
    return v->yaw_inertia > 0.0 ? v->yaw_inertia : v->mass * front * rear;
}

gw_status gw_bicycle_make(const gw_vehicle *v, const double compliance[GW_AXLES], gw_bicycle *out,
                          gw_error *err)
{
    gw_bicycle b = { .mass = v->mass, .yaw_inertia = gw_vehicle_yaw_inertia(v) };
    b.arm[GW_FRONT] = (1.0 - v->front_mass_fraction) * v->wheelbase;
    b.arm[GW_REAR] = v->wheelbase - b.arm[GW_FRONT];
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        if (!(compliance[a] > 0.0))
            return gw_fail(err, GW_E_NUMERIC,
                           "the %s axle needs %.2f deg/g: it steers itself into the turn, and no steady "
                           "corner follows from that",
                           gw_axle_name(a), compliance[a] / GW_DEG);
        b.stiffness[a] = 2.0 * gw_vehicle_static_load(v, a) / compliance[a];
    }
    *out = b;
    return GW_OK;
}

typedef struct gw_plane {
    double a[2][2], b[2];
    double half_trace, det; /**< of a */
} gw_plane;

static gw_plane plane_of(const gw_bicycle *m, double v)
{
    double cf = m->stiffness[GW_FRONT], cr = m->stiffness[GW_REAR], lf = m->arm[GW_FRONT],
           lr = m->arm[GW_REAR];
    double turn = lf * cf - lr * cr;
    gw_plane p = { .a = { { -(cf + cr) / (m->mass * v), -turn / (m->mass * v * v) - 1.0 },
                          { -turn / m->yaw_inertia, -(lf * lf * cf + lr * lr * cr) / (m->yaw_inertia * v) } },
                   .b = { cf / (m->mass * v), lf * cf / m->yaw_inertia } };
    p.half_trace = 0.5 * (p.a[0][0] + p.a[1][1]);
    p.det = p.a[0][0] * p.a[1][1] - p.a[0][1] * p.a[1][0];
    return p;
}

/* Steady state per unit of steer: A x + B = 0. */
static void steady(const gw_plane *p, double x[2])
{
    x[0] = -(p->a[1][1] * p->b[0] - p->a[0][1] * p->b[1]) / p->det;
    x[1] = -(p->a[0][0] * p->b[1] - p->a[1][0] * p->b[0]) / p->det;
}

/* Roots of the motion: the slower one without the cancellation that a car near its critical speed brings. */
typedef struct gw_roots {
    double half_trace, q; /**< square of half their difference; below zero: they swing */
    double slow, fast;    /**< rates of decay [1/s], > 0; both the common one where they swing */
} gw_roots;

static gw_roots roots_of(const gw_plane *p)
{
    double s = p->half_trace, q = s * s - p->det;
    if (!(q > 0.0)) return (gw_roots){ s, q, -s, -s };
    double fast = -s + sqrt(q);
    return (gw_roots){ s, q, p->det / fast, fast };
}

/*
 * Step response of one of the two, over its steady value: x(t) = (I - e^{At}) x_steady with
 * e^{At} = c I + d (A - s I), s half the trace, c and d by (hyperbolic) cosine and sine times e^{st}.
 */
static double response(const gw_plane *p, const gw_roots *r, const double end[2], int which, double t)
{
    double s = r->half_trace, root = sqrt(fabs(r->q)), c = exp(s * t), d = t * c;
    if (r->q > 0.0) {
        double slow = exp(-r->slow * t), fast = exp(-r->fast * t);
        c = 0.5 * (slow + fast);
        d = 0.5 * (slow - fast) / root;
    } else if (r->q < 0.0) {
        d = sin(root * t) / root * c;
        c *= cos(root * t);
    }
    double along = p->a[which][0] * end[0] + p->a[which][1] * end[1] - s * end[which];
    return 1.0 - (c + d * along / end[which]);
}

/* Times from well below the faster root's to well beyond the slower one's, each longer by the same part. */
enum { LOOKS = 4000 };

static double look_at(const gw_roots *r, int i)
{
    double from = 1e-4 / r->fast, to = 12.0 / r->slow;
    return from * pow(to / from, (double)i / LOOKS);
}

/* First time at which the response reaches 90 %, and its greatest value, within what it takes to settle. */
static void step_times(const gw_plane *p, const double end[2], int which, double *time, double *peak)
{
    const gw_roots r = roots_of(p);
    double before = 0.0;
    *time = NAN;
    *peak = 0.0;
    for (int i = 0; i <= LOOKS; i++) {
        double t = look_at(&r, i), y = response(p, &r, end, which, t);
        *peak = fmax(*peak, y);
        if (isnan(*time) && y >= 0.9) {
            double low = before, high = t;
            for (int k = 0; k < 50; k++) {
                double mid = 0.5 * (low + high);
                *(response(p, &r, end, which, mid) >= 0.9 ? &high : &low) = mid;
            }
            *time = high;
        }
        before = t;
    }
}

static void balance_of(const gw_bicycle *m, gw_bicycle_figures *out)
{
    double length = m->arm[GW_FRONT] + m->arm[GW_REAR], weight = m->mass * GW_G0;
    double front = weight * m->arm[GW_REAR] / length / m->stiffness[GW_FRONT];
    double rear = weight * m->arm[GW_FRONT] / length / m->stiffness[GW_REAR];
    out->gradient = front - rear;
    out->characteristic_speed = out->gradient > 0.0 ? sqrt(length * GW_G0 / out->gradient) : (double)INFINITY;
    out->critical_speed = out->gradient < 0.0 ? sqrt(-length * GW_G0 / out->gradient) : (double)INFINITY;
}

void gw_bicycle_solve(const gw_bicycle *bicycle, double speed, gw_bicycle_figures *out)
{
    gw_plane p = plane_of(bicycle, speed);
    double end[2], peak;
    *out = (gw_bicycle_figures){ .speed = speed, .natural = NAN, .damping = NAN, .yaw_gain = NAN };
    out->yaw_time = out->yaw_overshoot = out->slip_gain = out->slip_time = NAN;
    balance_of(bicycle, out);
    out->stable = speed < out->critical_speed && p.det > 0.0;
    if (!out->stable) return;
    out->natural = sqrt(p.det);
    out->damping = -p.half_trace / out->natural;
    steady(&p, end);
    out->slip_gain = end[0];
    out->yaw_gain = end[1];
    step_times(&p, end, 1, &out->yaw_time, &peak);
    out->yaw_overshoot = fmax(0.0, peak - 1.0);
    if (fabs(end[0]) > 1e-3) step_times(&p, end, 0, &out->slip_time, &peak);
}
