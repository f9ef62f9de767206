/* SPDX-License-Identifier: MIT */
/* Material files: those that are compiled in, a user's own, and their faults. */
#include "giveway/materials.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static void the_built_in_compounds_are_all_sound(void **state)
{
    gw_material_set set = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    gw_status st = gw_materials_builtin(&set, &faults);
    if (gw_faults_count(&faults)) fail_msg("%s", gw_faults_text(&faults, 0));
    assert_int_equal(st, GW_OK);
    assert_true(set.n >= 12);
    gw_materials_free(&set);
}

/*
 * P. B. Lindley, Engineering Design with Natural Rubber, NR Technical Bulletin, MRPRA (4th ed.), table of
 * hardness and moduli, from memory: IRHD, E0, G, bulk modulus [MPa], k.
 */
static void natural_rubber_follows_the_hardness_table(void **state)
{
    static const struct {
        const char *name;
        double irhd, e0, g, bulk, k;
    } TABLE[] = {
        { "nr-30", 30, 0.92, 0.30, 1000, 0.93 }, { "nr-35", 35, 1.18, 0.37, 1000, 0.89 },
        { "nr-40", 40, 1.50, 0.45, 1000, 0.85 }, { "nr-45", 45, 1.80, 0.54, 1000, 0.80 },
        { "nr-50", 50, 2.20, 0.64, 1030, 0.73 }, { "nr-55", 55, 3.25, 0.81, 1090, 0.64 },
        { "nr-60", 60, 4.45, 1.06, 1150, 0.57 }, { "nr-65", 65, 5.85, 1.37, 1210, 0.54 },
        { "nr-70", 70, 7.35, 1.73, 1270, 0.53 },
    };
    gw_material_set set = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(gw_materials_builtin(&set, &faults), GW_OK);
    for (size_t i = 0; i < sizeof TABLE / sizeof *TABLE; i++) {
        const gw_material *m = gw_materials_find(&set, TABLE[i].name);
        assert_non_null(m);
        check_rel(m->hardness_irhd.v, TABLE[i].irhd, 1e-12, "IRHD");
        check_rel(m->young_modulus.v, TABLE[i].e0 * 1e6, 1e-12, "E0");
        check_rel(m->shear_modulus.v, TABLE[i].g * 1e6, 1e-12, "G");
        check_rel(m->bulk_modulus.v, TABLE[i].bulk * 1e6, 1e-12, "bulk modulus");
        check_rel(m->shape_k.v, TABLE[i].k, 1e-12, "k");
        assert_int_equal(m->shear_modulus.trust, GW_TRUST_FROM_MEMORY);
    }
    gw_materials_free(&set);
}

#define HEAD          "{\"format\":\"giveway-material-1\",\"name\":\"own\""
#define VALUE(key, v) ",\"" key "\":{\"value\":" v ",\"trust\":\"published\",\"source\":\"a data sheet\"}"

static gw_status add(gw_material_set *set, const char *text, gw_faults *faults)
{
    gw_status st = gw_materials_add_text(set, "own.json", text, strlen(text), faults);
    sample_keep("material", text, st, faults);
    return st;
}

static void values_come_in_si_with_trust_and_source(void **state)
{
    gw_material_set set = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(add(&set,
                         HEAD ",\"label\":\"Our own\",\"// note\":1" VALUE("shear_modulus_MPa", "0.9")
                             VALUE("temperature_max_C", "80") VALUE("zener_tau_s", "1e-6")
                                 VALUE("zener_gain", "1") VALUE("zener_alpha", "0.5") "}",
                         &faults),
                     GW_OK);
    const gw_material *m = gw_materials_find(&set, "own");
    assert_non_null(m);
    assert_string_equal(m->label, "Our own");
    check_abs(m->shear_modulus.v, 0.9e6, 1e-6, "G");
    check_abs(m->shear_modulus.tolerance, 0, 0, "tolerance left out");
    assert_int_equal(m->shear_modulus.trust, GW_TRUST_PUBLISHED);
    assert_string_equal(m->shear_modulus.source, "a data sheet");
    check_abs(m->temperature_max.v, 353.15, 1e-9, "temperature in kelvin");
    assert_false(m->bulk_modulus.known);
    gw_materials_free(&set);
}

static void a_later_compound_replaces_one_of_its_name(void **state)
{
    gw_material_set set = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(add(&set, HEAD VALUE("shear_modulus_MPa", "1") "}", &faults), GW_OK);
    assert_int_equal(add(&set, HEAD VALUE("shear_modulus_MPa", "2") "}", &faults), GW_OK);
    assert_int_equal(set.n, 1);
    check_abs(set.items[0].shear_modulus.v, 2e6, 1e-6, "G of the later one");
    gw_materials_free(&set);
}

static void every_fault_of_a_material_is_named(void **state)
{
    static const struct {
        const char *text, *message;
    } LIST[] = {
        { "[]", "own.json: expected an object { } at the top of a material file, found a list" },
        { "{\"name\":\"own\"}", "own.json: format: this key is missing: give \"giveway-material-1\"" },
        { "{\"format\":\"giveway-case-1\",\"name\":\"own\"}", "format: expected \"giveway-material-1\"" },
        { "{\"format\":\"giveway-material-1\"}", "name: this key is missing" },
        { HEAD ",\"shear_modulus\":1}", "shear_modulus: unknown key; did you mean \"shear_modulus_MPa\"?" },
        { HEAD ",\"shear_modulus_MPa\":1}", "shear_modulus_MPa: expected an object {\"value\"" },
        { HEAD VALUE("shear_modulus_MPa", "0") "}", "shear_modulus_MPa.value: expected a number above 0" },
        { HEAD VALUE("shear_modulus_MPa", "1e999") "}", "too large to hold" },
        { HEAD VALUE("poisson_ratio", "0.51") "}", "at most 0.5" },
        { HEAD ",\"shape_k\":{\"value\":1,\"source\":\"x\"}}", "shape_k.trust: this key is missing" },
        { HEAD ",\"shape_k\":{\"value\":1,\"trust\":\"published\"}}", "shape_k.source: this key is missing" },
        { HEAD ",\"shape_k\":{\"value\":1,\"trust\":\"hearsay\",\"source\":\"x\"}}",
          "shape_k.trust: expected \"published\", \"from memory\" or \"common practice\"" },
        { HEAD VALUE("temperature_min_C", "90") VALUE("temperature_max_C", "80") "}",
          "temperature_max_C: expected more than temperature_min_C" },
        { HEAD VALUE("zener_gain", "1") VALUE("zener_alpha", "0.5") "}",
          "zener_tau_s: this key is missing: zener_gain, zener_tau_s and zener_alpha are needed together" },
        { HEAD VALUE("payne_gain", "1") VALUE("payne_strain", "0.5") "}",
          "payne_exponent: this key is missing" },
        { HEAD ",\"name\":\"own\"}", "name: this key is given more than once" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) {
        gw_material_set set = { 0 };
        gw_faults faults = { 0 };
        if (add(&set, LIST[i].text, &faults) != GW_E_SCHEMA) fail_msg("accepted: %s", LIST[i].text);
        assert_int_equal(gw_faults_count(&faults), 1);
        check_contains(gw_faults_text(&faults, 0), LIST[i].message);
        assert_int_equal(set.n, 0);
        gw_faults_free(&faults);
        gw_materials_free(&set);
    }
}

static void write_file(const char *dir, const char *name, const char *text)
{
    char path[256];
    snprintf(path, sizeof path, "%s/%s", dir, name);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(text, file);
    assert_int_equal(fclose(file), 0);
}

static void a_folder_adds_to_the_set_in_the_order_of_names(void **state)
{
    static const char *const FILES[] = { "a.json", "b.json", "c.json", "notes.txt" };
    char dir[] = "/tmp/giveway-materials-XXXXXX", path[256];
    gw_material_set set = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    assert_non_null(mkdtemp(dir));
    write_file(dir, "b.json", HEAD VALUE("shear_modulus_MPa", "2") "}");
    write_file(dir, "a.json", HEAD VALUE("shear_modulus_MPa", "1") "}");
    write_file(dir, "c.json", "{\n\"format\": }");
    write_file(dir, "notes.txt", "not read");
    assert_int_equal(gw_materials_add_dir(&set, dir, &faults), GW_E_PARSE);
    assert_int_equal(set.n, 1);
    check_abs(set.items[0].shear_modulus.v, 2e6, 1e-6, "b comes after a");
    assert_int_equal(gw_faults_count(&faults), 1);
    check_contains(gw_faults_text(&faults, 0), "/c.json: line 2, column 11: ");
    for (size_t i = 0; i < 4; i++) {
        snprintf(path, sizeof path, "%s/%s", dir, FILES[i]);
        remove(path);
    }
    rmdir(dir);
    gw_faults_free(&faults);
    assert_int_equal(gw_materials_add_dir(&set, dir, &faults), GW_E_IO);
    check_contains(gw_faults_text(&faults, 0), "cannot be read: No such file or directory");
    gw_faults_free(&faults);
    gw_materials_free(&set);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_built_in_compounds_are_all_sound),
        cmocka_unit_test(natural_rubber_follows_the_hardness_table),
        cmocka_unit_test(values_come_in_si_with_trust_and_source),
        cmocka_unit_test(a_later_compound_replaces_one_of_its_name),
        cmocka_unit_test(every_fault_of_a_material_is_named),
        cmocka_unit_test(a_folder_adds_to_the_set_in_the_order_of_names),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
