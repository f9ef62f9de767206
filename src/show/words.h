/* SPDX-License-Identifier: MIT */
/**
 * The sentences that carry cautions and limits, each in one place, so that every output says the
 * same and a translation needs one file.
 */
#ifndef SHOW_WORDS_H
#define SHOW_WORDS_H

/** Each word once, with its text: words.def. */
typedef enum gw_words {
#define GW_WORD_OF(name, text) GW_WORDS_##name,
#include "show/words.def"
#undef GW_WORD_OF
    GW_WORDS_COUNT
} gw_words;

/** One sentence or two, without a line break; never NULL. */
const char *gw_words_text(gw_words which);

#endif
