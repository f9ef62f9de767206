/* SPDX-License-Identifier: MIT */
#include "support/match_sample.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The hatchback by the rules with twenty figures uncertain: points and bushes of both axles. */
static const char UNCERTAIN[] =
    "{ \"uncertain\": ["
    "{ \"of\": \"corners.front.points_mm.arm_front\", \"mm\": 2 }, { \"of\": "
    "\"corners.front.points_mm.arm_outer\", \"mm\": 2 },"
    "{ \"of\": \"corners.front.points_mm.tie_outer\", \"mm\": 2 }, { \"of\": "
    "\"corners.rear.points_mm.toe_inner\", \"mm\": 2 },"
    "{ \"of\": \"corners.front.spring.rate_N_per_mm\", \"percent\": 5 }, { \"of\": "
    "\"corners.rear.spring.rate_N_per_mm\", \"percent\": 5 },"
    "{ \"of\": \"bushes.arm_front_rubber\", \"percent\": 25 }, { \"of\": \"bushes.arm_rear_rubber\", "
    "\"percent\": 25 },"
    "{ \"of\": \"bushes.rack_rubber\", \"percent\": 25 }, { \"of\": \"bushes.toe_rubber\", \"percent\": 25 },"
    "{ \"of\": \"bushes.top_rubber\", \"percent\": 25 }, { \"of\": \"vehicle.mass_kg\", \"percent\": 2 } ],";

/* Twenty values. */
static const char READINGS[] =
    "{ \"format\": \"giveway-readings-1\", \"readings\": ["
    "{ \"name\": \"back\", \"corner\": \"front\", \"load\": { \"patch_force_N\": [-2000, 0, null] }, "
    "\"toe_change_deg\": -0.12, \"within_deg\": 0.03, \"wheel_fore_aft_mm\": -7.2, \"within_mm\": 0.2 },"
    "{ \"name\": \"in\", \"corner\": \"front\", \"load\": { \"patch_force_N\": [0, -1000, null] }, "
    "\"toe_change_deg\": 0.04, \"camber_change_deg\": 0.17, \"within_deg\": 0.03 },"
    "{ \"name\": \"bump\", \"corner\": \"front\", \"travel_mm\": [-40, -20, 20, 40], \"toe_change_deg\": "
    "[0.15, 0.06, -0.05, -0.11], \"camber_change_deg\": [0.83, 0.39, -0.31, -0.53], \"within_deg\": 0.03 },"
    "{ \"name\": \"rate\", \"corner\": \"front\", \"wheel_rate_N_per_mm\": 20, \"within_N_per_mm\": 3 },"
    "{ \"name\": \"back\", \"corner\": \"rear\", \"load\": { \"patch_force_N\": [-1000, 0, null] }, "
    "\"toe_change_deg\": -0.03, \"within_deg\": 0.1, \"wheel_fore_aft_mm\": -2, \"within_mm\": 2 },"
    "{ \"name\": \"in\", \"corner\": \"rear\", \"load\": { \"patch_force_N\": [0, -1000, null] }, "
    "\"toe_change_deg\": 0.04, \"within_deg\": 0.1 },"
    "{ \"name\": \"bump\", \"corner\": \"rear\", \"travel_mm\": [-30, 30], \"toe_change_deg\": [0, 0], "
    "\"camber_change_deg\": [0.4, -0.4], \"within_deg\": 0.3 } ] }";

static char *with_uncertain(const char *path, size_t *size)
{
    FILE *f = fopen(path, "rb");
    char *text = calloc(1, 1 << 20);
    size_t head = sizeof UNCERTAIN - 1;
    if (!f || !text) return NULL;
    memcpy(text, UNCERTAIN, head);
    while (fgetc(f) != '{' && !feof(f)) {
    }
    *size = head + fread(text + head, 1, (1 << 20) - 1 - head, f);
    fclose(f);
    return text;
}

bool match_sample_open(match_sample *out)
{
    size_t size = 0;
    char *text = with_uncertain("tests/cases/hatchback-by-rule.json", &size);
    *out = (match_sample){ 0 };
    bool ok = text && gw_materials_builtin(&out->materials, &out->faults) == GW_OK &&
              gw_case_read("hatchback", text, size, &out->materials, &out->c, &out->faults) == GW_OK &&
              gw_readings_read("readings.json", READINGS, sizeof READINGS - 1, &out->c, &out->readings,
                               &out->faults) == GW_OK &&
              gw_laws_make(&out->c, GW_METHOD_SOLVED, &out->laws, NULL) == GW_OK;
    for (int i = 0; i < gw_faults_count(&out->faults); i++)
        fprintf(stderr, "%s\n", gw_faults_text(&out->faults, i));
    free(text);
    out->wanted = (gw_selection){ .method = GW_METHOD_SOLVED, .laws = &out->laws };
    return ok;
}

void match_sample_close(match_sample *sample)
{
    gw_laws_free(&sample->laws);
    gw_readings_free(&sample->readings);
    gw_case_free(&sample->c);
    gw_materials_free(&sample->materials);
    gw_faults_free(&sample->faults);
}
