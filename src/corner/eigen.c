/* SPDX-License-Identifier: MIT */
#include "corner/eigen.h"

#include <gsl/gsl_errno.h>

bool gw_eigen_open(gw_eigen *e, size_t n)
{
    *e = (gw_eigen){ .a = gsl_matrix_alloc(n, n),
                     .vectors = gsl_matrix_alloc(n, n),
                     .values = gsl_vector_alloc(n),
                     .work = gsl_eigen_symmv_alloc(n) };
    return e->a && e->vectors && e->values && e->work;
}

void gw_eigen_close(gw_eigen *e)
{
    if (e->a) gsl_matrix_free(e->a);
    if (e->vectors) gsl_matrix_free(e->vectors);
    if (e->values) gsl_vector_free(e->values);
    if (e->work) gsl_eigen_symmv_free(e->work);
    *e = (gw_eigen){ 0 };
}

bool gw_eigen_solve(gw_eigen *e)
{
    if (gsl_eigen_symmv(e->a, e->values, e->vectors, e->work) != GSL_SUCCESS) return false;
    gsl_eigen_symmv_sort(e->values, e->vectors, GSL_EIGEN_SORT_VAL_ASC);
    return true;
}
