/* SPDX-License-Identifier: MIT */
#include "bush/lobe_mesh.h"

#include "bush/band.h"
#include "bush/quadratic.h"
#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>

/*
 * Cells shrink towards sleeves, free ends and the faces of the opening, where bond and free surface
 * meet. Sizes are parts of the wall; a rate converges with the smallest of them, much faster than
 * the stress does.
 */
enum { CELLS_ACROSS = 6, CELLS_ACROSS_THIN = 4, MOST_ROUND = 5, MOST_ALONG = 7 };
static const double SMALLEST = 0.06, GROWTH = 2.0, WIDEST = 0.4; /* [-], [-], [rad] */
static const double THICK = 2.2, BESIDE_FLOOR = 0.12;            /* of b/a; of each part of a cut wall */

void gw_lobe_mesh_free(gw_lobe_mesh *mesh)
{
    free(mesh->r);
    free(mesh->theta);
    free(mesh->t);
    free(mesh->eq);
    *mesh = (gw_lobe_mesh){ 0 };
}

/* Cells for an arc that starts at a face of the opening (or has none: even cells). */
static int arc_cells(const gw_layer *layer, double arc, bool graded)
{
    double radius = 0.5 * (layer->r0 + layer->r1), wall = layer->r1 - layer->r0;
    int even = (int)ceil(arc / WIDEST);
    if (!graded) return even;
    int grown = gw_grade_count(arc, fmin(2.0 * SMALLEST * wall / radius, arc), GROWTH);
    if (grown > MOST_ROUND) grown = MOST_ROUND;
    return grown > even ? grown : even;
}

static double arc_first(const gw_layer *layer, double arc, int cells)
{
    double radius = 0.5 * (layer->r0 + layer->r1), wall = layer->r1 - layer->r0;
    return fmin(2.0 * SMALLEST * wall / (radius * arc), 1.0 / cells);
}

/* Cells on one side of the floor by its share of the wall, 2 or 4 of CELLS_ACROSS: even for the grading. */
static int part_cells(double share)
{
    return share > 0.5 ? CELLS_ACROSS - 2 : 2;
}

static void set_counts(gw_lobe_mesh *m, int refine)
{
    const gw_layer *l = m->layer;
    int fold = refine + 1;
    bool opens = l->void_angle > 0.0, crosses = opens && l->void_floor > l->r0;
    double part = (l->r1 - l->r0) / l->half_length;
    int nz = gw_grade_count(1.0, SMALLEST * fmin(part, 1.0), GROWTH);
    m->nz = (nz < 3 ? 3 : nz > MOST_ALONG ? MOST_ALONG : nz) * fold;
    int below = crosses ? part_cells((l->void_floor - l->r0) / (l->r1 - l->r0)) : 0;
    m->floor = below * fold;
    m->nr = (crosses || l->dish > 0.0 || l->r1 > THICK * l->r0 ? CELLS_ACROSS : CELLS_ACROSS_THIN) * fold;
    m->opening = opens ? arc_cells(l, l->void_angle, true) * fold : 0;
    if (opens && !crosses) m->opening = 0;
    m->nt = m->opening + arc_cells(l, 0.5 * GW_PI - l->void_angle, opens) * fold;
}

/* Six cells reach closer to the sleeves than four. */
static double across_first(const gw_lobe_mesh *m, int refine)
{
    return (m->nr > CELLS_ACROSS_THIN * (refine + 1) ? 0.05 : 0.08) / (refine + 1);
}

static void set_nodes(gw_lobe_mesh *m, int refine)
{
    const gw_layer *l = m->layer;
    double wall = l->r1 - l->r0, small = SMALLEST / (refine + 1);
    double rest = 0.5 * GW_PI - l->void_angle;
    if (m->floor > 0) {
        gw_grade(l->r0, l->void_floor, m->floor, BESIDE_FLOOR / (refine + 1), GW_GRADE_BOTH, m->r);
        gw_grade(l->void_floor, l->r1, m->nr - m->floor, BESIDE_FLOOR / (refine + 1), GW_GRADE_BOTH,
                 m->r + 2 * m->floor);
        gw_grade(0.0, l->void_angle, m->opening, arc_first(l, l->void_angle, m->opening) / (refine + 1),
                 GW_GRADE_END, m->theta);
    } else {
        gw_grade(l->r0, l->r1, m->nr, across_first(m, refine), GW_GRADE_BOTH, m->r);
    }
    int past = m->nt - m->opening;
    double first = l->void_angle > 0.0 ? arc_first(l, rest, past / (refine + 1)) / (refine + 1) : 1.0;
    gw_grade(l->void_angle, 0.5 * GW_PI, past, first, GW_GRADE_START, m->theta + 2 * m->opening);
    gw_grade(1.0, 0.0, m->nz, small * fmin(wall / l->half_length, 1.0), GW_GRADE_START, m->t);
}

gw_status gw_lobe_mesh_make(gw_lobe_mesh *mesh, const gw_layer *layer, int refine, gw_error *err)
{
    *mesh = (gw_lobe_mesh){ .layer = layer };
    set_counts(mesh, refine);
    size_t r = 2 * (size_t)mesh->nr + 1, theta = 2 * (size_t)mesh->nt + 1, t = 2 * (size_t)mesh->nz + 1;
    mesh->r = malloc(r * sizeof *mesh->r);
    mesh->theta = malloc(theta * sizeof *mesh->theta);
    mesh->t = malloc(t * sizeof *mesh->t);
    mesh->eq = malloc(3 * r * theta * t * sizeof *mesh->eq);
    if (!mesh->r || !mesh->theta || !mesh->t || !mesh->eq) {
        gw_lobe_mesh_free(mesh);
        return gw_fail(err, GW_E_NOMEM, "no memory for the rubber's mesh");
    }
    set_nodes(mesh, refine);
    return GW_OK;
}

bool gw_lobe_has_cell(const gw_lobe_mesh *mesh, int ci, int ct)
{
    return ct >= mesh->opening || ci < mesh->floor;
}

/* A node is there when any cell that it bounds is. */
static bool has_node(const gw_lobe_mesh *m, int i, int j)
{
    int from_r = i > 0 ? (i - 1) / 2 : 0, to_r = i < 2 * m->nr ? i / 2 : m->nr - 1;
    int from_t = j > 0 ? (j - 1) / 2 : 0, to_t = j < 2 * m->nt ? j / 2 : m->nt - 1;
    for (int ct = from_t; ct <= to_t; ct++)
        for (int ci = from_r; ci <= to_r; ci++)
            if (gw_lobe_has_cell(m, ci, ct)) return true;
    return false;
}

static bool is_free(const gw_lobe_mesh *m, int i, int j, int c, bool anti_first, bool anti_last)
{
    if (i == 2 * m->nr || (i == 0 && (m->layer->inner == GW_INNER_BONDED || c == 0))) return false;
    bool on_first = j == 0 && gw_lobe_has_cell(m, 0, 0) && m->theta[0] == 0.0;
    if (on_first && (c == 1) != anti_first) return false;
    if (j == 2 * m->nt && (c == 1) != anti_last) return false;
    return has_node(m, i, j);
}

void gw_lobe_local(int a, int offset[3])
{
    int at = a == 26 ? 13 : a < 13 ? a : a + 1;
    offset[0] = at % 3;
    offset[1] = at / 3 % 3;
    offset[2] = at / 9;
}

void gw_lobe_equations(const gw_lobe_mesh *mesh, const int cell[3], int eq[78])
{
    int across = 2 * mesh->nr + 1, round = 2 * mesh->nt + 1;
    for (int a = 0; a < 26; a++) {
        int o[3];
        gw_lobe_local(a, o);
        int node = ((2 * cell[2] + o[2]) * round + 2 * cell[1] + o[1]) * across + 2 * cell[0] + o[0];
        for (int c = 0; c < 3; c++) eq[3 * a + c] = mesh->eq[3 * node + c];
    }
}

static void set_width(gw_lobe_mesh *m)
{
    m->width = 1;
    for (int ck = 0; ck < m->nz; ck++)
        for (int ct = 0; ct < m->nt; ct++)
            for (int ci = 0; ci < m->nr; ci++) {
                int eq[78], low = m->n, high = 0;
                if (!gw_lobe_has_cell(m, ci, ct)) continue;
                gw_lobe_equations(m, (const int[3]){ ci, ct, ck }, eq);
                for (int k = 0; k < 78; k++) {
                    if (eq[k] >= 0 && eq[k] < low) low = eq[k];
                    if (eq[k] > high) high = eq[k];
                }
                if (high - low > m->width) m->width = high - low;
            }
}

void gw_lobe_number(gw_lobe_mesh *m, bool anti_first, bool anti_last)
{
    int at = 0;
    m->n = 0;
    for (int k = 0; k <= 2 * m->nz; k++) {
        if (k == 2 * m->nz) m->tail = m->n;
        for (int j = 0; j <= 2 * m->nt; j++)
            for (int i = 0; i <= 2 * m->nr; i++) {
                bool centre = i % 2 && j % 2 && k % 2;
                for (int c = 0; c < 3; c++, at++)
                    m->eq[at] = !centre && is_free(m, i, j, c, anti_first, anti_last) ? m->n++ : GW_DOF_GIVEN;
            }
    }
    m->tail = m->n - m->tail;
    set_width(m);
}
