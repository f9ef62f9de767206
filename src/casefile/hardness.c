/* SPDX-License-Identifier: MIT */
#include "casefile/hardness.h"

#include <stdio.h>
#include <string.h>

const char *const GW_FAMILY_WORDS[2] = { "natural_rubber", "polyurethane" };
const char *const GW_GAUGE_WORDS[2] = { "A", "D" };

/* Where gauge A ends and where D begins: outside, the needle hardly moves. Common practice (ISO 48-4). */
static const double A_LAST = 95, D_FIRST = 30, D_ON_A = 50;

#define AT(field) offsetof(gw_material, field)
/* Moduli grow by factors from point to point; all else is close enough to a straight line. */
static const size_t MODULI[] = { AT(shear_modulus), AT(bulk_modulus), AT(young_modulus) };
static const size_t OTHERS[] = {
    AT(shape_k),
    AT(poisson_ratio),
    AT(zener_gain),
    AT(zener_tau),
    AT(zener_alpha),
    AT(payne_gain),
    AT(payne_strain),
    AT(payne_exponent),
    AT(shear_strain_limit),
    AT(compressive_strain_limit),
    AT(pressure_limit),
    AT(temperature_min),
    AT(temperature_max),
};

double gw_hardness_on_scale(double points, gw_gauge gauge)
{
    return gauge == GW_GAUGE_D ? points + D_ON_A : points;
}

/* Where a compound stands; negative: its hardness is not told. */
static double place_of(const gw_material *m)
{
    if (m->hardness_irhd.known) return m->hardness_irhd.v;
    if (m->hardness_shore_d.known) return m->hardness_shore_d.v + D_ON_A;
    return -1.0;
}

/* Those of the family next below (or at) and next above (or at) a hardness; NULL: none. */
static void neighbours(const gw_material_set *set, gw_family family, double place, const gw_material **below,
                       const gw_material **above)
{
    *below = *above = NULL;
    for (int i = 0; i < set->n; i++) {
        const gw_material *m = &set->items[i];
        double at = place_of(m);
        if (m->family != family || at < 0.0) continue;
        if (at <= place && (!*below || at > place_of(*below))) *below = m;
        if (at >= place && (!*above || at < place_of(*above))) *above = m;
    }
}

bool gw_hardness_range(const gw_material_set *set, gw_family family, gw_gauge gauge, double range[2])
{
    double lowest = HUGE_VAL, highest = -HUGE_VAL;
    for (int i = 0; i < set->n; i++) {
        double at = place_of(&set->items[i]);
        if (set->items[i].family != family || at < 0.0) continue;
        lowest = fmin(lowest, at);
        highest = fmax(highest, at);
    }
    range[0] = gauge == GW_GAUGE_D ? fmax(lowest - D_ON_A, D_FIRST) : lowest;
    range[1] = gauge == GW_GAUGE_D ? highest - D_ON_A : fmin(highest, A_LAST);
    return range[0] <= range[1];
}

/* The value at `offset`, the share `t` of the way from one compound to the next. */
static void blend(const gw_material *low, const gw_material *high, double t, size_t offset, bool modulus,
                  gw_material *out)
{
    gw_value a, b;
    memcpy(&a, (const char *)low + offset, sizeof a);
    memcpy(&b, (const char *)high + offset, sizeof b);
    gw_value v = b.trust > a.trust ? b : a;
    v.known = a.known && b.known;
    v.v = modulus && v.known ? a.v * pow(b.v / a.v, t) : a.v + t * (b.v - a.v);
    v.tolerance = a.tolerance + t * (b.tolerance - a.tolerance);
    memcpy((char *)out + offset, &v, sizeof v);
}

static gw_material between(const gw_material *low, const gw_material *high, double place)
{
    gw_material out = *low;
    double span = place_of(high) - place_of(low), t = span > 0.0 ? (place - place_of(low)) / span : 0.0;
    if (t <= 0.0) return out;
    for (size_t i = 0; i < GW_COUNT(MODULI); i++) blend(low, high, t, MODULI[i], true, &out);
    for (size_t i = 0; i < GW_COUNT(OTHERS); i++) blend(low, high, t, OTHERS[i], false, &out);
    return out;
}

bool gw_hardness_compound(const gw_material_set *set, gw_family family, gw_gauge gauge, double points,
                          gw_material *out)
{
    static const char *const LABELS[] = { "", "Natural rubber", "Polyurethane" };
    const gw_material *low, *high;
    double range[2];
    if (!gw_hardness_range(set, family, gauge, range) || !(points >= range[0] && points <= range[1]))
        return false;
    neighbours(set, family, gw_hardness_on_scale(points, gauge), &low, &high);
    gw_material m = between(low, high, gw_hardness_on_scale(points, gauge));
    gw_value read = { .known = true, .v = points, .trust = GW_TRUST_GIVEN };
    snprintf(read.source, sizeof read.source, "read with gauge %s", GW_GAUGE_WORDS[gauge]);
    m.hardness_irhd = gauge == GW_GAUGE_A ? read : (gw_value){ 0 };
    m.hardness_shore_d = gauge == GW_GAUGE_D ? read : (gw_value){ 0 };
    m.family = GW_FAMILY_NONE; /* it is no rung of the ladder itself */
    snprintf(m.name, sizeof m.name, "%s, %.6g points %s", GW_FAMILY_WORDS[family - 1], points,
             GW_GAUGE_WORDS[gauge]);
    snprintf(m.label, sizeof m.label, "%s, %.6g Shore %s", LABELS[family], points, GW_GAUGE_WORDS[gauge]);
    *out = m;
    return true;
}

static void out_of_range(const gw_reader *rd, const gw_node *node, const gw_material_set *set,
                         gw_family family, gw_gauge gauge, double points)
{
    double range[2];
    gw_node at = gw_node_key(node, "hardness_points");
    if (gw_hardness_range(set, family, gauge, range))
        gw_fault(rd, &at,
                 "expected %g to %g points of gauge %s, where there are compounds of %s, found %.10g%s",
                 range[0], range[1], GW_GAUGE_WORDS[gauge], GW_FAMILY_WORDS[family - 1], points,
                 gauge == GW_GAUGE_A && points > A_LAST ? ": read it with gauge D" : "");
    else
        gw_fault(rd, &at, "there is no compound of %s to read with points of gauge %s: use the other gauge",
                 GW_FAMILY_WORDS[family - 1], GW_GAUGE_WORDS[gauge]);
}

bool gw_read_hardness(const gw_reader *rd, const gw_node *node, const gw_material_set *set, gw_material *out)
{
    static const char *const KEYS[] = { "family", "hardness_points", "gauge", "label", NULL };
    const gw_range range = GW_FROM(0, 100);
    const char *label;
    int family, gauge = GW_GAUGE_A;
    double points;
    gw_check_keys(rd, node, NULL, 0, KEYS);
    bool ok = gw_get_choice(rd, node, "family", GW_REQUIRED, GW_FAMILY_WORDS, 2, &family);
    ok = gw_get_number(rd, node, "hardness_points", GW_REQUIRED, range, &points) && ok;
    if (gw_node_key(node, "gauge").json)
        ok = gw_get_choice(rd, node, "gauge", GW_OPTIONAL, GW_GAUGE_WORDS, 2, &gauge) && ok;
    if (!ok) return false;
    if (!gw_hardness_compound(set, (gw_family)(family + 1), (gw_gauge)gauge, points, out)) {
        out_of_range(rd, node, set, (gw_family)(family + 1), (gw_gauge)gauge, points);
        return false;
    }
    if (gw_get_text(rd, node, "label", GW_OPTIONAL, GW_NAME_MAX - 1, &label))
        snprintf(out->label, sizeof out->label, "%s", label);
    return true;
}
