/* SPDX-License-Identifier: MIT */
#include "show/phrase.h"

#include "giveway/uncertain.h"

static void phrase_manoeuvre(const gw_manoeuvre *m, gw_buf *out)
{
    bool corner = m->lateral_g > 0.0;
    if (m->brake_g > 0.0 && corner)
        gw_buf_fmt(out, "braking at %.2f g in a %.2f g corner", m->brake_g, m->lateral_g);
    else if (m->brake_g > 0.0)
        gw_buf_fmt(out, "under a %.2f g stop", m->brake_g);
    else if (m->drive_g > 0.0 && corner)
        gw_buf_fmt(out, "driving at %.2f g out of a %.2f g corner", m->drive_g, m->lateral_g);
    else if (m->drive_g > 0.0)
        gw_buf_fmt(out, "accelerating at %.2f g", m->drive_g);
    else if (corner)
        gw_buf_fmt(out, "in a %.2f g corner", m->lateral_g);
    else
        gw_buf_add(out, "rolling straight on");
}

void gw_phrase_load(const gw_load *load, gw_buf *out)
{
    if (load->kind == GW_LOAD_MANOEUVRE) {
        phrase_manoeuvre(&load->manoeuvre, out);
        return;
    }
    gw_buf_say(out, "under the load %s", load->name);
}

const char *gw_kit_said(const gw_case *c, int kit)
{
    return c->kits[kit].label ? c->kits[kit].label : c->kits[kit].name;
}

const char *gw_phrase_pulled(double offset)
{
    return offset > 0.0 ? "left" : "right";
}

void gw_phrase_unsure(const gw_case *c, const char *path, gw_buf *out)
{
    static const char *const WAYS[] = { "fore and aft", "across", "height" };
    const gw_unsure_place at = gw_unsure_place_of(c, path);
    switch (at.kind) {
    case GW_UNSURE_BUSH:
        if (at.joint) gw_buf_clean(out, at.joint->label);
        gw_buf_fmt(out, at.joint ? " (%s)" : "%s", at.name);
        break;
    case GW_UNSURE_POINT:
        if (at.joint)
            gw_buf_clean(out, at.joint->label);
        else
            gw_buf_fmt(out, "%s %.*s", gw_axle_name(at.axle), at.name_length, at.name);
        gw_buf_fmt(out, ": %s", WAYS[at.coordinate]);
        break;
    case GW_UNSURE_WHEEL:
        gw_buf_fmt(out, "%s wheel centre: %s", gw_axle_name(at.axle), WAYS[at.coordinate]);
        break;
    case GW_UNSURE_ELSEWHERE:
        gw_buf_clean(out, path);
        break;
    }
}
