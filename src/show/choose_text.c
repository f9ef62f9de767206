/* SPDX-License-Identifier: MIT */
#include "show/choose.h"

void gw_choose_text(const gw_case *c, const void *study, gw_paper *paper)
{
    (void)study;
    gw_paper_line(paper, "%s", c->title);
}
