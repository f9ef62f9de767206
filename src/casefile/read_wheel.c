/* SPDX-License-Identifier: MIT */
#include "casefile/section.h"
#include "giveway/units.h"

#define AT(field) offsetof(gw_wheel, field)
static const gw_number_key NUMBERS[] = {
    { "loaded_radius_mm", GW_REQUIRED, GW_ABOVE(0, 5e3), GW_MM, 0, AT(loaded_radius) },
    { "rim_diameter_mm", GW_OPTIONAL, GW_ABOVE(0, 5e3), GW_MM, 0, AT(rim_diameter) },
    { "static_load_N", GW_OPTIONAL, GW_ABOVE(0, 1e7), 1, 0, AT(static_load) },
    { "static_camber_deg", GW_REQUIRED, GW_FROM(-45, 45), GW_DEG, 0, AT(static_camber) },
    { "static_toe_deg", GW_REQUIRED, GW_FROM(-45, 45), GW_DEG, 0, AT(static_toe) },
    { "mass_kg", GW_OPTIONAL, GW_ABOVE(0, 1e5), 1, 0, AT(mass) },
    { "tilt_inertia_kgm2", GW_OPTIONAL, GW_ABOVE(0, 1e5), 1, 0, AT(tilt_inertia) },
    { "pitch_inertia_kgm2", GW_OPTIONAL, GW_ABOVE(0, 1e5), 1, 0, AT(pitch_inertia) },
    { "tyre_vertical_N_per_mm", GW_OPTIONAL, GW_ABOVE(0, 1e6), GW_N_PER_MM, 0, AT(tyre_vertical) },
    { "tyre_damping_Ns_per_mm", GW_OPTIONAL, GW_FROM(0, 1e4), GW_NS_PER_MM, 0, AT(tyre_damping) },
    { "tyre_slip_stiffness_N", GW_OPTIONAL, GW_ABOVE(0, 1e9), 1, 0, AT(tyre_slip_stiffness) },
    { "tyre_relaxation_mm", GW_OPTIONAL, GW_ABOVE(0, 1e5), GW_MM, 0, AT(tyre_relaxation) },
    { "spin_inertia_kgm2", GW_OPTIONAL, GW_ABOVE(0, 1e5), 1, 0, AT(spin_inertia) },
};

static const char *const OTHERS[] = { "centre_mm", NULL };

bool gw_read_wheel(const gw_reader *rd, const gw_node *corner, gw_wheel *wheel)
{
    gw_node node;
    if (!gw_get_object(rd, corner, "wheel", GW_REQUIRED, &node)) return false;
    gw_check_keys(rd, &node, NUMBERS, GW_COUNT(NUMBERS), OTHERS);
    bool ok = gw_get_numbers(rd, &node, NUMBERS, GW_COUNT(NUMBERS), wheel);
    if (!gw_get_vector(rd, &node, "centre_mm", GW_REQUIRED, 1e5, GW_MM, &wheel->centre)) return false;
    if (!(wheel->centre.y > 0)) {
        gw_node centre = gw_node_key(&node, "centre_mm");
        gw_fault(rd, &centre, "expected y above 0: a corner is described for the left wheel, y to the left");
        ok = false;
    }
    gw_warn_short(rd, &node, "loaded_radius_mm", wheel->loaded_radius, 10.0);
    gw_warn_short(rd, &node, "centre_mm", wheel->centre.y, 10.0);
    return ok;
}
