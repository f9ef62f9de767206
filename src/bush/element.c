/* SPDX-License-Identifier: MIT */
#include "bush/element.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

void gw_element_clear(gw_element *e, int nodes, int pressures)
{
    size_t dofs = 3 * (size_t)nodes;
    e->nodes = nodes;
    e->pressures = pressures;
    memset(e->k, 0, dofs * dofs * sizeof *e->k);
    memset(e->q, 0, (size_t)pressures * dofs * sizeof *e->q);
    memset(e->m, 0, sizeof e->m);
}

/* The 3 x 3 block of nodes a and b: the strains are
 *   rr = nr U, tt = n U + vt V, zz = nz W, rt = ut U + (nr - n) V, tz = nz V + ut W, rz = nz U + nr W. */
static void add_pair(double *k, int stride, const gw_element_point *p, int a, int b, double g)
{
    double na = p->n[a], ra = p->nr[a], za = p->nz[a], va = p->vt[a], ua = p->ut[a], sa = ra - na;
    double nb = p->n[b], rb = p->nr[b], zb = p->nz[b], vb = p->vt[b], ub = p->ut[b], sb = rb - nb;
    double third = 2.0 / 3.0, da = ra + na, db = rb + nb;

    k[0] += g * (2.0 * (ra * rb + na * nb) + ua * ub + za * zb - third * da * db);
    k[1] += g * (2.0 * na * vb + ua * sb - third * da * vb);
    k[2] += g * (za * rb - third * da * zb);
    k += stride;
    k[0] += g * (2.0 * va * nb + sa * ub - third * va * db);
    k[1] += g * (2.0 * va * vb + sa * sb + za * zb - third * va * vb);
    k[2] += g * (za * ub - third * va * zb);
    k += stride;
    k[0] += g * (ra * zb - third * za * db);
    k[1] += g * (ua * zb - third * za * vb);
    k[2] += g * (2.0 * za * zb + ua * ub + ra * rb - third * za * zb);
}

void gw_element_add(gw_element *e, const gw_element_point *p, double g)
{
    int dofs = 3 * e->nodes;
    for (int a = 0; a < e->nodes; a++)
        for (int b = a; b < e->nodes; b++)
            add_pair(e->k + 3 * a * dofs + 3 * b, dofs, p, a, b, g * p->weight);
    for (int i = 0; i < e->pressures; i++) {
        double w = p->weight * p->q[i], *row = e->q + i * dofs;
        for (int a = 0; a < e->nodes; a++) {
            row[3 * a] += w * (p->nr[a] + p->n[a]);
            row[3 * a + 1] += w * p->vt[a];
            row[3 * a + 2] += w * p->nz[a];
        }
        for (int j = 0; j < e->pressures; j++) e->m[i * e->pressures + j] += w * p->q[j];
    }
}

/* Cholesky factor of the pressures' mass matrix, in place (lower half). */
static bool factor_small(double *m, int n)
{
    for (int i = 0; i < n; i++)
        for (int j = 0; j <= i; j++) {
            double s = m[i * n + j];
            for (int k = 0; k < j; k++) s -= m[i * n + k] * m[j * n + k];
            if (i == j && !(s > 0.0)) return false;
            m[i * n + j] = i == j ? sqrt(s) : s / m[j * n + j];
        }
    return true;
}

/* K += bulk Q^T M^-1 Q, as the square of the forward substitution. */
static void add_pressures(gw_element *e, double bulk)
{
    int dofs = 3 * e->nodes, n = e->pressures;
    for (int i = 0; i < n; i++) {
        double *row = e->q + i * dofs;
        for (int j = 0; j < i; j++)
            for (int c = 0; c < dofs; c++) row[c] -= e->m[i * n + j] * e->q[j * dofs + c];
        for (int c = 0; c < dofs; c++) row[c] /= e->m[i * n + i];
        for (int c = 0; c < dofs; c++)
            for (int d = c; d < dofs; d++) e->k[c * dofs + d] += bulk * row[c] * row[d];
    }
}

gw_status gw_element_condense(gw_element *e, double bulk, gw_error *err)
{
    int dofs = 3 * e->nodes;
    if (!factor_small(e->m, e->pressures))
        return gw_fail(err, GW_E_NUMERIC, "the rubber's mesh has an element without volume");
    add_pressures(e, bulk);
    for (int c = 0; c < dofs; c++)
        for (int d = 0; d < c; d++) e->k[c * dofs + d] = e->k[d * dofs + c];
    for (int last = dofs - 1; last >= dofs - 3; last--) {
        const double *pivot = e->k + last * dofs;
        if (!(pivot[last] > 0.0))
            return gw_fail(err, GW_E_NUMERIC, "the rubber's mesh has a collapsed element");
        for (int c = 0; c < last; c++) {
            double f = pivot[c] / pivot[last];
            for (int d = 0; d < last; d++) e->k[c * dofs + d] -= f * pivot[d];
        }
    }
    return GW_OK;
}
