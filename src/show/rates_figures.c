/* SPDX-License-Identifier: MIT */
#include "show/rates.h"

#include "format/number.h"
#include "giveway/units.h"

#include <math.h>

const char *gw_rates_handbook(gw_bush_type type)
{
    if (type == GW_BUSH_UNBONDED)
        return "the plane field with an inner face free in shear (derived from the potentials of N. I. "
               "Muskhelishvili, Some Basic Problems of the Mathematical Theory of Elasticity), vented at the "
               "ends; within a tenth";
    return "Adkins & Gent, British Journal of Applied Physics 5 (1954), 354-358; between its long and short "
           "limits an interpolation good to a few per cent; the conical rate by strips, an estimate";
}

const char *gw_bush_type_word(gw_bush_type type)
{
    switch (type) {
    case GW_BUSH_RATES:
        return "rates";
    case GW_BUSH_BONDED:
        return "bonded";
    case GW_BUSH_UNBONDED:
        return "unbonded";
    case GW_BUSH_BEARING:
        return "bearing";
    case GW_BUSH_BALL_JOINT:
        return "ball_joint";
    case GW_BUSH_MEASURED:
        return "measured";
    case GW_BUSH_RIGID:
        return "rigid";
    }
    return "";
}

bool gw_rates_is_rubber(const gw_bush *bush)
{
    return bush->type == GW_BUSH_BONDED || bush->type == GW_BUSH_UNBONDED;
}

const char *gw_rates_method_word(const gw_rates_row *row)
{
    if (row->bush->type == GW_BUSH_BEARING) return row->bush->bearing.radial > 0.0 ? "given" : "contact";
    if (!gw_rates_is_rubber(row->bush)) return "given";
    return row->report.method == GW_METHOD_HANDBOOK ? "handbook" : "solved";
}

const gw_material *gw_rates_material(const gw_bush *bush)
{
    return gw_rates_is_rubber(bush) ? &bush->annulus.material : NULL;
}

void gw_rates_of_law(const gw_bush_law *law, double v[GW_RATES])
{
    for (int i = 0; i < 3; i++) {
        v[i] = law->k[i] / GW_N_PER_MM;
        v[3 + i] = law->c[i] / GW_NM_PER_DEG;
    }
}

void gw_rates_of_given(const gw_given_rates *rates, double v[GW_RATES])
{
    for (int i = 0; i < 2; i++) {
        v[i] = rates->radial[i] / GW_N_PER_MM;
        v[3 + i] = rates->conical[i] / GW_NM_PER_DEG;
    }
    v[2] = rates->axial / GW_N_PER_MM;
    v[5] = rates->torsional / GW_NM_PER_DEG;
}

void gw_rates_difference(const gw_rates_row *row, double percent[GW_RATES])
{
    double solved[GW_RATES], closed[GW_RATES];
    gw_rates_of_law(&row->report.law, solved);
    gw_rates_of_given(&row->beside, closed);
    for (int i = 0; i < GW_RATES; i++)
        percent[i] = solved[i] > 0.0 ? 100.0 * (closed[i] / solved[i] - 1.0) : (double)NAN;
}

bool gw_rates_has_band(const gw_rates_row *row)
{
    return row->report.low < 1.0 || row->report.high > 1.0;
}

gw_dynamic_band gw_rates_dynamic(const gw_rates_row *row, double hz, double amplitude)
{
    return gw_dynamic_band_of(&row->report.law.dynamic, gw_rates_material(row->bush), hz, amplitude);
}

void gw_rates_columns(gw_table *table)
{
    gw_table_column(table, GW_RIGHT, "radial\ne1\nN/mm");
    gw_table_column(table, GW_RIGHT, "radial\ne2\nN/mm");
    gw_table_column(table, GW_RIGHT, "axial\n\nN/mm");
    gw_table_column(table, GW_RIGHT, "conical\ne1\nN m/deg");
    gw_table_column(table, GW_RIGHT, "conical\ne2\nN m/deg");
    gw_table_column(table, GW_RIGHT, "torsion\n\nN m/deg");
}

void gw_rates_cells(gw_table *table, const double v[GW_RATES])
{
    for (int i = 0; i < GW_RATES; i++) gw_table_cell(table, gw_significant(v[i], 3).s);
}
