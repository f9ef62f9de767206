/* SPDX-License-Identifier: MIT */
/*
 * What the reader says of many files, in one process: each line of standard input names a case and a folder
 * of materials (a tab between them); answered by its faults, a line each, and an empty line. For tests that
 * ask about thousands of files, where the program itself would also try what can be done with each.
 */
#include "giveway/casefile.h"

#include <stdio.h>
#include <string.h>

static void answer(const char *path, const char *folder)
{
    gw_material_set materials = { 0 };
    gw_faults faults = { 0 };
    gw_case c = { 0 };
    if (gw_materials_builtin(&materials, &faults) == GW_OK &&
        gw_materials_add_dir(&materials, folder, &faults) == GW_OK)
        gw_case_load(path, &materials, &c, &faults);
    for (int i = 0; i < gw_faults_count(&faults); i++) printf("%s\n", gw_faults_text(&faults, i));
    printf("\n");
    fflush(stdout);
    gw_case_free(&c);
    gw_materials_free(&materials);
    gw_faults_free(&faults);
}

int main(void)
{
    char line[4096];
    while (fgets(line, sizeof line, stdin)) {
        char *folder = strchr(line, '\t');
        line[strcspn(line, "\n")] = '\0';
        if (!folder) return 2;
        *folder++ = '\0';
        answer(line, folder);
    }
    return 0;
}
