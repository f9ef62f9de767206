/* SPDX-License-Identifier: MIT */
#include "support/corner_fixture.h"

#include "giveway/units.h"
#include "support/check.h"

#include <string.h>

static gw_vec3 mm(gw_vec3 v)
{
    return gw_scale(GW_MM, v);
}

gw_mat3 fixture_frame(gw_vec3 axis)
{
    gw_vec3 e3 = gw_scale(1.0 / gw_norm(axis), axis);
    gw_vec3 hint = fabs(e3.z) > cos(20.0 * GW_DEG) ? gw_v3(1, 0, 0) : gw_v3(0, 0, 1);
    gw_vec3 e1 = gw_axpy(hint, -gw_dot(hint, e3), e3);
    e1 = gw_scale(1.0 / gw_norm(e1), e1);
    return gw_mat3_from_columns(e1, gw_cross(e3, e1), e3);
}

void fixture_start(fixture *f)
{
    memset(f, 0, sizeof *f);
    f->corner.name = "front";
    f->corner.bodies = f->bodies;
    f->corner.joints = f->joints;
    f->bodies[GW_CHASSIS].name = "chassis";
    f->bodies[GW_UPRIGHT].name = "upright";
    f->corner.n_bodies = 2;
    f->corner.wheel = (gw_wheel){ .centre = { 0, 0.75, 0.31 },
                                  .loaded_radius = 0.305,
                                  .rim_diameter = 0.457,
                                  .static_load = 4000,
                                  .static_camber = -1.0 * GW_DEG,
                                  .static_toe = 0.08 * GW_DEG };
}

int fixture_member(fixture *f, const char *name)
{
    f->bodies[f->corner.n_bodies].name = name;
    return f->corner.n_bodies++;
}

int fixture_joint(fixture *f, const char *name, int a, int b, gw_vec3 at_mm, gw_vec3 axis, double radial,
                  double axial, double conical, double torsional)
{
    int j = f->corner.n_joints++;
    gw_bush_law law = gw_bush_law_zero();
    law.k[0] = law.k[1] = radial * GW_N_PER_MM;
    law.k[2] = axial * GW_N_PER_MM;
    law.c[0] = law.c[1] = conical * GW_NM_PER_DEG;
    law.c[2] = torsional * GW_NM_PER_DEG;
    f->joints[j] = (gw_joint){
        .name = name, .body_a = a, .body_b = b, .at = mm(at_mm), .frame = fixture_frame(axis), .housing = -1
    };
    f->fit[j] = (gw_fit){ law, mm(at_mm), mm(at_mm) };
    return j;
}

int fixture_link(fixture *f, const char *name, gw_vec3 inner_mm, gw_vec3 outer_mm)
{
    int m = fixture_member(f, name);
    fixture_joint(f, "inner", GW_CHASSIS, m, inner_mm, gw_v3(0, 0, 1), 30000, 30000, 0, 0);
    fixture_joint(f, "outer", m, GW_UPRIGHT, outer_mm, gw_v3(0, 0, 1), 30000, 30000, 0, 0);
    return m;
}

void fixture_spring(fixture *f, int body, gw_vec3 at_mm, gw_vec3 to_mm, double rate_n_per_mm)
{
    f->corner.spring = (gw_spring){ body, mm(at_mm), mm(to_mm), rate_n_per_mm * GW_N_PER_MM };
}

void fixture_double_wishbone(fixture *f)
{
    const gw_vec3 x = { 1, 0, 0 }, z = { 0, 0, 1 }, y = { 0, 1, 0 };
    fixture_start(f);
    int upper = fixture_member(f, "upper_arm"), lateral = fixture_member(f, "lateral_link");
    int tension = fixture_member(f, "tension_link"), rod = fixture_member(f, "tie_rod");
    int rack = fixture_member(f, "rack");
    fixture_joint(f, "upper_front", GW_CHASSIS, upper, gw_v3(110, 430, 520), x, 3000, 300, 30, 0.8);
    fixture_joint(f, "upper_rear", GW_CHASSIS, upper, gw_v3(-130, 440, 500), x, 3000, 300, 30, 0.8);
    fixture_joint(f, "upper_ball", upper, GW_UPRIGHT, gw_v3(-15, 665, 510), z, 30000, 30000, 0, 0);
    fixture_joint(f, "lateral_inner", GW_CHASSIS, lateral, gw_v3(-25, 350, 205), x, 8000, 800, 40, 1.1);
    fixture_joint(f, "lateral_outer", lateral, GW_UPRIGHT, gw_v3(-10, 700, 190), z, 30000, 30000, 0, 0);
    fixture_joint(f, "tension_inner", GW_CHASSIS, tension, gw_v3(330, 400, 215), z, 700, 200, 20, 0.6);
    fixture_joint(f, "tension_outer", tension, GW_UPRIGHT, gw_v3(25, 690, 195), z, 30000, 30000, 0, 0);
    fixture_joint(f, "rod_inner", rack, rod, gw_v3(120, 360, 250), z, 20000, 20000, 0, 0);
    fixture_joint(f, "rod_outer", rod, GW_UPRIGHT, gw_v3(130, 690, 240), z, 20000, 20000, 0, 0);
    fixture_joint(f, "rack_left", GW_CHASSIS, rack, gw_v3(120, 250, 250), y, 9000, 4000, 20, 2);
    fixture_joint(f, "rack_right", GW_CHASSIS, rack, gw_v3(120, -250, 250), y, 9000, 4000, 20, 2);
    /* The seat lies on the line between the link's joints, at 0.6 of its length. */
    fixture_spring(f, lateral, gw_v3(-16, 560, 196), gw_v3(-20, 500, 620), 85);
}

gw_corner_result fixture_solve(fixture *f, gw_corner_load load, gw_drive drive)
{
    gw_corner_ws *ws;
    gw_error err = { 0 };
    gw_state state;
    gw_corner_result r = { .joints = f->results };
    if (gw_corner_open(&f->corner, f->fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&f->corner, &state, &err), GW_OK);
    if (gw_corner_solve(ws, &load, drive, &state, &err) != GW_OK) fail_msg("%s", err.msg);
    gw_corner_report(ws, &state, &r);
    gw_state_free(&state);
    gw_corner_close(ws);
    return r;
}
