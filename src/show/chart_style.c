/* SPDX-License-Identifier: MIT */
/*
 * Colours: M. Okabe and K. Ito, "Color Universal Design (CUD): How to make figures and presentations
 * that are friendly to colorblind people" (J*FLY, 2008), in an order of our own: neighbours differ in
 * lightness as well, and yellow, which is faint on white, comes last.
 */
#include "show/chart_canvas.h"

#include <stdio.h>

typedef struct style {
    const char *colour;
    int pattern; /* of gnuplot; -1: plain */
    const char *dash;
    int marker;
    const char *text_on;
} style;

static const style STYLES[GW_STYLES] = {
    { "#000000", -1, "solid", 7, "#ffffff" },       /* black             */
    { "#D55E00", -1, "(14,5)", 5, "#ffffff" },      /* vermillion        */
    { "#0072B2", 4, "(6,4)", 9, "#ffffff" },        /* blue              */
    { "#009E73", 2, "(14,4,3,4)", 13, "#ffffff" },  /* bluish green      */
    { "#CC79A7", 5, "(3,4)", 6, GW_INK },           /* reddish purple    */
    { "#E69F00", -1, "(20,4,3,4,3,4)", 4, GW_INK }, /* orange            */
    { "#56B4E9", 1, "(10,3,10,8)", 11, GW_INK },    /* sky blue          */
    { "#F0E442", -1, "(2,2)", 8, GW_INK },          /* yellow            */
};

static const style *at(int number)
{
    return &STYLES[(unsigned)number % GW_STYLES];
}

const char *gw_style_colour(int number)
{
    return at(number)->colour;
}

void gw_style_fill(int number, bool hatched, char clause[96])
{
    const style *s = at(number);
    const char *colour = s == &STYLES[0] ? "#444444" : s->colour;
    if (hatched && s->pattern >= 0)
        snprintf(clause, 96, "fs pattern %d border lc rgb '%s' fc rgb '%s'", s->pattern, colour, colour);
    else
        snprintf(clause, 96, "fs solid 1.0 noborder fc rgb '%s'", colour);
}

const char *gw_style_dash(int number)
{
    return at(number)->dash;
}

int gw_style_marker(int number)
{
    return at(number)->marker;
}

const char *gw_style_text_on(int number)
{
    return at(number)->text_on;
}
