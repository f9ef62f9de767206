/* SPDX-License-Identifier: MIT */
/** Mesh and unknowns of one eighth of a bush with openings. */
#ifndef BUSH_LOBE_MESH_H
#define BUSH_LOBE_MESH_H

#include "bush/layer.h"

typedef struct gw_lobe_mesh {
    const gw_layer *layer;
    int nr, nt, nz;        /**< cells in r, theta, z                                            */
    int floor, opening;    /**< first cell in r above the floor; first cell in theta past the opening */
    double *r, *theta, *t; /**< nodes, two per cell and one; t 1 at the free end, 0 in the middle  */
} gw_lobe_mesh;

/** On failure nothing is left to free. */
gw_status gw_lobe_mesh_make(gw_lobe_mesh *mesh, const gw_layer *layer, int refine, gw_error *err);

void gw_lobe_mesh_free(gw_lobe_mesh *mesh);

/** Is there rubber in the column of cells (ci, ct)? */
bool gw_lobe_has_cell(const gw_lobe_mesh *mesh, int ci, int ct);

/** Node a of a cell (r fastest; the centre is the last of the 27) by its place in r, theta and z. */
void gw_lobe_node(const int cell[3], int a, int node[3]);

/**
 * Is component c (0 radial, 1 circumferential, 2 axial) of a node of the rubber an unknown? On the planes
 * theta = 0, theta = 90 degrees and z = 0 a load is antisymmetric where `anti` says so, else symmetric.
 */
bool gw_lobe_is_free(const gw_lobe_mesh *mesh, const int node[3], int c, const bool anti[3]);

/** The name of component c of a node, below gw_lobe_unknowns. */
int gw_lobe_unknown(const gw_lobe_mesh *mesh, const int node[3], int c);
int gw_lobe_unknowns(const gw_lobe_mesh *mesh);

/** Is an unknown of a box of cells, from `low` to before `high`, out of reach of the cells around it? */
bool gw_lobe_is_inside(const gw_lobe_mesh *mesh, int unknown, const int low[3], const int high[3]);

#endif
