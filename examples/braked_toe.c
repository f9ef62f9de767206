/* SPDX-License-Identifier: MIT */
/*
 * An example of a program that uses the library: how far a wheel's toe moves under a load of a case, kit by
 * kit. usage: braked_toe CASE.json LOAD
 */
#include <giveway/giveway.h>

#include <gsl/gsl_errno.h>

#include <stdio.h>
#include <string.h>

/* Reads the case with the compounds that the library brings; says every fault. */
static gw_status read_case(const char *path, gw_material_set *materials, gw_case *c)
{
    gw_faults faults = { 0 };
    gw_status st = gw_materials_builtin(materials, &faults);

    if (st == GW_OK) st = gw_case_load(path, materials, c, &faults);
    for (int i = 0; i < gw_faults_count(&faults); i++) fprintf(stderr, "%s\n", gw_faults_text(&faults, i));
    gw_faults_free(&faults);
    return st;
}

/* Every kit and corner under one load. Angles inside the library are radians. */
static gw_status print_toe(const gw_case *c, int load, gw_error *err)
{
    gw_deflect_study study = { 0 };
    gw_selection wanted = { .method = GW_METHOD_SOLVED };
    gw_status st = gw_study_deflect(c, &wanted, &study, err);

    if (st != GW_OK) return st;
    for (int i = 0; i < study.n; i++) {
        const gw_deflection *d = &study.item[i];

        if (d->load == load)
            printf("%-10s %-5s %+.3f deg\n", c->kits[d->kit].name, d->axle == GW_FRONT ? "front" : "rear",
                   d->result.toe_change / GW_DEG);
    }
    gw_deflect_study_free(&study);
    return GW_OK;
}

int main(int argc, char **argv)
{
    gw_material_set materials = { 0 };
    gw_case c = { 0 };
    gw_error err = { GW_OK, "" };

    if (argc != 3) {
        fprintf(stderr, "usage: braked_toe CASE.json LOAD\n");
        return 2;
    }
    gsl_set_error_handler_off(); /* what fails comes back as a status */
    gw_status st = read_case(argv[1], &materials, &c);
    int load = st == GW_OK ? gw_case_find_load(&c, argv[2]) : -1;

    if (st == GW_OK && load < 0) fprintf(stderr, "%s: no load is called \"%s\"\n", argv[1], argv[2]);
    if (load >= 0 && (st = print_toe(&c, load, &err)) != GW_OK) fprintf(stderr, "%s\n", err.msg);
    gw_case_free(&c);
    gw_materials_free(&materials);
    return st == GW_OK && load >= 0 ? 0 : 1;
}
