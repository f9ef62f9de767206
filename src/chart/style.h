/* SPDX-License-Identifier: MIT */
/** Colours, dashes, markers and fills, by number; type sizes. The same for all charts and for the page. */
#ifndef CHART_STYLE_H
#define CHART_STYLE_H

#include <stdbool.h>

enum { GW_STYLES = 8 }; /* what can be told apart; in a chart with more, each is numbered too */

/** Styles from here on are of what is no kit (joints, causes, readings), in colours that no kit has. */
enum { GW_PARTS = 1 << 16 };

#define GW_INK      "#222222"
#define GW_SOFT_INK "#555555"
#define GW_FAINT_INK "#9a9a9a"
#define GW_RULE     "#d9d9d9"
#define GW_WHITE    "#ffffff"

/** Sizes of type in pixels. 800 pixels across 170 mm of paper make 13 pixels 7.8 points. */
enum { GW_TYPE_TITLE = 18, GW_TYPE_TEXT = 14, GW_TYPE_TICK = 13, GW_TYPE_NOTE = 12, GW_TYPE_BADGE = 10 };

const char *gw_style_colour(int number);
/** Colour of an area: black, heavy in an area, becomes a dark grey. */
const char *gw_style_fill(int number);
/** Hatching that parts neighbours whose greys are alike in print; below zero: plain. */
int gw_style_hatching(int number);
const char *gw_style_dash(int number);
int gw_style_marker(int number);
/** White or dark, whichever reads on that colour. */
const char *gw_style_text_on(int number);

#endif
