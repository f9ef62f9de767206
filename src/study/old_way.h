/* SPDX-License-Identifier: MIT */
/** Parts that both wheels share, said as if they were one wheel's own. */
#ifndef STUDY_OLD_WAY_H
#define STUDY_OLD_WAY_H

#include "giveway/case.h"
#include "giveway/faults.h"

/**
 * Adds a warning for every member of a corner that holds on to the chassis and that a name, a place near the
 * centre line or a joint on the other side of it gives away as shared: what is wrong with it, and the JSON
 * that says it right.
 *
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_warn_old_way(const gw_case *c, gw_axle axle, gw_faults *faults, gw_error *err);

#endif
