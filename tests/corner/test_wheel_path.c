/* SPDX-License-Identifier: MIT */
/*
 * Linkages whose path is known in closed form. Joints of 30 kN/mm carry next to nothing here, so what is
 * left of their give is some nanometres.
 */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/corner_travel.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <stdio.h>

static const gw_corner_load VERTICAL_ALONE = { 0 };
static const double NEAR = 2e-8; /* [m], [rad] */

/* A corner that is open, with a state to solve into. */
typedef struct opened {
    gw_corner_ws *ws;
    gw_state state;
    gw_corner_result result;
    gw_travel_rates rates;
} opened;

static void open_fitted(fixture *f, const gw_fit *fit, opened *o)
{
    gw_error err = { 0 };
    *o = (opened){ .result.joints = f->results };
    if (gw_corner_open(&f->corner, fit, &o->ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&f->corner, &o->state, &err), GW_OK);
}

static void open_fixture(fixture *f, opened *o)
{
    open_fitted(f, f->fit, o);
}

static void close_fixture(opened *o)
{
    gw_state_free(&o->state);
    gw_corner_close(o->ws);
}

static void go_to(opened *o, double travel)
{
    gw_error err = { 0 };
    if (gw_corner_travel_at(o->ws, &VERTICAL_ALONE, travel, &o->state, &o->result, &o->rates, &err) != GW_OK)
        fail_msg("%s", err.msg);
}

/* A check that says at which place of travel, or angle of an arm, it failed. */
static void check_at(double got, double want, double tol, const char *what, double at)
{
    char text[80];
    snprintf(text, sizeof text, "%s at %g", what, at);
    check_abs(got, want, tol, text);
}

/* A light wheel set straight, and a spring that carries next to nothing: pure kinematics. */
static void make_light(fixture *f)
{
    f->corner.wheel.static_load = 0.01;
    f->corner.wheel.static_camber = f->corner.wheel.static_toe = 0.0;
}

/* ---- the planar double wishbone, written out in y and z ---- */

typedef struct place {
    double y, z;
} place;

typedef struct wishbones {
    place upper_in, upper_out, lower_in, lower_out; /* [m] */
} wishbones;

static const wishbones UNEQUAL = {
    { 0.43, 0.492 }, { 0.668, 0.5075 }, { 0.345, 0.2035 }, { 0.7015, 0.1885 }
};
static const wishbones PARALLEL = { { 0.39, 0.5 }, { 0.69, 0.52 }, { 0.39, 0.2 }, { 0.69, 0.22 } };

static gw_vec3 in_mm(double x, place p)
{
    return gw_v3(x, 1e3 * p.y, 1e3 * p.z);
}

static void one_arm(fixture *f, const char *name, place in, place out, int *member)
{
    const gw_vec3 x = { 1, 0, 0 }, z = { 0, 0, 1 };
    *member = fixture_member(f, name);
    fixture_joint(f, "front", GW_CHASSIS, *member, in_mm(120, in), x, 30000, 30000, 0, 0);
    fixture_joint(f, "rear", GW_CHASSIS, *member, in_mm(-130, in), x, 30000, 30000, 0, 0);
    fixture_joint(f, "ball", *member, GW_UPRIGHT, in_mm(0, out), z, 30000, 30000, 0, 0);
}

/* The tie rod runs beside the lower arm, as long and as steep, so that the upright only turns about x. */
static void build_wishbones(fixture *f, const wishbones *w)
{
    int upper, lower;
    fixture_start(f);
    one_arm(f, "upper_arm", w->upper_in, w->upper_out, &upper);
    one_arm(f, "lower_arm", w->lower_in, w->lower_out, &lower);
    fixture_link(f, "tie_rod", in_mm(140, w->lower_in), in_mm(140, w->lower_out));
    fixture_spring(f, lower, gw_v3(0, 550, 195), gw_v3(0, 520, 600), 1e-3);
    make_light(f);
}

static double distance(place a, place b)
{
    return hypot(a.y - b.y, a.z - b.z);
}

/* Where circles about a (radius ra) and b (radius rb) meet, on the left of the way from a to b. */
static place meet(place a, double ra, place b, double rb)
{
    double d = distance(a, b), along = (d * d + ra * ra - rb * rb) / (2.0 * d);
    double off = sqrt(ra * ra - along * along), cy = (b.y - a.y) / d, cz = (b.z - a.z) / d;
    return (place){ a.y + along * cy - off * cz, a.z + along * cz + off * cy };
}

/* The linkage with its lower arm turned by `angle`: what the upright has turned, where its points are. */
typedef struct planar {
    place upper, lower, hub, patch;
    double turn;
} planar;

static place carried(place from, place base, place design, double turn)
{
    double y = design.y - base.y, z = design.z - base.z;
    return (place){ from.y + y * cos(turn) - z * sin(turn), from.z + y * sin(turn) + z * cos(turn) };
}

static planar turned_by(const wishbones *w, double angle)
{
    planar p;
    double height = distance(w->lower_out, w->upper_out);
    p.lower = carried(w->lower_in, w->lower_in, w->lower_out, angle);
    p.upper = meet(p.lower, height, w->upper_in, distance(w->upper_in, w->upper_out));
    place other = meet(w->upper_in, distance(w->upper_in, w->upper_out), p.lower, height);
    if (distance(other, w->upper_out) < distance(p.upper, w->upper_out)) p.upper = other;
    p.turn = atan2(p.upper.z - p.lower.z, p.upper.y - p.lower.y) -
             atan2(w->upper_out.z - w->lower_out.z, w->upper_out.y - w->lower_out.y);
    p.hub = carried(p.lower, w->lower_out, (place){ 0.75, 0.31 }, p.turn);
    p.patch = carried(p.lower, w->lower_out, (place){ 0.75, 0.31 - 0.305 }, p.turn);
    return p;
}

/* Where the lines of both arms meet: the instant centre; then from the patch through it to the middle. */
static double drawn_roll_centre(const wishbones *w, const planar *p)
{
    double uy = p->upper.y - w->upper_in.y, uz = p->upper.z - w->upper_in.z;
    double ly = p->lower.y - w->lower_in.y, lz = p->lower.z - w->lower_in.z;
    double cross = uy * lz - uz * ly;
    double t = ((w->lower_in.y - w->upper_in.y) * lz - (w->lower_in.z - w->upper_in.z) * ly) / cross;
    place centre = { w->upper_in.y + t * uy, w->upper_in.z + t * uz };
    return (centre.z - p->patch.z) * p->patch.y / (p->patch.y - centre.y);
}

static const double ANGLES[] = { -10.3, -6.2, -1.9, 0.0, 2.4, 5.7, 9.6 }; /* of the lower arm [deg] */

static void a_planar_double_wishbone_follows_its_closed_form(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    build_wishbones(&f, &UNEQUAL);
    open_fixture(&f, &o);
    for (size_t i = 0; i < sizeof ANGLES / sizeof *ANGLES; i++) {
        planar p = turned_by(&UNEQUAL, ANGLES[i] * GW_DEG);
        go_to(&o, p.hub.z - 0.31);
        check_at(o.result.camber_change, -p.turn, NEAR, "camber", ANGLES[i]);
        check_at(o.result.toe_change, 0.0, NEAR, "toe", ANGLES[i]);
        check_at(o.result.caster_change, 0.0, NEAR, "caster", ANGLES[i]);
        check_at(o.result.wheel_centre.y, p.hub.y - 0.75, NEAR, "wheel centre sideways", ANGLES[i]);
        check_at(o.result.contact_patch.y, p.patch.y - 0.75, NEAR, "patch sideways", ANGLES[i]);
        check_at(o.result.contact_patch.z, p.patch.z - 0.005, NEAR, "patch upwards", ANGLES[i]);
    }
    close_fixture(&o);
}

static void the_roll_centre_is_where_the_drawing_puts_it(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    build_wishbones(&f, &UNEQUAL);
    open_fixture(&f, &o);
    for (size_t i = 0; i < sizeof ANGLES / sizeof *ANGLES; i++) {
        planar p = turned_by(&UNEQUAL, ANGLES[i] * GW_DEG);
        go_to(&o, p.hub.z - 0.31);
        double height = gw_roll_centre_height(&o.rates, 0.75 + o.result.contact_patch.y);
        check_at(height, drawn_roll_centre(&UNEQUAL, &p), 5e-7, "roll centre", ANGLES[i]);
    }
    close_fixture(&o);
}

static void the_front_view_centre_is_where_the_arms_meet(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    build_wishbones(&f, &UNEQUAL);
    open_fixture(&f, &o);
    go_to(&o, 0.0);
    gw_instant_centre c = gw_front_view_centre(&o.rates);
    /* The centre lies on the line of the lower arm, and of the upper. */
    double y = 0.75 - c.across, z = 0.31 + c.above;
    check_rel((z - 0.2035) / (y - 0.345), (0.1885 - 0.2035) / (0.7015 - 0.345), 1e-4, "lower arm");
    check_rel((z - 0.492) / (y - 0.43), (0.5075 - 0.492) / (0.668 - 0.43), 1e-4, "upper arm");
    close_fixture(&o);
}

static void a_parallel_linkage_does_not_move_in_camber(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    build_wishbones(&f, &PARALLEL);
    open_fixture(&f, &o);
    for (int mm = -80; mm <= 80; mm += 20) {
        go_to(&o, mm * GW_MM);
        check_at(o.result.camber_change, 0.0, NEAR, "camber", mm);
        check_at(o.result.toe_change, 0.0, NEAR, "toe", mm);
        check_at(o.rates.camber, 0.0, 1e-6, "camber rate", mm);
    }
    close_fixture(&o);
}

/* ---- the trailing arm ---- */

static const double LENGTH = 0.437,
                    PIVOT_Z = 0.342; /* pivot ahead of the wheel centre, above the ground [m] */

static void build_trailing_arm(fixture *f, double rate, double torsional)
{
    const gw_vec3 y = { 0, 1, 0 };
    fixture_start(f);
    fixture_joint(f, "inner", GW_CHASSIS, GW_UPRIGHT, gw_v3(1e3 * LENGTH, 420, 1e3 * PIVOT_Z), y, rate, rate,
                  0, torsional);
    fixture_joint(f, "outer", GW_CHASSIS, GW_UPRIGHT, gw_v3(1e3 * LENGTH, 690, 1e3 * PIVOT_Z), y, rate, rate,
                  0, torsional);
}

/* The hub starts (PIVOT_Z - 0.31) below the level of the pivot. */
static double arm_turn(double travel)
{
    double radius = hypot(LENGTH, PIVOT_Z - 0.31), start = asin((0.31 - PIVOT_Z) / radius);
    return asin((0.31 - PIVOT_Z + travel) / radius) - start;
}

static void a_trailing_arm_follows_its_circle(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    build_trailing_arm(&f, 30000, 0);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(30, 600, 300), gw_v3(30, 600, 700), 1e-3);
    make_light(&f);
    open_fixture(&f, &o);
    for (int mm = -70; mm <= 70; mm += 14) {
        double turn = arm_turn(mm * GW_MM), s = sin(turn), c = cos(turn), low = PIVOT_Z - 0.31;
        go_to(&o, mm * GW_MM);
        check_at(o.result.caster_change, -turn, NEAR, "caster", mm);
        check_at(o.result.camber_change, 0.0, NEAR, "camber", mm);
        check_at(o.result.toe_change, 0.0, NEAR, "toe", mm);
        check_at(o.result.wheel_centre.x, LENGTH - LENGTH * c - low * s, NEAR, "wheel centre", mm);
        check_at(o.result.contact_patch.x, LENGTH - LENGTH * c - (low + 0.305) * s, NEAR, "patch", mm);
        /* The side-view centre is the pivot, wherever the arm stands. */
        gw_instant_centre at = gw_side_view_centre(&o.rates);
        check_at(at.across, LENGTH - o.result.wheel_centre.x, 1e-6, "centre ahead", mm);
        check_at(at.above, low - mm * GW_MM, 1e-6, "centre above", mm);
    }
    close_fixture(&o);
}

static double wheel_rate_at_rest(fixture *f, const gw_fit *fit)
{
    opened o;
    open_fitted(f, fit, &o);
    go_to(&o, 0.0);
    double rate = o.rates.wheel_rate;
    close_fixture(&o);
    return rate;
}

/* Two bushes of torsional rate c resist a turn of dz/L each: the wheel feels 2 c/L^2. */
static void the_parasitic_rate_of_a_trailing_arm_is_c_over_length_squared(void **unused)
{
    (void)unused;
    fixture f;
    gw_fit bare[FIXTURE_JOINTS] = { 0 };
    build_trailing_arm(&f, 1e7, 1.7);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(0, 555, 300), gw_v3(0, 555, 700), 35);
    gw_fit_loosen(&f.corner, f.fit, NULL, bare);
    double parasitic = wheel_rate_at_rest(&f, f.fit) - wheel_rate_at_rest(&f, bare);
    check_rel(parasitic, 2.0 * 1.7 * GW_NM_PER_DEG / (LENGTH * LENGTH), 1e-5, "parasitic rate");
}

/* ---- a corner of rubber: every rate against differences of solved states ---- */

static double slope(double up, double down, double h)
{
    return (up - down) / (2.0 * h);
}

static void rates_are_the_slopes_of_solved_states(void **unused)
{
    (void)unused;
    const double h = 1e-5;
    fixture f, g;
    opened o, p;
    fixture_double_wishbone(&f);
    fixture_double_wishbone(&g);
    open_fixture(&f, &o);
    open_fixture(&g, &p);
    for (int mm = -60; mm <= 60; mm += 30) {
        go_to(&o, mm * GW_MM + h);
        go_to(&p, mm * GW_MM - h);
        const gw_corner_result *up = &o.result, *down = &p.result;
        double load = slope(o.rates.vertical_load, p.rates.vertical_load, h);
        double toe = slope(up->toe, down->toe, h), camber = slope(up->camber, down->camber, h);
        gw_vec3 patch = gw_sub(up->contact_patch, down->contact_patch);
        gw_vec3 hub = gw_sub(up->wheel_centre, down->wheel_centre);
        go_to(&o, mm * GW_MM);
        check_rel(o.rates.wheel_rate, load, 1e-6, "wheel rate");
        check_abs(o.rates.toe, toe, 1e-7, "toe rate");
        check_abs(o.rates.camber, camber, 1e-7, "camber rate");
        check_abs(o.rates.patch_outward, patch.y / patch.z, 1e-7, "patch outward");
        check_abs(o.rates.patch_forward, patch.x / patch.z, 1e-7, "patch forward");
        check_abs(o.rates.hub_outward, hub.y / hub.z, 1e-7, "hub outward");
        check_abs(o.rates.hub_forward, hub.x / hub.z, 1e-7, "hub forward");
    }
    close_fixture(&o);
    close_fixture(&p);
}

/* At travel 0 the path passes through S0, where nothing has changed and the static load is carried. */
static void the_path_passes_through_the_reference(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    fixture_double_wishbone(&f);
    open_fixture(&f, &o);
    go_to(&o, 0.0);
    check_abs(o.rates.vertical_load, f.corner.wheel.static_load, 1e-5, "load");
    check_abs(o.result.toe_change, 0.0, 1e-12, "toe");
    check_abs(o.result.camber_change, 0.0, 1e-12, "camber");
    close_fixture(&o);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_planar_double_wishbone_follows_its_closed_form),
        cmocka_unit_test(the_roll_centre_is_where_the_drawing_puts_it),
        cmocka_unit_test(the_front_view_centre_is_where_the_arms_meet),
        cmocka_unit_test(a_parallel_linkage_does_not_move_in_camber),
        cmocka_unit_test(a_trailing_arm_follows_its_circle),
        cmocka_unit_test(the_parasitic_rate_of_a_trailing_arm_is_c_over_length_squared),
        cmocka_unit_test(rates_are_the_slopes_of_solved_states),
        cmocka_unit_test(the_path_passes_through_the_reference),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
