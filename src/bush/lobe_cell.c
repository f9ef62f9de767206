/* SPDX-License-Identifier: MIT */
#include "bush/lobe_cell.h"

#include "bush/quadratic.h"

#include <math.h>

/* Shape functions of a cell at one integration point, as they enter the strains. */
static void cell_point(const gw_lobe_mesh *s, const int cell[3], const double xi[3], double weight,
                       gw_element_point *p)
{
    double f[3][3], d[3][3], end[3], r = 0.0, r_xi = 0.0, z = 0.0, z_xi = 0.0, z_eta = 0.0;
    const double *rn = s->r + 2 * cell[0], *an = s->theta + 2 * cell[1], *tn = s->t + 2 * cell[2];
    double a_xi = 0.5 * (an[2] - an[0]);
    for (int k = 0; k < 3; k++) gw_parabolas(xi[k], f[k], d[k]);
    for (int i = 0; i < 3; i++) {
        end[i] = gw_layer_end(s->layer, rn[i]);
        r += f[0][i] * rn[i];
        r_xi += d[0][i] * rn[i];
        for (int k = 0; k < 3; k++) {
            z += f[0][i] * f[2][k] * end[i] * tn[k];
            z_xi += d[0][i] * f[2][k] * end[i] * tn[k];
            z_eta += f[0][i] * d[2][k] * end[i] * tn[k];
        }
    }
    for (int a = 0; a < 27; a++) {
        int n[3];
        gw_lobe_node((const int[3]){ 0, 0, 0 }, a, n);
        double plane = f[0][n[0]] * f[2][n[2]], value = plane * f[1][n[1]];
        p->nz[a] = f[0][n[0]] * d[2][n[2]] / z_eta * f[1][n[1]];
        p->nr[a] = (d[0][n[0]] * f[2][n[2]] * f[1][n[1]] - p->nz[a] * z_xi) / r_xi;
        p->n[a] = value / r;
        p->vt[a] = p->ut[a] = plane * d[1][n[1]] / (a_xi * r);
    }
    p->weight = weight * r * r_xi * a_xi * fabs(z_eta);
    p->q[0] = 1.0;
    p->q[1] = (r - rn[1]) / (rn[2] - rn[0]);
    p->q[2] = 0.5 * xi[1];
    p->q[3] = (z - end[1] * tn[1]) / (end[1] * (tn[0] - tn[2]));
}

gw_status gw_lobe_cell_matrix(const gw_lobe_mesh *mesh, const int cell[3], gw_element *e, gw_error *err)
{
    gw_element_point p;
    gw_element_clear(e, 27, 4);
    for (int a = 0; a < 27; a++) {
        int g[3] = { a % 3, a / 3 % 3, a / 9 };
        double xi[3] = { GW_GAUSS3_X[g[0]], GW_GAUSS3_X[g[1]], GW_GAUSS3_X[g[2]] };
        cell_point(mesh, cell, xi, GW_GAUSS3_W[g[0]] * GW_GAUSS3_W[g[1]] * GW_GAUSS3_W[g[2]], &p);
        gw_element_add(e, &p, mesh->layer->g);
    }
    return gw_element_condense(e, mesh->layer->k, err);
}
