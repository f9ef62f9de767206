/* SPDX-License-Identifier: MIT */
/** The readings that --readings names. */
#ifndef CLI_READING_H
#define CLI_READING_H

#include "cli/session.h"
#include "giveway/readings.h"

/** Reads them for the case of the session; faults go to standard error. Returns an exit status. */
int gw_session_readings(const gw_args *args, gw_session *session, gw_readings *out);

#endif
