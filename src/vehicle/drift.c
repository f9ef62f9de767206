/* SPDX-License-Identifier: MIT */
/* Where a lasting push to one side takes the car while it brakes or rolls on, steering held. */
#include "giveway/bicycle.h"

#include <math.h>

static const double STEP = 2e-3, SLOWEST = 1.0; /* [s], [m/s] */

/* Side speed and yaw rate: (vy', r') = A (vy, r) + c, at forward speed u. */
typedef struct gw_motion {
    double a[2][2], c[2];
} gw_motion;

static gw_motion motion_at(const gw_bicycle *m, const gw_disturbance *d, double u)
{
    double cf = m->stiffness[GW_FRONT], cr = m->stiffness[GW_REAR], lf = m->arm[GW_FRONT],
           lr = m->arm[GW_REAR];
    double front = cf * d->steer[GW_FRONT], rear = cr * d->steer[GW_REAR], turn = lf * cf - lr * cr;
    return (gw_motion){
        .a = { { -(cf + cr) / (m->mass * u), -turn / (m->mass * u) - u },
               { -turn / (m->yaw_inertia * u), -(lf * lf * cf + lr * lr * cr) / (m->yaw_inertia * u) } },
        .c = { (front + rear) / m->mass, (lf * front - lr * rear + d->yaw_moment) / m->yaw_inertia }
    };
}

/* One implicit midpoint step: (I - h/2 A) x1 = (I + h/2 A) x0 + h c. Stable at any speed. */
static void step(const gw_motion *w, double h, double x[2])
{
    double k = 0.5 * h;
    double r0 = x[0] + k * (w->a[0][0] * x[0] + w->a[0][1] * x[1]) + h * w->c[0];
    double r1 = x[1] + k * (w->a[1][0] * x[0] + w->a[1][1] * x[1]) + h * w->c[1];
    double m00 = 1.0 - k * w->a[0][0], m01 = -k * w->a[0][1], m10 = -k * w->a[1][0],
           m11 = 1.0 - k * w->a[1][1];
    double det = m00 * m11 - m01 * m10;
    x[0] = (r0 * m11 - m01 * r1) / det;
    x[1] = (m00 * r1 - m10 * r0) / det;
}

void gw_bicycle_drift(const gw_bicycle *bicycle, const gw_disturbance *disturbance, double speed,
                      double braking, double seconds, gw_drift *out)
{
    gw_drift d = { 0 };
    double x[2] = { 0, 0 };
    if (braking > 0.0) seconds = fmin(seconds, (speed - SLOWEST) / braking);
    int steps = (int)ceil(seconds / STEP);
    double h = seconds / steps;
    for (int i = 0; i < steps; i++) {
        double u = speed - braking * (i + 0.5) * h, side = x[0], yaw = x[1];
        gw_motion w = motion_at(bicycle, disturbance, u);
        step(&w, h, x);
        double mid = d.heading + 0.25 * h * (yaw + x[1]), across = 0.5 * (side + x[0]);
        d.offset += h * (u * sin(mid) + across * cos(mid));
        d.distance += h * (u * cos(mid) - across * sin(mid));
        d.heading += 0.5 * h * (yaw + x[1]);
        if (fabs(x[1]) > fabs(d.yaw_rate)) d.yaw_rate = x[1];
    }
    d.seconds = seconds;
    *out = d;
}
