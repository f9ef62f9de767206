/* SPDX-License-Identifier: MIT */
/**
 * The element of every rubber solution: displacement quadratic in each direction (9 nodes in the
 * r-z plane, 27 in space), pressure linear and discontinuous (Q2/P1), in cylindrical components
 * (radial U, circumferential V, axial W).
 *
 * Energy   1/2 integral [ 2 G e:e - 2/3 G (div u)^2 + K (P div u)^2 ], where P projects div u on the linear
 *          pressures of the element. The pressure and the centre node are condensed inside the element.
 * Why      Q2/P1 satisfies the inf-sup condition, so it neither locks nor shows pressure modes however
 *          large K/G is, and its linear pressure is exact to the order of the displacement; the
 *          condensed system stays positive definite, so that a banded Cholesky factorisation serves.
 * Source   M. Fortin, Int. J. Numer. Methods Fluids 1 (1981) 347-364; D. S. Malkus and T. J. R.
 *          Hughes, Comput. Methods Appl. Mech. Eng. 15 (1978) 63-81 (penalty and mixed forms).
 */
#ifndef BUSH_ELEMENT_H
#define BUSH_ELEMENT_H

#include "giveway/status.h"

enum { GW_ELEMENT_NODES = 27, GW_ELEMENT_DOFS = 3 * GW_ELEMENT_NODES, GW_ELEMENT_PRESSURES = 4 };

/** What one integration point needs: the shape functions as they enter the strains. */
typedef struct gw_element_point {
    double weight;                  /**< quadrature weight times volume           [m^3 or m^3/rad] */
    double q[GW_ELEMENT_PRESSURES]; /**< pressure functions at the point                 [-]       */
    double n[GW_ELEMENT_NODES];     /**< N / r                                           [1/m]     */
    double nr[GW_ELEMENT_NODES];    /**< dN/dr                                           [1/m]     */
    double nz[GW_ELEMENT_NODES];    /**< dN/dz                                           [1/m]     */
    double vt[GW_ELEMENT_NODES];    /**< of V in the hoop strain: dN/dtheta / r, or m N/r          */
    double ut[GW_ELEMENT_NODES];    /**< of U and W in the shears: dN/dtheta / r, or -m N/r        */
} gw_element_point;

typedef struct gw_element {
    int nodes, pressures;
    double k[GW_ELEMENT_DOFS * GW_ELEMENT_DOFS]; /**< stiffness, row length 3 nodes; symmetric */
    double q[GW_ELEMENT_PRESSURES * GW_ELEMENT_DOFS];
    double m[GW_ELEMENT_PRESSURES * GW_ELEMENT_PRESSURES];
} gw_element;

/** Empties the element for 9 nodes and 3 pressures, or 27 and 4. */
void gw_element_clear(gw_element *e, int nodes, int pressures);

/** Adds one integration point for shear modulus g [Pa]. */
void gw_element_add(gw_element *e, const gw_element_point *p, double g);

/**
 * Condenses the pressures for bulk modulus `bulk` [Pa] and then the last node (the one in the
 * centre), whose rows and columns are left to be ignored.
 *
 * @retval GW_OK, or GW_E_NUMERIC where the element has no volume
 */
gw_status gw_element_condense(gw_element *e, double bulk, gw_error *err);

#endif
