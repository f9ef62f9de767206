/* SPDX-License-Identifier: MIT */
/* A corner: wheel, points, members, joints, spring and damper. */
#include "casefile/corner_reader.h"

#include "giveway/units.h"

#include <string.h>

static const char *const CORNER_KEYS[] = { "wheel",  "points_mm", "members",         "joints",
                                           "spring", "damper",    "clamp_travel_mm", NULL };
static const char *const SPRING_KEYS[] = { "on", "at", "to", NULL };

static const gw_number_key SPRING_NUMBERS[] = {
    { "rate_N_per_mm", GW_REQUIRED, GW_ABOVE(0, 1e9), GW_N_PER_MM, 0, offsetof(gw_spring, rate) },
};

static const gw_number_key DAMPER_NUMBERS[] = {
    { "rate_Ns_per_mm", GW_REQUIRED, GW_FROM(0, 1e9), GW_NS_PER_MM, 0, offsetof(gw_damper, rate) },
    { "top_mount_N_per_mm", GW_OPTIONAL, GW_ABOVE(0, 1e9), GW_N_PER_MM, 0, offsetof(gw_damper, top_mount) },
    { "friction_N", GW_OPTIONAL, GW_FROM(0, 5e3), 1, 0, offsetof(gw_damper, friction) },
};

static bool add_body(const gw_reader *rd, gw_corner *corner, const char *name)
{
    gw_body *body = &corner->bodies[corner->n_bodies];
    if (!(body->name = gw_keep(rd, name))) return false;
    corner->n_bodies++;
    return true;
}

/* What the axle shares comes after the corner's own. */
static void add_shared(gw_corner_reader *r)
{
    gw_corner *corner = r->corner;
    corner->first_shared = corner->n_bodies;
    if (!r->axle) return;
    for (int i = 0; i < r->axle->n_shared; i++) {
        gw_node at = { NULL, &r->members_node, r->axle->shared[i].name, 0 };
        if (gw_corner_find_body(corner, r->axle->shared[i].name) > GW_UPRIGHT)
            gw_fault(&r->cr->rd, &at, "the axle has a member of this name too: rename one of them");
        corner->bodies[corner->n_bodies++] = r->axle->shared[i];
        corner->n_shared++;
    }
}

/* False where the bodies are not known, so that joints cannot be read. */
static bool read_members(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    bool given = gw_get_object(rd, &r->node, "members", GW_OPTIONAL, &r->members_node);
    int n = given ? gw_node_count(&r->members_node) : 0, more = r->axle ? r->axle->n_shared : 0;
    if (given && !gw_is_within(rd, &r->members_node, GW_CORNER_BODIES - 2, "members")) return false;
    if (!(r->corner->bodies = gw_reader_make(rd, n + 2 + more, sizeof *r->corner->bodies))) return false;
    if (!add_body(rd, r->corner, "chassis") || !add_body(rd, r->corner, "upright")) return false;
    if (!given && gw_node_key(&r->node, "members").json) return false;
    for (const cJSON *e = given ? gw_first(&r->members_node) : NULL; e; e = gw_node_next(e)) {
        gw_node node = gw_node_entry(&r->members_node, e, 0);
        if (!gw_read_member(rd, &node, &r->corner->bodies[r->corner->n_bodies])) return false;
        r->corner->n_bodies++;
    }
    add_shared(r);
    return true;
}

/* Where a spring or damper stands and where it leads; both ends must be apart. */
static void read_strut(gw_corner_reader *r, const gw_node *node, int *body, gw_vec3 *at, gw_vec3 *to)
{
    const gw_reader *rd = &r->cr->rd;
    const char *on;
    gw_node on_node = gw_node_key(node, "on");
    if (gw_get_word(rd, node, "on", GW_REQUIRED, &on)) {
        int found = gw_body_of(r, &on_node, on);
        if (found == GW_CHASSIS)
            gw_fault(rd, &on_node,
                     "expected the upright or a member: the other end is the one on the chassis");
        if (found > 0) *body = found;
    }
    bool a = gw_read_place(r, node, "at", at), b = gw_read_place(r, node, "to", to);
    if (a && b && gw_norm(gw_sub(*to, *at)) < GW_COINCIDENT)
        gw_fault(rd, node,
                 "expected a length: \"at\" and \"to\" are the same place, so that it has no direction");
}

static void read_spring(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    gw_spring *spring = &r->corner->spring;
    gw_node node = gw_node_key(&r->node, "spring");
    if (!node.json) {
        gw_fault(rd, &node, "this key is missing: give the spring, which carries the wheel");
        return;
    }
    if (!gw_is_object(rd, &node, "an object { }")) return;
    gw_check_keys(rd, &node, SPRING_NUMBERS, GW_COUNT(SPRING_NUMBERS), SPRING_KEYS);
    gw_get_numbers(rd, &node, SPRING_NUMBERS, GW_COUNT(SPRING_NUMBERS), spring);
    read_strut(r, &node, &spring->body, &spring->at, &spring->to);
}

static void read_damper(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    gw_damper *damper = &r->corner->damper;
    gw_node node;
    if (!gw_get_object(rd, &r->node, "damper", GW_OPTIONAL, &node)) return;
    damper->present = true;
    gw_check_keys(rd, &node, DAMPER_NUMBERS, GW_COUNT(DAMPER_NUMBERS), SPRING_KEYS);
    gw_get_numbers(rd, &node, DAMPER_NUMBERS, GW_COUNT(DAMPER_NUMBERS), damper);
    read_strut(r, &node, &damper->body, &damper->at, &damper->to);
}

/* Both wheels as one; a corner with shared parts is that from now on. */
static void make_pair(gw_corner_reader *r, const gw_corner_reader *axle, gw_axle which)
{
    gw_case *c = r->cr->c;
    gw_error err = { 0 };
    r->corner->shared = axle->n_shared > 0 || axle->n_more > 0;
    if (gw_corner_pair(r->corner, axle->more, axle->n_more, r->cr->rd.arena, &c->pairs[which], &err) !=
        GW_OK) {
        if (err.code == GW_E_NOMEM) r->cr->rd.faults->out_of_memory = true;
        if (err.code != GW_E_NOMEM) gw_fault(&r->cr->rd, &axle->node, "%s", err.msg);
        return;
    }
    if (r->corner->shared) *r->corner = c->pairs[which];
}

void gw_read_corner(gw_case_reader *cr, const gw_node *node, const gw_node *shared, gw_axle which)
{
    gw_corner_reader r = { .cr = cr, .node = *node, .corner = &cr->c->corners[which] };
    gw_corner_reader axle = { .cr = cr, .node = *shared, .corner = r.corner, .is_axle = true };
    if (!gw_is_object(&cr->rd, node, "an object { }")) return;
    cr->c->has_corner[which] = true;
    r.corner->name = gw_axle_name(which);
    gw_check_keys(&cr->rd, node, NULL, 0, CORNER_KEYS);
    gw_read_wheel(&cr->rd, &r.node, &r.corner->wheel);
    gw_read_points(&r);
    if (gw_read_axle_members(&axle)) r.axle = &axle;
    if (!read_members(&r)) return;
    gw_read_joints(&r);
    read_spring(&r);
    read_damper(&r);
    gw_read_axle_joints(&axle);
    make_pair(&r, &axle, which);
    gw_check_corner(&r, &axle);
    gw_warn_unused_points(&r);
    gw_warn_unused_points(&axle);
}
