/* SPDX-License-Identifier: MIT */
/* Joints: which bodies, where, which way, and with what. */
#include "base/buf.h"
#include "casefile/corner_reader.h"
#include "casefile/nearest.h"
#include "giveway/units.h"

#include <string.h>

static const gw_number_key NUMBERS[] = {
    { "bracket_N_per_mm", GW_OPTIONAL, GW_ABOVE(0, 1e12), GW_N_PER_MM, 0, offsetof(gw_joint, bracket) },
    { "tilt_limit_deg", GW_OPTIONAL, GW_BETWEEN(0, 90), GW_DEG, 0, offsetof(gw_joint, tilt_limit) },
};
static const gw_range CLAMP_RANGE = GW_FROM(-500, 500); /* [mm] */
static const char *const WORDS[] = { "name", "label",   "between",         "at", "axis", "radial_axis",
                                     "bush", "housing", "clamp_travel_mm", NULL };
static const char *const AXLE_WORDS[] = { "name",     "label",   "between",
                                          "at",       "axis",    "radial_axis",
                                          "bush",     "housing", "clamp_travel_mm",
                                          "mirrored", NULL };

int gw_joint_named(const gw_reader *rd, const gw_node *at, const gw_corner *corner, const char *name)
{
    char hint[GW_HINT_MAX];
    gw_buf quoted = { 0 };
    gw_nearest near = { .want = name };
    int joint = gw_corner_find_joint(corner, name);
    if (joint >= 0) return joint;
    for (int i = 0; i < corner->n_joints; i++)
        if (corner->joints[i].name) gw_nearest_offer(&near, gw_joint_as_written(corner, i));
    gw_buf_quote(&quoted, name);
    gw_fault(rd, at, "the %s corner has no joint %s%s", corner->name, gw_buf_str(&quoted),
             gw_nearest_hint(&near, hint));
    gw_buf_free(&quoted);
    return -1;
}

static void read_between(gw_corner_reader *r, const gw_node *node, gw_joint *joint)
{
    const gw_reader *rd = &r->cr->rd;
    gw_node list, entry[2];
    int body[2] = { -1, -1 }, i = 0;
    if (!gw_get_list(rd, node, "between", GW_REQUIRED, &list)) return;
    if (gw_node_count(&list) != 2) {
        gw_fault(rd, &list, "expected a list of the two bodies that the bush joins");
        return;
    }
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e), i++) {
        char found[80];
        entry[i] = gw_node_entry(&list, e, i);
        if (cJSON_IsString(e))
            body[i] = gw_body_of(r, &entry[i], e->valuestring);
        else
            gw_fault(rd, &entry[i], "expected the name of a body, found %s", gw_found(&entry[i], found));
    }
    if (body[0] >= 0 && body[0] == body[1])
        gw_fault(rd, &list, "expected two different bodies: a joint between a body and itself does nothing");
    joint->body_a = body[0];
    joint->body_b = body[1];
}

/* Without a radial axis: z, or x where the bush's axis is within 20 degrees of z. */
static gw_vec3 usual_radial(gw_vec3 e3)
{
    return fabs(e3.z) > cos(20 * GW_DEG) ? gw_v3(1, 0, 0) : gw_v3(0, 0, 1);
}

/* The frame of the bush: Gram-Schmidt on the axis and the radial axis. */
static void read_frame(const gw_reader *rd, const gw_node *node, gw_joint *joint)
{
    gw_node radial_node = gw_node_key(node, "radial_axis");
    gw_vec3 e3, radial;
    bool axis = gw_get_direction(rd, node, "axis", GW_REQUIRED, &e3);
    bool given = gw_get_direction(rd, node, "radial_axis", GW_OPTIONAL, &radial);
    joint->frame = gw_mat3_identity();
    if (!axis || (radial_node.json && !given)) return;
    if (!given) radial = usual_radial(e3);
    gw_vec3 across = gw_axpy(radial, -gw_dot(radial, e3), e3);
    double length = gw_norm(across);
    if (!(length > 1e-6)) {
        gw_fault(rd, &radial_node, "expected a direction across \"axis\", found one along it");
        return;
    }
    gw_vec3 e1 = gw_scale(1 / length, across);
    joint->frame = gw_mat3_from_columns(e1, gw_cross(e3, e1), e3);
}

static void read_housing(gw_corner_reader *r, const gw_node *node, gw_joint *joint)
{
    const gw_reader *rd = &r->cr->rd;
    const char *word;
    gw_node at = gw_node_key(node, "housing");
    joint->housing = -1;
    if (!gw_get_word(rd, node, "housing", GW_OPTIONAL, &word)) return;
    int body = gw_body_of(r, &at, word);
    if (body < 0) return;
    joint->housing = body;
    if (joint->body_a >= 0 && joint->body_b >= 0 && body != joint->body_a && body != joint->body_b)
        gw_fault(rd, &at, "expected one of the two bodies of \"between\"");
}

static void read_bush_of(gw_corner_reader *r, const gw_node *node, gw_joint *joint)
{
    const gw_reader *rd = &r->cr->rd;
    gw_buf name = { 0 };
    gw_node bush = gw_node_key(node, "bush");
    joint->bush = -1;
    if (!bush.json) {
        gw_fault(rd, &bush,
                 "this key is missing: give the name of a bush, or an object { } that describes one");
        return;
    }
    gw_buf_fmt(&name, "%s.%s", r->corner->name, joint->name ? joint->name : "?");
    bool housing = gw_node_key(node, "housing").json != NULL;
    if (name.failed) rd->faults->out_of_memory = true;
    joint->bush = gw_read_bush_ref(r->cr, &bush, gw_buf_str(&name), housing);
    gw_buf_free(&name);
}

/* Where the bolt was tightened; what the corner says holds for every joint that says nothing itself. */
static void read_clamp(gw_corner_reader *r, const gw_node *node, gw_joint *joint)
{
    const gw_reader *rd = &r->cr->rd;
    double travel;
    bool given = gw_get_number(rd, node, "clamp_travel_mm", GW_OPTIONAL, CLAMP_RANGE, &travel);
    if (!given && r->clamped && !gw_node_key(node, "clamp_travel_mm").json) {
        given = true;
        travel = r->clamp_travel_mm;
    }
    if (!given) return;
    joint->clamped = true;
    joint->clamp_travel = travel * GW_MM;
}

void gw_read_joint(gw_corner_reader *r, const gw_node *node, int index, gw_joint *joint)
{
    const gw_reader *rd = &r->cr->rd;
    gw_node name = gw_node_key(node, "name");
    joint->body_a = joint->body_b = joint->housing = joint->bush = -1;
    if (!gw_is_object(rd, node, "an object { }")) return;
    gw_check_keys(rd, node, NUMBERS, GW_COUNT(NUMBERS), r->is_axle ? AXLE_WORDS : WORDS);
    if (gw_get_text(rd, node, "name", GW_REQUIRED, GW_MAX_TEXT_BYTES, &joint->name))
        gw_is_name(rd, &name, joint->name);
    gw_get_text(rd, node, "label", GW_OPTIONAL, GW_MAX_TEXT_BYTES, &joint->label);
    read_between(r, node, joint);
    r->placed[index] = gw_read_place(r, node, "at", &joint->at);
    read_frame(rd, node, joint);
    read_housing(r, node, joint);
    read_bush_of(r, node, joint);
    read_clamp(r, node, joint);
    gw_get_numbers(rd, node, NUMBERS, GW_COUNT(NUMBERS), joint);
}

void gw_read_joints(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    const char *names[GW_CORNER_JOINTS];
    int index = 0;
    if (!gw_get_list(rd, &r->node, "joints", GW_REQUIRED, &r->joints_node)) return;
    r->clamped =
        gw_get_number(rd, &r->node, "clamp_travel_mm", GW_OPTIONAL, CLAMP_RANGE, &r->clamp_travel_mm);
    int n = gw_node_count(&r->joints_node);
    if (!gw_is_within(rd, &r->joints_node, GW_CORNER_JOINTS, "joints")) return;
    if (n == 0) {
        gw_fault(rd, &r->joints_node, "expected at least one joint: nothing holds the upright");
        return;
    }
    if (!(r->corner->joints = gw_reader_make(rd, n, sizeof *r->corner->joints))) return;
    if (!(r->placed = gw_reader_make(rd, n, sizeof *r->placed))) return;
    r->corner->n_joints = n;
    for (const cJSON *e = gw_first(&r->joints_node); e; e = gw_node_next(e), index++) {
        gw_node node = gw_node_entry(&r->joints_node, e, index);
        gw_read_joint(r, &node, index, &r->corner->joints[index]);
        names[index] = r->corner->joints[index].name;
    }
    gw_check_unique(rd, &r->joints_node, names, n, "joint");
}
