/* SPDX-License-Identifier: MIT */
/* What the text of rates and its rows have in common. */
#include "show/rates.h"

#include "format/number.h"
#include "record/unit.h"

const char *const GW_TRUST_WORDS[] = { "given in the case", "published", "from memory", "common practice",
                                       NULL };

const char *gw_rates_handbook(gw_bush_type type)
{
    if (type == GW_BUSH_UNBONDED)
        return "the plane field with an inner face free in shear (derived from the potentials of N. I. "
               "Muskhelishvili, Some Basic Problems of the Mathematical Theory of Elasticity), vented at the "
               "ends; within a tenth";
    return "Adkins & Gent, British Journal of Applied Physics 5 (1954), 354-358; between its long and short "
           "limits an interpolation good to a few per cent; the conical rate by strips, an estimate";
}

gw_unit gw_rates_unit(gw_quantity quantity)
{
    static const gw_unit UNITS[] = {
        [GW_QUANTITY_LENGTH] = GW_UNIT_MM,     [GW_QUANTITY_MODULUS] = GW_UNIT_MPA,
        [GW_QUANTITY_RATE] = GW_UNIT_N_PER_MM, [GW_QUANTITY_TURN_RATE] = GW_UNIT_NM_PER_DEG,
        [GW_QUANTITY_ANGLE] = GW_UNIT_DEG,     [GW_QUANTITY_RATIO] = GW_UNIT_PLAIN,
    };
    return UNITS[quantity];
}

enum { RATES = 6 };

/* In the order of the columns. */
static void in_a_row(const gw_given_rates *r, double v[RATES])
{
    const double all[RATES] = { r->radial[0],  r->radial[1],  r->axial,
                                r->conical[0], r->conical[1], r->torsional };
    for (int i = 0; i < RATES; i++) v[i] = all[i];
}

void gw_rates_columns(gw_table *table)
{
    gw_table_heads(table, "rrrrrr", "radial\ne1\nN/mm", "radial\ne2\nN/mm", "axial\n\nN/mm",
                   "conical\ne1\nN m/deg", "conical\ne2\nN m/deg", "torsion\n\nN m/deg");
}

void gw_rates_cells(gw_table *table, const gw_given_rates *rates)
{
    double v[RATES];
    in_a_row(rates, v);
    for (int i = 0; i < RATES; i++) {
        gw_unit unit = i < 3 ? GW_UNIT_N_PER_MM : GW_UNIT_NM_PER_DEG;
        gw_table_cell(table, gw_significant(gw_unit_out(unit, v[i]), 3).s);
    }
}

void gw_rates_differences(gw_table *table, const gw_given_rates *difference)
{
    double v[RATES];
    in_a_row(difference, v);
    for (int i = 0; i < RATES; i++) gw_table_cell(table, gw_signed(gw_unit_out(GW_UNIT_PERCENT, v[i]), 1).s);
}
