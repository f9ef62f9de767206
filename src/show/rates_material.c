/* SPDX-License-Identifier: MIT */
/* A compound's values, each with its unit, how far it can be trusted and who says so. */
#include "show/rates.h"

#include "format/number.h"
#include "giveway/units.h"

#include <stddef.h>

/* How a value is shown: (SI - zero) / unit. */
typedef struct material_figure {
    const char *name, *unit;
    double zero, si;
    size_t at;
} material_figure;

#define FIGURE(field, name, unit, si)                                                                        \
    {                                                                                                        \
        name, unit, 0.0, si, offsetof(gw_material, field)                                                    \
    }
static const material_figure FIGURES[] = {
    FIGURE(hardness_irhd, "hardness", "IRHD", 1.0),
    FIGURE(shear_modulus, "shear modulus G", "MPa", GW_MPA),
    FIGURE(young_modulus, "Young's modulus E0", "MPa", GW_MPA),
    FIGURE(bulk_modulus, "bulk modulus K", "MPa", GW_MPA),
    FIGURE(shape_k, "k of Ec = E0 (1 + 2 k S^2)", "", 1.0),
    FIGURE(poisson_ratio, "Poisson's ratio", "", 1.0),
    FIGURE(zener_gain, "Zener gain d", "", 1.0),
    FIGURE(zener_tau, "Zener time tau", "s", 1.0),
    FIGURE(zener_alpha, "Zener order alpha", "", 1.0),
    FIGURE(payne_gain, "Kraus gain g", "", 1.0),
    FIGURE(payne_strain, "Kraus critical shear strain", "", 1.0),
    FIGURE(payne_exponent, "Kraus exponent m", "", 1.0),
    FIGURE(shear_strain_limit, "lasting shear strain", "", 1.0),
    FIGURE(compressive_strain_limit, "lasting compressive strain", "", 1.0),
    FIGURE(pressure_limit, "lasting pressure", "MPa", GW_MPA),
    { "lowest temperature", "C", 273.15, 1.0, offsetof(gw_material, temperature_min) },
    { "highest temperature", "C", 273.15, 1.0, offsetof(gw_material, temperature_max) },
};
#undef FIGURE

static const gw_value *value_of(const gw_material *material, const material_figure *f)
{
    return (const gw_value *)(const void *)((const char *)material + f->at);
}

static const char *trust_word(gw_trust trust)
{
    switch (trust) {
    case GW_TRUST_GIVEN:
        return "given in the case";
    case GW_TRUST_PUBLISHED:
        return "published";
    case GW_TRUST_FROM_MEMORY:
        return "from memory";
    case GW_TRUST_COMMON_PRACTICE:
        return "common practice";
    }
    return "";
}

static double shown(const material_figure *f, const gw_value *value)
{
    return (value->v - f->zero) / f->si;
}

static void put_value(const material_figure *f, const gw_value *value, int width, gw_buf *out)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%s %s%s%s", f->name, gw_significant(shown(f, value), 4).s, *f->unit ? " " : "",
               f->unit);
    if (value->tolerance > 0.0) gw_buf_fmt(&text, " +-%s %%", gw_fixed(100.0 * value->tolerance, 0).s);
    gw_buf_fmt(&text, ", %s", trust_word(value->trust));
    if (*value->source) {
        gw_buf_add(&text, ": ");
        gw_buf_clean(&text, value->source);
    }
    gw_buf_paragraph(out, gw_buf_str(&text), width, 4);
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
}

void gw_material_text(const gw_material *material, int width, gw_buf *out)
{
    gw_buf_add(out, "  material ");
    gw_buf_clean(out, *material->name ? material->name : "given in the case");
    if (*material->label) {
        gw_buf_add(out, ": ");
        gw_buf_clean(out, material->label);
    }
    gw_buf_add(out, "\n");
    for (size_t i = 0; i < sizeof FIGURES / sizeof *FIGURES; i++) {
        const gw_value *value = value_of(material, &FIGURES[i]);
        if (value->known) put_value(&FIGURES[i], value, width, out);
    }
}

void gw_material_json(const gw_material *material, gw_json *json)
{
    gw_json_object(json, "material");
    gw_json_string(json, "name", material->name);
    gw_json_array(json, "values");
    for (size_t i = 0; i < sizeof FIGURES / sizeof *FIGURES; i++) {
        const gw_value *value = value_of(material, &FIGURES[i]);
        if (!value->known) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "what", FIGURES[i].name);
        gw_json_number(json, "value", shown(&FIGURES[i], value));
        gw_json_string(json, "unit", FIGURES[i].unit);
        gw_json_number(json, "tolerance", value->tolerance);
        gw_json_string(json, "trust", trust_word(value->trust));
        gw_json_string(json, "source", value->source);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_close(json);
}
