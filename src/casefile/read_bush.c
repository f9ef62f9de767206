/* SPDX-License-Identifier: MIT */
/* One bush: what is common to all, then what belongs to its type. */
#include "casefile/section.h"
#include "giveway/units.h"

#define AT(field) offsetof(gw_bush, field)
static const gw_number_key COMMON[] = {
    { "price", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, AT(price) },
    { "fit_minutes", GW_OPTIONAL, GW_FROM(0, 1e6), 1, 0, AT(fit_minutes) },
    { "tilt_limit_deg", GW_OPTIONAL, GW_BETWEEN(0, 90), GW_DEG, 0, AT(tilt_limit) },
    { "offset_mm", GW_OPTIONAL, GW_FROM(0, 100), GW_MM, 0, AT(offset) },
    { "offset_clock_deg", GW_OPTIONAL, GW_FROM(-360, 360), GW_DEG, 0, AT(offset_clock) },
};

static const gw_number_key STIFFNESS[] = {
    { "stiffness_factor", GW_OPTIONAL, GW_ABOVE(0, 1e3), 1, 0, AT(stiffness_factor) },
};

static const gw_number_key LOSSES[] = {
    { "loss_factor", GW_OPTIONAL, GW_FROM(0, 10), 1, 0, AT(loss_factor) },
    { "dynamic_ratio", GW_OPTIONAL, GW_ABOVE(0, 1e3), 1, 0, AT(dynamic_ratio) },
};

static const gw_number_key BALL_JOINT[] = {
    { "radial_N_per_mm", GW_OPTIONAL, GW_FROM(0, 1e12), GW_N_PER_MM, 0, AT(rates.radial) },
    { "axial_N_per_mm", GW_OPTIONAL, GW_FROM(0, 1e12), GW_N_PER_MM, 0, AT(rates.axial) },
};

static const gw_number_key BEARING[] = {
    { "ball_diameter_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, AT(bearing.ball_diameter) },
    { "width_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, AT(bearing.width) },
    { "static_rating_kN", GW_OPTIONAL, GW_ABOVE(0, 1e6), GW_KN, 0, AT(bearing.static_rating) },
    { "clearance_mm", GW_REQUIRED, GW_FROM(0, 10), GW_MM, 0, AT(bearing.clearance) },
    { "breakaway_Nm", GW_REQUIRED, GW_FROM(0, 1e6), 1, 0, AT(bearing.breakaway) },
    { "friction_coefficient", GW_OPTIONAL, GW_FROM(0, 1), 1, 0, AT(bearing.friction) },
    { "radial_N_per_mm", GW_OPTIONAL, GW_ABOVE(0, 1e12), GW_N_PER_MM, 0, AT(bearing.radial) },
    { "axial_N_per_mm", GW_OPTIONAL, GW_FROM(0, 1e12), GW_N_PER_MM, 0, AT(bearing.axial) },
};

/* Every key that a type knows, in the order of gw_bush_type. */
#define EVERY                                                                                                \
    "type", "label", "price", "fit_minutes", "tilt_limit_deg", "stiffness_factor", "offset_mm",              \
        "offset_clock_deg", "press_fit"
#define RUBBER                                                                                               \
    "material", "inner_diameter_mm", "outer_diameter_mm", "length_mm", "end_dish_mm", "interleaf", "stop",   \
        "progressive"
static const char *const KEYS[][28] = {
    { EVERY, "radial_N_per_mm", "axial_N_per_mm", "conical_Nm_per_deg", "torsional_Nm_per_deg", "loss_factor",
      "dynamic_ratio", "stop", "breakaway_Nm", NULL },
    { EVERY, RUBBER, "voids", NULL },
    { EVERY, RUBBER, "friction_coefficient", "breakaway_Nm", NULL },
    { EVERY, "ball_diameter_mm", "width_mm", "liner", "static_rating_kN", "clearance_mm", "breakaway_Nm",
      "friction_coefficient", "radial_N_per_mm", "axial_N_per_mm", NULL },
    { EVERY, "radial_N_per_mm", "axial_N_per_mm", "loss_factor", "dynamic_ratio", "breakaway_Nm", NULL },
    { EVERY, "radial", "radial_e1", "radial_e2", "radial_N_per_mm", "axial", "axial_N_per_mm", "conical",
      "conical_e1", "conical_e2", "conical_Nm_per_deg", "torsional", "torsional_Nm_per_deg", "loss_factor",
      "dynamic_ratio", "dynamic", NULL },
    { EVERY, NULL },
};
/* Both ways, where the case does not say: stiff beside rubber, soft beside the body. Common practice. */
static const double BALL_JOINT_RATE = 50000 * GW_N_PER_MM;

/* Friction of a joint that is given as one torque. One welded against turning has none to overcome. */
static void read_breakaway(const gw_reader *rd, const gw_node *node, gw_bush *bush)
{
    static const double WELDED = 1e4; /* [N m/deg] */
    const gw_range range = GW_FROM(0, 1e3);
    gw_node at = gw_node_key(node, "breakaway_Nm");
    bush->has_breakaway = gw_get_number(rd, node, "breakaway_Nm", GW_OPTIONAL, range, &bush->breakaway);
    if (bush->type == GW_BUSH_RATES && bush->has_breakaway && bush->breakaway > 0.0 &&
        bush->rates.torsional > WELDED * GW_NM_PER_DEG)
        gw_fault(rd, &at,
                 "a joint of more than %g N m/deg about its axis cannot turn, so it has no friction to "
                 "overcome: take "
                 "this key out, or lower torsional_Nm_per_deg",
                 WELDED);
}

static void read_rates(const gw_reader *rd, const gw_node *node, gw_bush *bush)
{
    const gw_range range = GW_FROM(0, 1e12);
    gw_given_rates r = { 0 };
    gw_get_pair(rd, node, "radial_N_per_mm", range, r.radial);
    gw_get_number(rd, node, "axial_N_per_mm", GW_REQUIRED, range, &r.axial);
    gw_get_pair(rd, node, "conical_Nm_per_deg", range, r.conical);
    gw_get_number(rd, node, "torsional_Nm_per_deg", GW_REQUIRED, range, &r.torsional);
    for (int i = 0; i < 2; i++) {
        bush->rates.radial[i] = r.radial[i] * GW_N_PER_MM;
        bush->rates.conical[i] = r.conical[i] * GW_NM_PER_DEG;
    }
    bush->rates.axial = r.axial * GW_N_PER_MM;
    bush->rates.torsional = r.torsional * GW_NM_PER_DEG;
    gw_get_numbers(rd, node, LOSSES, GW_COUNT(LOSSES), bush);
    read_breakaway(rd, node, bush);
    gw_read_stop(rd, node, &bush->stop);
}

static void read_ball_joint(const gw_reader *rd, const gw_node *node, gw_bush *bush)
{
    bush->rates.radial[0] = bush->rates.axial = BALL_JOINT_RATE;
    gw_get_numbers(rd, node, BALL_JOINT, GW_COUNT(BALL_JOINT), bush);
    bush->rates.radial[1] = bush->rates.radial[0];
    gw_get_numbers(rd, node, LOSSES, GW_COUNT(LOSSES), bush);
    read_breakaway(rd, node, bush);
}

static void read_rigid(gw_bush *bush)
{
    gw_given_rates *r = &bush->rates;
    r->radial[0] = r->radial[1] = r->axial = GW_RIGID_RATE;
    r->conical[0] = r->conical[1] = r->torsional = GW_RIGID_TURN;
}

/* Steel on steel, PTFE fabric: the middle of 0.08 to 0.20 and of 0.02 to 0.10, as bearing catalogues print.
 */
static const double USUAL_FRICTION[] = { [GW_LINER_STEEL] = 0.15, [GW_LINER_PTFE] = 0.05 };

/* Nothing is asked of the contact then. */
static bool has_rates(const gw_bearing *bearing)
{
    return bearing->radial > 0.0 && (bearing->axial > 0.0 || bearing->floats);
}

/* The width is for the contact's rates, where they are not given. */
static void check_width(const gw_reader *rd, const gw_node *node, const gw_bearing *bearing)
{
    bool known = bearing->width > 0.0 && bearing->ball_diameter > 0.0;
    if (!known || has_rates(bearing) || bearing->width < bearing->ball_diameter) return;
    gw_node at = gw_node_key(node, "width_mm");
    gw_fault(rd, &at, "expected less than ball_diameter_mm, %.6g: the ball must stand out of its liner",
             bearing->ball_diameter / GW_MM);
}

/* The contact's rates ask for the liner, so it is that of the materials, whoever gave them. */
static void find_liner(const gw_case_reader *cr, const gw_node *node, gw_bearing *bearing)
{
    const gw_material *m = gw_materials_find(cr->materials, "ptfe-fabric");
    gw_node at = gw_node_key(node, "liner");
    if (m && m->young_modulus.known && m->poisson_ratio.known) {
        bearing->liner_young = m->young_modulus.v;
        bearing->liner_poisson = m->poisson_ratio.v;
    } else if (!has_rates(bearing)) {
        gw_fault(&cr->rd, &at,
                 "expected young_modulus_MPa and poisson_ratio in the material ptfe-fabric: add them there, "
                 "or give "
                 "radial_N_per_mm and axial_N_per_mm here");
    }
}

static void read_bearing(const gw_case_reader *cr, const gw_node *node, gw_bush *bush)
{
    const gw_reader *rd = &cr->rd;
    static const char *const LINERS[] = { "steel", "ptfe" }; /* in the order of gw_liner */
    int liner;
    bush->bearing.friction = -1.0;
    gw_get_numbers(rd, node, BEARING, GW_COUNT(BEARING), bush);
    gw_node axial = gw_node_key(node, "axial_N_per_mm");
    gw_warn_short(rd, node, "ball_diameter_mm", bush->bearing.ball_diameter, 1.0);
    bush->bearing.floats = axial.json && bush->bearing.axial <= 0.0;
    check_width(rd, node, &bush->bearing);
    if (gw_get_choice(rd, node, "liner", GW_REQUIRED, LINERS, 2, &liner))
        bush->bearing.liner = (gw_liner)liner;
    if (bush->bearing.friction < 0.0) bush->bearing.friction = USUAL_FRICTION[bush->bearing.liner];
    if (bush->bearing.liner == GW_LINER_PTFE) find_liner(cr, node, &bush->bearing);
}

/* One without the other is half an answer: an offset has a direction. */
static void check_offset_pair(const gw_reader *rd, const gw_node *node)
{
    gw_node offset = gw_node_key(node, "offset_mm"), clock = gw_node_key(node, "offset_clock_deg");
    if (offset.json && !clock.json)
        gw_fault(rd, &clock, "this key is missing: an offset needs its angle from e1 towards e2");
    if (clock.json && !offset.json)
        gw_fault(rd, &offset, "this key is missing: a clock angle belongs to an offset");
}

void gw_read_stiffness(const gw_reader *rd, const gw_node *node, gw_bush *bush)
{
    gw_get_numbers(rd, node, STIFFNESS, GW_COUNT(STIFFNESS), bush);
}

void gw_read_bush(const gw_case_reader *cr, const gw_node *node, gw_bush *bush)
{
    const gw_reader *rd = &cr->rd;
    int type;
    bush->price = bush->fit_minutes = -1;
    bush->dynamic_ratio = bush->stiffness_factor = 1;
    if (!gw_is_object(rd, node, "an object { } that describes a bush")) return;
    if (!gw_get_choice(rd, node, "type", GW_REQUIRED, GW_BUSH_TYPE_WORDS, GW_BUSH_TYPES, &type)) return;
    bush->type = (gw_bush_type)type;
    gw_check_keys(rd, node, NULL, 0, KEYS[type]);
    gw_get_text(rd, node, "label", GW_OPTIONAL, GW_MAX_TEXT_BYTES, &bush->label);
    gw_get_numbers(rd, node, COMMON, GW_COUNT(COMMON), bush);
    gw_read_stiffness(rd, node, bush);
    check_offset_pair(rd, node);
    gw_read_seat(rd, node, &bush->seat);
    switch (bush->type) {
    case GW_BUSH_RATES:
        read_rates(rd, node, bush);
        break;
    case GW_BUSH_BONDED:
    case GW_BUSH_UNBONDED:
        gw_read_rubber(cr, node, bush);
        if (bush->type == GW_BUSH_UNBONDED) read_breakaway(rd, node, bush);
        break;
    case GW_BUSH_BEARING:
        read_bearing(cr, node, bush);
        break;
    case GW_BUSH_BALL_JOINT:
        read_ball_joint(rd, node, bush);
        break;
    case GW_BUSH_RIGID:
        read_rigid(bush);
        break;
    case GW_BUSH_MEASURED:
        gw_read_measured(rd, node, bush);
        gw_get_numbers(rd, node, LOSSES, GW_COUNT(LOSSES), bush);
        break;
    }
}
