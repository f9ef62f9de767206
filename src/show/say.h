/* SPDX-License-Identifier: MIT */
/** Standing words of the program on paper. */
#ifndef SHOW_SAY_H
#define SHOW_SAY_H

#include "record/paper.h"
#include "show/words.h"

/** One of the standing sentences, as a paragraph. */
void gw_say_words(gw_paper *paper, int indent, gw_words words);

/** What ends every result: an empty line, what is left out here, the cautions. */
void gw_say_closing(gw_paper *paper, gw_words left_out);

/** Prints and frees a table under its title, after an empty line. */
void gw_say_table(gw_paper *paper, const char *title, gw_table *table);

#endif
