/* SPDX-License-Identifier: MIT */
/**
 * Closed forms for a plain bonded bush: the published limits, and what can be said between them.
 * SI units throughout; all functions are pure and need 0 < a < b, length > 0, g > 0.
 *
 * Sources: J. E. Adkins and A. N. Gent, "Load-deflexion relations of rubber bush mountings",
 * British Journal of Applied Physics 5 (1954) 354-358; P. B. Lindley, "Engineering Design with
 * Natural Rubber", MRPRA; A. N. Gent, IRI Transactions 34 (1958) 46-57.
 */
#ifndef BUSH_HANDBOOK_H
#define BUSH_HANDBOOK_H

#include "giveway/bush.h"
#include "giveway/status.h"

/** A plain annulus of rubber. `k` is the bulk modulus [Pa]; INFINITY: incompressible. */
typedef struct gw_plain_bush {
    double a, b, length; /**< radii and length [m]    */
    double g, k;         /**< shear and bulk modulus [Pa] */
} gw_plain_bush;

/** Torsional rate, exact at any length: 4 pi G L / (1/a^2 - 1/b^2) [N m/rad]. */
double gw_handbook_torsional(const gw_plain_bush *p);

/** Axial rate without end effects: 2 pi G L / ln(b/a) [N/m]. */
double gw_handbook_axial(const gw_plain_bush *p);

/**
 * Axial rate with both free ends counted: 2 pi G (L - 0.225 (b - a)) / ln(b/a) [N/m].
 * Within 0.8 % for L >= b - a and 1.25 <= b/a <= 3, incompressible; the coefficient is fitted to
 * finite elements, not published. Never below a quarter of the long formula.
 */
double gw_handbook_axial_ends(const gw_plain_bush *p);

/** Radial rate, plane strain, incompressible (Adkins & Gent, long bush) [N/m]. */
double gw_handbook_radial_long(const gw_plain_bush *p);

/** Radial rate, plane stress, incompressible (Adkins & Gent, short bush) [N/m]. */
double gw_handbook_radial_short(const gw_plain_bush *p);

/**
 * Radial rate of the plane problem for any Kolosov constant kappa [N/m]:
 * 2 pi kappa (1 + kappa) G L (a^2+b^2) / (kappa^2 (a^2+b^2) ln(b/a) - (b^2-a^2)).
 * kappa = 3 - 4 nu in plane strain and (3 - nu)/(1 + nu) in plane stress; 1 and 5/3 give the two
 * Adkins & Gent limits. Derived here from the plane-elastic solution in z, 1/z and log z.
 */
double gw_handbook_radial_plane(const gw_plain_bush *p, double kappa);

/** Kolosov constant of plane strain for shear modulus g and bulk modulus k. */
double gw_handbook_kappa(double g, double k);

/**
 * Radial rate at finite length [N/m]: K_long - (K_long - K_short) tanh(s)/s, with
 * s = L / sqrt(2 (a^2+b^2)) stretched by sqrt(K_incompressible / K_long) for a finite bulk modulus.
 * From the pressure equation of a thin bonded layer; within about 2.5 % for L >= 2 (b-a) and
 * 1.2 <= b/a <= 3 when incompressible, 4 % for shorter ones. Derived, not published.
 */
double gw_handbook_radial(const gw_plain_bush *p);

/**
 * Estimate of the conical rate [N m/rad]: strips that move radially by (tilt x distance), their
 * pressure vented at the ends by the same layer equation, and the shear of the inner face that
 * moves axially. Order of magnitude only: it leaves out how the two shears add up.
 */
double gw_handbook_conical(const gw_plain_bush *p);

/** Strip integration without venting: (radial rate) L^2/12 [N m/rad]; up to thirty times too high. */
double gw_handbook_conical_strip(double radial, double length);

/**
 * Closed forms for any bonded annulus, as far as they go: a fallback, and a check on the solved rates.
 * Dished ends: the mean length. Interleaf: two layers in series. Voids: torsional and axial by the
 * share of the angle that is filled; radial and conical by the share of cos^2, vented (short
 * formula) along the voids and at finite length across them. The void figures are orders of magnitude,
 * up to a few times off, and take every void as deep as the wall.
 *
 * @param[out] rates  written only on GW_OK.
 * @retval GW_OK or GW_E_RANGE (see gw_annulus_check)
 */
gw_status gw_handbook_rates(const gw_annulus *annulus, gw_given_rates *rates, gw_error *err);

/** Natural rubber by hardness. */
typedef struct gw_lindley {
    double e0, g;   /**< Young's and shear modulus [Pa]          */
    double shape_k; /**< k of Ec = E0 (1 + 2 k S^2)          [-] */
    double bulk;    /**< bulk modulus                       [Pa] */
} gw_lindley;

/**
 * Lindley's table for natural rubber, 30 to 75 IRHD, straight lines between the rows.
 * Source: P. B. Lindley, NR Technical Bulletin, MRPRA, 4th ed. 1974 (values from memory).
 *
 * @retval GW_OK or GW_E_RANGE (hardness outside the table)
 */
gw_status gw_lindley_table(double irhd, gw_lindley *out, gw_error *err);

/**
 * Young's modulus by Gent's indentation relation [Pa], 20 <= shore <= 80:
 * 0.0981 (56 + 7.62336 S) / (0.137505 (254 - 2.54 S)) MPa.
 *
 * @retval GW_OK or GW_E_RANGE
 */
gw_status gw_gent_young(double shore, double *young, gw_error *err);

/** Compression modulus Ec = E0 (1 + 2 k S^2), with 1/Ec' = 1/Ec + 1/K for a finite bulk modulus [Pa]. */
double gw_compression_modulus(double e0, double shape_k, double shape_factor, double bulk);

#endif
