/* SPDX-License-Identifier: MIT */
#include "show/phrase.h"

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

void gw_phrase_kit(const gw_kit *kit, gw_buf *out)
{
    gw_buf_clean(out, kit->label ? kit->label : kit->name);
}

const char *gw_kit_said(const gw_case *c, int kit)
{
    return c->kits[kit].label ? c->kits[kit].label : c->kits[kit].name;
}

const char *gw_phrase_pulled(double offset)
{
    return offset > 0.0 ? "left" : "right";
}
