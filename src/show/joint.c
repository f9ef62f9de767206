/* SPDX-License-Identifier: MIT */
#include "show/joint.h"

#include "giveway/casefile.h"
#include "show/words.h"

const char *gw_joint_side(const gw_corner *corner, int joint)
{
    int twin = corner->joints[joint].twin;
    if (!gw_is_pair(corner) || twin == joint) return "";
    return gw_words_text(joint < twin ? GW_WORDS_PAGE_SHEET_LEFT : GW_WORDS_PAGE_SHEET_RIGHT);
}

void gw_name_in_words(const char *name, gw_buf *out)
{
    for (const char *p = name; *p; p++) gw_buf_bytes(out, *p == '_' ? " " : p, 1);
}

void gw_joint_said(const gw_corner *corner, int joint, gw_buf *out)
{
    const gw_joint *j = &corner->joints[joint];
    if (j->label)
        gw_buf_add(out, j->label);
    else
        gw_name_in_words(gw_joint_as_written(corner, joint), out);
    gw_buf_add(out, gw_joint_side(corner, joint));
}

static const char *direction(gw_angle which, double angle)
{
    if (which == GW_TOE) return angle > 0.0 ? "toe-in" : "toe-out";
    return angle > 0.0 ? "camber +" : "camber -";
}

void gw_contributors_words(const gw_contributor *list, int n, gw_angle which, gw_buf *out)
{
    for (int i = 0; i < n; i++) {
        if (i) gw_buf_add(out, ", ");
        gw_buf_say(out, "%s %.0f %% %s", list[i].name, 100.0 * list[i].part, direction(which, list[i].angle));
    }
}
