/* SPDX-License-Identifier: MIT */
/* Points of a corner or an axle and who uses them; a member of either. */
#include "casefile/corner_reader.h"
#include "casefile/nearest.h"
#include "giveway/units.h"

#include <string.h>

void gw_read_points(gw_corner_reader *r)
{
    const gw_reader *rd = &r->cr->rd;
    if (!gw_get_object(rd, &r->node, "points_mm", GW_OPTIONAL, &r->points_node)) return;
    int n = gw_node_count(&r->points_node);
    if (!gw_is_within(rd, &r->points_node, GW_MAX_POINTS, "points") || n == 0) return;
    if (!(r->points = gw_reader_make(rd, n, sizeof *r->points))) return;
    for (const cJSON *e = gw_first(&r->points_node); e; e = gw_node_next(e)) {
        gw_node node = gw_node_entry(&r->points_node, e, 0);
        gw_corner_point *point = &r->points[r->n_points++];
        point->name = e->string;
        gw_is_name(rd, &node, e->string);
        point->known = gw_take_vector(rd, &node, GW_POINT_LIMIT_MM, GW_MM, &point->at);
        if (point->known) gw_warn_near_origin(rd, &node, point->at);
    }
}

bool gw_read_place(gw_corner_reader *r, const gw_node *up, const char *key, gw_vec3 *out)
{
    const gw_reader *rd = &r->cr->rd;
    char found[80], hint[GW_HINT_MAX];
    gw_node node = gw_node_key(up, key);
    if (cJSON_IsArray(node.json)) return gw_take_vector(rd, &node, GW_POINT_LIMIT_MM, GW_MM, out);
    if (!cJSON_IsString(node.json)) {
        gw_fault(rd, &node, "expected the name of a point under \"points_mm\" or [x, y, z], found %s",
                 gw_found(&node, found));
        return false;
    }
    gw_nearest near = { .want = node.json->valuestring };
    for (int i = 0; i < r->n_points; i++) {
        gw_corner_point *point = &r->points[i];
        if (strcmp(point->name, node.json->valuestring) == 0) {
            point->used = true;
            if (point->known) *out = point->at;
            return point->known;
        }
    }
    for (int i = 0; i < r->n_points; i++) gw_nearest_offer(&near, r->points[i].name);
    gw_fault(rd, &node, "expected the name of a point under \"points_mm\", found %s%s",
             gw_found(&node, found), gw_nearest_hint(&near, hint));
    return false;
}

void gw_warn_unused_points(gw_corner_reader *r)
{
    for (int i = 0; i < r->n_points; i++) {
        gw_node at = { NULL, &r->points_node, r->points[i].name, 0 };
        if (!r->points[i].used) gw_warn(&r->cr->rd, &at, "no joint, spring or damper uses this point");
    }
}

bool gw_read_member(const gw_reader *rd, const gw_node *node, gw_body *body)
{
    static const gw_number_key MASS[] = { { "mass_kg", GW_OPTIONAL, GW_FROM(0, 1e5), 1, 0,
                                            offsetof(gw_body, mass) } };
    gw_is_name(rd, node, node->key);
    if (strcmp(node->key, "chassis") == 0 || strcmp(node->key, "upright") == 0)
        gw_fault(rd, node, "this body is there without being listed: give the member another name");
    if (!(body->name = gw_keep(rd, node->key))) return false;
    if (!gw_is_object(rd, node, "an object { }, which may hold mass_kg")) return true;
    gw_check_keys(rd, node, MASS, 1, NULL);
    gw_get_numbers(rd, node, MASS, 1, body);
    return true;
}
