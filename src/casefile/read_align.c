/* SPDX-License-Identifier: MIT */
/* What the wheels should be set to, and with what. */
#include "casefile/section.h"
#include "giveway/units.h"

#include <string.h>

static const char *const CORNER_KEYS[] = { "target", "adjusters", "shock_factor", "measured", NULL };
static const char *const TARGET_KEYS[] = { "camber_deg", "toe_deg",       "caster_change_deg",
                                           "caster_deg", "tolerance_deg", NULL };

#define AT(field) offsetof(gw_align, field)
static const gw_number_key TOLERANCES[] = {
    { "camber", GW_OPTIONAL, GW_FROM(0, 45), GW_DEG, 0, AT(camber_tolerance) },
    { "toe", GW_OPTIONAL, GW_FROM(0, 45), GW_DEG, 0, AT(toe_tolerance) },
    { "caster", GW_OPTIONAL, GW_FROM(0, 45), GW_DEG, 0, AT(caster_tolerance) },
};

static bool read_angle(const gw_reader *rd, const gw_node *target, const char *key, double *out)
{
    const gw_range range = GW_FROM(-45, 45);
    if (!gw_get_number(rd, target, key, GW_OPTIONAL, range, out)) return false;
    *out *= GW_DEG;
    return true;
}

static void read_target(const gw_reader *rd, const gw_node *corner, gw_align *align)
{
    gw_node target, tolerance;
    if (!gw_get_object(rd, corner, "target", GW_REQUIRED, &target)) return;
    gw_check_keys(rd, &target, NULL, 0, TARGET_KEYS);
    align->has_camber = read_angle(rd, &target, "camber_deg", &align->camber);
    align->has_toe = read_angle(rd, &target, "toe_deg", &align->toe);
    align->has_caster = read_angle(rd, &target, "caster_change_deg", &align->caster);
    align->has_caster_angle = read_angle(rd, &target, "caster_deg", &align->caster_angle);
    bool any = gw_node_key(&target, "caster_deg").json || gw_node_key(&target, "camber_deg").json ||
               gw_node_key(&target, "toe_deg").json || gw_node_key(&target, "caster_change_deg").json;
    if (!any) gw_fault(rd, &target, "expected at least one of camber_deg, toe_deg and caster_change_deg");
    if (!gw_get_object(rd, &target, "tolerance_deg", GW_OPTIONAL, &tolerance)) return;
    gw_check_keys(rd, &tolerance, TOLERANCES, GW_COUNT(TOLERANCES), NULL);
    gw_get_numbers(rd, &tolerance, TOLERANCES, GW_COUNT(TOLERANCES), align);
}

static void read_side(const gw_reader *rd, const gw_node *measured, const char *key, gw_measured *out)
{
    static const char *const KEYS[] = { "camber_deg", "toe_deg", "caster_deg", NULL };
    gw_node side;
    if (!gw_get_object(rd, measured, key, GW_REQUIRED, &side)) return;
    gw_check_keys(rd, &side, NULL, 0, KEYS);
    out->has_camber = read_angle(rd, &side, "camber_deg", &out->camber);
    out->has_toe = read_angle(rd, &side, "toe_deg", &out->toe);
    out->has_caster = read_angle(rd, &side, "caster_deg", &out->caster);
}

/* What the ramp reads, and a caster angle as a target, which needs a measured one to count from. */
static void read_measured(const gw_reader *rd, const gw_node *corner, gw_align *align)
{
    static const char *const SIDES[] = { "left", "right", NULL };
    gw_node measured, target = gw_node_key(corner, "target"), at = gw_node_key(&target, "caster_deg");
    align->measured = gw_get_object(rd, corner, "measured", GW_OPTIONAL, &measured);
    if (align->measured) {
        gw_check_keys(rd, &measured, NULL, 0, SIDES);
        for (int s = 0; s < 2; s++) read_side(rd, &measured, SIDES[s], &align->side[s]);
        if (align->side[0].has_caster != align->side[1].has_caster)
            gw_fault(rd, &measured, "caster is given on one side: give it on both, or on none");
    }
    if (!at.json) return;
    if (align->has_caster)
        gw_fault(rd, &at, "the target has caster_change_deg as well: keep one of them");
    else if (!align->side[0].has_caster || !align->side[1].has_caster)
        gw_fault(rd, &at,
                 "a caster angle is reached from the measured one: give caster_deg under \"measured\", left "
                 "and right");
}

/* An axle is set on both sides alike, so its adjusters have no side. */
static bool of_one_side(const gw_reader *rd, const gw_node *at, const char *word, const char *written)
{
    if (strcmp(word, written) == 0) return false;
    gw_fault(rd, at, "both sides of an axle are set alike: say \"%s\"", written);
    return true;
}

/* The joint that an adjuster sits in; -1. */
static int read_joint_of(const gw_reader *rd, const gw_node *node, const gw_corner *corner)
{
    const char *word;
    gw_node at = gw_node_key(node, "joint");
    if (!gw_get_word(rd, node, "joint", GW_REQUIRED, &word)) return -1;
    int joint = gw_joint_named(rd, &at, corner, word);
    return joint >= 0 && of_one_side(rd, &at, word, gw_joint_as_written(corner, joint)) ? -1 : joint;
}

static const gw_number_key OFFSET[] = {
    { "max_mm", GW_REQUIRED, GW_ABOVE(0, 50), GW_MM, 0, offsetof(gw_adjuster, max) },
};

/* A bolt beside the bush instead of in it, or in its rubber's last millimetre. */
static void check_offset_fits(const gw_case_reader *cr, const gw_node *node, gw_axle axle,
                              const gw_adjuster *a)
{
    gw_node at = gw_node_key(node, "max_mm");
    for (int k = 0; k < cr->c->n_kits; k++) {
        int fitted = cr->c->kits[k].fits[axle] ? cr->c->kits[k].fits[axle][a->joint] : -1;
        const gw_bush *bush = fitted >= 0 ? &cr->c->bushes[fitted] : NULL;
        bool rubber = bush && gw_bush_is_rubber(bush);
        double outside = bush && bush->seat.given ? bush->seat.diameter / 2 : 0;
        if (rubber && !(outside > 0)) outside = bush->annulus.outer_radius;
        if (!(outside > 0) || a->max < outside) continue;
        gw_fault(&cr->rd, &at,
                 "larger than the housing: the bush of kit \"%s\" is only %.6g mm across, so the bolt would "
                 "lie outside of it",
                 cr->c->kits[k].name, 2 * outside / GW_MM);
        return;
    }
}

static void read_offset(const gw_case_reader *cr, const gw_node *node, gw_axle axle, gw_adjuster *out)
{
    const gw_reader *rd = &cr->rd;
    const gw_corner *corner = &cr->c->corners[axle];
    static const char *const WORDS[] = { "kind", "joint", NULL };
    gw_node at = gw_node_key(node, "joint");
    gw_check_keys(rd, node, OFFSET, GW_COUNT(OFFSET), WORDS);
    gw_get_numbers(rd, node, OFFSET, GW_COUNT(OFFSET), out);
    out->joint = read_joint_of(rd, node, corner);
    if (out->joint >= 0 && corner->joints[out->joint].housing < 0)
        gw_fault(rd, &at,
                 "this joint must name in \"housing\" the body that the off-centre bush is pressed into (the "
                 "wrong body reverses the sign)");
    if (out->joint >= 0) check_offset_fits(cr, node, axle, out);
}

static const gw_number_key LENGTH[] = {
    { "min_mm", GW_REQUIRED, GW_FROM(-500, 500), GW_MM, 0, offsetof(gw_adjuster, min) },
    { "max_mm", GW_REQUIRED, GW_FROM(-500, 500), GW_MM, 0, offsetof(gw_adjuster, max) },
    { "thread_pitch_mm", GW_REQUIRED, GW_ABOVE(0, 50), GW_MM, 0, offsetof(gw_adjuster, thread_pitch) },
};

/* A length is that between the two joints of a link; with more, nobody could say which. */
static void check_link(const gw_reader *rd, const gw_node *node, const gw_corner *corner,
                       const gw_adjuster *a)
{
    gw_node member = gw_node_key(node, "member"), min = gw_node_key(node, "min_mm");
    gw_vec3 end[2] = { { 0 } };
    int n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        if (joint->body_a < 0 || joint->body_b < 0) return; /* a body that is not known has been reported */
        if (joint->body_a != a->body && joint->body_b != a->body) continue;
        if (n < 2) end[n] = joint->at;
        n++;
    }
    if (n != 2) {
        gw_fault(rd, &member,
                 "expected a member with two joints, whose length is between them; this one has %d", n);
        return;
    }
    double length = gw_norm(gw_sub(end[1], end[0]));
    if (length > 0 && -a->min >= length)
        gw_fault(rd, &min, "the member is only %.6g mm long", length / GW_MM);
}

static void read_length(const gw_reader *rd, const gw_node *node, const gw_corner *corner, gw_adjuster *out)
{
    static const char *const WORDS[] = { "kind", "member", "threads", NULL };
    static const char *const THREADS[] = { "single", "opposite" };
    gw_node member = gw_node_key(node, "member"), max = gw_node_key(node, "max_mm");
    const char *word;
    int threads;
    gw_check_keys(rd, node, LENGTH, GW_COUNT(LENGTH), WORDS);
    if (gw_get_numbers(rd, node, LENGTH, GW_COUNT(LENGTH), out) && out->min > out->max)
        gw_fault(rd, &max, "expected at least min_mm");
    if (gw_get_choice(rd, node, "threads", GW_REQUIRED, THREADS, 2, &threads)) out->threads = threads + 1;
    if (!gw_get_word(rd, node, "member", GW_REQUIRED, &word)) return;
    out->body = gw_body_named(rd, &member, corner, word);
    if (out->body >= 0 && of_one_side(rd, &member, word, gw_body_as_written(corner, out->body))) return;
    if (out->body == GW_CHASSIS || out->body == GW_UPRIGHT)
        gw_fault(rd, &member, "expected a member with two joints: this body has no length to adjust");
    else if (out->body > 0)
        check_link(rd, node, corner, out);
}

static const gw_number_key SHIM[] = {
    { "step_mm", GW_REQUIRED, GW_ABOVE(0, 50), GW_MM, 0, offsetof(gw_adjuster, step) },
    { "min_mm", GW_OPTIONAL, GW_FROM(-100, 100), GW_MM, 0, offsetof(gw_adjuster, min) },
    { "max_mm", GW_REQUIRED, GW_FROM(-100, 100), GW_MM, 0, offsetof(gw_adjuster, max) },
};

static void read_shim(const gw_reader *rd, const gw_node *node, const gw_corner *corner, gw_adjuster *out)
{
    static const char *const WORDS[] = { "kind", "joint", "along", NULL };
    gw_node at = gw_node_key(node, "joint"), max = gw_node_key(node, "max_mm");
    gw_check_keys(rd, node, SHIM, GW_COUNT(SHIM), WORDS);
    if (gw_get_numbers(rd, node, SHIM, GW_COUNT(SHIM), out) && out->min >= out->max)
        gw_fault(rd, &max, "expected more than min_mm (0 where left out)");
    gw_get_direction(rd, node, "along", GW_REQUIRED, &out->along);
    out->joint = read_joint_of(rd, node, corner);
    if (out->joint < 0) return;
    const gw_joint *joint = &corner->joints[out->joint];
    if (joint->body_a > GW_CHASSIS && joint->body_b > GW_CHASSIS)
        gw_fault(rd, &at, "expected a joint on the chassis, whose point there the shim moves");
}

static void read_adjuster(const gw_case_reader *cr, const gw_node *node, gw_axle axle, gw_adjuster *out)
{
    const gw_reader *rd = &cr->rd;
    const gw_corner *corner = &cr->c->corners[axle];
    static const char *const KINDS[] = { "offset", "length", "shim" }; /* in the order of gw_adjuster_kind */
    int kind;
    out->joint = out->body = -1;
    if (!gw_is_object(rd, node, "an object { }")) return;
    if (!gw_get_choice(rd, node, "kind", GW_REQUIRED, KINDS, 3, &kind)) return;
    out->kind = (gw_adjuster_kind)kind;
    switch (out->kind) {
    case GW_ADJUST_OFFSET:
        read_offset(cr, node, axle, out);
        break;
    case GW_ADJUST_LENGTH:
        read_length(rd, node, corner, out);
        break;
    case GW_ADJUST_SHIM:
        read_shim(rd, node, corner, out);
        break;
    }
}

static void read_adjusters(const gw_case_reader *cr, const gw_node *node, gw_axle axle, gw_align *align)
{
    const gw_reader *rd = &cr->rd;
    gw_node list;
    int index = 0;
    if (!gw_get_list(rd, node, "adjusters", GW_REQUIRED, &list)) return;
    int n = gw_node_count(&list);
    if (n == 0) gw_fault(rd, &list, "expected at least one adjuster: nothing could reach the target");
    if (n == 0 || !gw_is_within(rd, &list, GW_MAX_ADJUSTERS, "adjusters")) return;
    if (!(align->adjusters = gw_reader_make(rd, n, sizeof *align->adjusters))) return;
    align->n_adjusters = n;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e), index++) {
        gw_node entry = gw_node_entry(&list, e, index);
        read_adjuster(cr, &entry, axle, &align->adjusters[index]);
    }
}

void gw_read_align(gw_case_reader *cr)
{
    const gw_reader *rd = &cr->rd;
    const gw_range SHOCK = GW_FROM(1, 100);
    gw_node align;
    if (!gw_get_object(rd, &cr->top, "align", GW_OPTIONAL, &align)) return;
    gw_check_keys(rd, &align, NULL, 0, GW_AXLE_NAMES);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_node node;
        if (!gw_get_object(rd, &align, GW_AXLE_NAMES[a], GW_OPTIONAL, &node)) continue;
        if (!cr->c->has_corner[a]) {
            gw_fault(rd, &node, "there is no %s corner in \"corners\"", GW_AXLE_NAMES[a]);
            continue;
        }
        cr->c->align[a].present = true;
        gw_check_keys(rd, &node, NULL, 0, CORNER_KEYS);
        read_target(rd, &node, &cr->c->align[a]);
        read_measured(rd, &node, &cr->c->align[a]);
        gw_get_number(rd, &node, "shock_factor", GW_OPTIONAL, SHOCK, &cr->c->align[a].shock_factor);
        read_adjusters(cr, &node, (gw_axle)a, &cr->c->align[a]);
    }
}
