/* SPDX-License-Identifier: MIT */
#include "casefile/section.h"
#include "giveway/units.h"

#define AT(field) offsetof(gw_ride, field)
static const gw_number_key NUMBERS[] = {
    { "roughness_m3", GW_OPTIONAL, GW_ABOVE(0, 10), 1, 0, AT(roughness) },
    { "speed_km_h", GW_REQUIRED, GW_ABOVE(0, 500), GW_KM_H, 0, AT(speed) },
    { "contact_length_mm", GW_OPTIONAL, GW_FROM(0, 1e3), GW_MM, 0, AT(contact_length) },
    { "bracket_loss_factor", GW_OPTIONAL, GW_FROM(0, 10), 1, 0, AT(bracket_loss) },
    { "amplitude_mm", GW_OPTIONAL, GW_FROM(0, 100), GW_MM, 0, AT(amplitude) },
    { "temperature_C", GW_OPTIONAL, GW_FROM(-100, 300), 1, GW_ZERO_C, AT(temperature) },
    { "damper_friction_Ns_per_mm", GW_OPTIONAL, GW_FROM(0, 1e6), GW_NS_PER_MM, 0, AT(damper_friction) },
};
static const char *const OTHERS[] = { "road_class", "default_bracket_N_per_mm", "obstacle", NULL };

static const gw_number_key OBSTACLE[] = {
    { "height_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, AT(obstacle_height) },
    { "length_mm", GW_REQUIRED, GW_ABOVE(0, 1e5), GW_MM, 0, AT(obstacle_length) },
};

static void read_road(const gw_reader *rd, const gw_node *node, gw_ride *ride)
{
    static const char *const CLASSES[] = { "A", "B", "C", "D", "E", "F", "G", "H" };
    gw_node road = gw_node_key(node, "road_class"), roughness = gw_node_key(node, "roughness_m3");
    int word;
    if (!road.json && !roughness.json)
        gw_fault(rd, &road,
                 "this key is missing: give a class from \"A\" to \"H\" (ISO 8608), or roughness_m3");
    if (road.json && roughness.json)
        gw_fault(rd, &roughness, "the road is given twice: give either road_class or roughness_m3");
    if (!gw_get_choice(rd, node, "road_class", GW_OPTIONAL, CLASSES, 8, &word)) return;
    ride->road_class = CLASSES[word][0];
    ride->roughness = gw_road_class_roughness(ride->road_class);
}

/* null says that the body is rigid behind every bush. */
static void read_bracket(const gw_reader *rd, const gw_node *node, gw_ride *ride)
{
    const gw_range range = GW_ABOVE(0, 1e12);
    double rate;
    if (cJSON_IsNull(gw_node_key(node, "default_bracket_N_per_mm").json))
        ride->brackets_rigid = true;
    else if (gw_get_number(rd, node, "default_bracket_N_per_mm", GW_OPTIONAL, range, &rate))
        ride->default_bracket = rate * GW_N_PER_MM;
}

/* In the order of gw_ride_setting. */
static const char *const HAVE_DEFAULTS[GW_RIDE_SETTINGS] = {
    "contact_length_mm", "default_bracket_N_per_mm", "bracket_loss_factor", "amplitude_mm",
    "temperature_C",     "damper_friction_Ns_per_mm"
};

static void note_defaults(const gw_node *node, gw_ride *ride)
{
    for (int i = 0; i < GW_RIDE_SETTINGS; i++) ride->left_out[i] = !gw_node_key(node, HAVE_DEFAULTS[i]).json;
}

void gw_read_ride(const gw_reader *rd, const gw_node *node, gw_ride *ride)
{
    gw_node obstacle;
    if (!gw_is_object(rd, node, "an object { }")) return;
    *ride = (gw_ride){ .present = true,
                       .contact_length = 120 * GW_MM,
                       .default_bracket = GW_USUAL_BRACKET_N_PER_MM * GW_N_PER_MM,
                       .bracket_loss = 0.05,
                       .amplitude = 0.1 * GW_MM,
                       .temperature = 20 + GW_ZERO_C };
    gw_check_keys(rd, node, NUMBERS, GW_COUNT(NUMBERS), OTHERS);
    gw_get_numbers(rd, node, NUMBERS, GW_COUNT(NUMBERS), ride);
    read_road(rd, node, ride);
    read_bracket(rd, node, ride);
    note_defaults(node, ride);
    if (!gw_get_object(rd, node, "obstacle", GW_OPTIONAL, &obstacle)) return;
    gw_check_keys(rd, &obstacle, OBSTACLE, GW_COUNT(OBSTACLE), NULL);
    ride->has_obstacle = gw_get_numbers(rd, &obstacle, OBSTACLE, GW_COUNT(OBSTACLE), ride);
}
