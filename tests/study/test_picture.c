/* SPDX-License-Identifier: MIT */
/* Where the parts of an axle are, for drawings. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/report.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>

static gw_material_set materials;

static gw_case load(const char *name)
{
    const char *root = getenv("SOURCE");
    char path[512];
    gw_case c;
    gw_faults faults = { 0 };
    gsl_set_error_handler_off();
    snprintf(path, sizeof path, "%s/%s.json", root ? root : ".", name);
    assert_int_equal(gw_materials_builtin(&materials, &faults), GW_OK);
    assert_int_equal(gw_case_load(path, &materials, &c, &faults), GW_OK);
    gw_faults_free(&faults);
    return c;
}

typedef struct shown {
    gw_case c;
    gw_laws laws;
    gw_deflect_study deflect;
    gw_grid_study grid;
    gw_picture_study pictures;
} shown;

static shown work_out_of(gw_case c)
{
    shown s = { .c = c };
    const gw_selection wanted = { 0 };
    const gw_grid_plan plan = { 1.0, 0.8, 3, 5, GW_OUTER, true, GW_PICTURE_STEP };
    assert_int_equal(gw_laws_make(&s.c, GW_METHOD_SOLVED, &s.laws, NULL), GW_OK);
    assert_int_equal(gw_study_deflect(&s.c, &wanted, &s.deflect, NULL), GW_OK);
    assert_int_equal(gw_study_grid(&s.c, &wanted, &plan, &s.grid, NULL), GW_OK);
    assert_int_equal(gw_study_pictures(&s.c, &s.laws, &s.deflect, &s.grid, &s.pictures, NULL), GW_OK);
    return s;
}

static shown work_out(const char *name)
{
    return work_out_of(load(name));
}

static void drop(shown *s)
{
    gw_picture_study_free(&s->pictures);
    gw_grid_study_free(&s->grid);
    gw_deflect_study_free(&s->deflect);
    gw_laws_free(&s->laws);
    gw_case_free(&s->c);
    gw_materials_free(&materials);
}

/* The wheel's axis, as it is set, turned by the part's rotation, has the angles that are told. */
static void the_wheel_moves_and_turns_as_the_study_of_the_load_says(void **state)
{
    (void)state;
    shown s = work_out("tests/cases/saloon-by-rule");
    int looked = 0;
    for (int i = 0; i < s.deflect.n; i++) {
        const gw_deflection *d = &s.deflect.item[i];
        if (d->failed || d->wheel != GW_LEFT_WHEEL) continue;
        const gw_picture *p = &gw_pictures_find(&s.pictures, d->kit, d->axle)->load[d->load];
        const gw_part_move *wheel = &p->moved[GW_UPRIGHT];
        assert_true(p->solved);
        check_abs(p->toe[GW_LEFT_WHEEL], d->result.toe, 1e-9, "toe as it stands");
        check_abs(p->camber[GW_LEFT_WHEEL], d->result.camber, 1e-9, "camber as it stands");
        check_abs(wheel->move.x, d->result.wheel_centre.x, 1e-9, "forward");
        check_abs(wheel->move.y, d->result.wheel_centre.y, 1e-9, "outward");
        check_abs(wheel->move.z, d->result.wheel_centre.z, 1e-9, "upward");
        double set = s.c.corners[d->axle].wheel.static_toe;
        gw_mat3 turn = gw_rot_exp(wheel->turn);
        gw_vec3 axis = gw_mul(&turn, gw_axis_from_camber_toe(d->static_camber, set));
        check_abs(gw_toe_of_axis(axis) - set, d->result.toe_change, 1e-9, "toe");
        check_abs(gw_camber_of_axis(axis) - d->static_camber, d->result.camber_change, 1e-9, "camber");
        looked++;
    }
    assert_true(looked >= 40);
    drop(&s);
}

/* The joint of the axle that a wheel's corner lists as its j-th. */
static int joint_of_wheel(const gw_case *c, const gw_deflection *d, int j)
{
    const bool right = !c->corners[d->axle].shared && d->wheel == GW_RIGHT_WHEEL;
    return right ? c->pairs[d->axle].joints[j].twin : j;
}

/* A shared part's share is drawn as the left wheel's, and so is what is the left wheel's own. */
static bool is_drawn_for(const gw_corner *pair, int joint, gw_wheel_side wheel)
{
    const int both[] = { pair->joints[joint].body_a, pair->joints[joint].body_b };
    bool of_left = false, of_right = false;
    for (int i = 0; i < 2; i++) {
        of_left = of_left || gw_body_side(pair, both[i]) == GW_LEFT_WHEEL;
        of_right = of_right || gw_body_side(pair, both[i]) == GW_RIGHT_WHEEL;
    }
    return (of_right && !of_left) == (wheel == GW_RIGHT_WHEEL);
}

static void joints_are_as_told(const shown *s, const gw_deflection *d, const gw_picture *p)
{
    const gw_corner *pair = &s->c.pairs[d->axle];
    for (int j = 0; j < s->c.corners[d->axle].n_joints; j++) {
        const int joint = joint_of_wheel(&s->c, d, j);
        const gw_joint_result *told = &d->result.joints[j];
        check_abs(p->given[joint], gw_norm(gw_v3(told->u[0], told->u[1], told->u[2])), 1e-9,
                  pair->joints[joint].name);
        if (is_drawn_for(pair, joint, d->wheel))
            check_abs(p->toe_share[joint], told->toe_share, 1e-9, pair->joints[joint].name);
    }
}

/* The right wheel's figures are told in its own axes, parts are drawn in the car's. */
static void wheel_is_as_told(const gw_case *c, const gw_deflection *d, const gw_axle_pictures *of,
                             const gw_picture *p)
{
    const bool right = d->wheel == GW_RIGHT_WHEEL;
    const double set = c->corners[d->axle].wheel.static_toe, to_car = right ? -1.0 : 1.0;
    const gw_part_move *wheel = &p->moved[right ? c->pairs[d->axle].right_upright : GW_UPRIGHT];
    gw_mat3 turn = gw_rot_exp(wheel->turn);
    gw_vec3 axis = gw_axis_from_camber_toe(of->static_camber[d->wheel], set);
    axis = gw_mul(&turn, gw_v3(axis.x, to_car * axis.y, axis.z));
    axis.y *= to_car;
    check_abs(wheel->move.x, d->result.wheel_centre.x, 1e-9, "forward");
    check_abs(to_car * wheel->move.y, d->result.wheel_centre.y, 1e-9, "outward");
    check_abs(wheel->move.z, d->applied.travel, 1e-9, "travel");
    check_abs(p->toe[d->wheel], d->result.toe, 1e-9, "toe as it stands");
    check_abs(p->camber[d->wheel], d->result.camber, 1e-9, "camber as it stands");
    check_abs(gw_toe_of_axis(axis), d->result.toe, 1e-9, "toe of the wheel as it is drawn");
    check_abs(gw_camber_of_axis(axis), d->result.camber, 1e-9, "camber of the wheel as it is drawn");
}

static gw_case load_that_tells_both_wheels(const char *name)
{
    gw_case c = load(name);
    for (int l = 0; l < c.n_loads; l++) c.loads[l].both = c.loads[l].kind == GW_LOAD_MANOEUVRE;
    return c;
}

static void on_the_road_both_wheels_and_all_bushes_are_drawn_as_they_are_told(void **state)
{
    (void)state;
    int looked = 0;
    const char *const cases[] = { "cases/fast-saloon", "cases/live-axle" };
    for (int i = 0; i < 2; i++) {
        shown s = work_out_of(load_that_tells_both_wheels(cases[i]));
        for (int k = 0; k < s.deflect.n; k++) {
            const gw_deflection *d = &s.deflect.item[k];
            if (d->failed || !d->on_road) continue;
            const gw_axle_pictures *of = gw_pictures_find(&s.pictures, d->kit, d->axle);
            wheel_is_as_told(&s.c, d, of, &of->load[d->load]);
            joints_are_as_told(&s, d, &of->load[d->load]);
            check_abs(of->load[d->load].roll, d->roll, 1e-12, "lean");
            looked++;
        }
        drop(&s);
    }
    assert_true(looked >= 40);
}

static void a_drawn_state_of_the_sliders_is_the_one_they_tell(void **state)
{
    (void)state;
    shown s = work_out("cases/fast-saloon");
    int looked = 0;
    for (int k = 0; k < s.pictures.n; k++) {
        const gw_axle_pictures *of = &s.pictures.item[k];
        const gw_grid *grid = gw_grid_find(&s.grid, of->kit, of->axle);
        for (int i = 0; i < 6; i++) {
            const int at = GW_PICTURE_STEP * (i / 3 * 5 + i % 3);
            const gw_grid_state *wheel[GW_WHEELS] = { &grid->state[at], &grid->other[at] };
            for (int w = 0; w < GW_WHEELS && of->state[i].solved; w++, looked++) {
                check_abs(of->state[i].toe[w], wheel[w]->toe, 1e-9, "toe");
                check_abs(of->state[i].camber[w], wheel[w]->camber, 1e-9, "camber");
            }
            check_abs(of->state[i].moved[GW_UPRIGHT].move.z, grid->state[at].travel, 1e-9, "travel");
            check_abs(of->state[i].roll, grid->state[at].roll, 1e-12, "lean");
        }
    }
    assert_true(looked >= 60);
    drop(&s);
}

static void what_the_height_does_and_what_the_load_does_are_apart(void **state)
{
    (void)state;
    shown s = work_out("tests/cases/saloon-by-rule");
    const gw_axle_pictures *of = gw_pictures_find(&s.pictures, 0, GW_FRONT);
    const gw_grid *grid = gw_grid_find(&s.grid, 0, GW_FRONT);
    assert_int_equal(s.pictures.n_brake, 2);
    assert_int_equal(s.pictures.n_lateral, 3);
    for (int i = 0; i < 6; i++) {
        const gw_grid_state *at = &grid->state[2 * (i / 3) * 5 + 2 * (i % 3)];
        assert_int_equal(of->state[i].solved, at->solved);
        if (!at->solved) continue;
        check_abs(of->state[i].moved[GW_UPRIGHT].move.z, at->wheel_centre.z, 1e-9, "height");
        check_abs(of->state[i].by_travel[GW_UPRIGHT].move.z, at->wheel_centre.z, 1e-4, "height without load");
        assert_true(i == 0 || of->state[i].by_travel[GW_UPRIGHT].move.z != 0.0);
    }
    check_abs(of->state[0].moved[GW_UPRIGHT].move.z, 0.0, 1e-9, "at rest");
    drop(&s);
}

static void both_wheels_go_alike_under_braking_and_apart_in_a_bend(void **state)
{
    (void)state;
    shown s = work_out("cases/fast-saloon");
    const gw_corner *pair = &s.c.pairs[GW_REAR];
    const gw_axle_pictures *of = gw_pictures_find(&s.pictures, 1, GW_REAR);
    const gw_grid *grid = gw_grid_find(&s.grid, 1, GW_REAR);
    int right = pair->right_upright;
    const gw_part_move *braking = of->state[3].moved, *bend = of->state[2].moved;
    assert_int_equal(gw_body_side(pair, GW_UPRIGHT), GW_LEFT_WHEEL);
    assert_int_equal(gw_body_side(pair, right), GW_RIGHT_WHEEL);
    assert_int_equal(gw_body_side(pair, pair->first_shared), GW_WHEELS);
    check_abs(s.pictures.mark[GW_REAR][right].y, -pair->wheel.centre.y, 1e-12, "the right wheel's mark");
    check_abs(braking[GW_UPRIGHT].move.x, braking[right].move.x, 1e-6, "forward");
    check_abs(braking[GW_UPRIGHT].move.y, -braking[right].move.y, 1e-6, "outward");
    assert_true(bend[GW_UPRIGHT].move.z > 0.005 && bend[right].move.z < -0.005);
    check_abs(grid->state[10].toe, grid->other[10].toe, 1e-7, "toe of both wheels in a stop");
    assert_true(fabs(grid->state[4].toe - grid->other[4].toe) > 0.05 * GW_DEG);
    drop(&s);
}

/* A share of a joint on the right is one of the right wheel's: in a stop the two sides mirror each other. */
static void shares_belong_to_the_wheel_on_their_side(void **state)
{
    (void)state;
    shown s = work_out("tests/cases/saloon-by-rule");
    const gw_corner *pair = &s.c.pairs[GW_REAR];
    const gw_deflection *stop = gw_deflect_find(&s.deflect, 1, GW_REAR, 1);
    const gw_picture *p = &gw_pictures_find(&s.pictures, 1, GW_REAR)->load[1];
    for (int j = 0; j < pair->n_left; j++) {
        check_abs(p->toe_share[j], stop->result.joints[j].toe_share, 1e-9, pair->joints[j].name);
        check_abs(p->toe_share[pair->joints[j].twin], p->toe_share[j], 1e-9, "its twin");
        check_abs(p->given[pair->joints[j].twin], p->given[j], 1e-9, "its twin gives alike");
    }
    drop(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_wheel_moves_and_turns_as_the_study_of_the_load_says),
        cmocka_unit_test(on_the_road_both_wheels_and_all_bushes_are_drawn_as_they_are_told),
        cmocka_unit_test(a_drawn_state_of_the_sliders_is_the_one_they_tell),
        cmocka_unit_test(what_the_height_does_and_what_the_load_does_are_apart),
        cmocka_unit_test(both_wheels_go_alike_under_braking_and_apart_in_a_bend),
        cmocka_unit_test(shares_belong_to_the_wheel_on_their_side),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
