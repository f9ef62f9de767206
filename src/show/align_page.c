/* SPDX-License-Identifier: MIT */
/* A paragraph and a table of the text of an alignment. */
#include "show/align_page.h"

void gw_align_paragraph(const gw_align_page *p, gw_buf *text, int indent)
{
    gw_buf_paragraph(p->out, gw_buf_str(text), p->width, indent);
    if (text->failed) p->out->failed = true;
    gw_buf_free(text);
}

gw_status gw_align_table(const gw_align_page *p, const char *title, gw_table *table, gw_error *err)
{
    gw_buf_fmt(p->out, "\n  %s\n", title);
    gw_status status = gw_table_print(table, p->width, 2, p->bold, p->out, err);
    gw_table_free(table);
    return status;
}
