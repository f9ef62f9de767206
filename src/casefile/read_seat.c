/* SPDX-License-Identifier: MIT */
/* How a bush is pressed into its housing: sizes, and a fit of ISO 286 or the interference itself. */
#include "casefile/section.h"
#include "giveway/pressfit.h"
#include "giveway/units.h"

#include <math.h>

static const double MICROMETRE = 1e-6;

#define AT(field) offsetof(gw_seat, field)
static const gw_number_key NUMBERS[] = {
    { "diameter_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, AT(diameter) },
    { "length_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, AT(length) },
    { "sleeve_wall_mm", GW_REQUIRED, GW_ABOVE(0, 500), GW_MM, 0, AT(sleeve_wall) },
    { "housing_wall_mm", GW_REQUIRED, GW_ABOVE(0, 500), GW_MM, 0, AT(housing_wall) },
    { "bore_mm", GW_OPTIONAL, GW_ABOVE(0, 1e3), GW_MM, 0, AT(bore) },
    { "friction", GW_OPTIONAL, GW_FROM(0, 2), 1, 0, AT(friction) },
    { "housing_yield_MPa", GW_OPTIONAL, GW_ABOVE(0, 1e4), GW_MPA, 0, AT(housing_yield) },
    { "sleeve_yield_MPa", GW_OPTIONAL, GW_ABOVE(0, 1e4), GW_MPA, 0, AT(sleeve_yield) },
};
static const char *const WORDS[] = { "fit", "interference_um", "housing_material", NULL };

/* Dry steel, its lower end; plain structural steel S235 (EN 10025-2, from memory); a forged aluminium arm
 * of alloy 6082-T6 (EN 586-2, from memory, its lower end). */
static const double DRY_STEEL = 0.12, STEEL_YIELD = 235e6, ALUMINIUM_YIELD = 250e6;

static void read_fit(const gw_reader *rd, const gw_node *node, gw_seat *seat)
{
    static const char *const FITS[] = { "H7/p6", "H7/r6", "H7/s6" }; /* in the order of gw_fit_class */
    gw_node at = gw_node_key(node, "fit");
    gw_iso_fit limits;
    gw_error err = { 0 };
    int fit;
    if (!gw_get_choice(rd, node, "fit", GW_REQUIRED, FITS, 3, &fit) || !(seat->diameter > 0)) return;
    if (gw_iso_fit_of(seat->diameter, (gw_fit_class)fit, &limits, &err) != GW_OK) {
        gw_fault(rd, &at, "%s in \"interference_um\" instead", err.msg);
        return;
    }
    seat->least = limits.least;
    seat->most = limits.most;
}

static void read_interference(const gw_reader *rd, const gw_node *node, gw_seat *seat)
{
    const gw_range range = GW_FROM(-1e4, 1e4);
    gw_node at = gw_node_key(node, "interference_um");
    double um[2];
    if (!gw_get_pair(rd, node, "interference_um", range, um)) return;
    if (um[0] > um[1] || !(um[1] > 0)) {
        gw_fault(rd, &at, "expected the least and then the greatest interference, the greatest above 0");
        return;
    }
    seat->least = um[0] * MICROMETRE;
    seat->most = um[1] * MICROMETRE;
}

static void check_sizes(const gw_reader *rd, const gw_node *node, const gw_seat *seat)
{
    gw_node wall = gw_node_key(node, "sleeve_wall_mm"), bore = gw_node_key(node, "bore_mm");
    if (2 * seat->sleeve_wall > seat->diameter)
        gw_fault(rd, &wall, "expected at most half of diameter_mm, %.6g: a solid sleeve",
                 seat->diameter / (2 * GW_MM));
    if (seat->bore >= seat->diameter)
        gw_fault(rd, &bore, "expected less than diameter_mm, %.6g", seat->diameter / GW_MM);
}

void gw_read_seat(const gw_reader *rd, const gw_node *bush, gw_seat *seat)
{
    static const char *const METALS[] = { "steel", "aluminium" };
    gw_node node;
    int metal = 0;
    if (!gw_get_object(rd, bush, "press_fit", GW_OPTIONAL, &node)) return;
    gw_check_keys(rd, &node, NUMBERS, GW_COUNT(NUMBERS), WORDS);
    seat->friction = DRY_STEEL;
    seat->sleeve_yield = STEEL_YIELD;
    gw_get_choice(rd, &node, "housing_material", GW_OPTIONAL, METALS, 2, &metal);
    seat->housing_aluminium = metal == 1;
    seat->housing_yield = metal == 1 ? ALUMINIUM_YIELD : STEEL_YIELD;
    if (gw_get_numbers(rd, &node, NUMBERS, GW_COUNT(NUMBERS), seat)) check_sizes(rd, &node, seat);
    gw_node fit = gw_node_key(&node, "fit"), sizes = gw_node_key(&node, "interference_um");
    if (fit.json && sizes.json)
        gw_fault(rd, &sizes, "expected either this or \"fit\", not both");
    else if (sizes.json)
        read_interference(rd, &node, seat);
    else
        read_fit(rd, &node, seat);
    seat->given = true;
}
