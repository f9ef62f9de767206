/* SPDX-License-Identifier: MIT */
#include "giveway/bush_report.h"

#include "bush/handbook.h"

#include <math.h>
#include <stddef.h>

static const char ADKINS_GENT[] =
    "J. E. Adkins and A. N. Gent, British Journal of Applied Physics 5 (1954) 354-358";
static const char SECTION[] =
    "solved: r-z section, Q2/P1 elements, harmonics 0 and 1 in the angle; converged to 0.2 %; "
    "checked against three-dimensional finite elements to 1 %";
static const char EIGHTH[] = "solved: one eighth in space, Q2/P1 elements; checked against three-dimensional "
                             "finite elements to 3 %";
static const char LAYER[] =
    "derived: pressure equation of a thin bonded layer between the two published limits; "
    "a few per cent for L >= 2 (b-a)";
static const char ENDS[] = "derived: end correction fitted to finite elements; 1 % for L >= b - a";
static const char STRIPS[] = "derived: strips with vented ends and the shear of the inner face; an estimate";
static const char SHAPED[] =
    "closed forms carried over: mean length, layers in series, share of the filled angle; "
    "with voids an order of magnitude";
static const char STEFFEN[] =
    "M. Steffen, Astronomy and Astrophysics 239 (1990) 443-450, through the points measured";
static const char GIVEN[] = "given in the case";
static const char SLIDING[] =
    "inner face free in shear; axial by the flanges: an estimate; torsional: friction only";
static const char CONTACT[] = "contact of ball and cup or liner (see the bearing's method page), or given";

static gw_explain_line *add(gw_bush_report *r, const char *figure, const char *formula, const char *source,
                            gw_quantity quantity, double value)
{
    if (r->n_lines == GW_EXPLAIN_LINES) return &r->lines[GW_EXPLAIN_LINES - 1];
    gw_explain_line *line = &r->lines[r->n_lines++];
    *line = (gw_explain_line){
        .figure = figure, .formula = formula, .source = source, .quantity = quantity, .value = value
    };
    return line;
}

static void input(gw_explain_line *line, const char *symbol, gw_quantity quantity, double value)
{
    if (line->n_inputs == GW_EXPLAIN_INPUTS) return;
    line->inputs[line->n_inputs++] = (gw_explain_input){ symbol, quantity, value };
}

static void tube_inputs(gw_explain_line *line, const gw_plain_bush *p, bool bulk)
{
    input(line, "a", GW_QUANTITY_LENGTH, p->a);
    input(line, "b", GW_QUANTITY_LENGTH, p->b);
    input(line, "L", GW_QUANTITY_LENGTH, p->length);
    input(line, "G", GW_QUANTITY_MODULUS, p->g);
    if (bulk && !isinf(p->k)) input(line, "K", GW_QUANTITY_MODULUS, p->k);
}

static void shape_inputs(gw_explain_line *line, const gw_annulus *a)
{
    if (a->end_dish > 0.0) input(line, "end dish", GW_QUANTITY_LENGTH, a->end_dish);
    if (a->has_interleaf) {
        input(line, "interleaf radius", GW_QUANTITY_LENGTH, a->interleaf_radius);
        input(line, "interleaf thickness", GW_QUANTITY_LENGTH, a->interleaf_thickness);
    }
    if (a->has_voids) input(line, "void half angle", GW_QUANTITY_ANGLE, a->voids.half_angle);
    if (a->has_voids && a->voids.depth > 0.0) input(line, "void depth", GW_QUANTITY_LENGTH, a->voids.depth);
}

static const char *const FIGURES[6] = { "radial rate along e1",  "radial rate along e2",  "axial rate",
                                        "conical rate about e1", "conical rate about e2", "torsional rate" };

/* The six rates of the law, all by the same means. */
static void explain_law(gw_bush_report *r, const char *formula, const char *source, const gw_plain_bush *tube,
                        const gw_annulus *shape)
{
    for (int i = 0; i < 6; i++) {
        gw_explain_line *line =
            add(r, FIGURES[i], formula, source, i < 3 ? GW_QUANTITY_RATE : GW_QUANTITY_TURN_RATE,
                i < 3 ? r->law.k[i] : r->law.c[i - 3]);
        if (tube) tube_inputs(line, tube, true);
        if (shape) shape_inputs(line, shape);
    }
}

static bool is_plain(const gw_annulus *a)
{
    return !a->has_voids && !a->has_interleaf && !(a->end_dish > 0.0);
}

static void explain_tube(gw_bush_report *r, const gw_plain_bush *p)
{
    const gw_quantity rate = GW_QUANTITY_RATE, turn = GW_QUANTITY_TURN_RATE;
    tube_inputs(add(r, "radial rate, long bush", "4 pi G L (a^2+b^2) / [(a^2+b^2) ln(b/a) - (b^2-a^2)]",
                    ADKINS_GENT, rate, gw_handbook_radial_long(p)),
                p, false);
    tube_inputs(add(r, "radial rate, short bush",
                    "80 pi G L (a^2+b^2) / [25 (a^2+b^2) ln(b/a) - 9 (b^2-a^2)]", ADKINS_GENT, rate,
                    gw_handbook_radial_short(p)),
                p, false);
    tube_inputs(
        add(r, "radial rate, handbook",
            "K_long - (K_long - K_short) tanh(s)/s, s = L / sqrt(2 (a^2+b^2)), bulk modulus in K_long and s",
            LAYER, rate, gw_handbook_radial(p)),
        p, true);
    tube_inputs(add(r, "axial rate, handbook", "2 pi G L / ln(b/a)", ADKINS_GENT, rate, gw_handbook_axial(p)),
                p, false);
    tube_inputs(add(r, "axial rate with end effects", "2 pi G (L - 0.225 (b-a)) / ln(b/a)", ENDS, rate,
                    gw_handbook_axial_ends(p)),
                p, false);
    tube_inputs(add(r, "conical rate, handbook", "vented strips L^3/12 + pi G L a^2 (a^2+b^2)/(b^2-a^2)",
                    STRIPS, turn, gw_handbook_conical(p)),
                p, true);
    tube_inputs(add(r, "torsional rate, handbook", "4 pi G L / (1/a^2 - 1/b^2), exact", ADKINS_GENT, turn,
                    gw_handbook_torsional(p)),
                p, false);
}

static gw_plain_bush tube_of(const gw_annulus *a)
{
    const gw_value *bulk = &a->material.bulk_modulus;
    return (gw_plain_bush){ a->inner_radius, a->outer_radius, a->length, a->material.shear_modulus.v,
                            bulk->known ? bulk->v : (double)INFINITY };
}

static gw_status explain_bonded(const gw_bush *bush, gw_bush_report *r, gw_error *err)
{
    const gw_annulus *a = &bush->annulus;
    gw_plain_bush tube = tube_of(a);
    gw_status status = gw_handbook_rates(a, &r->handbook, err);
    if (status != GW_OK) return status;
    r->has_handbook = true;
    if (r->method == GW_METHOD_SOLVED)
        explain_law(r, "finite elements at the finite length", a->has_voids ? EIGHTH : SECTION, &tube, a);
    else if (!is_plain(a))
        explain_law(r, "closed forms for a plain tube, carried over", SHAPED, &tube, a);
    if (is_plain(a)) explain_tube(r, &tube);
    return GW_OK;
}

/* Every rate of rubber is proportional to G, to the little that the bulk modulus has to say. */
static void set_band(const gw_bush *bush, gw_bush_report *r)
{
    const gw_value *g = &bush->annulus.material.shear_modulus;
    r->low = fmax(1.0 - g->tolerance, 0.0);
    r->high = 1.0 + g->tolerance;
    r->band_source = g->source;
}

/* The compound as the bush's own factor has it, so that the closed forms say the same as the law. */
static gw_bush as_stiff(const gw_bush *bush)
{
    gw_bush out = *bush;
    double factor = gw_bush_stiffness_factor(bush);
    out.annulus.material.shear_modulus.v *= factor;
    out.annulus.material.bulk_modulus.v *= factor;
    return out;
}

gw_status gw_bush_report_make(const gw_bush *bush, gw_method method, gw_bush_report *report, gw_error *err)
{
    gw_bush_report r = { .method = method, .low = 1.0, .high = 1.0, .band_source = "" };
    const gw_bush stiffened = as_stiff(bush);
    gw_plain_bush tube;
    gw_status status = gw_bush_law_make(bush, method, &r.law, err);
    if (status != GW_OK) return status;
    switch (bush->type) {
    case GW_BUSH_BONDED:
        status = explain_bonded(&stiffened, &r, err);
        set_band(bush, &r);
        break;
    case GW_BUSH_UNBONDED:
        tube = tube_of(&stiffened.annulus);
        explain_law(&r, method == GW_METHOD_SOLVED ? "finite elements, inner face sliding" : "closed forms",
                    SLIDING, &tube, &bush->annulus);
        set_band(bush, &r);
        break;
    case GW_BUSH_BEARING:
        explain_law(&r, "contact stiffness", CONTACT, NULL, NULL);
        break;
    case GW_BUSH_MEASURED:
        explain_law(&r, "slope at zero of the curve, or as given", STEFFEN, NULL, NULL);
        break;
    default:
        explain_law(&r, "as given", GIVEN, NULL, NULL);
        break;
    }
    if (status == GW_OK) *report = r;
    return status;
}
