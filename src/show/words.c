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

void gw_say_words(gw_paper *paper, int indent, gw_words words)
{
    gw_paper_say(paper, indent, "%s", gw_words_text(words));
}

void gw_say_closing(gw_paper *paper, gw_words left_out)
{
    gw_paper_gap(paper);
    gw_say_words(paper, 0, left_out);
    gw_say_words(paper, 0, GW_WORDS_SAFETY);
    gw_say_words(paper, 0, GW_WORDS_DEFER);
}

void gw_say_table(gw_paper *paper, const char *title, gw_table *table)
{
    gw_paper_gap(paper);
    gw_paper_line(paper, "  %s", title);
    gw_paper_table(paper, table, 2);
}
