/* SPDX-License-Identifier: MIT */
/** Work that is done once for several bushes of a kit. */
#ifndef SHOW_SHARED_WORK_H
#define SHOW_SHARED_WORK_H

#include "format/table.h"
#include "giveway/cost.h"
#include "show/handling.h"

/** "front.arm_rear" */
void gw_shared_joint_name(const gw_case *c, const gw_shop_joint *at, gw_buf *out);

/** A paragraph a kit that shares work, its joints by name. */
void gw_shared_work_text(const gw_handling_page *p);

/** The same in one paragraph for all kits, joints counted. */
void gw_shared_work_brief(const gw_handling_page *p);

/** "632", "632+" where some parts carry no figure, a dash where nothing has one. */
void gw_sum_cell(gw_table *t, gw_cost_sum sum);

#endif
