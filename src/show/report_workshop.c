/* SPDX-License-Identifier: MIT */
/* What the workshop's copy adds: which bush goes where, and how stiff it is. */
#include "show/report_page.h"

#include "giveway/units.h"

void gw_page_bushes(const gw_page *p)
{
    (void)p;
}
