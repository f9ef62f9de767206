/* SPDX-License-Identifier: MIT */
#include "show/strength.h"

#include "giveway/units.h"

#include <string.h>

static double trade_unit(const gw_verdict *v)
{
    return strcmp(v->unit, "Pa") == 0 ? GW_MPA : 1.0;
}

static const char *trade_name(const gw_verdict *v)
{
    return strcmp(v->unit, "Pa") == 0 ? "MPa" : v->unit;
}

static void put_checks(const gw_strength *s, gw_json *json)
{
    gw_json_array(json, "checks");
    for (int i = 0; i < s->n_checks; i++) {
        const gw_verdict *v = &s->check[i];
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "what", v->what);
        gw_json_number(json, "value", v->value / trade_unit(v));
        gw_json_number(json, "limit", v->limit / trade_unit(v));
        gw_json_string(json, "unit", trade_name(v));
        gw_json_bool(json, "holds", v->holds);
        gw_json_string(json, "source", v->source);
        gw_json_close(json);
    }
    gw_json_close(json);
}

void gw_strength_json(const gw_strength *s, gw_json *json)
{
    if (s->kind == GW_STRENGTH_NONE) return;
    gw_json_object(json, s->kind == GW_STRENGTH_RUBBER ? "strain" : "bearing");
    if (s->kind == GW_STRENGTH_RUBBER) {
        gw_json_number(json, "shear", s->strain.travel_shear);
        gw_json_number(json, "compression", s->strain.compression);
        gw_json_number(json, "flow_shear", s->strain.flow_shear);
        gw_json_number(json, "total", s->strain.total);
    } else {
        gw_json_number(json, "load_N", s->load);
        gw_json_number(json, "specific_load_MPa", s->specific_load / GW_MPA);
    }
    gw_json_bool(json, "holds", s->holds);
    put_checks(s, json);
    gw_json_close(json);
}
