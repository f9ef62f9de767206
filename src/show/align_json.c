/* SPDX-License-Identifier: MIT */
#include "show/align.h"

#include "format/json.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/words.h"

static void put_deg(gw_json *json, const char *key, double angle)
{
    gw_json_number(json, key, angle / GW_DEG);
}

static void put_setting(gw_json *json, const char *key, const gw_corner_setting *s)
{
    gw_json_object_on_line(json, key);
    put_deg(json, "camber_deg", s->camber);
    put_deg(json, "toe_deg", s->toe);
    put_deg(json, "caster_change_deg", s->caster_change);
    gw_json_close(json);
}

/* With the caster angle itself where it was measured. */
static void put_setting_of(gw_json *json, const char *key, const gw_align_item *item,
                           const gw_corner_setting *s)
{
    gw_json_object_on_line(json, key);
    put_deg(json, "camber_deg", s->camber);
    put_deg(json, "toe_deg", s->toe);
    put_deg(json, "caster_change_deg", s->caster_change);
    if (item->has_caster) put_deg(json, "caster_deg", item->caster + s->caster_change);
    gw_json_close(json);
}

static void put_line(gw_json *json, const char *key, const gw_axle_line *l)
{
    gw_json_object_on_line(json, key);
    put_deg(json, "total_toe_deg", l->total_toe);
    put_deg(json, "camber_difference_deg", l->camber_difference);
    put_deg(json, "caster_difference_deg", l->caster_difference);
    put_deg(json, "thrust_angle_deg", l->thrust);
    put_deg(json, "steering_wheel_deg", l->steering_wheel);
    gw_json_close(json);
}

static void put_axles(gw_json *json, const gw_case *c, const gw_align_study *study)
{
    if (!study->n_axles) return;
    gw_json_array(json, "axles");
    for (int i = 0; i < study->n_axles; i++) {
        const gw_align_axle *a = &study->axle_lines[i];
        gw_json_object(json, NULL);
        gw_json_string(json, "kit", c->kits[a->kit].name);
        gw_json_string(json, "axle", gw_axle_name(a->axle));
        put_line(json, "before", &a->before);
        put_line(json, "after", &a->after);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_target(gw_json *json, const gw_align *align)
{
    static const char *const KEYS[] = { "toe_deg", "camber_deg", "caster_change_deg" };
    gw_json_object(json, "target");
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        if (gw_target_given(align, t)) put_deg(json, KEYS[t], gw_target_of(align, t));
    if (align->has_caster_angle) put_deg(json, "caster_deg", align->caster_angle);
    gw_json_object_on_line(json, "tolerance_deg");
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        if (gw_target_tolerance(align, t) > 0.0)
            put_deg(json, gw_target_name(t), gw_target_tolerance(align, t));
    gw_json_close(json);
    gw_json_close(json);
}

/* By how much each target is missed, and whether that is within what the case tolerates. */
static void put_miss(gw_json *json, const gw_align *align, const gw_align_item *item)
{
    static const char *const KEYS[] = { "toe_deg", "camber_deg", "caster_change_deg" };
    bool reached = true, tolerated = true;
    gw_json_object_on_line(json, "miss");
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++) {
        reached = reached && item->reached[t];
        tolerated = tolerated && item->tolerated[t];
        if (gw_target_given(align, t)) put_deg(json, KEYS[t], item->miss[t]);
    }
    gw_json_close(json);
    gw_json_bool(json, "target_reached", reached);
    gw_json_bool(json, "within_tolerance", tolerated);
}

static void put_offset(gw_json *json, const gw_joint *joint, const gw_move *move)
{
    gw_mark mark = gw_mark_of(joint, gw_offset_vector(joint, move));
    gw_json_string(json, "joint", joint->name);
    gw_json_number(json, "offset_mm", gw_offset_size(move) / GW_MM);
    put_deg(json, "clock_deg", gw_offset_clock(move));
    put_deg(json, "mark_left_deg", mark.left);
    put_deg(json, "mark_right_deg", mark.right);
    gw_json_string(json, "mark_is", gw_view_words(mark.view));
}

static void put_adjuster(gw_json *json, const gw_corner *corner, const gw_adjuster *a,
                         const gw_adjustment *set)
{
    static const char *const KINDS[] = { "offset", "length", "shim" };
    double along = set->move.along[0];
    gw_json_object_on_line(json, NULL);
    gw_json_string(json, "kind", KINDS[a->kind]);
    if (a->kind == GW_ADJUST_OFFSET) put_offset(json, &corner->joints[a->joint], &set->move);
    if (a->kind == GW_ADJUST_LENGTH) {
        gw_json_string(json, "member", corner->bodies[a->body].name);
        gw_json_number(json, "length_change_mm", along / GW_MM);
        gw_json_number(json, "turns", gw_turns_of(a, along));
    }
    if (a->kind == GW_ADJUST_SHIM) {
        gw_json_string(json, "joint", corner->joints[a->joint].name);
        gw_json_number(json, "shim_mm", along / GW_MM);
        gw_json_int(json, "steps", lround(along / a->step));
    }
    gw_json_bool(json, "at_limit", set->at_limit);
    gw_json_bool(json, "holds_target", set->holds);
    gw_json_close(json);
}

static void put_adjusters(gw_json *json, const gw_case *c, gw_axle axle, const gw_adjustment *set)
{
    gw_json_array(json, "adjusters");
    for (int a = 0; a < c->align[axle].n_adjusters; a++)
        put_adjuster(json, &c->corners[axle], &c->align[axle].adjusters[a], &set[a]);
    gw_json_close(json);
}

static void put_sensitivity(gw_json *json, const gw_case *c, const gw_align_item *item)
{
    static const char *const KINDS[] = { "offset", "length", "shim" };
    gw_json_array(json, "sensitivity");
    for (int i = 0; i < item->n_sensitivities; i++) {
        const gw_sensitivity *s = &item->sensitivity[i];
        const gw_adjuster *a = &c->align[item->axle].adjusters[s->adjuster];
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "kind", KINDS[a->kind]);
        if (a->kind == GW_ADJUST_LENGTH)
            gw_json_string(json, "member", c->corners[item->axle].bodies[a->body].name);
        else
            gw_json_string(json, "joint", c->corners[item->axle].joints[a->joint].name);
        if (a->kind == GW_ADJUST_OFFSET) gw_json_string(json, "along", s->axis ? "e2" : "e1");
        gw_json_number(json, "camber_deg_per_mm", s->camber / GW_DEG * GW_MM);
        gw_json_number(json, "toe_deg_per_mm", s->toe / GW_DEG * GW_MM);
        gw_json_number(json, "caster_deg_per_mm", s->caster / GW_DEG * GW_MM);
        gw_json_number(json, "half_track_mm_per_mm", s->track);
        gw_json_number(json, "bump_steer_deg_per_m_per_mm", s->bump_steer / GW_DEG * GW_MM);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_turned(gw_json *json, const gw_case *c, const gw_align_item *item)
{
    gw_json_array(json, "alternative");
    for (int i = 0; i < item->n_turned; i++) {
        gw_json_object(json, NULL);
        put_setting(json, "reached", &item->turned[i].reached);
        put_adjusters(json, c, item->axle, item->turned[i].set);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_moved(gw_json *json, const gw_align_item *item)
{
    const gw_stance *b = &item->before, *a = &item->after;
    gw_json_object_on_line(json, "moved");
    put_deg(json, "caster_change_deg", a->setting.caster_change - b->setting.caster_change);
    gw_json_number(json, "track_mm", 2.0 * (a->patch.y - b->patch.y) / GW_MM);
    gw_json_number(json, "wheel_forward_mm", (a->centre.x - b->centre.x) / GW_MM);
    put_deg(json, "bump_steer_before_deg_per_m", b->bump_steer);
    put_deg(json, "bump_steer_after_deg_per_m", a->bump_steer);
    put_deg(json, "bump_camber_before_deg_per_m", b->bump_camber);
    put_deg(json, "bump_camber_after_deg_per_m", a->bump_camber);
    gw_json_close(json);
}

static void put_loads(gw_json *json, const gw_case *c, const gw_align_item *item)
{
    gw_json_array(json, "loads");
    for (int i = 0; i < item->n_loads; i++) {
        const gw_align_load *l = &item->load[i];
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "load", c->loads[l->load].name);
        put_deg(json, "camber_change_before_deg", l->camber_before);
        put_deg(json, "camber_change_after_deg", l->camber_after);
        put_deg(json, "toe_change_before_deg", l->toe_before);
        put_deg(json, "toe_change_after_deg", l->toe_after);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_tilts(gw_json *json, const gw_corner *corner, const gw_align_item *item)
{
    gw_json_array(json, "tilt");
    for (int i = 0; i < item->n_tilts; i++) {
        const gw_align_tilt *t = &item->tilt[i];
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", corner->joints[t->joint].name);
        put_deg(json, "limit_deg", t->limit);
        put_deg(json, "before_deg", t->before);
        put_deg(json, "after_deg", t->after);
        put_deg(json, "margin_deg", t->limit - t->after);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_seats(gw_json *json, const gw_corner *corner, const gw_align_item *item)
{
    gw_json_array(json, "press_fits");
    for (int i = 0; i < item->n_seats; i++) {
        const gw_align_seat *s = &item->seat[i];
        const double um[2] = { s->least * 1e3 / GW_MM, s->most * 1e3 / GW_MM };
        const double pressure[2] = { s->held.pressure / GW_MPA, s->worst.pressure / GW_MPA };
        const double force[2] = { s->held.force, s->worst.force };
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", corner->joints[s->joint].name);
        gw_json_numbers(json, "interference_um", um, 2);
        gw_json_numbers(json, "pressure_MPa", pressure, 2);
        gw_json_number(json, "housing_hoop_MPa", s->worst.housing_hoop / GW_MPA);
        gw_json_number(json, "sleeve_hoop_MPa", s->worst.sleeve_hoop / GW_MPA);
        gw_json_numbers(json, "press_in_force_N", force, 2);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_checks(gw_json *json, const gw_corner *corner, const gw_align_item *item)
{
    gw_json_array(json, "checks");
    for (int i = 0; i < item->n_checks; i++) {
        const gw_verdict *v = &item->check[i].verdict;
        gw_trade_figure figure = gw_trade_figure_of(v);
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "joint", corner->joints[item->check[i].joint].name);
        gw_json_string(json, "what", v->what);
        gw_json_number(json, "value", v->value / figure.scale);
        gw_json_number(json, "limit", v->limit / figure.scale);
        gw_json_string(json, "unit", figure.unit);
        gw_json_string(json, "bound", v->bound == GW_AT_MOST ? "at most" : "at least");
        gw_json_bool(json, "holds", v->holds);
        gw_json_string(json, "source", v->source);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_number(json, "shock_factor", item->shock_factor);
}

static void put_side(gw_json *json, const char *key, const gw_corner_setting *s, double rim)
{
    gw_json_object_on_line(json, key);
    put_deg(json, "camber_deg", s->camber);
    gw_json_string(json, "camber", gw_degrees_minutes(s->camber, 0).s);
    put_deg(json, "toe_deg", s->toe);
    gw_json_string(json, "toe", gw_degrees_minutes(s->toe, 0).s);
    if (rim > 0.0) gw_json_number(json, "toe_at_rim_mm", gw_toe_at_rim(s->toe, rim) / GW_MM);
    put_deg(json, "caster_change_deg", s->caster_change);
    gw_json_string(json, "caster_change", gw_degrees_minutes(s->caster_change, 0).s);
    gw_json_close(json);
}

/* The car is the same on both sides; the sheet says so twice, as it is filled in. */
static void put_sheet(gw_json *json, const gw_corner *corner, const gw_align_item *item)
{
    static const char *const SIDES[] = { "left", "right" };
    double rim = corner->wheel.rim_diameter;
    gw_json_object(json, "sheet");
    for (int side = 0; side < 2; side++) {
        gw_json_object(json, SIDES[side]);
        put_side(json, "before", &item->before.setting, rim);
        put_side(json, "after", &item->after.setting, rim);
        gw_json_close(json);
    }
    put_deg(json, "total_toe_before_deg", 2.0 * item->before.setting.toe);
    put_deg(json, "total_toe_after_deg", 2.0 * item->after.setting.toe);
    gw_json_array(json, "order_of_work");
    for (int i = 0; gw_order_of_work(i); i++) gw_json_string(json, NULL, gw_order_of_work(i));
    gw_json_close(json);
    gw_json_close(json);
}

static void put_item(gw_json *json, const gw_case *c, const gw_align_item *item)
{
    const gw_corner *corner = &c->corners[item->axle];
    const gw_align *align = &c->align[item->axle];
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", c->kits[item->kit].name);
    gw_json_string(json, "corner", gw_axle_name(item->axle));
    if (item->side != GW_RAMP_BOTH)
        gw_json_string(json, "side", item->side == GW_RAMP_LEFT ? "left" : "right");
    put_target(json, align);
    put_setting_of(json, "before", item, &item->before.setting);
    put_setting_of(json, "before_resetting", item, &item->fitted.setting);
    put_setting_of(json, "reached", item, &item->after.setting);
    put_miss(json, align, item);
    put_adjusters(json, c, item->axle, item->set);
    put_sensitivity(json, c, item);
    put_turned(json, c, item);
    put_moved(json, item);
    put_loads(json, c, item);
    put_tilts(json, corner, item);
    put_seats(json, corner, item);
    put_checks(json, corner, item);
    put_sheet(json, corner, item);
    gw_json_close(json);
}

void gw_align_json(const gw_case *c, const gw_align_study *study, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "align");
    gw_json_string(&json, "case", c->title);
    gw_json_array(&json, "results");
    for (int i = 0; i < study->n; i++) put_item(&json, c, &study->item[i]);
    gw_json_close(&json);
    put_axles(&json, c, study);
    gw_json_array(&json, "cautions");
    gw_json_string(&json, NULL, gw_words_text(GW_WORDS_SAFETY));
    gw_json_string(&json, NULL, gw_words_text(GW_WORDS_DEFER));
    gw_json_close(&json);
    gw_json_array(&json, "warnings");
    for (int i = 0; i < study->n_warnings; i++) gw_json_string(&json, NULL, study->warning[i]);
    gw_json_close(&json);
    gw_json_close(&json);
}
