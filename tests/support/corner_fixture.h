/* SPDX-License-Identifier: MIT */
/** Corners built in C for tests: invented geometry, SI units, left wheel. */
#ifndef TESTS_CORNER_FIXTURE_H
#define TESTS_CORNER_FIXTURE_H

#include "giveway/corner.h"

enum { FIXTURE_BODIES = 12, FIXTURE_JOINTS = 24 };

/** A corner with its own storage. Do not copy: the corner points into it. */
typedef struct fixture {
    gw_corner corner;
    gw_body bodies[FIXTURE_BODIES];
    gw_joint joints[FIXTURE_JOINTS];
    gw_fit fit[FIXTURE_JOINTS];
    gw_joint_result results[FIXTURE_JOINTS];
} fixture;

/** Chassis and upright, a wheel at (0, 0.75, 0.31) m carrying 4 kN, no joints, no spring yet. */
void fixture_start(fixture *f);

/** Add a member; returns its index. */
int fixture_member(fixture *f, const char *name);

/** Add a joint at a point [mm] with its axis; rates in N/mm and N m/deg; returns its index. */
int fixture_joint(fixture *f, const char *name, int a, int b, gw_vec3 at_mm, gw_vec3 axis, double radial,
                  double axial, double conical, double torsional);

/** Two ball joints of 30 kN/mm with a link between the chassis and the upright; returns the member. */
int fixture_link(fixture *f, const char *name, gw_vec3 inner_mm, gw_vec3 outer_mm);

void fixture_spring(fixture *f, int body, gw_vec3 at_mm, gw_vec3 to_mm, double rate_n_per_mm);

/** A double wishbone with two lower links and a tie rod on a rack, rubber bushes inboard. */
void fixture_double_wishbone(fixture *f);

/** Opens the corner and solves one load; the joints' results are the fixture's. The test fails where it does
 * not stand. */
gw_corner_result fixture_solve(fixture *f, gw_corner_load load, gw_drive drive);

/** Bush frame from an axis, as a case makes it without a radial axis. */
gw_mat3 fixture_frame(gw_vec3 axis);

#endif
