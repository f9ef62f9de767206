/* SPDX-License-Identifier: MIT */
/**
 * The sentences that carry cautions and limits, each in one place, so that every output says the
 * same and a translation needs one file.
 */
#ifndef SHOW_WORDS_H
#define SHOW_WORDS_H

#include "record/paper.h"

/** Each word once, with its text: words.def. */
typedef enum gw_words {
#define GW_WORD_OF(name, text) GW_WORDS_##name,
#include "show/words.def"
#undef GW_WORD_OF
    GW_WORDS_COUNT
} gw_words;

/** One sentence or two, without a line break; never NULL. */
const char *gw_words_text(gw_words which);

/** One of the standing sentences, as a paragraph. */
void gw_say_words(gw_paper *paper, int indent, gw_words words);

/** What ends every result: an empty line, what is left out here, the cautions. */
void gw_say_closing(gw_paper *paper, gw_words left_out);

/** Prints and frees a table under its title, after an empty line. */
void gw_say_table(gw_paper *paper, const char *title, gw_table *table);

#endif
