/* SPDX-License-Identifier: MIT */
/* Corners simple enough for a closed form, with loads small enough for linear theory. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>

/* [N]: second-order terms and the rounding of positions both stay below the digits compared. */
static const double SMALL = 0.01;

static gw_corner_result solve_small(fixture *f, gw_vec3 patch_force, gw_vec3 moment)
{
    const gw_corner_load load = { .patch_force = patch_force, .patch_moment = moment };
    f->corner.wheel.static_load = SMALL * 1e-3;
    f->corner.wheel.static_camber = f->corner.wheel.static_toe = 0.0;
    return fixture_solve(f, load, GW_AT_TRAVEL);
}

/* One body on the chassis, free to move in one plane and held by two springs of that plane. */
static void plane_body(fixture *f, gw_vec3 held_translation, gw_vec3 held_rotation)
{
    fixture_start(f);
    int j = fixture_joint(f, "guide", GW_CHASSIS, GW_UPRIGHT, gw_v3(0, 0, 0), gw_v3(0, 0, 1), 0, 0, 0, 0);
    gw_bush_law *law = &f->fit[j].law; /* frame: e1 = x, e2 = y, e3 = z */
    law->k[0] = 1e12 * held_translation.x;
    law->k[1] = 1e12 * held_translation.y;
    law->k[2] = 1e12 * held_translation.z;
    law->c[0] = 1e12 * held_rotation.x;
    law->c[1] = 1e12 * held_rotation.y;
    law->c[2] = 1e12 * held_rotation.z;
    fixture_spring(f, GW_UPRIGHT, gw_v3(0, 700, 300), gw_v3(0, 700, 600), 50);
}

static void lateral_spring(fixture *f, gw_vec3 at_mm, double rate)
{
    int j = fixture_joint(f, "lateral", GW_CHASSIS, GW_UPRIGHT, at_mm, gw_v3(0, 1, 0), 0, rate, 0, 0);
    f->joints[j].frame = fixture_frame(gw_v3(0, 1, 0));
}

/* Two lateral springs, 8000 N/mm at x = 0.15 m and 2000 N/mm at x = -0.20 m; elastic centre by statics. */
static void planar_toe_turns_about_the_elastic_centre(void **unused)
{
    (void)unused;
    check_from("statics of a plane body on two springs, worked out by hand");
    static const struct {
        double x_force, yaw_deg_per_kn;
    } ROWS[] = { { 0.0, -0.0233860 }, { -0.02, -0.0292325 }, { 0.05, -0.0087698 } };
    for (size_t i = 0; i < sizeof ROWS / sizeof *ROWS; i++) {
        fixture f;
        plane_body(&f, gw_v3(1, 0, 0), gw_v3(1, 1, 0));
        lateral_spring(&f, gw_v3(150, 0, 0), 8000);
        lateral_spring(&f, gw_v3(-200, 0, 0), 2000);
        f.corner.wheel.centre = gw_v3(ROWS[i].x_force, 0.75, 0.3);
        f.corner.wheel.loaded_radius = 0.3;
        gw_corner_result r = solve_small(&f, gw_v3(0, SMALL, 0), gw_v3(0, 0, 0));
        double yaw_deg_per_kn = -r.toe_change / GW_DEG / SMALL * 1e3;
        check_about("force at x %g m", ROWS[i].x_force);
        check_abs(yaw_deg_per_kn, ROWS[i].yaw_deg_per_kn, 0.5e-7, "yaw [deg/kN]");
        if (i == 0)
            check_abs(r.contact_patch.y / SMALL * 1e3 / GW_MM, 0.1326531, 0.5e-7,
                      "movement at the force [mm/kN]");
    }
}

/* Lateral springs 4000 N/mm at 0.55 m and 9000 N/mm at 0.20 m, 1 kN at the ground. */
static void planar_camber_and_arm_forces_follow_statics(void **unused)
{
    (void)unused;
    check_from("statics of a plane body on two springs, worked out by hand");
    fixture f;
    plane_body(&f, gw_v3(1, 0, 0), gw_v3(0, 1, 1));
    lateral_spring(&f, gw_v3(0, 0, 550), 4000);
    lateral_spring(&f, gw_v3(0, 0, 200), 9000);
    /* The load has no arm about x but its height, and the wheel no height but its travel. */
    f.corner.wheel.centre = gw_v3(0, 0, 0.3);
    f.corner.wheel.loaded_radius = 0.3;
    fixture_spring(&f, GW_UPRIGHT, gw_v3(0, 0, 300), gw_v3(0, 0, 900), 50);
    gw_corner_result r = solve_small(&f, gw_v3(0, SMALL, 0), gw_v3(0, 0, 0));
    double per_kn = 1e3 / SMALL;
    check_abs(fabs(r.camber_change) / GW_DEG * per_kn, 0.0519690, 0.5e-7, "camber [deg/kN]");
    check_abs(r.contact_patch.y / GW_MM * per_kn, 0.3560091, 0.5e-7, "movement at the ground [mm/kN]");
    check_abs(f.results[1].f[2] * per_kn, -571.43, 0.5e-2, "force in the upper arm [N/kN]");
    check_abs(f.results[2].f[2] * per_kn, 1571.43, 0.5e-2, "force in the lower arm [N/kN]");
}

/* A trailing arm on two equal bushes that resist translation only; every equation is written out. */
static void trailing_arm_on_two_bushes_follows_its_closed_form(void **unused)
{
    (void)unused;
    const double k = 2.5e6, inner = 0.40, outer = 0.62, height = 0.28, arm = 0.45, d = outer - inner;
    const double middle = 0.5 * (inner + outer), xs = -0.31, ys = 0.55, xc = -arm, yc = 0.75, zc = 0.31;
    fixture f;
    fixture_start(&f);
    f.corner.wheel.centre = gw_v3(xc, yc, zc);
    f.corner.wheel.loaded_radius = 0.30;
    const gw_vec3 y = { 0, 1, 0 };
    fixture_joint(&f, "inner", GW_CHASSIS, GW_UPRIGHT, gw_v3(0, 1e3 * inner, 1e3 * height), y, k / 1e3,
                  k / 1e3, 0, 0);
    fixture_joint(&f, "outer", GW_UPRIGHT, GW_CHASSIS, gw_v3(0, 1e3 * outer, 1e3 * height), y, k / 1e3,
                  k / 1e3, 0, 0);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(1e3 * xs, 1e3 * ys, 280), gw_v3(1e3 * xs, 1e3 * ys, 700), 40);
    const gw_vec3 force = gw_scale(SMALL, gw_v3(-0.7, 0.4, 1.3));
    gw_corner_result r = solve_small(&f, force, gw_v3(0, 0, 0));

    /* Moments about the middle of the hinge; the spring pushes down on the arm with S. */
    double zp = zc - 0.30 - height;
    double s = -(zp * force.x - xc * force.z) / xs; /* moment about y: zp Fx - xc Fz + xs S = 0 */
    double mx = (yc - middle) * force.z - zp * force.y - (ys - middle) * s;
    double mz = xc * force.y - (yc - middle) * force.x;
    double hinge = 0.5 * k * d * d, phi_x = mx / hinge, phi_z = mz / hinge;
    double w = (force.z - s) / (2.0 * k), phi_y = (w + phi_x * (yc - middle)) / xc;
    double start = SMALL * 1e-3; /* S0 carries this vertical load */
    double s0 = start * xc / xs, mx0 = (yc - middle) * start - (ys - middle) * s0, phi_x0 = mx0 / hinge;
    double phi_y0 = ((start - s0) / (2.0 * k) + phi_x0 * (yc - middle)) / xc;
    check_rel(r.spring_force, s, 1e-6, "spring force");
    /* What linear theory leaves out is of the size of phi squared. */
    double second_order = 2.0 * (phi_x * phi_x + phi_y * phi_y + phi_z * phi_z);
    check_abs(r.toe_change, -phi_z, second_order, "toe");
    check_abs(r.camber_change, -(phi_x - phi_x0), second_order, "camber");
    check_abs(r.caster_change, -(phi_y - phi_y0), second_order, "caster");
    assert_true(second_order < 5e-6 * fabs(phi_z));
}

/* Five two-force links and the spring: six forces from six equations, movement by virtual work. */
static void five_link_forces_and_movement_follow_statics_and_virtual_work(void **unused)
{
    (void)unused;
    static const gw_vec3 INNER[5] = {
        { 120, 380, 260 }, { -90, 400, 230 }, { 80, 420, 480 }, { -110, 430, 470 }, { 420, 520, 250 }
    };
    static const gw_vec3 OUTER[5] = {
        { 110, 690, 200 }, { -80, 700, 190 }, { 30, 660, 500 }, { -60, 670, 490 }, { 20, 680, 210 }
    };
    const double link_rate = 0.5 * 30000e3;
    fixture f;
    fixture_start(&f);
    f.corner.wheel.centre = gw_v3(0, 0.75, 0.31);
    f.corner.wheel.loaded_radius = 0.31;
    for (int i = 0; i < 5; i++) fixture_link(&f, "link", INNER[i], OUTER[i]);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(5, 640, 330), gw_v3(0, 560, 700), 60);
    gsl_matrix *a = gsl_matrix_calloc(6, 6);
    gsl_vector *b = gsl_vector_calloc(6), *x = gsl_vector_calloc(6);
    gsl_permutation *perm = gsl_permutation_alloc(6);
    const gw_vec3 patch = { 0, 0.75, 0 }, force = gw_scale(SMALL, gw_v3(-0.9, 0.6, 1.1));
    const gw_vec3 direction[6] = { gw_sub(OUTER[0], INNER[0]), gw_sub(OUTER[1], INNER[1]),
                                   gw_sub(OUTER[2], INNER[2]), gw_sub(OUTER[3], INNER[3]),
                                   gw_sub(OUTER[4], INNER[4]), gw_v3(5, 80, -370) };
    double unit_toe[6], forces[6];
    for (int load = 0; load < 2; load++) {
        for (int i = 0; i < 6; i++) {
            gw_vec3 at = gw_scale(GW_MM, i < 5 ? OUTER[i] : gw_v3(5, 640, 330));
            gw_vec3 n = gw_scale(1.0 / gw_norm(direction[i]), direction[i]), m = gw_cross(at, n);
            const double column[6] = { n.x, n.y, n.z, m.x, m.y, m.z };
            for (int r = 0; r < 6; r++) gsl_matrix_set(a, (size_t)r, (size_t)i, column[r]);
        }
        gw_vec3 m = load ? gw_v3(0, 0, -1) : gw_cross(patch, force), p = load ? gw_v3(0, 0, 0) : force;
        const double rhs[6] = { -p.x, -p.y, -p.z, -m.x, -m.y, -m.z };
        /* Under the unit moment the spring's length is held and the wheel centre carries the reaction. */
        if (load) {
            const double reaction[6] = { 0, 0, 1, 0.75, 0, 0 };
            for (int r = 0; r < 6; r++) gsl_matrix_set(a, (size_t)r, 5, reaction[r]);
        }
        for (int r = 0; r < 6; r++) gsl_vector_set(b, (size_t)r, rhs[r]);
        int sign;
        gsl_linalg_LU_decomp(a, perm, &sign);
        gsl_linalg_LU_solve(a, perm, b, x);
        for (int i = 0; i < 6; i++) (load ? unit_toe : forces)[i] = gsl_vector_get(x, (size_t)i);
    }
    double toe = 0.0;
    for (int i = 0; i < 5; i++) toe += forces[i] * unit_toe[i] / link_rate;
    gw_corner_result r = solve_small(&f, force, gw_v3(0, 0, 0));
    check_rel(r.spring_force, forces[5], 1e-5, "spring force");
    for (int i = 0; i < 5; i++) {
        const gw_joint_result *j = &f.results[2 * i];
        double along = sqrt(j->f[0] * j->f[0] + j->f[1] * j->f[1] + j->f[2] * j->f[2]);
        check_rel(along, fabs(forces[i]), 1e-5, "link force");
    }
    /* S0 carries a thousandth of the load; its own toe is a thousandth of the vertical part. */
    check_rel(r.toe_change, toe, 2e-3, "toe by virtual work");
    gsl_matrix_free(a);
    gsl_vector_free(b);
    gsl_vector_free(x);
    gsl_permutation_free(perm);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(planar_toe_turns_about_the_elastic_centre),
        cmocka_unit_test(planar_camber_and_arm_forces_follow_statics),
        cmocka_unit_test(trailing_arm_on_two_bushes_follows_its_closed_form),
        cmocka_unit_test(five_link_forces_and_movement_follow_statics_and_virtual_work),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
