/* SPDX-License-Identifier: MIT */
/*
 * Colours: M. Okabe and K. Ito, "Color Universal Design (CUD): How to make figures and presentations
 * that are friendly to colorblind people" (J*FLY, 2008), in an order of our own: neighbours differ in
 * lightness as well, and yellow, which is faint on white, comes last.
 */
#include "chart/style.h"

typedef struct gw_chart_look {
    const char *colour, *dash, *text_on;
    int marker;
    int hatching; /* -1: plain */
} gw_chart_look;

/* clang-format off */
static const gw_chart_look STYLES[GW_STYLES] = {
    { "#000000", "solid",          GW_WHITE,  7, -1 }, /* black          */
    { "#D55E00", "(14,5)",         GW_WHITE,  5, -1 }, /* vermillion     */
    { "#0072B2", "(6,4)",          GW_WHITE,  9,  4 }, /* blue           */
    { "#009E73", "(14,4,3,4)",     GW_WHITE, 13,  2 }, /* bluish green   */
    { "#CC79A7", "(3,4)",          GW_INK,    6,  5 }, /* reddish purple */
    { "#E69F00", "(20,4,3,4,3,4)", GW_INK,    4, -1 }, /* orange         */
    { "#56B4E9", "(10,3,10,8)",    GW_INK,   11,  1 }, /* sky blue       */
    { "#F0E442", "(2,2)",          GW_INK,    8, -1 }, /* yellow         */
};
/* Slate, earth, violet and moss, dark and light in turn: apart from each other in grey, from kits in colour. */
static const gw_chart_look PARTS[GW_STYLES] = {
    { "#2f4858", "solid",          GW_WHITE,  7, -1 },
    { "#8a6038", "(14,5)",         GW_INK,    5, -1 },
    { "#5c3f2b", "(6,4)",          GW_WHITE,  9, -1 },
    { "#5b7686", "(14,4,3,4)",     GW_INK,   13, -1 },
    { "#6b5b78", "(3,4)",          GW_WHITE,  6, -1 },
    { "#a58347", "(20,4,3,4,3,4)", GW_INK,    4, -1 },
    { "#4d5f4f", "(10,3,10,8)",    GW_WHITE, 11, -1 },
    { "#8d7f9a", "(2,2)",          GW_INK,    8, -1 },
};
static const char *const PART_FILLS[GW_STYLES] = { "#2f4858", "#b98f63", "#6a4a34", "#8aa5b5",
                                                   "#6b5b78", "#d8c296", "#4d5f4f", "#b3a6c0" };
/* clang-format on */

static const gw_chart_look *at(int number)
{
    return number >= GW_PARTS ? &PARTS[(number - GW_PARTS) % GW_STYLES]
                              : &STYLES[(unsigned)number % GW_STYLES];
}

const char *gw_style_colour(int number)
{
    return at(number)->colour;
}

const char *gw_style_fill(int number)
{
    if (number >= GW_PARTS) return PART_FILLS[(number - GW_PARTS) % GW_STYLES];
    return at(number) == &STYLES[0] ? "#444444" : at(number)->colour;
}

int gw_style_hatching(int number)
{
    return at(number)->hatching;
}

/* From the ninth on, a colour comes again with another dash. */
const char *gw_style_dash(int number)
{
    return at(number >= GW_PARTS ? number : number + number / GW_STYLES)->dash;
}

int gw_style_marker(int number)
{
    return at(number)->marker;
}

const char *gw_style_text_on(int number)
{
    return at(number)->text_on;
}
