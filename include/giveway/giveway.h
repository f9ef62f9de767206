/* SPDX-License-Identifier: MIT */
/**
 * Everything at once, for programs that use the library. Such a program calls gsl_set_error_handler_off()
 * first: what the GNU Scientific Library cannot do comes back as a status, and its own handler would abort.
 */
#ifndef GIVEWAY_GIVEWAY_H
#define GIVEWAY_GIVEWAY_H

#include "giveway/align.h"
#include "giveway/annulus.h"
#include "giveway/api.h"
#include "giveway/arena.h"
#include "giveway/balance.h"
#include "giveway/bearing.h"
#include "giveway/bicycle.h"
#include "giveway/bush.h"
#include "giveway/bush_law.h"
#include "giveway/bush_report.h"
#include "giveway/case.h"
#include "giveway/casefile.h"
#include "giveway/compare.h"
#include "giveway/corner.h"
#include "giveway/corner_travel.h"
#include "giveway/cost.h"
#include "giveway/dynamic_band.h"
#include "giveway/faults.h"
#include "giveway/grid.h"
#include "giveway/handling.h"
#include "giveway/material.h"
#include "giveway/materials.h"
#include "giveway/names.h"
#include "giveway/pick.h"
#include "giveway/pressfit.h"
#include "giveway/report.h"
#include "giveway/ride.h"
#include "giveway/spread.h"
#include "giveway/status.h"
#include "giveway/strain.h"
#include "giveway/stand.h"
#include "giveway/strength.h"
#include "giveway/study.h"
#include "giveway/sweep.h"
#include "giveway/travel.h"
#include "giveway/reversal.h"
#include "giveway/tyre.h"
#include "giveway/uncertain.h"
#include "giveway/units.h"
#include "giveway/vec.h"
#include "giveway/vehicle.h"
#include "giveway/vehicle_anti.h"
#include "giveway/verdict.h"
#include "giveway/version.h"

#endif
