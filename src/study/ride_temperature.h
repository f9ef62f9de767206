/* SPDX-License-Identifier: MIT */
/** What is said where the temperature of a case is not that of the laws. Private to src/study. */
#ifndef GIVEWAY_STUDY_RIDE_TEMPERATURE_H
#define GIVEWAY_STUDY_RIDE_TEMPERATURE_H

#include "giveway/compare.h"
#include "study/run.h"

/** Warnings of the study; nothing at room temperature. */
gw_status gw_ride_temperature(const gw_run *run, gw_ride_study *study, gw_error *err);

#endif
