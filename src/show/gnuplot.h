/* SPDX-License-Identifier: MIT */
/** Runs gnuplot as a process of its own, without a shell, and never waits for ever. */
#ifndef SHOW_GNUPLOT_H
#define SHOW_GNUPLOT_H

#include "show/buf.h"

/**
 * Feeds a script to one gnuplot process that runs in `dir`.
 *
 * @param[in]  seconds  after which the process is ended, > 0
 * @param[out] missing  true: there is no gnuplot on the PATH; GW_OK is returned and nothing was done
 * @param[out] said     what gnuplot wrote to its standard error is added
 * @retval GW_OK, GW_E_IO (it could not be started, failed, was ended by a signal or by the time limit)
 */
gw_status gw_gnuplot_run(const char *dir, const gw_buf *script, int seconds, bool *missing, gw_buf *said,
                         gw_error *err);

#endif
