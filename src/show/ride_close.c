/* SPDX-License-Identifier: MIT */
/* Which kits the ride cannot tell apart, in one line. */
#include "giveway/casefile.h"
#include "show/ride_parts.h"

static bool is_close(const gw_ride_study *study, const gw_ride_close *like, int a, int b)
{
    for (int i = 0; i < study->n_close; i++) {
        const gw_ride_close *close = &study->close[i];
        if (close->axle != like->axle || close->heard != like->heard) continue;
        if ((close->kit[0] == a && close->kit[1] == b) || (close->kit[0] == b && close->kit[1] == a))
            return true;
    }
    return false;
}

/* Kits of which each is too close to each other one, from a pair on, in the order of the case. */
static void group_of(const gw_case *c, const gw_ride_study *study, const gw_ride_close *pair, bool *in)
{
    for (int k = 0; k < c->n_kits; k++) in[k] = k == pair->kit[0] || k == pair->kit[1];
    for (int k = 0; k < c->n_kits; k++) {
        bool all = !in[k];
        for (int i = 0; i < c->n_kits && all; i++) all = !in[i] || is_close(study, pair, i, k);
        in[k] = in[k] || all;
    }
}

/* Whether the group of an earlier pair of the same figure and corner holds this one. */
static bool is_told(const gw_case *c, const gw_ride_study *study, int at)
{
    const gw_ride_close *pair = &study->close[at];
    bool in[GW_MAX_KITS];
    for (int i = 0; i < at; i++) {
        const gw_ride_close *before = &study->close[i];
        if (before->axle != pair->axle || before->heard != pair->heard) continue;
        group_of(c, study, before, in);
        if (in[pair->kit[0]] && in[pair->kit[1]]) return true;
    }
    return false;
}

/* "mixed/camber" */
static void say_group(const gw_case *c, const gw_ride_study *study, const gw_ride_close *pair, gw_buf *out)
{
    bool in[GW_MAX_KITS];
    int n = 0;
    group_of(c, study, pair, in);
    for (int k = 0; k < c->n_kits; k++) {
        if (!in[k]) continue;
        if (n++) gw_buf_add(out, "/");
        gw_buf_clean(out, c->kits[k].name);
    }
}

/* "rear: rubber/mixed, poly/mixed": the groups of one figure and corner. */
static int say_corner(const gw_case *c, const gw_ride_study *study, gw_axle axle, bool heard, bool first,
                      gw_buf *out)
{
    int n = 0;
    for (int i = 0; i < study->n_close; i++) {
        const gw_ride_close *close = &study->close[i];
        if (close->axle != axle || close->heard != heard || is_told(c, study, i)) continue;
        if (n)
            gw_buf_add(out, ", ");
        else
            gw_buf_fmt(out, "%s%s: ", first ? heard ? "road noise, " : "harshness, " : "",
                       gw_axle_name(axle));
        say_group(c, study, close, out);
        n++;
    }
    return n;
}

void gw_ride_say_close(const gw_case *c, const gw_ride_study *study, gw_buf *out)
{
    int n = 0;
    for (int heard = 0; heard < 2; heard++)
        for (int a = GW_FRONT, first = 1; a < GW_AXLES; a++) {
            gw_buf one = { 0 };
            if (say_corner(c, study, (gw_axle)a, heard, first, &one)) {
                gw_buf_fmt(out, "%s%s", n++ ? "; " : "Too close to call on the road: ", gw_buf_str(&one));
                first = 0;
            }
            gw_buf_drop(&one, out);
        }
    if (n) gw_buf_add(out, ".");
}
