/* SPDX-License-Identifier: MIT */
/** Mesh and numbering of one eighth of a bush with openings. */
#ifndef BUSH_LOBE_MESH_H
#define BUSH_LOBE_MESH_H

#include "bush/layer.h"

typedef struct gw_lobe_mesh {
    const gw_layer *layer;
    int nr, nt, nz;        /**< cells in r, theta, z                                            */
    int floor, opening;    /**< first cell in r above the floor; first cell in theta past the opening */
    double *r, *theta, *t; /**< nodes, two per cell and one; t 1 at the free end, 0 in the middle  */
    int *eq;               /**< equation of component c of node (i, j, k), r fastest                  */
    int n, tail, width;    /**< as in gw_band                                                      */
} gw_lobe_mesh;

/** On failure nothing is left to free. */
gw_status gw_lobe_mesh_make(gw_lobe_mesh *mesh, const gw_layer *layer, int refine, gw_error *err);

void gw_lobe_mesh_free(gw_lobe_mesh *mesh);

/** Is there rubber in the column of cells (ci, ct)? */
bool gw_lobe_has_cell(const gw_lobe_mesh *mesh, int ci, int ct);

/** Numbers the unknowns for antisymmetry (else symmetry) about theta = 0 and theta = 90 degrees. */
void gw_lobe_number(gw_lobe_mesh *mesh, bool anti_first, bool anti_last);

/** Offsets in r, theta, z of node a of a cell; the centre is the last of the 27. */
void gw_lobe_local(int a, int offset[3]);

/** Equations of the first 26 nodes of a cell. */
void gw_lobe_equations(const gw_lobe_mesh *mesh, const int cell[3], int eq[78]);

#endif
