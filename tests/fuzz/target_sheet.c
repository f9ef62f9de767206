/* SPDX-License-Identifier: MIT */
/* A filled sheet: refused with faults that leave the car alone, or a case that is sound JSON of finite
 * numbers. */
#include "fuzz/target.h"
#include "start/case.h"
#include "start/sheet.h"

#include <stdlib.h>
#include <string.h>

/* Compounds are only asked for where a hardness is outside the table. */
static const gw_material_set *builtin(void)
{
    static gw_material_set set;
    static bool ready;
    gw_faults faults = { 0 };
    if (!ready && gw_materials_builtin(&set, &faults) != GW_OK) gw_fuzz_found("the built-in materials");
    ready = true;
    gw_faults_free(&faults);
    return &set;
}

static void check_case(const gw_start_car *car)
{
    gw_buf out = { 0 };
    gw_start_case(car, builtin(), &out);
    if (out.failed) gw_fuzz_found("a case without memory");
    if (strstr(gw_buf_str(&out), "null")) gw_fuzz_found("a figure of the case that is no number");
    gw_buf_free(&out);
}

void gw_fuzz_sheet(const uint8_t *data, size_t size)
{
    static const char *const REARS[] = { "semi_trailing", "twist_beam", "live_axle" };
    gw_start_wish wish = { .layout = { gw_start_find("strut", GW_FRONT),
                                       gw_start_find(REARS[size % 3], GW_REAR) } };
    gw_start_car car, before;
    gw_faults faults = { 0 };
    gw_start_make(&wish, &car);
    before = car;
    gw_start_filled filled = { 0 };
    gw_buf again = { 0 };
    gw_status status = gw_start_read(gw_fuzz_write("csv", data, size), size % 2 == 0, &car, &filled, &faults);
    if ((status == GW_OK) != (gw_faults_count(&faults) == 0)) gw_fuzz_found("status %d, but faults", status);
    if (status != GW_OK && memcmp(&car, &before, sizeof car) != 0) gw_fuzz_found("a car that is half read");
    if (status == GW_OK) check_case(&car);
    if (status == GW_OK) gw_start_sheet(&before, &filled, &again);
    gw_buf_free(&again);
    gw_arena_free(&filled.arena);
    gw_faults_free(&faults);
}
