/* SPDX-License-Identifier: MIT */
/* Loads: a direct one on a corner, or a manoeuvre of the whole vehicle. */
#include "casefile/readings.h"
#include "casefile/section.h"
#include "giveway/units.h"

#include <string.h>

/* Beyond any tyre and any test rig; what a corner cannot carry is for the solver to say. */
static const double FORCE_LIMIT = 1e9, TRAVEL_LIMIT_MM = 1e3;

static const char *const DIRECT_KEYS[] = { "corner",      "patch_force_N", "patch_moment_Nm",
                                           "hub_force_N", "travel_mm",     "other_wheel",
                                           NULL };
static const char *const MANOEUVRE_KEYS[] = { "brake_g", "lateral_g", "drive_g", "wheel", "driven", NULL };
static const char *const ALL_KEYS[] = { "name",        "corner",    "patch_force_N", "patch_moment_Nm",
                                        "hub_force_N", "travel_mm", "other_wheel",   "brake_g",
                                        "lateral_g",   "drive_g",   "wheel",         "driven",
                                        NULL };

static bool has_any(const gw_node *node, const char *const *keys)
{
    for (; *keys; keys++)
        if (gw_node_key(node, *keys).json) return true;
    return false;
}

/* [x, y, z], where z may be null for the static load. */
static void read_patch_force(const gw_reader *rd, const gw_node *node, gw_load *load)
{
    const gw_range range = GW_FROM(-FORCE_LIMIT, FORCE_LIMIT);
    double x[3] = { 0, 0, 0 };
    int i = 0;
    char found[80];
    gw_node force = gw_node_key(node, "patch_force_N");
    if (!force.json) return;
    if (!cJSON_IsArray(force.json) || gw_node_count(&force) != 3) {
        gw_fault(rd, &force,
                 "expected a list of three numbers [x, y, z], the last null for the static load, found %s",
                 gw_found(&force, found));
        return;
    }
    for (const cJSON *e = force.json->child; e; e = e->next, i++) {
        gw_node entry = gw_node_entry(&force, e, i);
        if (i == 2 && cJSON_IsNull(e))
            load->static_vertical = true;
        else
            gw_take_number(rd, &entry, range, &x[i]);
    }
    load->direct.patch_force = gw_v3(x[0], x[1], x[2]);
}

static void read_direct(gw_case_reader *cr, const gw_node *node, gw_load *load)
{
    const gw_reader *rd = &cr->rd;
    const gw_range travel = GW_FROM(-TRAVEL_LIMIT_MM, TRAVEL_LIMIT_MM);
    gw_node corner = gw_node_key(node, "corner");
    int axle;
    load->kind = GW_LOAD_DIRECT;
    if (gw_get_choice(rd, node, "corner", GW_REQUIRED, GW_AXLE_NAMES, 2, &axle)) {
        load->axle = (gw_axle)axle;
        if (!cr->c->has_corner[axle])
            gw_fault(rd, &corner, "there is no %s corner in \"corners\"", GW_AXLE_NAMES[axle]);
    }
    read_patch_force(rd, node, load);
    gw_get_vector(rd, node, "patch_moment_Nm", GW_OPTIONAL, FORCE_LIMIT, 1, &load->direct.patch_moment);
    gw_get_vector(rd, node, "hub_force_N", GW_OPTIONAL, FORCE_LIMIT, 1, &load->direct.hub_force);
    if (gw_get_number(rd, node, "travel_mm", GW_OPTIONAL, travel, &load->direct.travel))
        load->direct.travel *= GW_MM;
    int other;
    if (gw_get_choice(rd, node, "other_wheel", GW_OPTIONAL, GW_OTHER_WORDS, 3, &other))
        load->other = (gw_other_wheel)other;
    if (load->static_vertical && cr->c->has_corner[load->axle])
        load->direct.patch_force.z = cr->c->corners[load->axle].wheel.static_load;
}

/* Wide on purpose: too much g is told by the wheel that lifts, which says how much would do. */
static const gw_number_key ACCELERATIONS[] = {
    { "brake_g", GW_OPTIONAL, GW_FROM(0, 100), 1, 0, offsetof(gw_manoeuvre, brake_g) },
    { "lateral_g", GW_OPTIONAL, GW_FROM(0, 100), 1, 0, offsetof(gw_manoeuvre, lateral_g) },
    { "drive_g", GW_OPTIONAL, GW_FROM(0, 100), 1, 0, offsetof(gw_manoeuvre, drive_g) },
};

static void read_manoeuvre(gw_case_reader *cr, const gw_node *node, gw_load *load)
{
    static const char *const SIDES[] = { "outer", "inner", "both" }; /* in the order of gw_side   */
    static const char *const DRIVEN[] = { "rear", "front", "all" };  /* in the order of gw_driven */
    static const char *const G_KEYS[] = { "brake_g", "lateral_g", "drive_g", NULL };
    const gw_reader *rd = &cr->rd;
    gw_manoeuvre *m = &load->manoeuvre;
    int word;
    load->kind = GW_LOAD_MANOEUVRE;
    gw_get_numbers(rd, node, ACCELERATIONS, GW_COUNT(ACCELERATIONS), m);
    if (gw_get_choice(rd, node, "wheel", GW_OPTIONAL, SIDES, 3, &word)) {
        load->both = word == 2;
        m->side = word == 1 ? GW_INNER : GW_OUTER;
    }
    if (gw_get_choice(rd, node, "driven", GW_OPTIONAL, DRIVEN, 3, &word)) m->driven = (gw_driven)word;
    if (!has_any(node, G_KEYS)) gw_fault(rd, node, "expected one of brake_g, lateral_g and drive_g");
    if (m->brake_g > 0 && m->drive_g > 0)
        gw_fault(rd, node, "brake_g and drive_g cannot both be above 0: make two loads of it");
    if (!gw_node_key(&cr->top, "vehicle").json)
        gw_fault(
            rd, node,
            "a manoeuvre needs \"vehicle\" for its load transfer: give that, or a direct load on a corner");
}

/* Keys of both kinds together: each key that does not belong is a fault of its own. */
static void report_mixture(const gw_reader *rd, const gw_node *node)
{
    for (const char *const *k = MANOEUVRE_KEYS; *k; k++) {
        gw_node at = gw_node_key(node, *k);
        if (at.json)
            gw_fault(rd, &at,
                     "belongs to a manoeuvre, but this load also has keys of a direct load: choose one");
    }
}

static void read_load(gw_case_reader *cr, const gw_node *node, gw_load *load)
{
    const gw_reader *rd = &cr->rd;
    gw_node name = gw_node_key(node, "name");
    if (!gw_is_object(rd, node, "an object { }")) return;
    gw_check_keys(rd, node, NULL, 0, ALL_KEYS);
    if (gw_get_text(rd, node, "name", GW_REQUIRED, GW_MAX_TEXT_BYTES, &load->name))
        gw_is_name(rd, &name, load->name);
    bool direct = has_any(node, DIRECT_KEYS), manoeuvre = has_any(node, MANOEUVRE_KEYS);
    if (direct && manoeuvre)
        report_mixture(rd, node);
    else if (direct)
        read_direct(cr, node, load);
    else if (manoeuvre)
        read_manoeuvre(cr, node, load);
    else
        gw_fault(rd, node,
                 "expected a direct load (corner, patch_force_N ...) or a manoeuvre (brake_g, lateral_g, "
                 "drive_g)");
}

/* The old rule shares the load by roll stiffness; the whole car's equilibrium finds it by its springs. */
static void check_rule(gw_case_reader *cr)
{
    const gw_case *c = cr->c;
    gw_node vehicle = gw_node_key(&cr->top, "vehicle"),
            at = gw_node_key(&vehicle, "roll_stiffness_Nm_per_deg");
    bool manoeuvres = false,
         given = c->vehicle.roll_stiffness[GW_FRONT] > 0.0 && c->vehicle.roll_stiffness[GW_REAR] > 0.0;
    for (int l = 0; l < c->n_loads; l++) manoeuvres = manoeuvres || c->loads[l].kind == GW_LOAD_MANOEUVRE;
    if (!c->has_vehicle || !manoeuvres || given || gw_case_on_road(c)) return;
    gw_fault(&cr->rd, &at,
             "give it for front and rear: without both corners and their tyre_vertical_N_per_mm, or with "
             "load_transfer \"rule\", manoeuvres share the load by it");
}

/* Both corners stand with their tyres' rates, and nobody asked for the rule. */
bool gw_case_on_road(const gw_case *c)
{
    bool on_road = c->has_vehicle && !c->vehicle.by_rule;
    for (int a = 0; a < GW_AXLES; a++)
        on_road = on_road && c->has_corner[a] && c->corners[a].wheel.tyre_vertical > 0.0;
    return on_road;
}

void gw_read_loads(gw_case_reader *cr)
{
    const char *names[GW_MAX_LOADS];
    gw_node loads;
    int index = 0;
    if (!gw_get_list(&cr->rd, &cr->top, "loads", GW_OPTIONAL, &loads)) return;
    int n = gw_node_count(&loads);
    if (n == 0 || !gw_is_within(&cr->rd, &loads, GW_MAX_LOADS, "loads")) return;
    if (!(cr->c->loads = gw_reader_make(&cr->rd, n, sizeof *cr->c->loads))) return;
    cr->c->n_loads = n;
    for (const cJSON *e = gw_first(&loads); e; e = gw_node_next(e), index++) {
        gw_node node = gw_node_entry(&loads, e, index);
        read_load(cr, &node, &cr->c->loads[index]);
        names[index] = cr->c->loads[index].name;
    }
    gw_check_unique(&cr->rd, &loads, names, n, "load");
    check_rule(cr);
}
