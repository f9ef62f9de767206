/* SPDX-License-Identifier: MIT */
/*
 * Rubber with two opposite openings, as one eighth in space: 0 <= theta <= 90 degrees from e1,
 * 0 <= z <= the free end. The opening takes up theta < void_angle; rubber below void_floor crosses it.
 *
 * Six loads, told apart by their symmetry (S) or antisymmetry (A) about the planes theta = 0,
 * theta = 90 degrees and z = 0. Loads alike in theta share a factorisation; z = 0 is the tail of the band.
 * Element matrices are the same for all and computed once.
 */
#include "bush/band.h"
#include "bush/element.h"
#include "bush/layer.h"
#include "bush/lobe_mesh.h"
#include "bush/quadratic.h"

#include <math.h>
#include <stdlib.h>

enum { U, V, W };
enum { LOADS = 6, ALONG = 0, ACROSS, AXIAL, TWIST, TILT_1, TILT_2 };

/* Antisymmetric about theta = 0, theta = 90 degrees, z = 0? */
static const bool ANTI[LOADS][3] = {
    [ALONG] = { false, true, false }, [ACROSS] = { true, false, false }, [AXIAL] = { false, false, true },
    [TWIST] = { true, true, false },  [TILT_1] = { true, false, true },  [TILT_2] = { false, true, true },
};

/* Unit motions of the inner sleeve: components U, V, W at (r, theta, z). */
static void sleeve_motion(int load, double r, double theta, double z, double m[3])
{
    double c = cos(theta), s = sin(theta);
    m[U] = m[V] = m[W] = 0.0;
    switch (load) {
    case ALONG:
        m[U] = c, m[V] = -s;
        break;
    case ACROSS:
        m[U] = s, m[V] = c;
        break;
    case AXIAL:
        m[W] = 1.0;
        break;
    case TWIST:
        m[V] = r;
        break;
    case TILT_1:
        m[U] = -z * s, m[V] = -z * c, m[W] = r * s;
        break;
    default:
        m[U] = z * c, m[V] = -z * s, m[W] = -r * c;
        break;
    }
}

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
        gw_lobe_local(a, n);
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

static gw_status cell_matrix(const gw_lobe_mesh *s, const int cell[3], gw_element *e, gw_error *err)
{
    gw_element_point p;
    gw_element_clear(e, 27, 4);
    for (int a = 0; a < 27; a++) {
        int g[3] = { a % 3, a / 3 % 3, a / 9 };
        double xi[3] = { GW_GAUSS3_X[g[0]], GW_GAUSS3_X[g[1]], GW_GAUSS3_X[g[2]] };
        cell_point(s, cell, xi, GW_GAUSS3_W[g[0]] * GW_GAUSS3_W[g[1]] * GW_GAUSS3_W[g[2]], &p);
        gw_element_add(e, &p, s->layer->g);
    }
    return gw_element_condense(e, s->layer->k, err);
}

/* Cells in the order of the bands: r fastest, then theta, then z. False after the last. */
static bool next_cell(const gw_lobe_mesh *s, int cell[3])
{
    do {
        if (++cell[0] < s->nr) continue;
        cell[0] = 0;
        if (++cell[1] < s->nt) continue;
        cell[1] = 0;
        if (++cell[2] == s->nz) return false;
    } while (!gw_lobe_has_cell(s, cell[0], cell[1]));
    return true;
}

static gw_status all_matrices(const gw_lobe_mesh *s, gw_element *elements, gw_error *err)
{
    gw_status status = GW_OK;
    size_t at = 0;
    for (int cell[3] = { -1, 0, 0 }; status == GW_OK && next_cell(s, cell);)
        status = cell_matrix(s, cell, elements + at++, err);
    return status;
}

static void cell_given(const gw_lobe_mesh *s, const int cell[3], const int *list, int loads, const int *eq,
                       double *given)
{
    for (int k = 0; k < 78 * loads; k++) given[k] = 0.0;
    for (int a = 0; cell[0] == 0 && a < 26; a++) {
        int n[3];
        gw_lobe_local(a, n);
        if (n[0] > 0) continue;
        double theta = s->theta[2 * cell[1] + n[1]];
        double z = s->t[2 * cell[2] + n[2]] * gw_layer_end(s->layer, s->r[0]);
        for (int l = 0; l < loads; l++) {
            double m[3];
            sleeve_motion(list[l], s->r[0], theta, z, m);
            for (int c = 0; c < 3; c++)
                if (eq[3 * a + c] < 0) given[78 * l + 3 * a + c] = m[c];
        }
    }
}

static void assemble(const gw_lobe_mesh *s, const gw_element *elements, const int *list, gw_band *band)
{
    size_t at = 0;
    for (int cell[3] = { -1, 0, 0 }; next_cell(s, cell);) {
        int eq[78];
        double given[78 * GW_BAND_LOADS];
        gw_lobe_equations(s, cell, eq);
        cell_given(s, cell, list, band->loads, eq, given);
        gw_band_assemble(band, elements[at++].k, 81, 78, eq, given);
    }
}

static gw_status tail_energy(const gw_lobe_mesh *s, const gw_band *band, int load, bool anti, double *energy,
                             gw_error *err)
{
    int plane = (2 * s->nr + 1) * (2 * s->nt + 1), first = s->n - s->tail;
    bool *held = calloc((size_t)s->tail + 1, sizeof *held);
    if (!held) return gw_fail(err, GW_E_NOMEM, "no memory for the plane of symmetry");
    for (int node = 0; node < plane; node++)
        for (int c = 0; c < 3; c++) {
            int eq = s->eq[3 * (2 * s->nz * plane + node) + c];
            if (eq >= 0) held[eq - first] = anti ? c != W : c == W;
        }
    gw_status status = gw_band_energy(band, load, held, energy, err);
    free(held);
    return status;
}

/* All loads with the symmetry that the mesh is numbered for. */
static gw_status solve_group(const gw_lobe_mesh *s, const gw_element *elements, const int *list, int loads,
                             double energy[LOADS], gw_error *err)
{
    gw_band band;
    gw_status status = gw_band_alloc(&band, s->n, s->width, s->tail, loads, err);
    if (status != GW_OK) return status;
    assemble(s, elements, list, &band);
    status = gw_band_factor(&band, err);
    for (int l = 0; l < loads && status == GW_OK; l++)
        status = tail_energy(s, &band, l, ANTI[list[l]][2], energy + list[l], err);
    gw_band_free(&band);
    return status;
}

/* The plane theta = 0 matters only where rubber reaches it. */
static gw_status solve_all(gw_lobe_mesh *s, const gw_element *elements, double energy[LOADS], gw_error *err)
{
    gw_status status = GW_OK;
    bool reaches = gw_lobe_has_cell(s, 0, 0);
    for (int group = 0; group < (reaches ? 4 : 2) && status == GW_OK; group++) {
        bool last = group & 1, first = group & 2;
        int list[LOADS], loads = 0;
        for (int l = 0; l < LOADS; l++)
            if (ANTI[l][1] == last && (!reaches || ANTI[l][0] == first)) list[loads++] = l;
        gw_lobe_number(s, first, last);
        status = solve_group(s, elements, list, loads, energy, err);
    }
    return status;
}

gw_status gw_lobe_rates(const gw_layer *layer, int refine, gw_given_rates *rates, gw_error *err)
{
    double e[LOADS] = { 0.0 };
    gw_lobe_mesh mesh;
    gw_element *elements = NULL;
    gw_status status = gw_lobe_mesh_make(&mesh, layer, refine, err);
    if (status != GW_OK) return status;
    elements = malloc((size_t)(mesh.nr * mesh.nt * mesh.nz) * sizeof *elements);
    if (!elements) {
        status = gw_fail(err, GW_E_NOMEM, "no memory for the rubber's elements");
        goto done;
    }
    if ((status = all_matrices(&mesh, elements, err)) != GW_OK) goto done;
    if ((status = solve_all(&mesh, elements, e, err)) != GW_OK) goto done;
    bool bonded = layer->inner == GW_INNER_BONDED;
    *rates = (gw_given_rates){ .radial = { 8.0 * e[ALONG], 8.0 * e[ACROSS] },
                               .axial = bonded ? 8.0 * e[AXIAL] : 0.0,
                               .conical = { 8.0 * e[TILT_1], 8.0 * e[TILT_2] },
                               .torsional = bonded ? 8.0 * e[TWIST] : 0.0 };
done:
    free(elements);
    gw_lobe_mesh_free(&mesh);
    return status;
}
