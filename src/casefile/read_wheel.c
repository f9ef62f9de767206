/* SPDX-License-Identifier: MIT */
#include "casefile/section.h"
#include "giveway/units.h"

#include <math.h>

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
    { "tyre_mass_kg", GW_OPTIONAL, GW_ABOVE(0, 1e4), 1, 0, AT(tyre_mass) },
    { "tyre_belt_Hz", GW_OPTIONAL, GW_ABOVE(0, 1e3), 1, 0, AT(belt_hz) },
    { "tyre_belt_loss_factor", GW_OPTIONAL, GW_FROM(0, 2), 1, 0, AT(belt_loss) },
};

static const char *const OTHERS[] = { "centre_mm", NULL };

/* Published data of a 9.3 kg 205/60 R15: 77 to 80 Hz, damping 0.04 to 0.05 (H. B. Pacejka, Tyre and Vehicle
 * Dynamics). */
static const double USUAL_BELT_HZ = 77.0, USUAL_BELT_LOSS = 0.1;

/* A belt's sidewall lies in series with the rest of the tyre, so it must be stiffer than both together. */
static void check_belt(const gw_reader *rd, const gw_node *node, const gw_wheel *wheel)
{
    gw_node mass = gw_node_key(node, "tyre_mass_kg"), hz = gw_node_key(node, "tyre_belt_Hz");
    if (!(wheel->tyre_mass > 0.0) || !(wheel->mass > 0.0)) return;
    if (!(wheel->mass > wheel->tyre_mass)) {
        gw_fault(rd, &mass, "expected less than mass_kg, %.6g: the tyre is part of the wheel", wheel->mass);
        return;
    }
    double least = sqrt(wheel->tyre_vertical / (0.75 * wheel->tyre_mass)) / (2.0 * GW_PI);
    if (!(wheel->belt_hz > least))
        gw_fault(rd, hz.json ? &hz : &mass,
                 "its sidewall would be softer than the whole tyre: expected tyre_belt_Hz above %.4g for "
                 "%.4g kg and "
                 "%.6g N/mm",
                 least, wheel->tyre_mass, wheel->tyre_vertical / GW_N_PER_MM);
}

bool gw_read_wheel(const gw_reader *rd, const gw_node *corner, gw_wheel *wheel)
{
    gw_node node;
    if (!gw_get_object(rd, corner, "wheel", GW_REQUIRED, &node)) return false;
    gw_check_keys(rd, &node, NUMBERS, GW_COUNT(NUMBERS), OTHERS);
    wheel->belt_hz = USUAL_BELT_HZ;
    wheel->belt_loss = USUAL_BELT_LOSS;
    bool ok = gw_get_numbers(rd, &node, NUMBERS, GW_COUNT(NUMBERS), wheel);
    if (ok) check_belt(rd, &node, wheel);
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
