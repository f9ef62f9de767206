/* SPDX-License-Identifier: MIT */
#include "show/message.h"

#include "format/number.h"

#include <math.h>

/* Below it two figures are the same to whoever reads them: one of the last digit, or 2 %. */
static double alike(const gw_message *m, double base)
{
    return fmax(pow(10.0, -m->decimals), 0.02 * fabs(base));
}

static gw_number number(const gw_message *m, double value)
{
    return m->is_signed ? gw_signed(value, m->decimals) : gw_fixed(value, m->decimals);
}

static double change(const gw_message *m, const gw_told *first, const gw_told *t)
{
    if (m->over_first) return t->value;
    bool turns = m->is_signed && first->value * t->value < 0.0;
    return turns ? t->value - first->value : fabs(t->value) - fabs(first->value);
}

/* The kit that changes most of those that can be told apart; 0: none. */
static int pick(const gw_message *m, const gw_told *told, int n)
{
    int best = 0;
    double most = alike(m, told[0].value);
    for (int i = 1; i < n; i++) {
        double size = fabs(change(m, &told[0], &told[i]));
        if (!isfinite(size) || told[i].close || size <= most) continue;
        best = i;
        most = size;
    }
    return best;
}

static void span(const gw_message *m, const gw_told *told, int n, gw_buf *out)
{
    double low = told[0].value, high = low;
    for (int i = 1; i < n; i++) {
        low = fmin(low, told[i].value);
        high = fmax(high, told[i].value);
    }
    gw_buf_add(out, number(m, low).s);
    double step = pow(10.0, -m->decimals);
    if (round(high / step) != round(low / step)) gw_buf_fmt(out, " to %s", number(m, high).s);
    gw_buf_fmt(out, " %s", m->unit);
}

/* No kit stands out: because they are alike, or because what is not known is larger than what parts them. */
static void say_open(const gw_message *m, const gw_told *told, int n, gw_buf *out)
{
    bool close = false;
    for (int i = 1; i < n; i++)
        close = close || (told[i].close && fabs(change(m, &told[0], &told[i])) > alike(m, told[0].value));
    gw_buf_fmt(out, "%s %s: ", m->of, close ? "is too close to call" : "hardly changes from kit to kit");
    span(m, told, n, out);
}

static void say_verb(const gw_message *m, double from, double to, gw_buf *out)
{
    double ratio = fabs(to) / fabs(from), none = pow(10.0, -m->decimals);
    if (fabs(from) < none)
        gw_buf_add(out, "appears");
    else if (m->is_signed && from * to < 0.0 && fabs(to) >= none)
        gw_buf_add(out, "turns round");
    else if (ratio < 0.05)
        gw_buf_add(out, "all but goes");
    else if (fabs(ratio - 0.5) < 0.025)
        gw_buf_add(out, "halves");
    else if (fabs(ratio - 2.0) < 0.1)
        gw_buf_add(out, "doubles");
    else if (ratio > 10.0) /* of next to nothing: how many times says nothing */
        gw_buf_add(out, "grows");
    else if (ratio > 2.0)
        gw_buf_fmt(out, "grows to %s times", gw_fixed(ratio, 1).s);
    else
        gw_buf_fmt(out, "%s by %s %%", ratio < 1.0 ? "shrinks" : "grows",
                   gw_fixed(100.0 * fabs(ratio - 1.0), 0).s);
}

void gw_message_kits(const gw_message *m, const gw_told *told, int n, gw_buf *out)
{
    int best = n ? pick(m, told, n) : 0;
    if (!n || !isfinite(told[0].value)) {
        gw_buf_add(out, m->of);
    } else if (n == 1) {
        gw_buf_fmt(out, "%s: %s %s with %s", m->of, number(m, told[0].value).s, m->unit, told[0].kit);
    } else if (!best) {
        say_open(m, told, n, out);
    } else if (m->over_first) {
        gw_buf_fmt(out, "%s %s most with %s: %s %s over %s", m->of,
                   told[best].value > 0.0 ? "rises" : "falls", told[best].kit,
                   gw_signed(told[best].value, m->decimals).s, m->unit, told[0].kit);
    } else {
        gw_buf_fmt(out, "%s ", m->of);
        say_verb(m, told[0].value, told[best].value, out);
        gw_buf_fmt(out, " with %s: %s to %s %s", told[best].kit, number(m, told[0].value).s,
                   number(m, told[best].value).s, m->unit);
    }
}

void gw_message_part(const gw_message *m, const char *const *name, const double *value, int n, double whole,
                     const char *kit, gw_buf *out)
{
    int best = 0;
    for (int i = 1; i < n; i++)
        if (fabs(value[i]) > fabs(value[best])) best = i;
    if (!n || !isfinite(whole) || fabs(value[best]) < 0.5 * pow(10.0, -m->decimals)) {
        gw_buf_fmt(out, "%s has no part worth telling with %s", m->of, kit);
        return;
    }
    double share = value[best] / whole;
    if (share < 0.0 || fabs(whole) < 0.5 * pow(10.0, -m->decimals))
        gw_buf_fmt(out, "%s: %s pulls most, against the rest: %s where all is %s %s with %s", m->of,
                   name[best], number(m, value[best]).s, number(m, whole).s, m->unit, kit);
    else if (share > 1.0)
        gw_buf_fmt(out, "%s comes from %s, of which the rest takes back a part: %s to %s %s with %s", m->of,
                   name[best], number(m, value[best]).s, number(m, whole).s, m->unit, kit);
    else {
        gw_buf_fmt(out, "%s comes %s from %s: %s ", m->of, share >= 0.5 ? "mostly" : "first of all",
                   name[best], number(m, value[best]).s);
        if (m->is_signed) gw_buf_fmt(out, "of %s ", number(m, whole).s);
        gw_buf_fmt(out, "%s with %s", m->unit, kit);
    }
}
