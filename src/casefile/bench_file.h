/* SPDX-License-Identifier: MIT */
/** Files of a press or a dynamic test rig: which kind it is, its readings, and the law in them. */
#ifndef GW_CASEFILE_BENCH_FILE_H
#define GW_CASEFILE_BENCH_FILE_H

#include "casefile/node.h"
#include "giveway/press.h"
#include "giveway/rig.h"
#include "giveway/status.h"

typedef enum gw_bench_kind {
    GW_BENCH_FORCE,  /**< deflection_mm, force_N                                            */
    GW_BENCH_MOMENT, /**< angle_deg, moment_Nm                                              */
    GW_BENCH_DYNAMIC /**< frequency_Hz, amplitude_mm, stiffness_N_per_mm, loss_angle_deg    */
} gw_bench_kind;

/** What one file says; end with gw_bench_file_free. */
typedef struct gw_bench_file {
    gw_bench_kind kind;
    int n_rows;
    double *x, *f;   /**< static: readings in the order taken [m], [N] or [rad], [N m] */
    gw_rig_row *row; /**< dynamic                                                      */
    int *line;       /**< of each row                                                  */
    gw_press press;  /**< static                                                       */
    gw_rig rig;      /**< dynamic                                                      */
} gw_bench_file;

/**
 * Reads a file and fits its law. Faults are told under rd->file.
 * @retval GW_OK, GW_E_IO, GW_E_PARSE (with faults), GW_E_NOMEM
 */
gw_status gw_bench_file_read(const gw_reader *rd, const char *path, gw_bench_file *out);

/** Adds a warning for each figure that only a wrong unit explains. */
void gw_bench_file_doubts(const gw_reader *rd, const gw_bench_file *file);

void gw_bench_file_free(gw_bench_file *file);

#endif
