/* SPDX-License-Identifier: MIT */
/* The parts of an axle for the drawing: where they are, and how they have moved in every state that was
 * solved. */
#include "page/drawing.h"
#include "page/stand.h"

#include "page/pack.h"
#include "record/unit.h"
#include "show/joint.h"

#include <math.h>

enum { TYRE_WIDTH_MM = 200 }; /* drawn; no case gives it */

static double mm_of(double length)
{
    return gw_unit_out(GW_UNIT_MM, length);
}

static double degrees_of(double angle)
{
    return gw_unit_out(GW_UNIT_DEG, angle);
}

static void put_place(gw_json *json, const char *key, gw_vec3 at)
{
    double mm[] = { mm_of(at.x), mm_of(at.y), mm_of(at.z) };
    for (int i = 0; i < 3; i++) mm[i] = round(mm[i] * 10.0) / 10.0;
    gw_json_numbers(json, key, mm, 3);
}

static void put_strut(gw_json *json, const char *key, int body, gw_vec3 at, gw_vec3 to)
{
    gw_json_object_on_line(json, key);
    gw_json_int(json, "body", body);
    put_place(json, "at", at);
    put_place(json, "to", to);
    gw_json_close(json);
}

static void put_struts(gw_json *json, const gw_corner *pair)
{
    gw_json_array(json, "springs");
    put_strut(json, NULL, pair->spring.body, pair->spring.at, pair->spring.to);
    put_strut(json, NULL, pair->right_spring.body, pair->right_spring.at, pair->right_spring.to);
    gw_json_close(json);
    gw_json_array(json, "dampers");
    if (pair->damper.present) {
        put_strut(json, NULL, pair->damper.body, pair->damper.at, pair->damper.to);
        put_strut(json, NULL, pair->right_damper.body, pair->right_damper.at, pair->right_damper.to);
    }
    gw_json_close(json);
}

static void put_bodies(const gw_page *p, gw_json *json, gw_axle axle)
{
    const gw_corner *pair = &p->c->pairs[axle];
    gw_json_array(json, "bodies");
    for (int b = 0; b < pair->n_bodies; b++) {
        gw_json_object_on_line(json, NULL);
        gw_json_int(json, "side", (long)gw_body_side(pair, b));
        put_place(json, "mark", p->r->pictures.mark[axle][b]);
        gw_json_close(json);
    }
    gw_json_close(json);
}

/* The joint of the corner that a joint of the axle is, or mirrors. */
static int in_corner(const gw_page *p, gw_axle axle, int joint)
{
    const gw_corner *corner = &p->c->corners[axle];
    return joint < corner->n_joints ? joint : p->c->pairs[axle].joints[joint].twin;
}

static void put_joints(const gw_page *p, gw_json *json, gw_axle axle)
{
    const gw_corner *pair = &p->c->pairs[axle];
    gw_json_array(json, "joints");
    for (int j = 0; j < pair->n_joints; j++) {
        const gw_joint *joint = &pair->joints[j];
        gw_json_object_on_line(json, NULL);
        gw_buf name = { 0 };
        gw_joint_said(&p->c->corners[axle], in_corner(p, axle, j), &name);
        gw_json_string(json, "label", gw_buf_str(&name));
        gw_buf_drop(&name, json->out);
        if (!gw_is_pair(&p->c->corners[axle])) gw_json_string(json, "side", gw_joint_side(pair, j));
        gw_json_int(json, "a", joint->body_a);
        gw_json_int(json, "b", joint->body_b);
        gw_json_int(json, "joint", in_corner(p, axle, j));
        gw_json_bool(json, "own", j < p->c->corners[axle].n_joints);
        put_place(json, "at", joint->at);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_axles(const gw_page *p, gw_json *json)
{
    gw_json_array(json, "axles");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        if (!gw_page_has_axle(p, a)) continue;
        const gw_corner *pair = &p->c->pairs[a];
        gw_json_object(json, NULL);
        gw_json_int(json, "index", (long)a);
        put_place(json, "wheel", pair->wheel.centre);
        gw_json_number(json, "radius", mm_of(pair->wheel.loaded_radius));
        gw_json_int(json, "width", TYRE_WIDTH_MM);
        gw_json_int(json, "right", pair->right_upright);
        put_bodies(p, json, a);
        put_joints(p, json, a);
        put_struts(json, pair);
        gw_json_close(json);
    }
    gw_json_close(json);
}

/* ---- how they have moved: a text of whole numbers, which the script takes apart in the same order ---- */

/* In steps of a millimetre and a thousandth of a radian, and ten times as fine what the load adds, which is
 * drawn larger; of a load of the case, which is measured too, both another ten times. */
static void put_moves(gw_buf *row, const gw_part_move *move, const gw_part_move *less, int n, bool state)
{
    double fine = (less ? 1e4 : 1e3) * (state ? 1.0 : 10.0);
    for (int b = GW_UPRIGHT; b < n; b++) {
        gw_vec3 at = less ? gw_sub(move[b].move, less[b].move) : move[b].move;
        gw_vec3 turn = less ? gw_sub(move[b].turn, less[b].turn) : move[b].turn;
        const double x[] = { at.x, at.y, at.z, turn.x, turn.y, turn.z };
        for (int i = 0; i < 6; i++) gw_pack(row, x[i] * fine);
    }
}

/* Angles of both wheels in 0.0001 degrees; how the body leans outwards in 0.001 degrees and its rise in 0.1
 * mm; moves; shares in 0.001 degrees; how far bushes give in 0.01 mm, but in a state of the grid: only a load
 * of the case tells of a bush so much. */
static void put_picture(gw_json *json, const gw_picture *picture, const gw_corner *pair, bool state)
{
    gw_buf row = { 0 };
    const double angles[] = { picture->toe[0], picture->toe[1], picture->camber[0], picture->camber[1] };
    if (!picture->solved) {
        gw_json_null(json, NULL);
        return;
    }
    for (int i = 0; i < 4; i++) gw_pack(&row, degrees_of(angles[i]) * 1e4);
    gw_pack(&row, degrees_of(picture->roll) * 1e3);
    gw_pack(&row, mm_of(picture->rise) * 10.0);
    put_moves(&row, picture->by_travel, NULL, pair->n_bodies, state);
    put_moves(&row, picture->moved, picture->by_travel, pair->n_bodies, state);
    for (int j = 0; j < pair->n_joints; j++) gw_pack(&row, degrees_of(picture->toe_share[j]) * 1e3);
    for (int j = 0; j < pair->n_joints && !state; j++) gw_pack(&row, mm_of(picture->given[j]) * 1e2);
    gw_json_string(json, NULL, gw_buf_str(&row));
    gw_buf_drop(&row, json->out);
}

static void put_pictures(const gw_page *p, gw_json *json)
{
    const gw_picture_study *s = &p->r->pictures;
    gw_json_array(json, "pictures");
    for (int i = 0; i < s->n; i++) {
        const gw_axle_pictures *of = &s->item[i];
        const gw_corner *pair = &p->c->pairs[of->axle];
        gw_json_object(json, NULL);
        gw_json_int(json, "kit", of->kit);
        gw_json_int(json, "axle", (long)of->axle);
        gw_json_number(json, "roll_centre_mm", round(mm_of(of->roll_centre) * 10.0) / 10.0);
        gw_json_array(json, "loads");
        for (int l = 0; l < p->c->n_loads; l++) put_picture(json, &of->load[l], pair, false);
        gw_json_close(json);
        gw_json_array(json, "states");
        for (int k = 0; of->state && k < s->n_brake * s->n_lateral; k++)
            put_picture(json, &of->state[k], pair, true);
        gw_json_close(json);
        gw_json_close(json);
    }
    gw_json_close(json);
}

/* ---- what is fitted, and what it bears ---- */

static void put_fits(const gw_page *p, gw_json *json)
{
    gw_json_array(json, "fits");
    for (int k = 0; k < p->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_page_has_kit(p, k) || !gw_page_has_axle(p, a)) continue;
            gw_json_object(json, NULL);
            gw_json_int(json, "kit", k);
            gw_json_int(json, "axle", (long)a);
            gw_json_array(json, "joints");
            for (int j = 0; j < p->c->corners[a].n_joints; j++) {
                const gw_bush *bush = &p->c->bushes[p->c->kits[k].fits[a][j]];
                gw_json_object_on_line(json, NULL);
                gw_json_string(json, "bush", gw_page_bush(p, bush));
                gw_json_number(json, "price", bush->price >= 0.0 ? bush->price : (double)NAN);
                gw_json_close(json);
            }
            gw_json_close(json);
            gw_json_close(json);
        }
    gw_json_close(json);
}

void gw_page_borne(const gw_deflection *item, int joint, gw_json *json)
{
    const gw_joint_result *j = &item->result.joints[joint];
    const gw_strength *s = &item->strength[joint];
    const gw_verdict *worst = NULL;
    double most = 0.0;
    for (int i = 0; i < s->n_checks; i++) {
        double ratio = s->check[i].value / s->check[i].limit;
        if (worst && ratio <= most) continue;
        worst = &s->check[i];
        most = ratio;
    }
    double given = mm_of(gw_norm(gw_v3(j->u[0], j->u[1], j->u[2])));
    gw_json_number(json, NULL, round(given * 1e4) / 1e4);
    gw_json_number(json, NULL, round(gw_norm(gw_v3(j->f[0], j->f[1], j->f[2]))));
    if (!worst) return;
    gw_json_number(json, NULL, round(1e4 * most) / 1e2);
    gw_json_string(json, NULL, gw_page_figure_word(worst));
}

void gw_page_drawing(const gw_page *p, gw_json *json)
{
    gw_json_object(json, "drawing");
    gw_json_int(json, "n_brake", p->r->pictures.n_brake);
    gw_json_int(json, "n_lateral", p->r->pictures.n_lateral);
    gw_json_string(json, "currency", p->c->shop.currency);
    put_axles(p, json);
    put_fits(p, json);
    put_pictures(p, json);
    gw_json_close(json);
}

/* ---- the force into the body by third-octaves, for the sound ---- */

void gw_page_spectra(const gw_page *p, gw_json *json)
{
    gw_json_object(json, "sound");
    gw_json_array_on_line(json, "hz");
    for (int b = 0; b < GW_BANDS; b++) gw_json_number(json, NULL, gw_band_nominal(GW_BAND_FIRST + b));
    gw_json_close(json);
    gw_json_array(json, "spectra");
    for (int i = 0; i < p->r->ride.n; i++) {
        const gw_ride_item *item = &p->r->ride.item[i];
        if (!item->result.settled) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_int(json, "kit", item->kit);
        gw_json_int(json, "axle", (long)item->axle);
        gw_json_numbers(json, "force_N", item->result.band, GW_BANDS);
        gw_json_numbers(json, "difference_dB", item->difference.band, GW_BANDS);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_close(json);
}
