/* SPDX-License-Identifier: MIT */
/*
 * The material files themselves: what they print against what they cite. Run from the top of the tree.
 *
 * Moduli: P. B. Lindley, Engineering Design with Natural Rubber, MRPRA, 4th ed. 1974/1978 (from memory),
 * tolerance none: the files print the table. Dynamic ranges: common practice, room temperature, 10 to 20 Hz,
 * 1 to 5 % shear strain.
 */
#include "bush/dynamic.h"
#include "support/check.h"

#include <cjson/cJSON.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static cJSON *load(const char *name)
{
    char path[128], *text = calloc(1, 65536);
    FILE *file;
    cJSON *root;

    assert_non_null(text);
    snprintf(path, sizeof path, "materials/%s.json", name);
    if (!(file = fopen(path, "r"))) fail_msg("cannot open %s: run the tests from the top of the tree", path);
    assert_true(fread(text, 1, 65535, file) > 0);
    fclose(file);
    root = cJSON_Parse(text);
    free(text);
    if (!root) fail_msg("%s is not valid JSON", path);
    return root;
}

static double number(const cJSON *root, const char *key)
{
    const cJSON *value = cJSON_GetObjectItem(cJSON_GetObjectItem(root, key), "value");

    if (!cJSON_IsNumber(value)) fail_msg("%s has no value", key);
    return value->valuedouble;
}

static const struct {
    const char *name;
    double e0, g, k, bulk;
} LINDLEY[] = {
    { "nr-30", 0.92, 0.30, 0.93, 1000 }, { "nr-35", 1.18, 0.37, 0.89, 1000 },
    { "nr-40", 1.50, 0.45, 0.85, 1000 }, { "nr-45", 1.80, 0.54, 0.80, 1000 },
    { "nr-50", 2.20, 0.64, 0.73, 1030 }, { "nr-55", 3.25, 0.81, 0.64, 1090 },
    { "nr-60", 4.45, 1.06, 0.57, 1150 }, { "nr-65", 5.85, 1.37, 0.54, 1210 },
    { "nr-70", 7.35, 1.73, 0.53, 1270 }, { "nr-75", 9.40, 2.22, 0.52, 1330 },
};

static void natural_rubber_prints_lindleys_table(void **state)
{
    (void)state;
    check_copy_of("P. B. Lindley, Engineering Design with Natural Rubber, MRPRA, 4th ed. 1974 (from memory)");
    for (size_t i = 0; i < sizeof LINDLEY / sizeof *LINDLEY; i++) {
        cJSON *root = load(LINDLEY[i].name);

        check_about("%s", LINDLEY[i].name);
        check_abs(number(root, "young_modulus_MPa"), LINDLEY[i].e0, 0.0, "Young's modulus [MPa]");
        check_abs(number(root, "shear_modulus_MPa"), LINDLEY[i].g, 0.0, "shear modulus [MPa]");
        check_abs(number(root, "shape_k"), LINDLEY[i].k, 0.0, "k");
        check_abs(number(root, "bulk_modulus_MPa"), LINDLEY[i].bulk, 0.0, "bulk modulus [MPa]");
        cJSON_Delete(root);
    }
}

static const struct {
    const char *name;
    double ratio[2], loss[2];
} RANGES[] = {
    { "nr-40", { 1.05, 1.25 }, { 0.02, 0.06 } }, { "nr-50", { 1.2, 1.4 }, { 0.04, 0.09 } },
    { "nr-60", { 1.3, 1.7 }, { 0.07, 0.13 } },   { "nr-filled-70", { 1.5, 2.2 }, { 0.10, 0.20 } },
    { "nr-70", { 1.5, 2.2 }, { 0.10, 0.20 } },   { "nr-damped-60", { 1.8, 3.0 }, { 0.15, 0.30 } },
    { "pu-80a", { 1.3, 2.0 }, { 0.05, 0.15 } },  { "pu-85a", { 1.3, 2.0 }, { 0.05, 0.15 } },
    { "pu-90a", { 1.3, 2.0 }, { 0.05, 0.15 } },  { "pu-95a", { 1.3, 2.0 }, { 0.05, 0.15 } },
};

static void dynamic_laws_stay_in_the_usual_ranges_from_10_to_20_hz(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof RANGES / sizeof *RANGES; i++) {
        cJSON *root = load(RANGES[i].name);
        gw_dynamic_law law = { .ratio = 1.0,
                               .zener_gain = number(root, "zener_gain"),
                               .zener_tau = number(root, "zener_tau_s"),
                               .zener_alpha = number(root, "zener_alpha"),
                               .payne_gain = number(root, "payne_gain"),
                               .payne_amplitude = number(root, "payne_strain"),
                               .payne_exponent = number(root, "payne_exponent") };

        for (double hz = 10.0; hz <= 20.0; hz += 2.0)
            for (double strain = 0.01; strain <= 0.05; strain += 0.01) {
                double complex k = gw_dynamic_factor(&law, hz, strain);
                double loss = cimag(k) / creal(k);

                if (creal(k) < RANGES[i].ratio[0] || creal(k) > RANGES[i].ratio[1])
                    fail_msg("%s: ratio %g at %g Hz, strain %g", RANGES[i].name, creal(k), hz, strain);
                if (loss < RANGES[i].loss[0] || loss > RANGES[i].loss[1])
                    fail_msg("%s: loss %g at %g Hz, strain %g", RANGES[i].name, loss, hz, strain);
            }
        cJSON_Delete(root);
    }
}

static const char *const NAMES[] = {
    "nr-30",        "nr-35",        "nr-40",  "nr-45",  "nr-50",  "nr-55",       "nr-60",  "nr-65",
    "nr-70",        "nr-75",        "pu-70a", "pu-75a", "pu-80a", "pu-85a",      "pu-90a", "pu-95a",
    "nr-filled-70", "nr-damped-60", "pu-75d", "acetal", "steel",  "ptfe-fabric",
};

static void check_value(const char *name, const cJSON *value)
{
    const cJSON *trust = cJSON_GetObjectItem(value, "trust"), *source = cJSON_GetObjectItem(value, "source");
    const cJSON *tolerance = cJSON_GetObjectItem(value, "tolerance");

    if (!cJSON_IsNumber(cJSON_GetObjectItem(value, "value")) || !cJSON_IsNumber(tolerance) ||
        tolerance->valuedouble < 0.0 || !cJSON_IsString(trust) || !cJSON_IsString(source))
        fail_msg("%s.%s: value, tolerance, trust and source are all needed", name, value->string);
    if (strlen(source->valuestring) < 5 || strlen(source->valuestring) >= GW_SOURCE_MAX)
        fail_msg("%s.%s: the source is too short or too long", name, value->string);
    if (strcmp(trust->valuestring, "published") != 0 && strcmp(trust->valuestring, "from memory") != 0 &&
        strcmp(trust->valuestring, "common practice") != 0)
        fail_msg("%s.%s: trust \"%s\"", name, value->string, trust->valuestring);
}

static void every_value_says_where_it_comes_from(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof NAMES / sizeof *NAMES; i++) {
        cJSON *root = load(NAMES[i]), *value;

        assert_string_equal(cJSON_GetObjectItem(root, "name")->valuestring, NAMES[i]);
        cJSON_ArrayForEach(value, root) if (cJSON_IsObject(value)) check_value(NAMES[i], value);
        assert_true(number(root, "shear_modulus_MPa") > 0.0 && number(root, "bulk_modulus_MPa") > 0.0);
        cJSON_Delete(root);
    }
}

static void stiff_materials_keep_the_relations_of_an_isotropic_solid(void **state)
{
    static const char *const stiff[] = { "steel", "acetal", "ptfe-fabric" };

    (void)state;
    for (size_t i = 0; i < 3; i++) {
        cJSON *root = load(stiff[i]);
        double e = number(root, "young_modulus_MPa"), nu = number(root, "poisson_ratio");

        check_rel(number(root, "shear_modulus_MPa"), e / (2.0 * (1.0 + nu)), 1e-3, stiff[i]);
        check_rel(number(root, "bulk_modulus_MPa"), e / (3.0 * (1.0 - 2.0 * nu)), 1e-3, stiff[i]);
        cJSON_Delete(root);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(natural_rubber_prints_lindleys_table),
        cmocka_unit_test(dynamic_laws_stay_in_the_usual_ranges_from_10_to_20_hz),
        cmocka_unit_test(every_value_says_where_it_comes_from),
        cmocka_unit_test(stiff_materials_keep_the_relations_of_an_isotropic_solid),
    };
    return cmocka_run_group_tests_name("materials", tests, NULL, NULL);
}
