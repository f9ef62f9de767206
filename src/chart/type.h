/* SPDX-License-Identifier: MIT */
/** How wide text is, and where it breaks. */
#ifndef CHART_TYPE_H
#define CHART_TYPE_H

#include <stdbool.h>

enum { GW_MAX_TEXT_LINES = 4 };

/** Width of text in pixels in the face that is assumed (DejaVu Sans). */
double gw_text_pixels(const char *s, int size, bool bold);

/**
 * Width that is kept free for a text: "sans-serif" may give a face this much wider than the assumed one, and
 * whoever opens the picture chooses it. Every width of a layout is measured with this.
 */
double gw_text_room(const char *s, int size, bool bold);
#define GW_TYPE_WIDER 1.15

/** Height that is kept free for a line. */
double gw_text_height(int size);

/** A text broken into lines; what does not fit the last line ends in an ellipsis. */
typedef struct gw_text_lines {
    int n;
    char line[GW_MAX_TEXT_LINES][256];
} gw_text_lines;
gw_text_lines gw_text_break(const char *s, double room, int most, int size, bool bold);

/** Room of the widest line. */
double gw_text_lines_room(const gw_text_lines *lines, int size);

#endif
