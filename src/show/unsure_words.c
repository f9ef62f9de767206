/* SPDX-License-Identifier: MIT */
#include "show/unsure_words.h"

#include "giveway/uncertain.h"

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
