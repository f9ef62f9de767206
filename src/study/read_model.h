/* SPDX-License-Identifier: MIT */
/** What the model says where a reading was taken. */
#ifndef STUDY_READ_MODEL_H
#define STUDY_READ_MODEL_H

#include "giveway/readings.h"
#include "study/drawn.h"

/**
 * Every value of every reading, in their order.
 *
 * @param[in]  c, wanted  a car and its laws.
 * @param[in]  factor     of the load cell, on all that is added to standing still.
 * @param[out] y          readings->n_values numbers, SI.
 * @retval GW_OK; else the first reading that could not be had, named.
 */
gw_status gw_read_model(const gw_case *c, const gw_selection *wanted, const gw_readings *readings,
                        double factor, double *y, gw_error *err);

#endif
