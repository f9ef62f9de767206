/* SPDX-License-Identifier: MIT */
/* A compound's values, each with its unit, how far it can be trusted and who says so. */
#include "show/rates.h"

#include "format/number.h"
#include <stddef.h>

#define FIGURE(field, name, word, unit)                                                                      \
    {                                                                                                        \
        name, word, GW_UNIT_##unit, 0.0, offsetof(gw_material, field)                                        \
    }
static const gw_material_figure FIGURES[] = {
    FIGURE(hardness_irhd, "hardness", "IRHD", PLAIN),
    FIGURE(shear_modulus, "shear modulus G", "MPa", MPA),
    FIGURE(young_modulus, "Young's modulus E0", "MPa", MPA),
    FIGURE(bulk_modulus, "bulk modulus K", "MPa", MPA),
    FIGURE(shape_k, "k of Ec = E0 (1 + 2 k S^2)", "", PLAIN),
    FIGURE(poisson_ratio, "Poisson's ratio", "", PLAIN),
    FIGURE(zener_gain, "Zener gain d", "", PLAIN),
    FIGURE(zener_tau, "Zener time tau", "s", PLAIN),
    FIGURE(zener_alpha, "Zener order alpha", "", PLAIN),
    FIGURE(payne_gain, "Kraus gain g", "", PLAIN),
    FIGURE(payne_strain, "Kraus critical shear strain", "", PLAIN),
    FIGURE(payne_exponent, "Kraus exponent m", "", PLAIN),
    FIGURE(shear_strain_limit, "lasting shear strain", "", PLAIN),
    FIGURE(compressive_strain_limit, "lasting compressive strain", "", PLAIN),
    FIGURE(pressure_limit, "lasting pressure", "MPa", MPA),
    { "lowest temperature", "C", GW_UNIT_PLAIN, 273.15, offsetof(gw_material, temperature_min) },
    { "highest temperature", "C", GW_UNIT_PLAIN, 273.15, offsetof(gw_material, temperature_max) },
};
#undef FIGURE

int gw_material_figures(void)
{
    return GW_COLUMNS(FIGURES);
}

const gw_material_figure *gw_material_figure_at(int index)
{
    return &FIGURES[index];
}

const gw_value *gw_material_given(const gw_material *material, int index)
{
    const gw_value *value = (const gw_value *)(const void *)((const char *)material + FIGURES[index].at);
    return value->known ? value : NULL;
}

static void put_value(const gw_material_figure *f, const gw_value *value, gw_paper *paper)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%s %s%s%s", f->name, gw_significant(gw_unit_out(f->unit, value->v - f->zero), 4).s,
               *f->word ? " " : "", f->word);
    if (value->tolerance > 0.0) gw_buf_fmt(&text, " +-%s %%", gw_fixed(100.0 * value->tolerance, 0).s);
    gw_buf_fmt(&text, ", %s", GW_TRUST_WORDS[value->trust]);
    if (*value->source) gw_buf_fmt(&text, ": %s", value->source);
    gw_paper_say_of(paper, 4, &text);
}

void gw_material_text(const gw_material *material, gw_paper *paper)
{
    gw_paper_line(paper, "  material %s%s%s", *material->name ? material->name : "given in the case",
                  *material->label ? ": " : "", material->label);
    for (int i = 0; i < gw_material_figures(); i++) {
        const gw_value *value = gw_material_given(material, i);
        if (value) put_value(&FIGURES[i], value, paper);
    }
}
