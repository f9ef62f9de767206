/* SPDX-License-Identifier: MIT */
#include "show/contributors.h"

#include "giveway/casefile.h"
#include "giveway/units.h"
#include "show/words.h"

#include <math.h>

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

double gw_joint_share(const gw_joint_result *joint, gw_angle which)
{
    return which == GW_TOE ? joint->toe_share : joint->camber_share;
}

static double all_by_size(const gw_corner *corner, const gw_corner_result *r, gw_angle which)
{
    double sum = which == GW_TOE ? fabs(r->travel_toe) + fabs(r->geometry_toe)
                                 : fabs(r->travel_camber) + fabs(r->geometry_camber);
    for (int j = 0; j < corner->n_joints; j++) sum += fabs(gw_joint_share(&r->joints[j], which));
    return sum;
}

/* Put a joint into the list where its size belongs; the last one falls off. */
static int insert(gw_contributor *list, int n, int most, gw_contributor item)
{
    int at = n;
    while (at > 0 && fabs(list[at - 1].angle) < fabs(item.angle)) at--;
    if (at >= most) return n;
    if (n < most) n++;
    for (int i = n - 1; i > at; i--) list[i] = list[i - 1];
    list[at] = item;
    return n;
}

int gw_contributors(const gw_corner *corner, const gw_corner_result *result, gw_angle which, int most,
                    gw_contributor *out)
{
    const double nothing = 1e-9 * GW_DEG;
    double all = all_by_size(corner, result, which);
    int n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        double angle = gw_joint_share(&result->joints[j], which);
        if (fabs(angle) < nothing) continue;
        n = insert(out, n, most, (gw_contributor){ corner->joints[j].name, j, angle, fabs(angle) / all });
    }
    return n;
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
