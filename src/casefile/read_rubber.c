/* SPDX-License-Identifier: MIT */
/* Rubber or polyurethane between two sleeves, and whether its shape can exist. */
#include "casefile/material_file.h"
#include "casefile/section.h"
#include "giveway/units.h"

/* Diameters come in, radii are kept. */
#define AT(field) offsetof(gw_annulus, field)
static const gw_number_key NUMBERS[] = {
    { "inner_diameter_mm", GW_REQUIRED, GW_ABOVE(0, 2e3), GW_MM / 2, 0, AT(inner_radius) },
    { "outer_diameter_mm", GW_REQUIRED, GW_ABOVE(0, 2e3), GW_MM / 2, 0, AT(outer_radius) },
    { "length_mm", GW_REQUIRED, GW_ABOVE(0, 5e3), GW_MM, 0, AT(length) },
    { "end_dish_mm", GW_OPTIONAL, GW_FROM(0, 2e3), GW_MM, 0, AT(end_dish) },
};

static const gw_number_key VOIDS[] = {
    { "half_angle_deg", GW_REQUIRED, GW_BETWEEN(0, 90), GW_DEG, 0, offsetof(gw_voids, half_angle) },
    { "gap_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, offsetof(gw_voids, gap) },
    { "depth_mm", GW_OPTIONAL, GW_ABOVE(0, 1e3), GW_MM, 0, offsetof(gw_voids, depth) },
};

static const gw_number_key INTERLEAF[] = {
    { "diameter_mm", GW_REQUIRED, GW_ABOVE(0, 2e3), GW_MM / 2, 0, AT(interleaf_radius) },
    { "thickness_mm", GW_REQUIRED, GW_ABOVE(0, 1e3), GW_MM, 0, AT(interleaf_thickness) },
};

static const gw_number_key STOP[] = {
    { "gap_mm", GW_REQUIRED, GW_FROM(0, 1e3), GW_MM, 0, offsetof(gw_stop, gap) },
    { "rate_N_per_mm", GW_REQUIRED, GW_ABOVE(0, 1e12), GW_N_PER_MM, 0, offsetof(gw_stop, rate) },
};

/* A sum of millimetres and a difference of metres differ by rounding; a real fault is larger. */
static const double ROUNDING = 1e-9;

void gw_read_stop(const gw_reader *rd, const gw_node *bush, gw_stop *stop)
{
    gw_node node;
    if (!gw_get_object(rd, bush, "stop", GW_OPTIONAL, &node)) return;
    gw_check_keys(rd, &node, STOP, GW_COUNT(STOP), NULL);
    gw_get_numbers(rd, &node, STOP, GW_COUNT(STOP), stop);
}

static void read_voids(const gw_reader *rd, const gw_node *bush, gw_annulus *a, bool sleeves_known)
{
    gw_node node;
    if (!gw_get_object(rd, bush, "voids", GW_OPTIONAL, &node)) return;
    gw_check_keys(rd, &node, VOIDS, GW_COUNT(VOIDS), NULL);
    a->has_voids = gw_get_numbers(rd, &node, VOIDS, GW_COUNT(VOIDS), &a->voids);
    if (!a->has_voids || !sleeves_known) return;
    double wall = a->outer_radius - a->inner_radius;
    double depth = a->voids.depth > 0 ? a->voids.depth : wall;
    if (depth > wall + ROUNDING) {
        gw_node at = gw_node_key(&node, "depth_mm");
        gw_fault(rd, &at,
                 "expected at most the %.6g mm of rubber between the sleeves; leave it out for the full wall",
                 wall / GW_MM);
    } else if (a->voids.gap > depth + ROUNDING) {
        gw_node at = gw_node_key(&node, "gap_mm");
        gw_warn(rd, &at, "the void is only %.6g mm deep: it meets itself before this gap is used up",
                depth / GW_MM);
    }
}

static void read_interleaf(const gw_reader *rd, const gw_node *bush, gw_annulus *a, bool sleeves_known)
{
    gw_node node;
    if (!gw_get_object(rd, bush, "interleaf", GW_OPTIONAL, &node)) return;
    gw_check_keys(rd, &node, INTERLEAF, GW_COUNT(INTERLEAF), NULL);
    a->has_interleaf = gw_get_numbers(rd, &node, INTERLEAF, GW_COUNT(INTERLEAF), a);
    if (!a->has_interleaf || !sleeves_known) return;
    double inside = a->interleaf_radius - a->interleaf_thickness / 2;
    double outside = a->interleaf_radius + a->interleaf_thickness / 2;
    if (inside <= a->inner_radius + ROUNDING || outside >= a->outer_radius - ROUNDING)
        gw_fault(rd, &node,
                 "expected a sleeve with rubber on both sides: its %.6g to %.6g mm of diameter must lie "
                 "between the sleeves' %.6g and %.6g mm",
                 2 * inside / GW_MM, 2 * outside / GW_MM, 2 * a->inner_radius / GW_MM,
                 2 * a->outer_radius / GW_MM);
}

/* True where inner and outer diameter are both known and in order. */
static bool check_sleeves(const gw_reader *rd, const gw_node *bush, const gw_annulus *a)
{
    if (!(a->inner_radius > 0) || !(a->outer_radius > 0)) return false;
    if (a->outer_radius > a->inner_radius + ROUNDING) return true;
    gw_node at = gw_node_key(bush, "outer_diameter_mm");
    gw_fault(rd, &at, "expected more than inner_diameter_mm, %.6g: there is no rubber between the sleeves",
             2 * a->inner_radius / GW_MM);
    return false;
}

static void check_dish(const gw_reader *rd, const gw_node *bush, const gw_annulus *a)
{
    if (!(a->length > 0) || 2 * a->end_dish < a->length) return;
    gw_node at = gw_node_key(bush, "end_dish_mm");
    gw_fault(rd, &at, "expected less than half of length_mm, %.6g: two such hollows would meet in the middle",
             a->length / (2 * GW_MM));
}

static void check_offset(const gw_reader *rd, const gw_node *node, const gw_bush *bush)
{
    const gw_annulus *a = &bush->annulus;
    if (bush->offset < a->outer_radius - a->inner_radius - ROUNDING) return;
    gw_node at = gw_node_key(node, "offset_mm");
    gw_fault(rd, &at, "expected less than the %.6g mm of rubber between the sleeves",
             (a->outer_radius - a->inner_radius) / GW_MM);
}

void gw_read_rubber(const gw_case_reader *cr, const gw_node *node, gw_bush *bush)
{
    const gw_reader *rd = &cr->rd;
    gw_annulus *a = &bush->annulus;
    gw_get_numbers(rd, node, NUMBERS, GW_COUNT(NUMBERS), a);
    bool sleeves_known = check_sleeves(rd, node, a);
    gw_warn_short(rd, node, "outer_diameter_mm", 2 * a->outer_radius, 1.0);
    gw_warn_short(rd, node, "length_mm", a->length, 0.5);
    check_dish(rd, node, a);
    if (bush->type == GW_BUSH_BONDED) {
        read_voids(rd, node, a, sleeves_known);
    } else {
        const gw_range friction = GW_FROM(0, 5);
        gw_get_number(rd, node, "friction_coefficient", GW_REQUIRED, friction, &a->friction);
    }
    read_interleaf(rd, node, a, sleeves_known);
    gw_read_stop(rd, node, &bush->stop);
    gw_get_flag(rd, node, "progressive", &a->progressive);
    if (sleeves_known) check_offset(rd, node, bush);
    gw_read_material_ref(rd, node, cr->materials, &a->material);
}
