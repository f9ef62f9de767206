/* SPDX-License-Identifier: MIT */
#include "casefile/material_file.h"

#include "casefile/hardness.h"
#include "casefile/material_hint.h"
#include "giveway/units.h"

#include <stdio.h>
#include <string.h>

/* The offsets are those of a gw_value in gw_material. */
#define AT(field) offsetof(gw_material, field)
static const gw_number_key VALUES[] = {
    { "shear_modulus_MPa", GW_OPTIONAL, GW_ABOVE(0, 1e6), GW_MPA, 0, AT(shear_modulus) },
    { "bulk_modulus_MPa", GW_OPTIONAL, GW_ABOVE(0, 1e7), GW_MPA, 0, AT(bulk_modulus) },
    { "young_modulus_MPa", GW_OPTIONAL, GW_ABOVE(0, 1e7), GW_MPA, 0, AT(young_modulus) },
    { "shape_k", GW_OPTIONAL, GW_ABOVE(0, 10), 1, 0, AT(shape_k) },
    { "poisson_ratio", GW_OPTIONAL, GW_FROM(0, 0.5), 1, 0, AT(poisson_ratio) },
    { "hardness_irhd", GW_OPTIONAL, GW_FROM(0, 100), 1, 0, AT(hardness_irhd) },
    { "hardness_shore_d", GW_OPTIONAL, GW_FROM(0, 100), 1, 0, AT(hardness_shore_d) },
    { "zener_gain", GW_OPTIONAL, GW_FROM(0, 1e6), 1, 0, AT(zener_gain) },
    { "zener_tau_s", GW_OPTIONAL, GW_ABOVE(0, 1e6), 1, 0, AT(zener_tau) },
    { "zener_alpha", GW_OPTIONAL, GW_ABOVE(0, 1), 1, 0, AT(zener_alpha) },
    { "payne_gain", GW_OPTIONAL, GW_FROM(0, 1e3), 1, 0, AT(payne_gain) },
    { "payne_strain", GW_OPTIONAL, GW_ABOVE(0, 10), 1, 0, AT(payne_strain) },
    { "payne_exponent", GW_OPTIONAL, GW_ABOVE(0, 10), 1, 0, AT(payne_exponent) },
    { "shear_strain_limit", GW_OPTIONAL, GW_ABOVE(0, 10), 1, 0, AT(shear_strain_limit) },
    { "compressive_strain_limit", GW_OPTIONAL, GW_ABOVE(0, 1), 1, 0, AT(compressive_strain_limit) },
    { "pressure_limit_MPa", GW_OPTIONAL, GW_ABOVE(0, 1e5), GW_MPA, 0, AT(pressure_limit) },
    { "temperature_min_C", GW_OPTIONAL, GW_FROM(-273, 2e3), 1, 273.15, AT(temperature_min) },
    { "temperature_max_C", GW_OPTIONAL, GW_FROM(-273, 2e3), 1, 273.15, AT(temperature_max) },
};

static const char *const FILE_KEYS[] = { "format", "name", "label", "family", NULL };
static const char *const VALUE_KEYS[] = { "value", "tolerance", "trust", "source", NULL };
static const char *const OBJECT_KEYS[] = { "label", NULL };

/* `in_file` asks for trust and source, which a user's own value in a case need not have. */
static void read_value(const gw_reader *rd, const gw_node *node, const gw_number_key *k, bool in_file,
                       gw_value *out)
{
    static const char *const TRUST[] = { "published", "from memory", "common practice" };
    const gw_need need = in_file ? GW_REQUIRED : GW_OPTIONAL;
    const gw_range band = GW_FROM(0, 10);
    const char *source = "given in the case";
    gw_value v = { .known = true, .trust = GW_TRUST_GIVEN };
    int trust;
    bool have;
    if (!in_file && cJSON_IsNumber(node->json)) {
        have = gw_take_number(rd, node, k->range, &v.v);
    } else if (gw_is_object(rd, node, "an object {\"value\", \"tolerance\", \"trust\", \"source\"}")) {
        gw_check_keys(rd, node, NULL, 0, VALUE_KEYS);
        have = gw_get_number(rd, node, "value", GW_REQUIRED, k->range, &v.v);
        gw_get_number(rd, node, "tolerance", GW_OPTIONAL, band, &v.tolerance);
        if (gw_get_choice(rd, node, "trust", need, TRUST, 3, &trust))
            v.trust = (gw_trust)(GW_TRUST_PUBLISHED + trust);
        gw_get_text(rd, node, "source", need, GW_SOURCE_MAX - 1, &source);
    } else {
        return;
    }
    if (!have) return;
    v.v = v.v * k->unit + k->shift;
    snprintf(v.source, sizeof v.source, "%s", source);
    *out = v;
}

/* A law of three figures is given whole or not at all. */
static void check_law(const gw_reader *rd, const gw_node *node, const char *const key[3],
                      const gw_value *const v[3])
{
    if (!v[0]->known && !v[1]->known && !v[2]->known) return;
    for (int i = 0; i < 3; i++) {
        gw_node at = gw_node_key(node, key[i]);
        if (!at.json)
            gw_fault(rd, &at, "this key is missing: %s, %s and %s are needed together", key[0], key[1],
                     key[2]);
    }
}

static void check_laws(const gw_reader *rd, const gw_node *node, const gw_material *m)
{
    static const char *const ZENER[] = { "zener_gain", "zener_tau_s", "zener_alpha" };
    static const char *const PAYNE[] = { "payne_gain", "payne_strain", "payne_exponent" };
    const gw_value *const zener[] = { &m->zener_gain, &m->zener_tau, &m->zener_alpha };
    const gw_value *const payne[] = { &m->payne_gain, &m->payne_strain, &m->payne_exponent };
    check_law(rd, node, ZENER, zener);
    check_law(rd, node, PAYNE, payne);
}

static void read_values(const gw_reader *rd, const gw_node *node, bool in_file, gw_material *m)
{
    for (size_t i = 0; i < GW_COUNT(VALUES); i++) {
        gw_node value = gw_node_key(node, VALUES[i].key);
        if (value.json)
            read_value(rd, &value, &VALUES[i], in_file, (gw_value *)(void *)((char *)m + VALUES[i].offset));
    }
    check_laws(rd, node, m);
}

static void read_name(const gw_reader *rd, const gw_node *top, gw_material *m)
{
    const char *name, *label;
    gw_node at = gw_node_key(top, "name");
    if (gw_get_word(rd, top, "name", GW_REQUIRED, &name) && gw_is_name(rd, &at, name))
        snprintf(m->name, sizeof m->name, "%s", name);
    snprintf(m->label, sizeof m->label, "%s", m->name);
    if (gw_get_text(rd, top, "label", GW_OPTIONAL, GW_NAME_MAX - 1, &label))
        snprintf(m->label, sizeof m->label, "%s", label);
}

bool gw_read_material(const gw_reader *rd, const gw_node *top, gw_material *out)
{
    static const char *const FORMATS[] = { "giveway-material-1" };
    const int before = gw_faults_count(rd->faults);
    gw_material m = { 0 };
    int format, family;
    if (!gw_is_object(rd, top, "an object { } at the top of a material file")) return false;
    gw_get_choice(rd, top, "format", GW_REQUIRED, FORMATS, 1, &format);
    gw_check_keys(rd, top, VALUES, GW_COUNT(VALUES), FILE_KEYS);
    read_name(rd, top, &m);
    if (gw_get_choice(rd, top, "family", GW_OPTIONAL, GW_FAMILY_WORDS, 2, &family))
        m.family = (gw_family)(family + 1);
    read_values(rd, top, true, &m);
    if (m.temperature_min.known && m.temperature_max.known && m.temperature_min.v >= m.temperature_max.v) {
        gw_node at = gw_node_key(top, "temperature_max_C");
        gw_fault(rd, &at, "expected more than temperature_min_C");
    }
    if (gw_faults_count(rd->faults) != before) return false;
    *out = m;
    return true;
}

static void unknown_material(const gw_reader *rd, const gw_node *at, const gw_material_set *set,
                             const char *name)
{
    char found[80], hint[GW_MATERIAL_HINT_MAX];
    gw_fault(rd, at,
             "expected the name of a material, found %s%s, or give an object with shear_modulus_MPa and "
             "bulk_modulus_MPa, or with family and hardness_points",
             gw_found(at, found), gw_material_hint(set, name, hint));
}

static bool read_in_place(const gw_reader *rd, const gw_node *node, gw_material *m)
{
    const int before = gw_faults_count(rd->faults);
    const char *label;
    gw_check_keys(rd, node, VALUES, GW_COUNT(VALUES), OBJECT_KEYS);
    snprintf(m->name, sizeof m->name, "given in the case");
    snprintf(m->label, sizeof m->label, "%s", m->name);
    if (gw_get_text(rd, node, "label", GW_OPTIONAL, GW_NAME_MAX - 1, &label))
        snprintf(m->label, sizeof m->label, "%s", label);
    read_values(rd, node, false, m);
    return gw_faults_count(rd->faults) == before;
}

static void check_moduli(const gw_reader *rd, const gw_node *at, const gw_material *m, bool in_place)
{
    static const char *const KEYS[] = { "shear_modulus_MPa", "bulk_modulus_MPa" };
    const bool known[] = { m->shear_modulus.known, m->bulk_modulus.known };
    for (int i = 0; i < 2; i++) {
        if (known[i]) continue;
        gw_node key = gw_node_key(at, KEYS[i]);
        if (!in_place)
            gw_fault(rd, at, "the material \"%s\" has no %s, which a bush of rubber needs: name another",
                     m->name, KEYS[i]);
        else if (!key.json)
            gw_fault(rd, &key, "this key is missing: give a number above 0");
    }
}

bool gw_read_material_ref(const gw_reader *rd, const gw_node *bush, const gw_material_set *set,
                          gw_material *out)
{
    const int before = gw_faults_count(rd->faults);
    gw_node node = gw_node_key(bush, "material");
    gw_material m = { 0 };
    if (!node.json) {
        gw_fault(rd, &node, "this key is missing: give the name of a material, or an object with its moduli");
        return false;
    }
    if (cJSON_IsString(node.json)) {
        const gw_material *known = gw_materials_find(set, node.json->valuestring);
        if (!known) {
            unknown_material(rd, &node, set, node.json->valuestring);
            return false;
        }
        m = *known;
    } else if (!gw_is_object(rd, &node, "the name of a material, or an object with its moduli")) {
        return false;
    } else if (gw_node_key(&node, "family").json || gw_node_key(&node, "hardness_points").json) {
        if (!gw_read_hardness(rd, &node, set, &m)) return false;
    } else {
        read_in_place(rd, &node, &m);
    }
    check_moduli(rd, &node, &m, !cJSON_IsString(node.json));
    if (gw_faults_count(rd->faults) != before) return false;
    *out = m;
    return true;
}
