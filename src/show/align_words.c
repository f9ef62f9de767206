/* SPDX-License-Identifier: MIT */
/* Names and sentences that text, JSON and charts of an alignment share. */
#include "show/align.h"

#include "format/number.h"
#include "giveway/units.h"

#include <math.h>

void gw_adjuster_say(const gw_adjuster *adjuster, const char *name, gw_buf *out)
{
    switch (adjuster->kind) {
    case GW_ADJUST_OFFSET:
        gw_buf_say(out, "off-centre bush in %s", name);
        break;
    case GW_ADJUST_LENGTH:
        gw_buf_say(out, "length of %s", name);
        break;
    case GW_ADJUST_SHIM:
        gw_buf_say(out, "shims at %s", name);
        break;
    }
}

void gw_adjuster_words(const gw_corner *corner, const gw_adjuster *adjuster, gw_buf *out)
{
    gw_adjuster_say(adjuster,
                    adjuster->kind == GW_ADJUST_LENGTH ? gw_body_as_written(corner, adjuster->body)
                                                       : gw_joint_as_written(corner, adjuster->joint),
                    out);
}

const char *const GW_VIEW_WORDS[] = {
    [GW_VIEW_FRONT] = "clockwise from straight up, seen from the front of the car",
    [GW_VIEW_OUTBOARD] = "clockwise from straight up, seen from beside the wheel",
    [GW_VIEW_ABOVE] = "clockwise from straight ahead, seen from above",
};

gw_trade_figure gw_trade_figure_of(const gw_verdict *verdict)
{
    static const gw_trade_figure SHOWN[] = {
        [GW_RATIO] = { 1.0, "-", 0 },       [GW_FORCE] = { 1.0, "N", 0 },
        [GW_STRESS] = { GW_MPA, "MPa", 1 }, [GW_LENGTH] = { GW_MM, "mm", 2 },
        [GW_ANGLE] = { GW_DEG, "deg", 1 },
    };
    return SHOWN[GW_JUDGED_DIMENSIONS[verdict->what]];
}

const char *gw_target_name(gw_target which)
{
    return which == GW_TARGET_TOE ? "toe" : which == GW_TARGET_CAMBER ? "camber" : "caster";
}

const char *gw_order_of_work(int index)
{
    static const char *const STEPS[] = {
        "Level the car on the ramp: tyre pressures, usual load, steering straight ahead. Measure and note "
        "what is there.",
        "Press in the off-centre bushes by their marks, put in the shims, join everything with the bolts "
        "loose.",
        "Let the car down, roll it and bounce it until it settles.",
        "Tighten rubber bushes at ride height and no other way; then every bolt to the maker's torque.",
        "Set caster and camber; settle the car again and measure.",
        "Set toe last, half a side, steering wheel straight; lock the adjusters.",
        "Turn the steering from lock to lock and move the wheel through its travel: nothing may touch or "
        "bind.",
        "Measure again, left and right, and write it down. Check brakes and steering before the road.",
    };
    return index >= 0 && (size_t)index < sizeof STEPS / sizeof *STEPS ? STEPS[index] : NULL;
}

bool gw_adjuster_sum(const gw_case *c, const gw_align_item *item, const gw_adjustment *set, int adjuster,
                     gw_buf *out)
{
    const gw_adjuster *a = &c->align[item->axle].adjusters[adjuster];
    gw_move own;
    if (!gw_kit_offset(c, item->kit, item->axle, a, &own)) return false;
    const gw_bore *sum = &set[adjuster].fit;
    gw_buf_say(
        out,
        "The bush that the kit fits in %s is itself %s mm off centre; what is set comes on top of it: one "
        "bush of %s mm, bolt at %s deg left, %s deg right, %s (clock %s deg from e1 to e2). The limit of "
        "%s mm is that bush's.",
        gw_joint_as_written(&c->corners[item->axle], a->joint), gw_fixed(gw_offset_size(&own) / GW_MM, 2).s,
        gw_fixed(sum->size / GW_MM, 2).s, gw_fixed(sum->mark.left / GW_DEG, 0).s,
        gw_fixed(sum->mark.right / GW_DEG, 0).s, GW_VIEW_WORDS[sum->mark.view],
        gw_fixed(sum->clock / GW_DEG, 1).s, gw_significant(a->max / GW_MM, 3).s);
    return true;
}
