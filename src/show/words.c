/* SPDX-License-Identifier: MIT */
#include "show/words.h"

static const char *const WORDS[] = {
#define GW_WORD_OF(name, text) text,
#include "show/words.def"
#undef GW_WORD_OF
};

const char *gw_words_text(gw_words which)
{
    return (unsigned)which < GW_WORDS_COUNT ? WORDS[which] : "";
}
