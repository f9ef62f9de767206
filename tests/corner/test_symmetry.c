/* SPDX-License-Identifier: MIT */
/* What must not change the answer: where the origin lies, the order of bodies and joints, the side of the
 * car. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/units.h"

#include <gsl/gsl_errno.h>

static const gw_corner_load LOAD = { { -3500, -1800, 5600 }, { 5, -12, 35 }, { 400, 0, 0 }, 0.022 };

static void check_same(const gw_corner_result *a, const gw_corner_result *b)
{
    check_abs(a->camber_change / GW_DEG, b->camber_change / GW_DEG, 1e-9, "camber");
    check_abs(a->toe_change / GW_DEG, b->toe_change / GW_DEG, 1e-9, "toe");
    check_abs(a->caster_change / GW_DEG, b->caster_change / GW_DEG, 1e-9, "caster");
    check_abs(a->contact_patch.x, b->contact_patch.x, 1e-12, "patch x");
    check_abs(a->contact_patch.y, b->contact_patch.y, 1e-12, "patch y");
    check_rel(a->spring_force, b->spring_force, 1e-10, "spring force");
    check_abs(a->travel_toe / GW_DEG, b->travel_toe / GW_DEG, 1e-8, "travel share of toe");
}

static void move_origin(fixture *f, gw_vec3 by)
{
    gw_corner *c = &f->corner;
    c->wheel.centre = gw_add(c->wheel.centre, by);
    c->spring.at = gw_add(c->spring.at, by);
    c->spring.to = gw_add(c->spring.to, by);
    for (int j = 0; j < c->n_joints; j++) {
        c->joints[j].at = gw_add(c->joints[j].at, by);
        f->fit[j].point_a = gw_add(f->fit[j].point_a, by);
        f->fit[j].point_b = gw_add(f->fit[j].point_b, by);
    }
}

static void moving_the_origin_changes_nothing(void **unused)
{
    (void)unused;
    fixture here, there;
    fixture_double_wishbone(&here);
    fixture_double_wishbone(&there);
    move_origin(&there, gw_v3(2.7, -0.4, 0.15));
    gw_corner_result a = fixture_solve(&here, LOAD, GW_AT_TRAVEL),
                     b = fixture_solve(&there, LOAD, GW_AT_TRAVEL);
    check_same(&a, &b);
}

static int renumbered(int body)
{
    return body < 2 ? body : 8 - body;
} /* members 2 to 6, backwards */

static void order_of_members_and_joints_changes_nothing(void **unused)
{
    (void)unused;
    fixture plain, shuffled;
    fixture_double_wishbone(&plain);
    fixture_double_wishbone(&shuffled);
    int n = plain.corner.n_joints;
    for (int j = 0; j < n; j++) {
        shuffled.joints[j] = plain.joints[n - 1 - j];
        shuffled.fit[j] = plain.fit[n - 1 - j];
        shuffled.joints[j].body_a = renumbered(shuffled.joints[j].body_a);
        shuffled.joints[j].body_b = renumbered(shuffled.joints[j].body_b);
    }
    for (int b = 2; b < plain.corner.n_bodies; b++) shuffled.bodies[renumbered(b)] = plain.bodies[b];
    shuffled.corner.spring.body = renumbered(plain.corner.spring.body);
    gw_corner_result a = fixture_solve(&plain, LOAD, GW_AT_TRAVEL),
                     b = fixture_solve(&shuffled, LOAD, GW_AT_TRAVEL);
    check_same(&a, &b);
    check_abs(a.geometry_toe / GW_DEG, b.geometry_toe / GW_DEG, 1e-9, "remainder of toe");
    check_abs(a.joints[5].toe_share / GW_DEG, b.joints[n - 6].toe_share / GW_DEG, 1e-9, "share of a bush");
}

static void isotropic_joints_do_not_care_which_body_is_first(void **unused)
{
    (void)unused;
    fixture plain, turned;
    fixture_double_wishbone(&plain);
    fixture_double_wishbone(&turned);
    for (int j = 0; j < plain.corner.n_joints; j++) {
        const double *k = plain.fit[j].law.k;
        if (k[0] != k[2]) continue;
        turned.joints[j].body_a = plain.joints[j].body_b;
        turned.joints[j].body_b = plain.joints[j].body_a;
    }
    gw_corner_result a = fixture_solve(&plain, LOAD, GW_AT_TRAVEL),
                     b = fixture_solve(&turned, LOAD, GW_AT_TRAVEL);
    check_same(&a, &b);
}

static gw_vec3 mirrored(gw_vec3 v)
{
    return gw_v3(v.x, -v.y, v.z);
}

static void mirrored_corner_moves_like_the_mirror_image(void **unused)
{
    (void)unused;
    fixture left, right;
    fixture_double_wishbone(&left);
    fixture_double_wishbone(&right);
    gw_corner *c = &right.corner;
    c->wheel.centre = mirrored(c->wheel.centre);
    c->spring.at = mirrored(c->spring.at);
    c->spring.to = mirrored(c->spring.to);
    for (int j = 0; j < c->n_joints; j++) {
        gw_mat3 *e = &c->joints[j].frame;
        c->joints[j].at = mirrored(c->joints[j].at);
        right.fit[j].point_a = mirrored(right.fit[j].point_a);
        right.fit[j].point_b = mirrored(right.fit[j].point_b);
        /* The mirrored axes, e2 turned to keep the frame right-handed: rates do not feel the sign. */
        *e = gw_mat3_from_columns(mirrored(gw_col(e, 0)), gw_scale(-1.0, mirrored(gw_col(e, 1))),
                                  mirrored(gw_col(e, 2)));
    }
    gw_corner_load load = LOAD;
    load.patch_force = mirrored(load.patch_force);
    load.hub_force = mirrored(load.hub_force);
    load.patch_moment = gw_v3(-LOAD.patch_moment.x, LOAD.patch_moment.y, -LOAD.patch_moment.z);
    gw_corner_result a = fixture_solve(&left, LOAD, GW_AT_TRAVEL),
                     b = fixture_solve(&right, load, GW_AT_TRAVEL);
    check_abs(a.contact_patch.x, b.contact_patch.x, 1e-12, "patch x");
    check_abs(a.contact_patch.y, -b.contact_patch.y, 1e-12, "patch y");
    check_abs(a.wheel_centre.x, b.wheel_centre.x, 1e-12, "wheel centre x");
    check_rel(a.spring_force, b.spring_force, 1e-10, "spring force");
}

/* On its spring the corner is conservative: at S0, movement at one load point per force at another is mutual.
 */
static void small_loads_on_the_spring_are_reciprocal(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    const double force = 0.5;
    const gw_vec3 weight = { 0, 0, f.corner.wheel.static_load };
    gw_corner_load at_patch_up = { gw_add(weight, gw_v3(0, force, 0)), { 0, 0, 0 }, { 0, 0, 0 }, 0 };
    gw_corner_load at_patch_down = { gw_add(weight, gw_v3(0, -force, 0)), { 0, 0, 0 }, { 0, 0, 0 }, 0 };
    gw_corner_load at_hub_up = { weight, { 0, 0, 0 }, { force, 0, 0 }, 0 };
    gw_corner_load at_hub_down = { weight, { 0, 0, 0 }, { -force, 0, 0 }, 0 };
    double hub_x = fixture_solve(&f, at_patch_up, GW_ON_SPRING).wheel_centre.x -
                   fixture_solve(&f, at_patch_down, GW_ON_SPRING).wheel_centre.x;
    double patch_y = fixture_solve(&f, at_hub_up, GW_ON_SPRING).contact_patch.y -
                     fixture_solve(&f, at_hub_down, GW_ON_SPRING).contact_patch.y;
    assert_true(fabs(hub_x) > 1e-9);
    check_rel(hub_x, patch_y, 1e-6, "mutual movement");
}

/* Loads and travel so small that the nonlinear remainder vanishes: the shares must make the whole change. */
static void shares_of_the_linear_corner_add_up(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    f.corner.wheel.static_load = 1e-3;
    gw_corner_load load = { { -0.04, -0.03, 0.06 }, { 1e-3, 0, -2e-3 }, { 0.01, 0, 0 }, 2e-7 };
    gw_corner_result r = fixture_solve(&f, load, GW_AT_TRAVEL);
    assert_true(fabs(r.toe_change) > 1e-8 && fabs(r.camber_change) > 1e-8);
    check_abs(r.geometry_toe / GW_DEG, 0.0, 1e-9, "what the toe shares leave over");
    check_abs(r.geometry_camber / GW_DEG, 0.0, 1e-9, "what the camber shares leave over");
}

static void unloaded_reference_changes_nothing(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    gw_corner_load load = { { 0, 0, f.corner.wheel.static_load }, { 0, 0, 0 }, { 0, 0, 0 }, 0 };
    gw_corner_result r = fixture_solve(&f, load, GW_AT_TRAVEL), s = fixture_solve(&f, load, GW_ON_SPRING);
    check_abs(r.camber_change, 0.0, 1e-13, "camber at S0");
    check_abs(r.toe_change, 0.0, 1e-13, "toe at S0");
    check_abs(r.camber, f.corner.wheel.static_camber, 1e-13, "static camber");
    check_abs(r.toe, f.corner.wheel.static_toe, 1e-13, "static toe");
    check_abs(s.wheel_centre.z, 0.0, 1e-12, "S0 is an equilibrium on the spring");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(moving_the_origin_changes_nothing),
        cmocka_unit_test(order_of_members_and_joints_changes_nothing),
        cmocka_unit_test(isotropic_joints_do_not_care_which_body_is_first),
        cmocka_unit_test(mirrored_corner_moves_like_the_mirror_image),
        cmocka_unit_test(small_loads_on_the_spring_are_reciprocal),
        cmocka_unit_test(shares_of_the_linear_corner_add_up),
        cmocka_unit_test(unloaded_reference_changes_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
