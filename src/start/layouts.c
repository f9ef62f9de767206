/* SPDX-License-Identifier: MIT */
/*
 * Layouts of suspensions for a first case. Places are those of usual road cars, invented and of no car:
 * common practice, tried so that camber, toe, roll centre, anti-dive and give are typical
 * (tests/crosscheck/start.py). The inner end of each tie rod was placed for no toe change in bump to the
 * second order, behind for a little toe-in. A layout of both axles stands once, as it is in front, with what
 * is otherwise behind.
 */
#include "start/layout.h"

#include <string.h>

const gw_start_bush GW_START_BUSH[GW_START_BUSHES] = {
    { "arm_rubber", 65 },   { "tension_rubber", 70 },  { "upper_rubber", 60 }, { "link_rubber", 60 },
    { "trail_rubber", 60 }, { "subframe_rubber", 60 }, { "rack_rubber", 65 },  { "bar_rubber", 65 },
    { "strut_mount", 0 },   { "ball_joint", 0 },       { "weld", 0 },          { "twist_beam", 0 },
    { "rack_guide", 0 },    { "front_bar", 0 },        { "rear_bar", 0 },
};

static const char BUSH[] = "middle of the bush", BALL[] = "middle of the ball joint",
                  SEAT[] = "middle of the spring's lower seat", TOP[] = "middle of the spring's upper seat";

/* Places from the wheel centre: forward, inward, above [mm]. */
#define POINT(name, x, y, z, how)                                                                            \
    {                                                                                                        \
        name, { x, y, z }, how, GW_START_OF_CORNER                                                           \
    }

/* Joints of a corner at points of their names, by the direction of the bush's axis. What is LOW hangs on a
 * subframe where there is one, what is HIGH only behind; a TIE rod on the rack. */
#define HUNG(name, label, a, b, x, y, z, bush, on)                                                           \
    {                                                                                                        \
        name, label, a, b, { x, y, z }, GW_START_##bush, GW_START_OF_CORNER, on                              \
    }
#define JOINT(name, label, a, b, x, y, z, bush) HUNG(name, label, a, b, x, y, z, bush, GW_START_ON_BODY)
#define BODY(name, label, b, x, y, z, bush)     HUNG(name, label, "chassis", b, x, y, z, bush, GW_START_ON_BODY)
#define LOW(name, label, b, x, y, z, bush)                                                                   \
    HUNG(name, label, "chassis", b, x, y, z, bush, GW_START_ON_SUBFRAME)
#define HIGH(name, label, b, x, y, z, bush)                                                                  \
    HUNG(name, label, "chassis", b, x, y, z, bush, GW_START_ON_SUBFRAME_BEHIND)
#define TIE(name, label, b, x, y, z, bush) HUNG(name, label, "chassis", b, x, y, z, bush, GW_START_ON_RACK)

/* Bars: the bush on the body or subframe, the drop link on what moves with the wheel. */
static const gw_start_bar BAR_ON_STRUT = {
    .bush = POINT("bar_bush", -325, 400, 20, BUSH),
    .end = POINT("bar_end", -75, 135, 10, BALL),
    .link = POINT("bar_link", -78, 118, 170, BALL),
    .turns_on = "chassis",
    .link_on = "upright",
    .ratio = 1.0,
};
static const gw_start_bar BAR_ON_UPRIGHT = {
    .bush = POINT("bar_bush", -325, 400, 20, BUSH),
    .end = POINT("bar_end", -75, 135, 10, BALL),
    .link = POINT("bar_link", -75, 120, -75, BALL),
    .turns_on = "chassis",
    .link_on = "upright",
    .ratio = 1.0,
};
static const gw_start_bar BAR_ON_ARM = {
    .bush = POINT("bar_bush", -290, 400, 60, BUSH),
    .end = POINT("bar_end", -40, 210, 50, BALL),
    .link = POINT("bar_link", -40, 205, -35, BALL),
    .turns_on = "chassis",
    .link_on = "upright",
    .ratio = 1.1,
};
/* On a live axle the bar turns on the tube, and its links go up to the body. */
static const gw_start_bar BAR_ON_TUBE = {
    .bush = POINT("bar_bush", -80, 330, -20, BUSH),
    .end = POINT("bar_end", -330, 300, -20, BALL),
    .link = POINT("bar_link", -330, 300, 150, BALL),
    .turns_on = "axle_tube",
    .link_on = "chassis",
    .ratio = 1.0,
};

static const gw_start_point STRUT_POINTS[] = {
    POINT("lower_arm_front", 20, 410, -112, BUSH), POINT("lower_arm_rear", -290, 400, -106, BUSH),
    POINT("lower_arm_ball", 0, 70, -128, BALL),    POINT("tie_inner", 185, 453.7, -64.4, BALL),
    POINT("tie_outer", 193, 80, -78, BALL),        POINT("strut_top", -25, 190, 545, "middle of the mount"),
    POINT("spring_seat", -12, 120, 90, SEAT),      POINT("spring_top", -25, 190, 545, TOP),
};

static const gw_start_joint STRUT_JOINTS[] = {
    LOW("lower_arm_front", "lower arm, front", "lower_arm", 310, -10, -6, ARM_RUBBER),
    LOW("lower_arm_rear", "lower arm, rear", "lower_arm", 0, 0, 1, TENSION_RUBBER),
    JOINT("lower_arm_ball", "lower ball joint", "lower_arm", "upright", 0, 0, 1, BALL),
    TIE("tie_inner", "tie rod, inner", "tie_rod", 373.7, -8, 0, BALL),
    JOINT("tie_outer", "tie rod, outer", "tie_rod", "upright", 1, 0, 0, BALL),
    BODY("strut_top", "strut, top mount", "upright", -13, -70, 455, STRUT_MOUNT),
};

/* The same with the rack behind the axle, and more trail: else a side force would turn the wheel in. */
static const gw_start_point STRUT_RACK_BEHIND[] = {
    POINT("lower_arm_ball", 32, 70, -128, BALL),
    POINT("tie_inner", -140, 435.7, -66, BALL),
    POINT("tie_outer", -150, 80, -78, BALL),
};

/* Behind, where no rack is. */
static const gw_start_point STRUT_REAR_POINTS[] = {
    POINT("lower_arm_front", 20, 410, -97, BUSH),
    POINT("lower_arm_rear", -290, 400, -127, BUSH),
    POINT("tie_inner", -150, 452.8, -51.8, BUSH),
    POINT("tie_outer", -158, 80, -78, BALL),
};

static const gw_start_joint STRUT_REAR_JOINTS[] = {
    LOW("lower_arm_front", "lower arm, front", "lower_arm", 310, -10, 30, ARM_RUBBER),
    LOW("tie_inner", "toe link, inner", "tie_rod", 372.8, 8, 0, LINK_RUBBER),
    JOINT("tie_outer", "toe link, outer", "tie_rod", "upright", 1, 0, 0, BALL),
};

static const gw_start_point DOUBLE_WISHBONE_POINTS[] = {
    POINT("lower_arm_front", 90, 419.4, -116.5, BUSH), POINT("lower_arm_rear", -250, 413.9, -112.1, BUSH),
    POINT("lower_arm_ball", 0, 75, -128, BALL),        POINT("upper_arm_front", 95, 360, 148, BUSH),
    POINT("upper_arm_rear", -115, 355, 142, BUSH),     POINT("upper_arm_ball", -12, 125, 172, BALL),
    POINT("tie_inner", 140, 407.1, -59.1, BALL),       POINT("tie_outer", 150, 85, -60, BALL),
    POINT("spring_seat", -12, 205, -121, SEAT),        POINT("spring_top", -20, 280, 380, TOP),
};

static const gw_start_joint DOUBLE_WISHBONE_JOINTS[] = {
    LOW("lower_arm_front", "lower arm, front", "lower_arm", 310, -5, -4, ARM_RUBBER),
    LOW("lower_arm_rear", "lower arm, rear", "lower_arm", 0, 0, 1, TENSION_RUBBER),
    JOINT("lower_arm_ball", "lower ball joint", "lower_arm", "upright", 0, 0, 1, BALL),
    HIGH("upper_arm_front", "upper arm, front", "upper_arm", 210, -5, 6, UPPER_RUBBER),
    HIGH("upper_arm_rear", "upper arm, rear", "upper_arm", 210, -5, 6, UPPER_RUBBER),
    JOINT("upper_arm_ball", "upper ball joint", "upper_arm", "upright", 0, 0, 1, BALL),
    TIE("tie_inner", "tie rod, inner", "tie_rod", 322.1, -10, 0, BALL),
    JOINT("tie_outer", "tie rod, outer", "tie_rod", "upright", 1, 0, 0, BALL),
};

static const gw_start_point DOUBLE_WISHBONE_RACK_BEHIND[] = {
    POINT("lower_arm_ball", 15, 75, -128, BALL),
    POINT("upper_arm_ball", -18, 125, 172, BALL),
    POINT("tie_inner", -130, 384, -58.4, BALL),
    POINT("tie_outer", -140, 85, -60, BALL),
};

/* Behind, where no rack is. */
static const gw_start_point DOUBLE_WISHBONE_REAR_POINTS[] = {
    POINT("lower_arm_front", 130, 420, -95, BUSH), POINT("lower_arm_rear", -180, 415, -139, BUSH),
    POINT("upper_arm_front", 95, 360, 135, BUSH),  POINT("upper_arm_rear", -115, 355, 155, BUSH),
    POINT("tie_inner", -140, 454, -56.8, BUSH),    POINT("tie_outer", -150, 85, -60, BALL),
};

static const gw_start_joint DOUBLE_WISHBONE_REAR_JOINTS[] = {
    LOW("lower_arm_front", "lower arm, front", "lower_arm", 310, -5, 44, ARM_RUBBER),
    LOW("lower_arm_rear", "lower arm, rear", "lower_arm", 310, -5, 44, ARM_RUBBER),
    HIGH("upper_arm_front", "upper arm, front", "upper_arm", 210, -5, -20, UPPER_RUBBER),
    HIGH("upper_arm_rear", "upper arm, rear", "upper_arm", 210, -5, -20, UPPER_RUBBER),
    LOW("tie_inner", "toe link, inner", "tie_rod", 369, 10, 0, LINK_RUBBER),
    JOINT("tie_outer", "toe link, outer", "tie_rod", "upright", 1, 0, 0, BALL),
};

static const gw_start_point FIVE_LINK_POINTS[] = {
    POINT("lower_front_inner", 190, 415, -113, BUSH), POINT("lower_front_outer", 25, 75, -125, BALL),
    POINT("lower_rear_inner", -60, 430, -116, BUSH),  POINT("lower_rear_outer", -20, 80, -127, BALL),
    POINT("upper_front_inner", 120, 360, 150, BUSH),  POINT("upper_front_outer", 5, 125, 172, BALL),
    POINT("upper_rear_inner", -120, 355, 146, BUSH),  POINT("upper_rear_outer", -25, 125, 170, BALL),
    POINT("tie_inner", 150, 403.2, -57.8, BALL),      POINT("tie_outer", 155, 85, -60, BALL),
    POINT("spring_seat", -31.2, 178, -123.92, SEAT),  POINT("spring_top", -45, 235, 390, TOP),
};

static const gw_start_joint FIVE_LINK_JOINTS[] = {
    LOW("lower_front_inner", "lower front link, inner", "lower_front", 340, 165, 0, TENSION_RUBBER),
    JOINT("lower_front_outer", "lower front link, outer", "lower_front", "upright", 1, 0, 0, BALL),
    LOW("lower_rear_inner", "lower rear link, inner", "lower_rear", 350, -40, 0, ARM_RUBBER),
    JOINT("lower_rear_outer", "lower rear link, outer", "lower_rear", "upright", 1, 0, 0, BALL),
    HIGH("upper_front_inner", "upper front link, inner", "upper_front", 235, 115, 0, UPPER_RUBBER),
    JOINT("upper_front_outer", "upper front link, outer", "upper_front", "upright", 1, 0, 0, BALL),
    HIGH("upper_rear_inner", "upper rear link, inner", "upper_rear", 230, -95, 0, UPPER_RUBBER),
    JOINT("upper_rear_outer", "upper rear link, outer", "upper_rear", "upright", 1, 0, 0, BALL),
    TIE("tie_inner", "tie rod, inner", "tie_rod", 318.2, -5, 0, BALL),
    JOINT("tie_outer", "tie rod, outer", "tie_rod", "upright", 1, 0, 0, BALL),
};

static const gw_start_point FIVE_LINK_RACK_BEHIND[] = {
    POINT("lower_front_outer", 45, 75, -125, BALL),  POINT("lower_rear_outer", 5, 80, -127, BALL),
    POINT("upper_front_outer", -5, 125, 172, BALL),  POINT("upper_rear_outer", -35, 125, 170, BALL),
    POINT("tie_inner", -135, 395.7, -58.6, BALL),    POINT("tie_outer", -140, 85, -60, BALL),
    POINT("spring_seat", -13.2, 178, -123.92, SEAT),
};

/* Behind, where no rack is. */
static const gw_start_point FIVE_LINK_REAR_POINTS[] = {
    POINT("lower_front_inner", 190, 415, -93, BUSH), POINT("lower_rear_inner", -60, 430, -127, BUSH),
    POINT("tie_inner", -175, 475.5, -62.1, BUSH),    POINT("tie_outer", -180, 85, -60, BALL),
    POINT("upper_front_inner", 120, 360, 138, BUSH), POINT("upper_rear_inner", -120, 355, 158, BUSH),
    POINT("spring_seat", -31.2, 178, -127, SEAT),
};

static const gw_start_joint FIVE_LINK_REAR_JOINTS[] = {
    LOW("tie_inner", "toe link, inner", "tie_rod", 390.5, 5, 0, LINK_RUBBER),
    JOINT("tie_outer", "toe link, outer", "tie_rod", "upright", 1, 0, 0, BALL),
};

static const gw_start_point SEMI_TRAILING_POINTS[] = {
    POINT("arm_inner", 370, 560, -10, BUSH),
    POINT("arm_outer", 465, 170, -5, BUSH),
    POINT("spring_seat", 60, 170, -10, SEAT),
    POINT("spring_top", 50, 190, 300, TOP),
};

static const gw_start_joint SEMI_TRAILING_JOINTS[] = {
    LOW("arm_inner", "trailing arm, inner", "upright", 95, 390, 5, TRAIL_RUBBER),
    LOW("arm_outer", "trailing arm, outer", "upright", 95, 390, 5, TRAIL_RUBBER),
};

static const gw_start_point TRAILING_ARM_POINTS[] = {
    POINT("arm_inner", 430, 430, -5, BUSH),
    POINT("arm_outer", 430, 120, -5, BUSH),
    POINT("spring_seat", 60, 190, -10, SEAT),
    POINT("spring_top", 50, 200, 300, TOP),
};

static const gw_start_joint TRAILING_ARM_JOINTS[] = {
    LOW("arm_inner", "trailing arm, inner", "upright", 0, 1, 0, TRAIL_RUBBER),
    LOW("arm_outer", "trailing arm, outer", "upright", 0, 1, 0, TRAIL_RUBBER),
};

static const gw_start_point TWIST_BEAM_POINTS[] = {
    POINT("pivot", 402, 187, -15, BUSH),
    POINT("hub", 0, 67, 0, "face of the hub on the arm"),
    POINT("spring_seat", -38, 190, -64, SEAT),
    POINT("spring_top", -34, 190, 180, TOP),
    /* clang-format off */
    { "shear_centre", { 262, 0, 7 }, "the beam's shear centre: of an open profile as far behind its back as the profile is deep", GW_START_MIDDLE },
    /* clang-format on */
};

static const gw_start_joint TWIST_BEAM_JOINTS[] = {
    BODY("pivot", "trailing arm bush", "arm", -37, 93, 0, TRAIL_RUBBER),
    JOINT("hub", "hub on its arm", "arm", "upright", 0, 1, 0, WELD),
    /* clang-format off */
    { "shear_centre", "twist beam", "left.arm", "right.arm", { 0, 1, 0 }, GW_START_BEAM, GW_START_MIDDLE, GW_START_ON_BODY },
    /* clang-format on */
};

static const gw_start_point LIVE_AXLE_POINTS[] = {
    POINT("hub", 0, 70, 0, "face of the hub on the axle tube"),
    POINT("lower_front", 548, 190, -40, BUSH),
    POINT("lower_rear", 12, 210, -76, BUSH),
    POINT("upper_front", 318, 418, 122, BUSH),
    POINT("upper_rear", -6, 440, 134, BUSH),
    POINT("spring_seat", -4, 224, 50, SEAT),
    POINT("spring_top", 2, 224, 288, TOP),
    { "panhard_body", { -142, 190, -6 }, "middle of the bush on the body, left", GW_START_LEFT },
    { "panhard_tube", { -142, 240, -34 }, "middle of the bush on the axle, right", GW_START_RIGHT },
};

static const gw_start_joint LIVE_AXLE_JOINTS[] = {
    JOINT("hub", "hub on the axle tube", "axle_tube", "upright", 0, 1, 0, WELD),
    BODY("lower_front", "lower link, front", "lower_link", 0, 1, 0, TRAIL_RUBBER),
    JOINT("lower_rear", "lower link, rear", "axle_tube", "lower_link", 0, 1, 0, TRAIL_RUBBER),
    BODY("upper_front", "upper link, front", "upper_link", 0, 1, 0, LINK_RUBBER),
    JOINT("upper_rear", "upper link, rear", "axle_tube", "upper_link", 0, 1, 0, LINK_RUBBER),
    /* clang-format off */
    { "panhard_body", "Panhard rod, body", "chassis", "panhard_rod", { 1, 0, 0 }, GW_START_LINK_RUBBER, GW_START_LEFT, GW_START_ON_BODY },
    { "panhard_tube", "Panhard rod, axle", "axle_tube", "panhard_rod", { 1, 0, 0 }, GW_START_LINK_RUBBER, GW_START_RIGHT, GW_START_ON_BODY },
    /* clang-format on */
};

#define LIST(field, list) .field = list, .n_##field##s = GW_START_COUNT(list)
#define REAR_OF(layout)                                                                                      \
    LIST(point, layout##_POINTS), LIST(joint, layout##_JOINTS), LIST(other_point, layout##_REAR_POINTS),     \
        LIST(other_joint, layout##_REAR_JOINTS)
#define FRONT_OF(layout)                                                                                     \
    LIST(point, layout##_POINTS), LIST(joint, layout##_JOINTS), LIST(behind, layout##_RACK_BEHIND)
#define WHOLE(layout) LIST(point, layout##_POINTS), LIST(joint, layout##_JOINTS)

/* What front and rear have alike: members, what the spring stands on, what is adjusted, where the bar acts.
 */
#define STRUT_PARTS                                                                                          \
    .member = { { "lower_arm", 3.5, false }, { "tie_rod", 1.2, false } }, .n_members = 2,                    \
    .spring_on = "upright", .adjustable = "tie_rod", .bar = &BAR_ON_STRUT
#define DOUBLE_WISHBONE_PARTS                                                                                \
    .framed = true,                                                                                          \
    .member = { { "lower_arm", 3.5, false }, { "upper_arm", 2.0, false }, { "tie_rod", 1.2, false } },       \
    .n_members = 3, .spring_on = "lower_arm", .adjustable = "tie_rod", .bar = &BAR_ON_UPRIGHT
#define FIVE_LINK_PARTS                                                                                      \
    .framed = true,                                                                                          \
    .member = { { "lower_front", 1.2, false },                                                               \
                { "lower_rear", 1.2, false },                                                                \
                { "upper_front", 1.2, false },                                                               \
                { "upper_rear", 1.2, false },                                                                \
                { "tie_rod", 1.2, false } },                                                                 \
    .n_members = 5, .spring_on = "lower_rear", .adjustable = "tie_rod", .bar = &BAR_ON_UPRIGHT

const gw_start_layout GW_START_LAYOUTS[] = {
    { .name = "strut",
      .axle = GW_FRONT,
      FRONT_OF(STRUT),
      STRUT_PARTS,
      .bushes_rate = 2.943,
      .bushes_per_load = 8.059e-04,
      .motion_ratio2 = 0.908 },
    { .name = "strut",
      .axle = GW_REAR,
      REAR_OF(STRUT),
      STRUT_PARTS,
      .bushes_rate = 3.298,
      .bushes_per_load = 7.752e-04,
      .motion_ratio2 = 0.906 },
    { .name = "double_wishbone",
      .axle = GW_FRONT,
      FRONT_OF(DOUBLE_WISHBONE),
      DOUBLE_WISHBONE_PARTS,
      .bushes_rate = 3.41,
      .bushes_per_load = 6.979e-05,
      .motion_ratio2 = 0.345 },
    { .name = "double_wishbone",
      .axle = GW_REAR,
      REAR_OF(DOUBLE_WISHBONE),
      DOUBLE_WISHBONE_PARTS,
      .bushes_rate = 6.22,
      .bushes_per_load = 9.1e-05,
      .motion_ratio2 = 0.342 },
    { .name = "five_link",
      .axle = GW_FRONT,
      FRONT_OF(FIVE_LINK),
      FIVE_LINK_PARTS,
      .bushes_rate = 2.323,
      .bushes_per_load = -7.676e-06,
      .motion_ratio2 = 0.47 },
    { .name = "five_link",
      .axle = GW_REAR,
      REAR_OF(FIVE_LINK),
      FIVE_LINK_PARTS,
      .bushes_rate = 5.955,
      .bushes_per_load = 8.1e-06,
      .motion_ratio2 = 0.494 },
    { .name = "semi_trailing",
      .axle = GW_REAR,
      .framed = true,
      WHOLE(SEMI_TRAILING),
      .spring_on = "upright",
      .bushes_rate = 2.727,
      .bushes_per_load = -8.3e-05,
      .motion_ratio2 = 0.628,
      .bar = &BAR_ON_ARM },
    { .name = "trailing_arm",
      .axle = GW_REAR,
      WHOLE(TRAILING_ARM),
      .spring_on = "upright",
      .bushes_rate = 3.284,
      .bushes_per_load = 3.1e-05,
      .motion_ratio2 = 0.727,
      .bar = &BAR_ON_ARM },
    { .name = "twist_beam",
      .axle = GW_REAR,
      WHOLE(TWIST_BEAM),
      .member = { { "arm", 11, false } },
      .n_members = 1,
      .spring_on = "arm",
      .bushes_rate = 1.291,
      .bushes_per_load = 3.5e-04,
      .motion_ratio2 = 1.184,
      .frameless = true },
    { .name = "live_axle",
      .axle = GW_REAR,
      .barless = true,
      WHOLE(LIVE_AXLE),
      .member = { { "lower_link", 3.2, false },
                  { "upper_link", 2.1, false },
                  { "axle_tube", 62, true },
                  { "panhard_rod", 2.6, true } },
      .n_members = 4,
      .spring_on = "axle_tube",
      .bushes_rate = 1.49,
      .bushes_per_load = 5.7e-05,
      .motion_ratio2 = 1.003,
      .final_drive = "axle_tube",
      .bar = &BAR_ON_TUBE,
      .frameless = true },
};

const int GW_START_N_LAYOUTS = (int)(sizeof GW_START_LAYOUTS / sizeof *GW_START_LAYOUTS);

const gw_start_layout *gw_start_find(const char *name, gw_axle axle)
{
    for (int i = 0; i < GW_START_N_LAYOUTS; i++)
        if (GW_START_LAYOUTS[i].axle == axle && strcmp(GW_START_LAYOUTS[i].name, name) == 0)
            return &GW_START_LAYOUTS[i];
    return NULL;
}
