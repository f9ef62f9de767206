/* SPDX-License-Identifier: MIT */
/** Data of the page's drawing and of its sound. */
#ifndef PAGE_DRAWING_H
#define PAGE_DRAWING_H

#include "format/json.h"
#include "page/say.h"

/** Parts, places and movements of every axle, kit and state. */
void gw_page_drawing(const gw_page *p, gw_json *json);

/** What a joint bears in a solved load: elements of an array that is open. */
void gw_page_borne(const gw_deflection *item, int joint, gw_json *json);

/** Force into the body by third-octave, kit by kit and axle by axle. */
void gw_page_spectra(const gw_page *p, gw_json *json);

/** The first state as two pictures that need no script: from behind and from above. */
void gw_page_first_pictures(const gw_page *p, gw_buf *out);

/** How many times the drawing shows at first what the bushes give. */
int gw_page_first_factor(const gw_page *p);

#endif
