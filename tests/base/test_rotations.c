/* SPDX-License-Identifier: MIT */
/* Finite rotations, against the matrix exponential of the GNU Scientific Library and against themselves. */
#include "support/check.h"

#include "giveway/units.h"
#include "giveway/vec.h"

#include <gsl/gsl_linalg.h>
#include <math.h>

enum { N_AXES = 5 };
static const gw_vec3 AXES[N_AXES] = {
    { 1, 0, 0 }, { 0, -1, 0 }, { 0, 0, 1 }, { 0.6, -0.64, 0.48 }, { -0.36, 0.48, 0.8 }
};

static void exponential_of(gw_vec3 v, double out[9])
{
    gw_mat3 skew = gw_skew(v);
    gsl_matrix_view in = gsl_matrix_view_array(&skew.m[0][0], 3, 3), to = gsl_matrix_view_array(out, 3, 3);
    assert_int_equal(gsl_linalg_exponential_ss(&in.matrix, &to.matrix, GSL_PREC_DOUBLE), 0);
}

static void a_rotation_vector_becomes_the_matrix_exponential(void **state)
{
    (void)state;
    static const double ANGLES[] = { 0.0, 1e-9, 9e-5, 1.1e-4, 0.02, 1.0, 3.0, GW_PI, 5.0 };
    check_solved_by("gsl_linalg_exponential_ss of the GNU Scientific Library on the skew matrix");
    for (int a = 0; a < N_AXES; a++) {
        double off = 0.0;
        for (size_t i = 0; i < sizeof ANGLES / sizeof *ANGLES; i++) {
            gw_vec3 v = gw_scale(ANGLES[i], AXES[a]);
            gw_mat3 r = gw_rot_exp(v);
            double want[9];
            exponential_of(v, want);
            for (int k = 0; k < 9; k++) off = fmax(off, fabs(r.m[k / 3][k % 3] - want[k]));
        }
        check_about("rotation about axis %d by 0 to 5 rad:", a + 1);
        check_abs(off, 0.0, 1e-13, "largest difference of an entry");
    }
}

static void the_vector_comes_back_up_to_half_a_turn(void **state)
{
    (void)state;
    static const double ANGLES[] = {
        0.0, 1e-12, 1e-4, 9.9e-4, 1.01e-3, 0.5, 1.57, 1.58, 3.0, 3.1405, 3.1407
    };
    for (int a = 0; a < N_AXES; a++)
        for (size_t i = 0; i < sizeof ANGLES / sizeof *ANGLES; i++) {
            gw_vec3 v = gw_scale(ANGLES[i], AXES[a]);
            gw_mat3 r = gw_rot_exp(v);
            double off = gw_norm(gw_sub(gw_rot_log(&r), v));
            check_abs(off, 0.0, 4e-15 + 1e-13 * ANGLES[i] + 1e-12 * (ANGLES[i] > 3.0),
                      "what is lost on the way");
        }
}

static void at_half_a_turn_either_sense_will_do(void **state)
{
    (void)state;
    for (int a = 0; a < N_AXES; a++) {
        gw_mat3 r = gw_rot_exp(gw_scale(GW_PI, AXES[a]));
        gw_vec3 v = gw_rot_log(&r);
        check_abs(gw_norm(v), GW_PI, 1e-12, "half a turn");
        check_abs(gw_norm(gw_cross(v, AXES[a])), 0.0, 1e-7, "about that axis");
    }
}

static void one_step_tidies_a_rotation_that_drifted(void **state)
{
    (void)state;
    gw_mat3 r = gw_rot_exp(gw_scale(0.7, AXES[3])), drifted = r;
    drifted.m[0][1] += 3e-7;
    drifted.m[2][2] -= 2e-7;
    gw_mat3 tidy = gw_rot_tidy(&drifted), unit = gw_matmul_tn(&tidy, &tidy);
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) {
            check_abs(unit.m[i][j], i == j, 1e-12, "columns of unit length at right angles");
            check_abs(tidy.m[i][j], r.m[i][j], 3e-7, "no further off than the drift");
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_rotation_vector_becomes_the_matrix_exponential),
        cmocka_unit_test(the_vector_comes_back_up_to_half_a_turn),
        cmocka_unit_test(at_half_a_turn_either_sense_will_do),
        cmocka_unit_test(one_step_tidies_a_rotation_that_drifted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
