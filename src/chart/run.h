/* SPDX-License-Identifier: MIT */
/** Runs gnuplot as processes of their own, and never waits for ever. */
#ifndef CHART_RUN_H
#define CHART_RUN_H

#include "base/buf.h"
#include "giveway/status.h"

enum { GW_MAX_PLOTTERS = 8 };

/**
 * Feeds each script to a gnuplot of its own; all run at once, in `dir`.
 *
 * @param[in]  n        number of scripts, 1 to GW_MAX_PLOTTERS
 * @param[in]  seconds  after which they are ended, > 0
 * @param[out] missing  true: there is no gnuplot on the PATH; GW_OK is returned and nothing was done
 * @param[out] said     what they wrote to standard error is added
 * @retval GW_OK    all ended well
 * @retval GW_E_IO  one could not start, failed or did not end; the message says why; the others were ended
 */
gw_status gw_gnuplot_run(const char *dir, const gw_buf *script, int n, int seconds, bool *missing,
                         gw_buf *said, gw_error *err);

#endif
