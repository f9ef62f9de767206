/* SPDX-License-Identifier: MIT */
/*
 * Layouts of suspensions for a first case. Places are those of usual road cars, invented and of no car: common
 * practice, tried so that camber, toe, roll centre, anti-dive and give are typical (tests/crosscheck/start.py).
 * The inner end of each tie rod was placed for no toe change in bump to the second order.
 */
#include "show/start.h"

#include <stddef.h>

static const gw_start_point STRUT_FRONT_POINTS[] = {
    { "lower_arm_front", { 20, 410, -112 }, false, "middle of the bush" },
    { "lower_arm_rear", { -290, 400, -106 }, false, "middle of the bush" },
    { "lower_arm_ball", { 0, 70, -128 }, false, "middle of the ball joint" },
    { "tie_inner", { 150, 452.1, -64.4 }, false, "middle of the ball joint" },
    { "tie_outer", { 158, 80, -78 }, false, "middle of the ball joint" },
    { "strut_top", { -25, 190, 545 }, false, "middle of the mount" },
    { "spring_seat", { -12, 120, 90 }, false, "middle of the spring's lower seat" },
    { "spring_top", { -25, 190, 545 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint STRUT_FRONT_JOINTS[] = {
    { "lower_arm_front", "lower arm, front", "chassis", "lower_arm", { 310, -10, -6 }, GW_START_ARM_RUBBER },
    { "lower_arm_rear", "lower arm, rear", "chassis", "lower_arm", { 0, 0, 1 }, GW_START_TENSION_RUBBER },
    { "lower_arm_ball", "lower ball joint", "lower_arm", "upright", { 0, 0, 1 }, GW_START_BALL },
    { "tie_inner", "tie rod, inner", "chassis", "tie_rod", { 372.1, -8, 0 }, GW_START_BALL },
    { "tie_outer", "tie rod, outer", "tie_rod", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "strut_top", "strut, top mount", "chassis", "upright", { -13, -70, 455 }, GW_START_STRUT_MOUNT },
};

static const gw_start_point STRUT_REAR_POINTS[] = {
    { "lower_arm_front", { 20, 410, -106 }, false, "middle of the bush" },
    { "lower_arm_rear", { -290, 400, -118 }, false, "middle of the bush" },
    { "lower_arm_ball", { 0, 70, -128 }, false, "middle of the ball joint" },
    { "tie_inner", { -150, 445.3, -59.9 }, false, "middle of the bush" },
    { "tie_outer", { -158, 80, -78 }, false, "middle of the ball joint" },
    { "strut_top", { -25, 190, 545 }, false, "middle of the mount" },
    { "spring_seat", { -12, 120, 90 }, false, "middle of the spring's lower seat" },
    { "spring_top", { -25, 190, 545 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint STRUT_REAR_JOINTS[] = {
    { "lower_arm_front", "lower arm, front", "chassis", "lower_arm", { 310, -10, 12 }, GW_START_ARM_RUBBER },
    { "lower_arm_rear", "lower arm, rear", "chassis", "lower_arm", { 0, 0, 1 }, GW_START_TENSION_RUBBER },
    { "lower_arm_ball", "lower ball joint", "lower_arm", "upright", { 0, 0, 1 }, GW_START_BALL },
    { "tie_inner", "toe link, inner", "chassis", "tie_rod", { 365.3, 8, 0 }, GW_START_LINK_RUBBER },
    { "tie_outer", "toe link, outer", "tie_rod", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "strut_top", "strut, top mount", "chassis", "upright", { -13, -70, 455 }, GW_START_STRUT_MOUNT },
};

static const gw_start_point DOUBLE_WISHBONE_FRONT_POINTS[] = {
    { "lower_arm_front", { 130, 420, -117 }, false, "middle of the bush" },
    { "lower_arm_rear", { -180, 415, -113 }, false, "middle of the bush" },
    { "lower_arm_ball", { 0, 75, -128 }, false, "middle of the ball joint" },
    { "upper_arm_front", { 95, 360, 148 }, false, "middle of the bush" },
    { "upper_arm_rear", { -115, 355, 142 }, false, "middle of the bush" },
    { "upper_arm_ball", { -12, 125, 172 }, false, "middle of the ball joint" },
    { "tie_inner", { 140, 407.1, -59.1 }, false, "middle of the ball joint" },
    { "tie_outer", { 150, 85, -60 }, false, "middle of the ball joint" },
    { "spring_seat", { -12, 205, -121 }, false, "middle of the spring's lower seat" },
    { "spring_top", { -20, 280, 380 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint DOUBLE_WISHBONE_FRONT_JOINTS[] = {
    { "lower_arm_front", "lower arm, front", "chassis", "lower_arm", { 310, -5, -4 }, GW_START_ARM_RUBBER },
    { "lower_arm_rear", "lower arm, rear", "chassis", "lower_arm", { 310, -5, -4 }, GW_START_ARM_RUBBER },
    { "lower_arm_ball", "lower ball joint", "lower_arm", "upright", { 0, 0, 1 }, GW_START_BALL },
    { "upper_arm_front", "upper arm, front", "chassis", "upper_arm", { 210, -5, 6 }, GW_START_UPPER_RUBBER },
    { "upper_arm_rear", "upper arm, rear", "chassis", "upper_arm", { 210, -5, 6 }, GW_START_UPPER_RUBBER },
    { "upper_arm_ball", "upper ball joint", "upper_arm", "upright", { 0, 0, 1 }, GW_START_BALL },
    { "tie_inner", "tie rod, inner", "chassis", "tie_rod", { 322.1, -10, 0 }, GW_START_BALL },
    { "tie_outer", "tie rod, outer", "tie_rod", "upright", { 1, 0, 0 }, GW_START_BALL },
};

static const gw_start_point DOUBLE_WISHBONE_REAR_POINTS[] = {
    { "lower_arm_front", { 130, 420, -110 }, false, "middle of the bush" },
    { "lower_arm_rear", { -180, 415, -124 }, false, "middle of the bush" },
    { "lower_arm_ball", { 0, 75, -128 }, false, "middle of the ball joint" },
    { "upper_arm_front", { 95, 360, 148 }, false, "middle of the bush" },
    { "upper_arm_rear", { -115, 355, 142 }, false, "middle of the bush" },
    { "upper_arm_ball", { -12, 125, 172 }, false, "middle of the ball joint" },
    { "tie_inner", { -140, 398.4, -59.1 }, false, "middle of the bush" },
    { "tie_outer", { -150, 85, -60 }, false, "middle of the ball joint" },
    { "spring_seat", { -12, 205, -121 }, false, "middle of the spring's lower seat" },
    { "spring_top", { -20, 280, 380 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint DOUBLE_WISHBONE_REAR_JOINTS[] = {
    { "lower_arm_front", "lower arm, front", "chassis", "lower_arm", { 310, -5, 14 }, GW_START_ARM_RUBBER },
    { "lower_arm_rear", "lower arm, rear", "chassis", "lower_arm", { 310, -5, 14 }, GW_START_ARM_RUBBER },
    { "lower_arm_ball", "lower ball joint", "lower_arm", "upright", { 0, 0, 1 }, GW_START_BALL },
    { "upper_arm_front", "upper arm, front", "chassis", "upper_arm", { 210, -5, 6 }, GW_START_UPPER_RUBBER },
    { "upper_arm_rear", "upper arm, rear", "chassis", "upper_arm", { 210, -5, 6 }, GW_START_UPPER_RUBBER },
    { "upper_arm_ball", "upper ball joint", "upper_arm", "upright", { 0, 0, 1 }, GW_START_BALL },
    { "tie_inner", "toe link, inner", "chassis", "tie_rod", { 313.4, 10, 0 }, GW_START_LINK_RUBBER },
    { "tie_outer", "toe link, outer", "tie_rod", "upright", { 1, 0, 0 }, GW_START_BALL },
};

static const gw_start_point FIVE_LINK_FRONT_POINTS[] = {
    { "lower_front_inner", { 190, 415, -118 }, false, "middle of the bush" },
    { "lower_front_outer", { 25, 75, -125 }, false, "middle of the ball joint" },
    { "lower_rear_inner", { -60, 430, -116 }, false, "middle of the bush" },
    { "lower_rear_outer", { -20, 80, -127 }, false, "middle of the ball joint" },
    { "upper_front_inner", { 120, 360, 150 }, false, "middle of the bush" },
    { "upper_front_outer", { 5, 125, 172 }, false, "middle of the ball joint" },
    { "upper_rear_inner", { -120, 355, 146 }, false, "middle of the bush" },
    { "upper_rear_outer", { -25, 125, 170 }, false, "middle of the ball joint" },
    { "tie_inner", { 150, 410.8, -58.5 }, false, "middle of the ball joint" },
    { "tie_outer", { 155, 85, -60 }, false, "middle of the ball joint" },
    { "spring_seat", { -31.2, 178, -123.92 }, false, "middle of the spring's lower seat" },
    { "spring_top", { -45, 235, 390 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint FIVE_LINK_FRONT_JOINTS[] = {
    { "lower_front_inner", "lower front link, inner", "chassis", "lower_front", { 340, 165, 0 }, GW_START_LINK_RUBBER },
    { "lower_front_outer", "lower front link, outer", "lower_front", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "lower_rear_inner", "lower rear link, inner", "chassis", "lower_rear", { 350, -40, 0 }, GW_START_ARM_RUBBER },
    { "lower_rear_outer", "lower rear link, outer", "lower_rear", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "upper_front_inner", "upper front link, inner", "chassis", "upper_front", { 235, 115, 0 }, GW_START_UPPER_RUBBER },
    { "upper_front_outer", "upper front link, outer", "upper_front", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "upper_rear_inner", "upper rear link, inner", "chassis", "upper_rear", { 230, -95, 0 }, GW_START_UPPER_RUBBER },
    { "upper_rear_outer", "upper rear link, outer", "upper_rear", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "tie_inner", "tie rod, inner", "chassis", "tie_rod", { 325.8, -5, 0 }, GW_START_BALL },
    { "tie_outer", "tie rod, outer", "tie_rod", "upright", { 1, 0, 0 }, GW_START_BALL },
};

static const gw_start_point FIVE_LINK_REAR_POINTS[] = {
    { "lower_front_inner", { 190, 415, -108 }, false, "middle of the bush" },
    { "lower_front_outer", { 25, 75, -125 }, false, "middle of the ball joint" },
    { "lower_rear_inner", { -60, 430, -120 }, false, "middle of the bush" },
    { "lower_rear_outer", { -20, 80, -127 }, false, "middle of the ball joint" },
    { "upper_front_inner", { 120, 360, 150 }, false, "middle of the bush" },
    { "upper_front_outer", { 5, 125, 172 }, false, "middle of the ball joint" },
    { "upper_rear_inner", { -120, 355, 146 }, false, "middle of the bush" },
    { "upper_rear_outer", { -25, 125, 170 }, false, "middle of the ball joint" },
    { "tie_inner", { -150, 407.8, -60.7 }, false, "middle of the bush" },
    { "tie_outer", { -155, 85, -60 }, false, "middle of the ball joint" },
    { "spring_seat", { -31.2, 178, -125.04 }, false, "middle of the spring's lower seat" },
    { "spring_top", { -45, 235, 390 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint FIVE_LINK_REAR_JOINTS[] = {
    { "lower_front_inner", "lower front link, inner", "chassis", "lower_front", { 340, 165, 0 }, GW_START_LINK_RUBBER },
    { "lower_front_outer", "lower front link, outer", "lower_front", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "lower_rear_inner", "lower rear link, inner", "chassis", "lower_rear", { 350, -40, 0 }, GW_START_ARM_RUBBER },
    { "lower_rear_outer", "lower rear link, outer", "lower_rear", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "upper_front_inner", "upper front link, inner", "chassis", "upper_front", { 235, 115, 0 }, GW_START_UPPER_RUBBER },
    { "upper_front_outer", "upper front link, outer", "upper_front", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "upper_rear_inner", "upper rear link, inner", "chassis", "upper_rear", { 230, -95, 0 }, GW_START_UPPER_RUBBER },
    { "upper_rear_outer", "upper rear link, outer", "upper_rear", "upright", { 1, 0, 0 }, GW_START_BALL },
    { "tie_inner", "toe link, inner", "chassis", "tie_rod", { 322.8, 5, 0 }, GW_START_LINK_RUBBER },
    { "tie_outer", "toe link, outer", "tie_rod", "upright", { 1, 0, 0 }, GW_START_BALL },
};

static const gw_start_point SEMI_TRAILING_REAR_POINTS[] = {
    { "arm_inner", { 300, 560, -7 }, true, "middle of the bush" },
    { "arm_outer", { 420, 170, 7 }, true, "middle of the bush" },
    { "spring_seat", { 60, 170, -10 }, false, "middle of the spring's lower seat" },
    { "spring_top", { 50, 190, 300 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint SEMI_TRAILING_REAR_JOINTS[] = {
    { "arm_inner", "trailing arm, inner", "chassis", "upright", { 120, 390, 14 }, GW_START_TRAIL_RUBBER },
    { "arm_outer", "trailing arm, outer", "chassis", "upright", { 120, 390, 14 }, GW_START_TRAIL_RUBBER },
};

static const gw_start_point TRAILING_ARM_REAR_POINTS[] = {
    { "arm_inner", { 430, 430, 0 }, true, "middle of the bush" },
    { "arm_outer", { 430, 120, 0 }, true, "middle of the bush" },
    { "spring_seat", { 60, 190, -10 }, false, "middle of the spring's lower seat" },
    { "spring_top", { 50, 200, 300 }, false, "middle of the spring's upper seat" },
};

static const gw_start_joint TRAILING_ARM_REAR_JOINTS[] = {
    { "arm_inner", "trailing arm, inner", "chassis", "upright", { 0, 1, 0 }, GW_START_TRAIL_RUBBER },
    { "arm_outer", "trailing arm, outer", "chassis", "upright", { 0, 1, 0 }, GW_START_TRAIL_RUBBER },
};

const gw_start_layout GW_START_LAYOUTS[] = {
    { "strut", GW_FRONT, STRUT_FRONT_POINTS, GW_START_COUNT(STRUT_FRONT_POINTS), STRUT_FRONT_JOINTS, GW_START_COUNT(STRUT_FRONT_JOINTS), { { "lower_arm", 3.5 }, { "tie_rod", 1.2 } }, 2, "upright", 2.941, 8.066e-04, 0.908, 0, 0 },
    { "strut", GW_REAR, STRUT_REAR_POINTS, GW_START_COUNT(STRUT_REAR_POINTS), STRUT_REAR_JOINTS, GW_START_COUNT(STRUT_REAR_JOINTS), { { "lower_arm", 3.5 }, { "tie_rod", 1.2 } }, 2, "upright", 3.298, 7.752e-04, 0.906, 0, 0 },
    { "double_wishbone", GW_FRONT, DOUBLE_WISHBONE_FRONT_POINTS, GW_START_COUNT(DOUBLE_WISHBONE_FRONT_POINTS), DOUBLE_WISHBONE_FRONT_JOINTS, GW_START_COUNT(DOUBLE_WISHBONE_FRONT_JOINTS), { { "lower_arm", 3.5 }, { "upper_arm", 2.0 }, { "tie_rod", 1.2 } }, 3, "lower_arm", 3.41, 6.979e-05, 0.345, 0, 0 },
    { "double_wishbone", GW_REAR, DOUBLE_WISHBONE_REAR_POINTS, GW_START_COUNT(DOUBLE_WISHBONE_REAR_POINTS), DOUBLE_WISHBONE_REAR_JOINTS, GW_START_COUNT(DOUBLE_WISHBONE_REAR_JOINTS), { { "lower_arm", 3.5 }, { "upper_arm", 2.0 }, { "tie_rod", 1.2 } }, 3, "lower_arm", 3.827, 5.100e-05, 0.347, 0, 0 },
    { "five_link", GW_FRONT, FIVE_LINK_FRONT_POINTS, GW_START_COUNT(FIVE_LINK_FRONT_POINTS), FIVE_LINK_FRONT_JOINTS, GW_START_COUNT(FIVE_LINK_FRONT_JOINTS), { { "lower_front", 1.2 }, { "lower_rear", 1.2 }, { "upper_front", 1.2 }, { "upper_rear", 1.2 }, { "tie_rod", 1.2 } }, 5, "lower_rear", 2.324, -1.067e-05, 0.469, 0, 0 },
    { "five_link", GW_REAR, FIVE_LINK_REAR_POINTS, GW_START_COUNT(FIVE_LINK_REAR_POINTS), FIVE_LINK_REAR_JOINTS, GW_START_COUNT(FIVE_LINK_REAR_JOINTS), { { "lower_front", 1.2 }, { "lower_rear", 1.2 }, { "upper_front", 1.2 }, { "upper_rear", 1.2 }, { "tie_rod", 1.2 } }, 5, "lower_rear", 2.798, -2.549e-05, 0.477, 0, 0 },
    { "semi_trailing", GW_REAR, SEMI_TRAILING_REAR_POINTS, GW_START_COUNT(SEMI_TRAILING_REAR_POINTS), SEMI_TRAILING_REAR_JOINTS, GW_START_COUNT(SEMI_TRAILING_REAR_JOINTS), { { NULL, 0.0 } }, 0, "upright", 1.326, -1.947e-03, 0.575, 0.78, 350 },
    { "trailing_arm", GW_REAR, TRAILING_ARM_REAR_POINTS, GW_START_COUNT(TRAILING_ARM_REAR_POINTS), TRAILING_ARM_REAR_JOINTS, GW_START_COUNT(TRAILING_ARM_REAR_JOINTS), { { NULL, 0.0 } }, 0, "upright", 1.099, -1.628e-03, 0.725, 0.85, 430 },
};

const int GW_START_N_LAYOUTS = (int)(sizeof GW_START_LAYOUTS / sizeof *GW_START_LAYOUTS);
