/* SPDX-License-Identifier: MIT */
/** Invented corners for the tests of ride. All numbers are made up and belong to no car. */
#ifndef TESTS_RIDE_CORNERS_H
#define TESTS_RIDE_CORNERS_H

#include "giveway/ride.h"
#include "giveway/units.h"

#include <string.h>

enum { MAX_TEST_BODIES = 8, MAX_TEST_JOINTS = 16 };

typedef struct test_corner {
    gw_corner corner;
    gw_body bodies[MAX_TEST_BODIES];
    gw_joint joints[MAX_TEST_JOINTS];
    gw_fit fit[MAX_TEST_JOINTS];
    gw_ride ride;
} test_corner;

static inline void start_corner(test_corner *t)
{
    memset(t, 0, sizeof *t);
    t->corner = (gw_corner){ .name = "front", .n_bodies = 2, .bodies = t->bodies, .joints = t->joints };
    t->bodies[GW_CHASSIS].name = "chassis";
    t->bodies[GW_UPRIGHT].name = "upright";
    t->ride = (gw_ride){ .present = true,
                         .road_class = 'B',
                         .roughness = gw_road_class_roughness('B'),
                         .speed = 20.0,
                         .contact_length = 0.12,
                         .default_bracket = 25e6,
                         .bracket_loss = 0.05 };
}

static inline int add_member(test_corner *t, const char *name, double mass)
{
    t->bodies[t->corner.n_bodies] = (gw_body){ .name = name, .mass = mass };
    return t->corner.n_bodies++;
}

/* Frame with e3 = axis and e1 = radial made square to it. */
static inline gw_mat3 test_frame(gw_vec3 axis, gw_vec3 radial)
{
    gw_vec3 e3 = gw_scale(1.0 / gw_norm(axis), axis);
    gw_vec3 e1 = gw_axpy(radial, -gw_dot(radial, e3), e3);
    e1 = gw_scale(1.0 / gw_norm(e1), e1);
    return gw_mat3_from_columns(e1, gw_cross(e3, e1), e3);
}

static inline gw_bush_law test_law(double k1, double k2, double k3, double c12, double c3, double loss)
{
    gw_bush_law law = { .k = { k1, k2, k3 }, .c = { c12, c12, c3 } };
    law.dynamic.ratio = 1.0;
    law.dynamic.loss = loss;
    return law;
}

static inline int add_test_joint(test_corner *t, const char *name, int a, int b, gw_vec3 at, gw_vec3 axis,
                                 gw_bush_law law)
{
    int j = t->corner.n_joints++;
    bool steep = axis.z * axis.z > 0.88 * gw_dot(axis, axis);
    t->joints[j] = (gw_joint){ .name = name, .body_a = a, .body_b = b, .at = at, .bush = -1, .housing = -1 };
    t->joints[j].frame = test_frame(axis, steep ? gw_v3(1, 0, 0) : gw_v3(0, 0, 1));
    t->fit[j] = (gw_fit){ .law = law, .point_a = at, .point_b = at };
    return j;
}

static inline gw_bush_law test_ball(void)
{
    return test_law(1e8, 1e8, 1e8, 0.0, 0.0, 0.02);
}

/* The two-mass quarter car: a guide that holds the upright every way but up. */
static inline void quarter_car(test_corner *t, double ms, double mu, double ks, double c, double kt)
{
    start_corner(t);
    gw_wheel *w = &t->corner.wheel;
    *w = (gw_wheel){ .centre = { 0, 0.75, 0.3 },
                     .loaded_radius = 0.3,
                     .static_load = (ms + mu) * GW_G0,
                     .mass = mu,
                     .tilt_inertia = 0.7,
                     .pitch_inertia = 0.3,
                     .tyre_vertical = kt };
    gw_bush_law guide = test_law(1e11, 1e11, 0.0, 1e11, 1e11, 0.0);
    add_test_joint(t, "guide", GW_CHASSIS, GW_UPRIGHT, w->centre, gw_v3(0, 0, 1), guide);
    t->corner.spring = (gw_spring){ GW_UPRIGHT, { 0, 0.75, 0.3 }, { 0, 0.75, 0.9 }, ks };
    t->corner.damper = (gw_damper){ true, GW_UPRIGHT, { 0, 0.75, 0.3 }, { 0, 0.75, 0.9 }, c, 0.0, 0.0 };
    t->ride.brackets_rigid = true;
    t->ride.contact_length = 0.0;
}

/* Which bushes a test corner has; the names say what they do in a double wishbone. */
typedef struct test_rates {
    double fore_aft; /* rear bush of the lower arm, radial along x [N/m] */
    double lateral;  /* tie rod and lower front bush [N/m]               */
    double loss;
} test_rates;

static inline test_rates rubber_rates(void)
{
    return (test_rates){ 0.35e6, 5e6, 0.12 };
}

/* Joints of the double wishbone, in the order they are added. */
enum { LOWER_FRONT, LOWER_REAR, LOWER_OUTER, UPPER_FRONT, UPPER_REAR, UPPER_OUTER, ROD_INNER, ROD_OUTER };

static inline void add_arms(test_corner *t, test_rates r)
{
    int lower = add_member(t, "lower_arm", 5.0), upper = add_member(t, "upper_arm", 2.4);
    int rod = add_member(t, "tie_rod", 0.9);
    gw_bush_law front = test_law(r.lateral, r.lateral, 0.25 * r.fore_aft, 40, 60, r.loss);
    gw_bush_law rear = test_law(r.fore_aft, 2.0 * r.fore_aft, 0.3 * r.fore_aft, 30, 50, r.loss);
    gw_bush_law top = test_law(3e6, 3e6, 0.5 * r.fore_aft, 30, 45, r.loss);
    gw_bush_law end = test_law(3.0 * r.lateral, 3.0 * r.lateral, 3.0 * r.lateral, 0, 0, 0.02);
    add_test_joint(t, "lower_front", GW_CHASSIS, lower, gw_v3(0.01, 0.38, 0.21), gw_v3(1, 0, 0), front);
    add_test_joint(t, "lower_rear", GW_CHASSIS, lower, gw_v3(-0.33, 0.40, 0.23), gw_v3(0, 0, 1), rear);
    add_test_joint(t, "lower_outer", lower, GW_UPRIGHT, gw_v3(0.005, 0.71, 0.20), gw_v3(0, 0, 1),
                   test_ball());
    add_test_joint(t, "upper_front", GW_CHASSIS, upper, gw_v3(0.08, 0.45, 0.52), gw_v3(1, 0, 0), top);
    add_test_joint(t, "upper_rear", GW_CHASSIS, upper, gw_v3(-0.18, 0.45, 0.50), gw_v3(1, 0, 0), top);
    add_test_joint(t, "upper_outer", upper, GW_UPRIGHT, gw_v3(-0.02, 0.67, 0.51), gw_v3(0, 0, 1),
                   test_ball());
    add_test_joint(t, "rod_inner", GW_CHASSIS, rod, gw_v3(0.13, 0.36, 0.24), gw_v3(0, 1, 0.02), end);
    add_test_joint(t, "rod_outer", rod, GW_UPRIGHT, gw_v3(0.14, 0.70, 0.25), gw_v3(0, 0, 1), test_ball());
    t->corner.spring = (gw_spring){ lower, { -0.02, 0.58, 0.22 }, { -0.02, 0.50, 0.62 }, 60e3 };
    t->corner.damper =
        (gw_damper){ true, lower, { -0.02, 0.58, 0.22 }, { -0.02, 0.50, 0.62 }, 2800.0, 900e3, 0.0 };
}

static inline void double_wishbone(test_corner *t, test_rates r)
{
    start_corner(t);
    t->corner.wheel = (gw_wheel){ .centre = { 0, 0.772, 0.312 },
                                  .loaded_radius = 0.312,
                                  .static_load = 3900,
                                  .mass = 44,
                                  .tilt_inertia = 0.7,
                                  .pitch_inertia = 0.25,
                                  .tyre_vertical = 230e3,
                                  .tyre_damping = 100,
                                  .tyre_slip_stiffness = 80e3,
                                  .tyre_relaxation = 0.3,
                                  .spin_inertia = 1.1 };
    add_arms(t, r);
}

/* Joints of the corner with a tension link, in the order they are added. */
enum {
    LINK_INNER,
    LINK_OUTER,
    TENSION_INNER,
    TENSION_OUTER,
    ARM_FRONT,
    ARM_REAR,
    ARM_OUTER,
    TIE_INNER,
    TIE_OUTER
};

/* A lower lateral link, a tension link, spring and damper on the upright, an upper arm and a tie rod. */
static inline void tension_corner(test_corner *t, test_rates r)
{
    double_wishbone(t, r);
    t->corner.n_joints = 0;
    t->corner.n_bodies = 2;
    int link = add_member(t, "lower_link", 4.0), tension = add_member(t, "tension_link", 2.5);
    int arm = add_member(t, "upper_arm", 2.4), rod = add_member(t, "tie_rod", 0.9);
    gw_bush_law inner = test_law(r.lateral, r.lateral, 0.1 * r.lateral, 25, 40, r.loss);
    gw_bush_law fore = test_law(r.fore_aft, r.fore_aft, 0.4 * r.fore_aft, 30, 50, r.loss);
    gw_bush_law top = test_law(4.0 * r.fore_aft, 4.0 * r.fore_aft, 0.3 * r.fore_aft, 30, 45, r.loss);
    add_test_joint(t, "link_inner", GW_CHASSIS, link, gw_v3(-0.02, 0.36, 0.20), gw_v3(1, 0, 0), inner);
    add_test_joint(t, "link_outer", link, GW_UPRIGHT, gw_v3(-0.01, 0.71, 0.19), gw_v3(0, 0, 1), test_ball());
    add_test_joint(t, "tension_inner", GW_CHASSIS, tension, gw_v3(0.40, 0.50, 0.22), gw_v3(0, 0, 1), fore);
    add_test_joint(t, "tension_outer", tension, GW_UPRIGHT, gw_v3(0.03, 0.70, 0.19), gw_v3(0, 0, 1),
                   test_ball());
    add_test_joint(t, "arm_front", GW_CHASSIS, arm, gw_v3(0.10, 0.45, 0.52), gw_v3(1, 0, 0), top);
    add_test_joint(t, "arm_rear", GW_CHASSIS, arm, gw_v3(-0.18, 0.45, 0.50), gw_v3(1, 0, 0), top);
    add_test_joint(t, "arm_outer", arm, GW_UPRIGHT, gw_v3(-0.02, 0.67, 0.51), gw_v3(0, 0, 1), test_ball());
    add_test_joint(t, "tie_inner", GW_CHASSIS, rod, gw_v3(-0.13, 0.36, 0.24), gw_v3(0, 1, 0), test_ball());
    add_test_joint(t, "tie_outer", rod, GW_UPRIGHT, gw_v3(-0.14, 0.70, 0.25), gw_v3(0, 0, 1), test_ball());
    gw_vec3 seat = gw_v3(-0.02, 0.66, 0.26), top_end = gw_v3(-0.03, 0.60, 0.75);
    t->corner.spring = (gw_spring){ GW_UPRIGHT, seat, top_end, 25e3 };
    t->corner.damper = (gw_damper){ true, GW_UPRIGHT, seat, top_end, 1500.0, 600e3, 0.0 };
}

#endif
