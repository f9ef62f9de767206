/* SPDX-License-Identifier: MIT */
#include "bush/lobe_mesh.h"

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
    if (!mesh->r || !mesh->theta || !mesh->t) {
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

void gw_lobe_node(const int cell[3], int a, int node[3])
{
    int at = a == 26 ? 13 : a < 13 ? a : a + 1;
    node[0] = 2 * cell[0] + at % 3;
    node[1] = 2 * cell[1] + at / 3 % 3;
    node[2] = 2 * cell[2] + at / 9;
}

bool gw_lobe_is_free(const gw_lobe_mesh *mesh, const int node[3], int c, const bool anti[3])
{
    enum { U, V, W };
    if (node[0] == 2 * mesh->nr || (node[0] == 0 && (mesh->layer->inner == GW_INNER_BONDED || c == U)))
        return false;
    if (node[1] == 0 && mesh->theta[0] == 0.0 && (c == V) != anti[0]) return false;
    if (node[1] == 2 * mesh->nt && (c == V) != anti[1]) return false;
    return node[2] != 2 * mesh->nz || (c == W) == anti[2];
}

int gw_lobe_unknown(const gw_lobe_mesh *mesh, const int node[3], int c)
{
    return 3 * ((node[2] * (2 * mesh->nt + 1) + node[1]) * (2 * mesh->nr + 1) + node[0]) + c;
}

int gw_lobe_unknowns(const gw_lobe_mesh *mesh)
{
    return 3 * (2 * mesh->nr + 1) * (2 * mesh->nt + 1) * (2 * mesh->nz + 1);
}

bool gw_lobe_is_inside(const gw_lobe_mesh *mesh, int unknown, const int low[3], const int high[3])
{
    int cells[3] = { mesh->nr, mesh->nt, mesh->nz }, rest = unknown / 3;
    for (int i = 0; i < 3; i++) {
        int at = rest % (2 * cells[i] + 1);
        rest /= 2 * cells[i] + 1;
        if ((at == 2 * low[i] && low[i] > 0) || (at == 2 * high[i] && high[i] < cells[i])) return false;
    }
    return true;
}
