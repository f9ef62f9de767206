/* SPDX-License-Identifier: MIT */
/*
 * Rubber without openings: a section in r and z, with one Fourier harmonic m in the angle,
 *     u_r = U cos(m theta),  u_theta = V sin(m theta),  u_z = W cos(m theta).
 * m = 0 carries axial (U, W) and torsional (V) loads, m = 1 a push along e1 (U = 1, V = -1 on the
 * sleeve) and a tilt about e2 (U = z, V = -z, W = -r).
 *
 * Half the length is enough: rows of nodes are numbered from the free end to the plane of symmetry,
 * whose conditions differ between push and tilt and are applied to the tail of the band.
 */
#include "bush/band.h"
#include "bush/element.h"
#include "bush/handbook.h"
#include "bush/layer.h"
#include "bush/quadratic.h"
#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>

/* Cells across the wall, and the smallest of them next to sleeves and free ends as parts of the wall. */
enum { CELLS_ACROSS = 8, CELLS_ACROSS_FINER = 12 };
static const double SMALLEST = 0.02, GROWTH = 2.0, GROWTH_DISC = 1.5;

enum { U, V, W };

typedef struct section {
    const gw_layer *layer;
    int nr, nz, harmonic;
    bool use[3];   /* which components take part                        */
    double *r, *t; /* nodes across (2 nr + 1) and along (2 nz + 1), t 1 at the free end, 0 in the middle */
    int *eq;       /* equation of component c of node (i, j): eq[3 (j (2 nr + 1) + i) + c]            */
    int n, tail, width;
} section;

static void section_free(section *s)
{
    free(s->r);
    free(s->t);
    free(s->eq);
}

/* A disc (shorter than its wall: part, the wall over half the length, above 2) bends like a plate between
 * corners that reach only as far as it is long: its cells shrink further and grow more slowly. */
static int cells_across(const gw_layer *layer, double part)
{
    if (part > 2.0) return 2 * gw_grade_count(0.5, SMALLEST * 2.0 / part, GROWTH_DISC);
    return layer->dish > 0.0 ? CELLS_ACROSS_FINER : CELLS_ACROSS;
}

static gw_status section_mesh(section *s, int refine, gw_error *err)
{
    double wall = s->layer->r1 - s->layer->r0, part = wall / s->layer->half_length;
    double first = SMALLEST * fmin(part, 1.0);
    int nz = gw_grade_count(1.0, first, GROWTH);
    s->nz = (nz < 4 ? 4 : nz) * (refine + 1);
    s->nr = cells_across(s->layer, part) * (refine + 1);
    int across = 2 * s->nr + 1, along = 2 * s->nz + 1;
    s->r = malloc((size_t)across * sizeof *s->r);
    s->t = malloc((size_t)along * sizeof *s->t);
    s->eq = calloc(3 * (size_t)across * (size_t)along, sizeof *s->eq);
    if (!s->r || !s->t || !s->eq) return gw_fail(err, GW_E_NOMEM, "no memory for the rubber's mesh");
    /* In a disc the corners reach only as far as it is long. */
    double beside = SMALLEST * fmin(2.0 / part, 1.0);
    gw_grade(s->layer->r0, s->layer->r1, s->nr, beside / (refine + 1), GW_GRADE_BOTH, s->r);
    gw_grade(1.0, 0.0, s->nz, first / (refine + 1), GW_GRADE_START, s->t);
    return GW_OK;
}

static bool is_free(const section *s, int i, int j, int c)
{
    if (!s->use[c] || i == 2 * s->nr || (i % 2 && j % 2)) return false;
    return i > 0 || (s->layer->inner == GW_INNER_SLIDING && c != U);
}

static void section_number(section *s)
{
    s->n = 0;
    for (int j = 0; j <= 2 * s->nz; j++) {
        if (j == 2 * s->nz) s->tail = s->n;
        for (int i = 0; i <= 2 * s->nr; i++)
            for (int c = 0; c < 3; c++)
                s->eq[3 * (j * (2 * s->nr + 1) + i) + c] = is_free(s, i, j, c) ? s->n++ : GW_DOF_GIVEN;
    }
    s->tail = s->n - s->tail;
}

/* Node a of a cell, counted from its corner; the centre, which is condensed, comes last. */
static void local_node(int a, int *di, int *dj)
{
    static const int ORDER[9] = { 0, 1, 2, 3, 5, 6, 7, 8, 4 };
    *di = ORDER[a] % 3;
    *dj = ORDER[a] / 3;
}

static void cell_equations(const section *s, int ci, int cj, int eq[24])
{
    for (int a = 0; a < 8; a++) {
        int di, dj;
        local_node(a, &di, &dj);
        for (int c = 0; c < 3; c++)
            eq[3 * a + c] = s->eq[3 * ((2 * cj + dj) * (2 * s->nr + 1) + 2 * ci + di) + c];
    }
}

static void section_width(section *s)
{
    s->width = 1;
    for (int cj = 0; cj < s->nz; cj++)
        for (int ci = 0; ci < s->nr; ci++) {
            int eq[24], low = s->n, high = 0;
            cell_equations(s, ci, cj, eq);
            for (int k = 0; k < 24; k++) {
                if (eq[k] >= 0 && eq[k] < low) low = eq[k];
                if (eq[k] > high) high = eq[k];
            }
            if (high - low > s->width) s->width = high - low;
        }
}

/* Shape functions of a cell at (xi, eta) as they enter the strains of this harmonic. */
static void cell_point(const section *s, int ci, int cj, double xi, double eta, double weight,
                       gw_element_point *p)
{
    double fr[3], dr[3], ft[3], dt[3], r = 0.0, r_xi = 0.0, z_xi = 0.0, z_eta = 0.0, z = 0.0;
    const double *rn = s->r + 2 * ci, *tn = s->t + 2 * cj;
    double end[3];
    gw_parabolas(xi, fr, dr);
    gw_parabolas(eta, ft, dt);
    for (int i = 0; i < 3; i++) {
        end[i] = gw_layer_end(s->layer, rn[i]);
        r += fr[i] * rn[i];
        r_xi += dr[i] * rn[i];
    }
    for (int j = 0; j < 3; j++)
        for (int i = 0; i < 3; i++) {
            z += fr[i] * ft[j] * end[i] * tn[j];
            z_xi += dr[i] * ft[j] * end[i] * tn[j];
            z_eta += fr[i] * dt[j] * end[i] * tn[j];
        }
    for (int a = 0; a < 9; a++) {
        int i, j;
        local_node(a, &i, &j);
        double value = fr[i] * ft[j];
        p->nz[a] = fr[i] * dt[j] / z_eta;
        p->nr[a] = (dr[i] * ft[j] - p->nz[a] * z_xi) / r_xi;
        p->n[a] = value / r;
        p->vt[a] = s->harmonic * value / r;
        p->ut[a] = -p->vt[a];
    }
    p->weight = weight * r * r_xi * fabs(z_eta);
    p->q[0] = 1.0;
    p->q[1] = (r - rn[1]) / (rn[2] - rn[0]);
    p->q[2] = (z - end[1] * tn[1]) / (end[1] * (tn[0] - tn[2]));
}

static gw_status cell_matrix(const section *s, int ci, int cj, gw_element *e, gw_error *err)
{
    gw_element_point p = { 0 };
    gw_element_clear(e, 9, 3);
    for (int a = 0; a < 3; a++)
        for (int b = 0; b < 3; b++) {
            cell_point(s, ci, cj, GW_GAUSS3_X[a], GW_GAUSS3_X[b], GW_GAUSS3_W[a] * GW_GAUSS3_W[b], &p);
            gw_element_add(e, &p, s->layer->g);
        }
    return gw_element_condense(e, s->layer->k, err);
}

/* Unit motions of the inner sleeve, as values of U, V, W at a node of it. */
static double sleeve_motion(const section *s, int load, double z, int c)
{
    double r = s->layer->r0;
    if (s->harmonic == 0) return s->use[c] && c != U ? (c == V ? r : 1.0) : 0.0;
    if (load == 0) return c == U ? 1.0 : c == V ? -1.0 : 0.0;
    return c == U ? z : c == V ? -z : -r;
}

static void cell_given(const section *s, int ci, int cj, int loads, const int *eq, double *given)
{
    for (int k = 0; k < 24 * loads; k++) given[k] = 0.0;
    if (ci > 0) return;
    for (int a = 0; a < 8; a++) {
        int di, dj;
        local_node(a, &di, &dj);
        if (di > 0) continue;
        double z = s->t[2 * cj + dj] * gw_layer_end(s->layer, s->r[0]);
        for (int l = 0; l < loads; l++)
            for (int c = 0; c < 3; c++)
                if (eq[3 * a + c] < 0) given[24 * l + 3 * a + c] = sleeve_motion(s, l, z, c);
    }
}

static gw_status section_assemble(const section *s, gw_band *band, gw_error *err)
{
    gw_element *e = malloc(sizeof *e);
    gw_status status = GW_OK;
    if (!e) return gw_fail(err, GW_E_NOMEM, "no memory for an element");
    for (int cj = 0; cj < s->nz && status == GW_OK; cj++)
        for (int ci = 0; ci < s->nr && status == GW_OK; ci++) {
            int eq[24];
            double given[24 * GW_BAND_LOADS];
            status = cell_matrix(s, ci, cj, e, err);
            if (status != GW_OK) break;
            cell_equations(s, ci, cj, eq);
            cell_given(s, ci, cj, band->loads, eq, given);
            gw_band_assemble(band, e->k, 27, 24, eq, given);
        }
    free(e);
    return status;
}

/* In the plane of symmetry a push leaves W at zero; a tilt and an axial load leave U and V at zero. */
static gw_status tail_energy(const section *s, const gw_band *band, int load, bool symmetric, double *energy,
                             gw_error *err)
{
    int across = 2 * s->nr + 1, first = s->n - s->tail;
    bool *held = calloc((size_t)s->tail + 1, sizeof *held);
    if (!held) return gw_fail(err, GW_E_NOMEM, "no memory for the plane of symmetry");
    for (int i = 0; i < across; i++)
        for (int c = 0; c < 3; c++) {
            int eq = s->eq[3 * (2 * s->nz * across + i) + c];
            if (eq >= 0) held[eq - first] = symmetric ? c == W : c != W;
        }
    gw_status status = gw_band_energy(band, load, held, energy, err);
    free(held);
    return status;
}

/* One harmonic from mesh to energies; `symmetric` says it of each load about the middle plane. */
static gw_status solve(section *s, int refine, int loads, const bool *symmetric, double *energy,
                       gw_error *err)
{
    gw_band band = { 0 };
    gw_status status = section_mesh(s, refine, err);
    if (status != GW_OK) goto done;
    section_number(s);
    section_width(s);
    if ((status = gw_band_alloc(&band, s->n, s->width, s->tail, loads, err)) != GW_OK) goto done;
    if ((status = section_assemble(s, &band, err)) != GW_OK) goto done;
    if ((status = gw_band_factor(&band, err)) != GW_OK) goto done;
    for (int l = 0; l < loads && status == GW_OK; l++)
        status = tail_energy(s, &band, l, symmetric[l], energy + l, err);
done:
    gw_band_free(&band);
    section_free(s);
    return status;
}

/* Between flat ends no mesh is needed: the closed form is exact at any length. */
static double plain_torsion(const gw_layer *layer)
{
    gw_plain_bush plain = { layer->r0, layer->r1, 2.0 * layer->half_length, layer->g, layer->k };
    return gw_handbook_torsional(&plain);
}

gw_status gw_ring_rates(const gw_layer *layer, int refine, gw_given_rates *rates, gw_error *err)
{
    double pushed[2] = { 0, 0 }, axial = 0.0, torsional = 0.0;
    section push = { .layer = layer, .harmonic = 1, .use = { true, true, true } };
    section pull = { .layer = layer, .use = { true, false, true } };
    section twist = { .layer = layer, .use = { false, true, false } };
    gw_status status = solve(&push, refine, 2, (const bool[]){ true, false }, pushed, err);
    if (status == GW_OK && layer->inner == GW_INNER_BONDED) {
        status = solve(&pull, refine, 1, (const bool[]){ false }, &axial, err);
        if (status == GW_OK && layer->dish > 0.0)
            status = solve(&twist, refine, 1, (const bool[]){ true }, &torsional, err);
    }
    if (status != GW_OK) return status;
    double plain = layer->inner == GW_INNER_BONDED ? plain_torsion(layer) : 0.0;
    /* Twice for the two halves; the angle gives pi for cos^2 or sin^2 and 2 pi for m = 0. */
    *rates = (gw_given_rates){ .radial = { 2.0 * GW_PI * pushed[0], 2.0 * GW_PI * pushed[0] },
                               .axial = 4.0 * GW_PI * axial,
                               .conical = { 2.0 * GW_PI * pushed[1], 2.0 * GW_PI * pushed[1] },
                               .torsional = layer->dish > 0.0 ? 4.0 * GW_PI * torsional : plain };
    return GW_OK;
}
