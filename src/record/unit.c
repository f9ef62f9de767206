/* SPDX-License-Identifier: MIT */
#include "record/unit.h"

static const struct {
    const char *key, *word;
    double times, over;
} UNITS[GW_UNITS] = {
#define GW_AS_ENTRY(id, key, word, times, over) { key, word, times, over },
    GW_UNIT_LIST(GW_AS_ENTRY)
#undef GW_AS_ENTRY
};

const char *gw_unit_key(gw_unit unit)
{
    return UNITS[unit].key;
}

const char *gw_unit_word(gw_unit unit)
{
    return UNITS[unit].word;
}

double gw_unit_out(gw_unit unit, double value)
{
    return value / UNITS[unit].over * UNITS[unit].times;
}

double gw_unit_of_member(gw_unit unit, const void *of, size_t at)
{
    return gw_unit_out(unit, *(const double *)(const void *)((const char *)of + at));
}
