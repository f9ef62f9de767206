/* SPDX-License-Identifier: MIT */
/** The stiffness of one cell of a bush with openings. */
#ifndef BUSH_LOBE_CELL_H
#define BUSH_LOBE_CELL_H

#include "bush/element.h"
#include "bush/lobe_mesh.h"

/** The element of cell (ci, ct, ck), its centre condensed; nodes in the order of gw_lobe_node. */
gw_status gw_lobe_cell_matrix(const gw_lobe_mesh *mesh, const int cell[3], gw_element *e, gw_error *err);

#endif
