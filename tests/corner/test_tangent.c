/* SPDX-License-Identifier: MIT */
/* The assembled tangent against central differences of the imbalance, at a state far from equilibrium. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "corner/workspace.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <string.h>

static const double STEP = 1e-6; /* [m], [rad] */

typedef struct bench {
    fixture f;
    gw_corner_ws *ws;
    gw_state state;
} bench;

/* Anisotropic bushes on either body, stops in play, brackets, big rotations of every body. */
static void bench_open(bench *b)
{
    gw_error err = { 0 };
    fixture_double_wishbone(&b->f);
    b->f.fit[0].law.k[1] *= 0.3;
    b->f.fit[3].law.stop = (gw_stop){ 0.4e-3, 5e6 };
    b->f.fit[5].law.c[0] *= 2.0;
    b->f.fit[2].law.k[2] *= 0.5;
    b->f.fit[8].law.c[1] = 40.0;
    b->f.joints[5].bracket = 6e6;
    if (gw_corner_open(&b->f.corner, b->f.fit, &b->ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&b->f.corner, &b->state, &err), GW_OK);
    b->state.spring_force = 9000.0;
    b->state.load = (gw_corner_load){ { -4000, 1500, 6500 }, { 10, -20, 30 }, { 900, 50, -70 }, 0.03 };
    for (int i = 1; i < b->f.corner.n_bodies; i++) {
        b->state.pose[i].r = gw_rot_exp(gw_v3(0.07 * i - 0.2, 0.11 - 0.05 * i, 0.03 * i));
        b->state.pose[i].p = gw_v3(1e-3 * i, -2e-3, 3e-3 - 1e-3 * i);
    }
}

static void bench_close(bench *b)
{
    gw_state_free(&b->state);
    gw_corner_close(b->ws);
}

/* x -> exp(phi) x + v to first order, about the datum. */
static void nudge(gw_pose *pose, int way, double by)
{
    double t[6] = { 0 };
    t[way] = by;
    gw_mat3 turn = gw_rot_exp(gw_v3(t[3], t[4], t[5]));
    pose->r = gw_matmul(&turn, &pose->r);
    pose->p = gw_add(gw_mul(&turn, pose->p), gw_v3(t[0], t[1], t[2]));
}

static void imbalance(bench *b, int body, int way, double by, gw_drive drive, double out[][6], double *border)
{
    gw_pose kept = b->state.pose[body];
    double kept_force = b->state.spring_force;
    nudge(&b->state.pose[body], way, by);
    gw_vec3 d =
        gw_sub(gw_point_now(&b->state.pose[b->f.corner.spring.body], b->ws->wheel[0].spring_at), b->ws->wheel[0].spring_to);
    if (drive != GW_AT_TRAVEL)
        b->state.spring_force -= b->f.corner.spring.rate * (gw_norm(d) - b->state.spring_length);
    gw_assemble(b->ws, &b->state, drive, false);
    for (int i = 1; i < b->f.corner.n_bodies; i++)
        for (int r = 0; r < 6; r++) out[i][r] = b->ws->system.rhs[i][2 * r];
    *border = b->ws->system.border_rhs[0];
    b->state.pose[body] = kept;
    b->state.spring_force = kept_force;
}

static void check_tangent(gw_drive drive)
{
    bench b;
    bench_open(&b);
    gw_vec3 d = gw_sub(gw_point_now(&b.state.pose[b.f.corner.spring.body], b.ws->wheel[0].spring_at), b.ws->wheel[0].spring_to);
    b.state.spring_length = gw_norm(d);
    int n = b.f.corner.n_bodies;
    for (int body = 1; body < n; body++)
        for (int way = 0; way < 6; way++) {
            double up[GW_MAX_BODIES][6], down[GW_MAX_BODIES][6], border_up, border_down;
            imbalance(&b, body, way, STEP, drive, up, &border_up);
            imbalance(&b, body, way, -STEP, drive, down, &border_down);
            gw_assemble(b.ws, &b.state, drive, false);
            for (int row = 1; row < n; row++) {
                int slot = b.ws->system.slot[row * b.ws->system.n + body];
                for (int r = 0; r < 6; r++) {
                    double difference = -(up[row][r] - down[row][r]) / (2.0 * STEP);
                    double exact = slot < 0 ? 0.0 : b.ws->system.block[slot][6 * r + way];
                    bool held = r >= 3 && way >= 3 && row == body; /* holds are 1e10 N m/rad */
                    check_abs(exact, difference, held ? 1e4 : 1e-6 * 5e7, "tangent entry");
                }
            }
            if (body == GW_UPRIGHT && drive != GW_ON_SPRING)
                check_abs(b.ws->system.border_row[0][way], -(border_up - border_down) / (2.0 * STEP), 1e-8,
                          "border");
        }
    bench_close(&b);
}

static void tangent_is_the_derivative_of_the_imbalance_at_given_travel(void **unused)
{
    (void)unused;
    check_tangent(GW_AT_TRAVEL);
}

static void tangent_is_the_derivative_of_the_imbalance_on_the_spring(void **unused)
{
    (void)unused;
    check_tangent(GW_ON_SPRING);
}

static void tangent_is_the_derivative_of_the_imbalance_when_lifted(void **unused)
{
    (void)unused;
    check_tangent(GW_LIFTED);
}

/* The whole potential energy less the work of dead loads, at the bench's state nudged along one way. */
static double potential(const bench *b)
{
    double sum = 0.0;
    for (int j = 0; j < b->f.corner.n_joints; j++) {
        const gw_link *link = &b->ws->link[j];
        gw_link_state s;
        gw_link_strain(link, b->state.pose, &s);
        sum += gw_bush_energy(&link->law, s.u);
        for (int i = 0; i < 3; i++) sum += 0.5 * link->law.c[i] * s.theta[i] * s.theta[i];
    }
    return sum;
}

static void joint_forces_derive_from_the_potential(void **unused)
{
    (void)unused;
    bench b;
    bench_open(&b);
    for (int body = 1; body < b.f.corner.n_bodies; body++)
        for (int way = 0; way < 6; way++) {
            double force = 0.0;
            for (int j = 0; j < b.f.corner.n_joints; j++) {
                gw_link_state s;
                const gw_link *link = &b.ws->link[j];
                gw_link_strain(link, b.state.pose, &s);
                const double w[6] = { s.wrench.f.x, s.wrench.f.y, s.wrench.f.z,
                                      s.wrench.m.x, s.wrench.m.y, s.wrench.m.z };
                force += (link->b == body ? w[way] : 0.0) - (link->a == body ? w[way] : 0.0);
            }
            gw_pose kept = b.state.pose[body];
            nudge(&b.state.pose[body], way, STEP);
            double up = potential(&b);
            b.state.pose[body] = kept;
            nudge(&b.state.pose[body], way, -STEP);
            double down = potential(&b);
            b.state.pose[body] = kept;
            check_abs(force, (up - down) / (2.0 * STEP), 1e-6 * 3e6, "generalised force");
        }
    bench_close(&b);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tangent_is_the_derivative_of_the_imbalance_at_given_travel),
        cmocka_unit_test(tangent_is_the_derivative_of_the_imbalance_on_the_spring),
        cmocka_unit_test(tangent_is_the_derivative_of_the_imbalance_when_lifted),
        cmocka_unit_test(joint_forces_derive_from_the_potential),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
