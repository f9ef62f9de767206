/* SPDX-License-Identifier: MIT */
/* What a case does not describe of the whole car, and what that does to its answers. */
#include "giveway/left_out.h"

#include "base/buf.h"
#include "giveway/casefile.h"
#include "giveway/pair.h"
#include "giveway/study.h"

#include <string.h>

typedef struct gw_list {
    const gw_case *c;
    gw_left_out *out;
    gw_status status;
    gw_error *err;
} gw_list;

enum { MOST = 16 };

static void add(gw_list *l, gw_axle axle, const char *text)
{
    gw_buf line = { 0 };
    if (l->status != GW_OK || l->out->n == MOST) return;
    if (axle < GW_AXLES) gw_buf_fmt(&line, "%s axle: ", gw_axle_name(axle));
    gw_buf_add(&line, text);
    const char *kept = gw_buf_keep(&line, &l->out->arena);
    if (kept)
        l->out->text[l->out->n++] = kept;
    else
        l->status = gw_fail(l->err, GW_E_NOMEM, "out of memory for what a case leaves out");
}

/* A shared member that a name says to be the rack, its link or its housing. */
static bool has_rack(const gw_corner *corner)
{
    static const char *const WORDS[] = { "rack", "steer", "relay", "drag" };
    for (int b = corner->first_shared; b < corner->first_shared + corner->n_shared; b++)
        for (size_t i = 0; i < sizeof WORDS / sizeof *WORDS; i++)
            if (strstr(gw_body_as_written(corner, b), WORDS[i])) return true;
    return false;
}

/* Joints of the left corner on one shared member: two or more are arms, a weld to the upright is a beam. */
static bool carries_wheel(const gw_corner *corner)
{
    for (int b = corner->first_shared; b < corner->first_shared + corner->n_shared; b++) {
        int n = 0;
        for (int j = 0; j < corner->n_joints; j++) {
            const gw_joint *joint = &corner->joints[j];
            int other = joint->body_a == b ? joint->body_b : joint->body_b == b ? joint->body_a : GW_CHASSIS;
            if (other == GW_UPRIGHT) return true;
            n += other > GW_UPRIGHT && other < corner->first_shared;
        }
        if (n >= 2) return true;
    }
    return false;
}

/* Its halves are the uprights, or what they are welded to. */
static bool is_twist_beam(const gw_case *c, const gw_corner *corner)
{
    if (!corner->has_bar) return false;
    if (gw_body_leads_across(corner, GW_UPRIGHT)) return true;
    for (int j = 0; j < corner->n_left; j++) {
        const gw_joint *joint = &corner->joints[j];
        int other = joint->body_a == GW_UPRIGHT ? joint->body_b : joint->body_a;
        bool welded = c->bushes[joint->bush].type == GW_BUSH_RIGID &&
                      (joint->body_a == GW_UPRIGHT || joint->body_b == GW_UPRIGHT);
        if (welded && gw_body_leads_across(corner, other)) return true;
    }
    return false;
}

static void look_at_bar(gw_list *l, gw_axle axle)
{
    const gw_case *c = l->c;
    bool given = c->vehicle.roll_stiffness[axle] > 0.0;
    if (c->pairs[axle].has_bar || !gw_case_on_road(c)) return;
    if (given)
        add(l, axle,
            "no anti-roll bar in its joints: the roll stiffness of the vehicle is made up at the wheels, and "
            "what the bar's bushes and links give away is left out");
    else
        add(l, axle, "no anti-roll bar and no roll stiffness of the vehicle: the springs alone resist roll");
}

static void look_at_shared(gw_list *l, gw_axle axle)
{
    const gw_corner *corner = &l->c->corners[axle];
    bool beam = is_twist_beam(l->c, corner);
    if (axle == GW_FRONT && !has_rack(corner))
        add(l, axle,
            "no rack: what the tie rods hold on to stands still, where a rack adds both wheels' forces in a "
            "corner and lets them cancel in a stop");
    if (!carries_wheel(corner) && !beam)
        add(l, axle,
            "no subframe or beam: what is joined to the chassis there gives way by its own bush alone, for "
            "each wheel by itself");
}

static void look_at_drive(gw_list *l, gw_axle axle)
{
    const gw_corner *corner = &l->c->corners[axle];
    for (int i = 0; i < l->c->n_loads && carries_wheel(corner); i++) {
        const gw_load *load = &l->c->loads[i];
        if (load->kind != GW_LOAD_MANOEUVRE || !(load->manoeuvre.drive_g > 0.0)) continue;
        bool driven = load->manoeuvre.driven == GW_DRIVEN_ALL ||
                      (load->manoeuvre.driven == GW_DRIVEN_FRONT) == (axle == GW_FRONT);
        if (!driven || corner->final_drive != GW_CHASSIS) continue;
        add(l, axle,
            "no final_drive_on: the chassis takes the torque of the drive, and no shared member feels it");
        return;
    }
}

static bool tells_one_wheel(const gw_case *c)
{
    for (int i = 0; i < c->n_loads; i++)
        if (c->loads[i].kind == GW_LOAD_MANOEUVRE && !c->loads[i].both) return true;
    return false;
}

bool gw_leaves_side_untold(const gw_case *c, int kit, gw_axle axle)
{
    return tells_one_wheel(c) && gw_kit_differs_by_side(c, kit, axle);
}

/* A kit for one side shows on that side: a manoeuvre that tells one wheel tells the left. */
static void look_at_sides(gw_list *l, gw_axle axle)
{
    const gw_case *c = l->c;
    gw_buf text = { 0 };
    for (int k = 0; k < c->n_kits; k++)
        if (gw_leaves_side_untold(c, k, axle))
            gw_buf_say(&text, "%s%s", text.n ? ", " : "the right wheel, where kits fit the sides apart (",
                       c->kits[k].name);
    if (text.n) {
        gw_buf_add(&text,
                   "): a manoeuvre tells its outer wheel, the left one, and comparison and page judge by "
                   "that one; \"wheel\": \"both\" in the load tells both");
        add(l, axle, gw_buf_str(&text));
    }
    if (text.failed) l->status = gw_fail(l->err, GW_E_NOMEM, "out of memory for what a case leaves out");
    gw_buf_free(&text);
}

static void look_at_car(gw_list *l)
{
    const gw_case *c = l->c;
    if (gw_case_on_road(c)) {
        if (!(c->corners[GW_FRONT].wheel.mass > 0.0) || !(c->corners[GW_REAR].wheel.mass > 0.0))
            add(l, GW_AXLES, "no wheel.mass_kg: all of the car's mass is taken to be on its springs");
        return;
    }
    if (c->has_vehicle)
        add(l, GW_AXLES,
            "the whole car on the road: manoeuvres go by roll centres and the roll stiffness of the vehicle, "
            "so "
            "every kit rolls alike; both corners, with tyre_vertical_N_per_mm and without load_transfer "
            "\"rule\", let the car find its own roll, pitch and height");
}

gw_status gw_study_left_out(const gw_case *c, gw_left_out *out, gw_error *err)
{
    gw_left_out made = { 0 };
    gw_list l = { .c = c, .out = &made, .err = err };
    made.text = gw_arena_alloc(&made.arena, MOST, sizeof *made.text);
    if (!made.text) l.status = gw_fail(err, GW_E_NOMEM, "out of memory for what a case leaves out");
    for (int a = 0; a < GW_AXLES; a++) {
        if (!c->has_corner[a]) continue;
        look_at_shared(&l, (gw_axle)a);
        look_at_bar(&l, (gw_axle)a);
        look_at_drive(&l, (gw_axle)a);
        look_at_sides(&l, (gw_axle)a);
    }
    if (c->has_corner[GW_FRONT] || c->has_corner[GW_REAR]) look_at_car(&l);
    if (l.status != GW_OK) {
        gw_left_out_free(&made);
        return l.status;
    }
    *out = made;
    return GW_OK;
}

void gw_left_out_free(gw_left_out *left)
{
    gw_arena_free(&left->arena);
    *left = (gw_left_out){ 0 };
}
