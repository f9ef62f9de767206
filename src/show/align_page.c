/* SPDX-License-Identifier: MIT */
/* A paragraph and a table of the text of an alignment. */
#include "show/align_page.h"

void gw_align_paragraph(const gw_align_page *p, gw_buf *text, int indent)
{
    gw_paragraph_of(p->out, text, p->width, indent);
}

void gw_align_table(const gw_align_page *p, const char *title, gw_table *table)
{
    gw_buf_fmt(p->out, "\n  %s\n", title);
    gw_table_put(table, p->width, 2, p->bold, p->out);
}
