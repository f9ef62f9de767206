/* SPDX-License-Identifier: MIT */
/*
 * A rack, a subframe, a beam or a bar on the chassis of a corner gets the left wheel's force alone. Nothing
 * in such a case is wrong in itself, so it is told by signs: a name, a place on the centre line, a joint on
 * the other side of it.
 */
#include "study/old_way.h"

#include "base/buf.h"
#include "giveway/pair.h"
#include "giveway/units.h"

#include <ctype.h>
#include <string.h>

static const double MIDDLE = 50 * GW_MM; /* this near the centre line a joint is the axle's              */
static const double ALIKE = 5 * GW_MM;   /* two places that are meant to be each other's mirror image    */

typedef enum gw_part_kind {
    GW_PART_RACK,
    GW_PART_SUBFRAME,
    GW_PART_BEAM,
    GW_PART_BAR,
    GW_PART_OTHER
} gw_part_kind;

/* Words of a name, each with the kind of part that it says. */
static const struct {
    const char *word;
    gw_part_kind kind;
} SAYS[] = {
    { "rack", GW_PART_RACK },       { "subframe", GW_PART_SUBFRAME },
    { "cradle", GW_PART_SUBFRAME }, { "crossmember", GW_PART_SUBFRAME },
    { "beam", GW_PART_BEAM },       { "twistbeam", GW_PART_BEAM },
    { "axle", GW_PART_BEAM },       { "panhard", GW_PART_BEAM },
    { "arb", GW_PART_BAR },         { "antiroll", GW_PART_BAR },
    { "stabiliser", GW_PART_BAR },  { "stabilizer", GW_PART_BAR },
    { "bar", GW_PART_BAR },
};

/* Bars that are links of one wheel. */
static const char *const LINKS[] = { "tension", "tie",     "radius",      "trailing",
                                     "track",   "torsion", "compression", "strut" };

static bool is_word(const char *at, size_t n, const char *word)
{
    if (strlen(word) != n) return false;
    for (size_t i = 0; i < n; i++)
        if (tolower((unsigned char)at[i]) != word[i]) return false;
    return true;
}

static bool has_word(const char *name, const char *word)
{
    for (const char *p = name; *p;) {
        size_t n = 0;
        while (isalpha((unsigned char)p[n])) n++;
        if (is_word(p, n, word)) return true;
        p += n ? n : 1;
    }
    return false;
}

static bool kind_of_name(const char *name, gw_part_kind *out)
{
    for (size_t i = 0; i < sizeof SAYS / sizeof *SAYS; i++) {
        bool one_wheels = false;
        for (size_t k = 0; SAYS[i].kind == GW_PART_BAR && k < sizeof LINKS / sizeof *LINKS; k++)
            one_wheels = one_wheels || has_word(name, LINKS[k]);
        if (one_wheels || !has_word(name, SAYS[i].word)) continue;
        *out = SAYS[i].kind;
        return true;
    }
    return false;
}

/* ---- one member of a corner ---- */

typedef struct gw_suspect {
    const gw_case *c;
    const gw_corner *corner;
    gw_axle axle;
    int body;
} gw_suspect;

static int joints_of_left(const gw_corner *corner)
{
    return gw_is_pair(corner) ? corner->n_left : corner->n_joints;
}

static int members_end(const gw_corner *corner)
{
    return gw_is_pair(corner) ? corner->first_shared : corner->n_bodies;
}

static bool on_chassis(const gw_suspect *s, int joint)
{
    const gw_joint *j = &s->corner->joints[joint];
    return (j->body_a == GW_CHASSIS && j->body_b == s->body) ||
           (j->body_b == GW_CHASSIS && j->body_a == s->body);
}

static bool are_images(gw_vec3 a, gw_vec3 b)
{
    return fabs(a.y) > MIDDLE && gw_norm(gw_sub(a, gw_v3(b.x, -b.y, b.z))) < ALIKE;
}

/* The first joint on the chassis with a sign, and what it is a sign of; -1: none. */
static int find_sign(const gw_suspect *s, gw_part_kind *kind)
{
    const gw_corner *c = s->corner;
    bool named = kind_of_name(gw_body_as_written(c, s->body), kind);
    for (int j = 0; j < joints_of_left(c); j++) {
        const gw_joint *joint = &c->joints[j];
        if (!on_chassis(s, j)) continue;
        if (named || kind_of_name(gw_joint_as_written(c, j), kind)) return j;
        *kind = GW_PART_OTHER;
        if (fabs(joint->at.y) < MIDDLE) return j;
        for (int k = 0; k < joints_of_left(c); k++)
            if (on_chassis(s, k) && are_images(joint->at, c->joints[k].at)) return j;
    }
    return -1;
}

/* ---- the JSON that says it right ---- */

/* What the upright of a corner stands for where it is the beam itself. */
static const char *member_of(const gw_suspect *s)
{
    return s->body == GW_UPRIGHT ? "beam" : gw_body_as_written(s->corner, s->body);
}

static void add_text(gw_buf *out, const char *text)
{
    gw_buf_add(out, "\"");
    for (; *text; text++) {
        const char one[3] = { '\\', *text, '\0' };
        gw_buf_add(out, *text == '"' || *text == '\\' ? one : one + 1);
    }
    gw_buf_add(out, "\"");
}

static void add_place(gw_buf *out, const char *name, gw_vec3 at)
{
    add_text(out, name);
    gw_buf_fmt(out, ": [%.6g, %.6g, %.6g]", at.x / GW_MM, at.y / GW_MM, at.z / GW_MM);
}

/* Of a doubled joint the left one is written, on the line y = 0; its image need not be. */
static bool is_written(const gw_suspect *s, int joint)
{
    return on_chassis(s, joint) && s->corner->joints[joint].at.y > -MIDDLE;
}

static gw_vec3 place_of(const gw_joint *joint)
{
    return gw_v3(joint->at.x, fabs(joint->at.y) < MIDDLE ? 0.0 : joint->at.y, joint->at.z);
}

static void add_places(const gw_suspect *s, gw_buf *out)
{
    int n = 0;
    gw_buf_add(out, "\"points_mm\": { ");
    for (int j = 0; j < joints_of_left(s->corner); j++) {
        if (!is_written(s, j)) continue;
        if (n++) gw_buf_add(out, ", ");
        add_place(out, gw_joint_as_written(s->corner, j), place_of(&s->corner->joints[j]));
    }
    if (s->body == GW_UPRIGHT) gw_buf_add(out, ", ");
    if (s->body == GW_UPRIGHT) add_place(out, "beam_end", s->corner->wheel.centre);
    gw_buf_add(out, " }");
}

static void add_joint(const gw_suspect *s, int j, gw_buf *out)
{
    const gw_joint *joint = &s->corner->joints[j];
    const char *name = gw_joint_as_written(s->corner, j), *member = member_of(s);
    gw_vec3 axis = gw_col(&joint->frame, 2);
    bool first = joint->body_a == GW_CHASSIS;
    gw_buf_add(out, "{ \"name\": ");
    add_text(out, name);
    gw_buf_add(out, ", \"between\": [");
    add_text(out, first ? "chassis" : member);
    gw_buf_add(out, ", ");
    add_text(out, first ? member : "chassis");
    gw_buf_add(out, "], \"at\": ");
    add_text(out, name);
    gw_buf_fmt(out, ", \"axis\": [%.6g, %.6g, %.6g], \"bush\": ", axis.x, axis.y, axis.z);
    add_text(out, strchr(s->c->bushes[joint->bush].name, '.') ? "as it stands there"
                                                              : s->c->bushes[joint->bush].name);
    gw_buf_add(out, " }");
}

static void add_shared(const gw_suspect *s, gw_buf *out)
{
    int n = 0;
    add_places(s, out);
    gw_buf_add(out, ", \"members\": { ");
    add_text(out, member_of(s));
    gw_buf_fmt(out, ": { \"mass_kg\": %.6g } }, \"joints\": [ ", s->corner->bodies[s->body].mass);
    for (int j = 0; j < joints_of_left(s->corner); j++) {
        if (!is_written(s, j)) continue;
        if (n++) gw_buf_add(out, ", ");
        add_joint(s, j, out);
    }
    if (s->body == GW_UPRIGHT)
        gw_buf_add(out, ", { \"name\": \"beam_end\", \"between\": [\"beam\", \"left.upright\"], \"at\": "
                        "\"beam_end\", \"axis\": [0, 1, 0], \"bush\": { \"type\": \"rigid\" } }");
    gw_buf_add(out, " ]");
}

/* A bar's halves stay the corners' own; what joins them is the axle's. */
static void add_bar(const gw_suspect *s, int sign, gw_buf *out)
{
    const char *member = gw_body_as_written(s->corner, s->body);
    gw_vec3 at = s->corner->joints[sign].at;
    gw_buf_fmt(out, "\"points_mm\": { \"bar_middle\": [%.6g, 0, %.6g] }, \"joints\": [ ", at.x / GW_MM,
               at.z / GW_MM);
    gw_buf_fmt(out, "{ \"name\": \"bar_middle\", \"between\": [\"left.%s\", \"right.%s\"], ", member, member);
    gw_buf_add(out, "\"at\": \"bar_middle\", \"axis\": [0, 1, 0], \"bush\": { \"type\": \"rates\", "
                    "\"radial_N_per_mm\": 200000, \"axial_N_per_mm\": 200000, \"conical_Nm_per_deg\": 10000, "
                    "\"torsional_Nm_per_deg\": 40 } } ]");
}

/* ---- the warning ---- */

static const char *const WRONG[] = {
    [GW_PART_RACK] =
        "a steering rack is shared by both wheels: their tie rods' forces cancel in it in a stop "
        "and add up in a corner, and here it feels the left one alone",
    [GW_PART_SUBFRAME] = "a subframe is shared by both wheels: what one of them pulls, the other eases or "
                         "doubles, and here it feels the left one alone",
    [GW_PART_BEAM] = "a beam or an axle leads from wheel to wheel and is held on both sides: read as one "
                     "wheel's own it turns about its own bushes",
    [GW_PART_BAR] = "an anti-roll bar is twisted by what its two ends do differently: on one corner alone it "
                    "is one more spring, which works where both wheels rise together too",
    [GW_PART_OTHER] =
        "it reaches the middle of the car or beyond, so both wheels share it, and here it feels "
        "the left one alone",
};

static void write_warning(const gw_suspect *s, int sign, gw_part_kind kind, gw_buf *out)
{
    const char *axle = gw_axle_name(s->axle), *member = gw_body_as_written(s->corner, s->body);
    gw_buf_fmt(out,
               "%s: corners.%s.joints[%d]: %s holds \"%s\" on the chassis of one corner: %s; take %s out of "
               "the corner and say: ",
               s->c->path, axle, sign, gw_joint_as_written(s->corner, sign), member, WRONG[kind],
               kind == GW_PART_BAR     ? "nothing"
               : s->body == GW_UPRIGHT ? "these joints"
                                       : "the member and these joints");
    gw_buf_fmt(out, "\"axles\": { \"%s\": { ", axle);
    if (kind == GW_PART_BAR)
        add_bar(s, sign, out);
    else
        add_shared(s, out);
    gw_buf_add(out, kind == GW_PART_BAR ? " } } (with the bar's own torsional rate)" : " } }");
}

static gw_status warn_of(const gw_suspect *s, gw_faults *faults, gw_error *err)
{
    gw_part_kind kind = GW_PART_OTHER;
    gw_buf line = { 0 };
    int sign = find_sign(s, &kind);
    if (sign < 0 || (kind == GW_PART_BAR && gw_body_leads_across(s->corner, s->body))) return GW_OK;
    write_warning(s, sign, kind, &line);
    gw_status status = gw_buf_status(&line, err);
    if (status == GW_OK) gw_faults_add(faults, true, gw_buf_str(&line));
    gw_buf_free(&line);
    return status;
}

gw_status gw_warn_old_way(const gw_case *c, gw_axle axle, gw_faults *faults, gw_error *err)
{
    const gw_corner *corner = &c->corners[axle];
    gw_status status = GW_OK;
    for (int b = GW_UPRIGHT; b < members_end(corner) && status == GW_OK; b++) {
        const gw_suspect suspect = { c, corner, axle, b };
        status = warn_of(&suspect, faults, err);
    }
    return status;
}
