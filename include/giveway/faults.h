/* SPDX-License-Identifier: MIT */
/**
 * What is wrong with a file: a list of lines, filled by the readers, so that a user mends
 * everything in one go. Faults stop the work; warnings do not.
 */
#ifndef GIVEWAY_FAULTS_H
#define GIVEWAY_FAULTS_H

#include "giveway/api.h"
#include "giveway/arena.h"

#include <stdbool.h>

GW_API_BEGIN

/** More lines than this are counted, not kept; the last line then says so. */
enum { GW_MAX_FAULTS = 1000 };

/** Owned by the caller: start with `{0}`, end with gw_faults_free. The fields are for the functions below. */
typedef struct gw_faults {
    gw_arena arena;
    struct gw_fault_line *first, *last;
    int n_faults, n_warnings; /**< as kept                                   */
    bool overflow;            /**< more faults were found than are kept      */
    bool out_of_memory;       /**< a line or part of the file had no memory  */
} gw_faults;

/** Number of fault lines; 0 means that the file has none. */
int gw_faults_count(const gw_faults *faults);

/**
 * Line `index` (0 to count - 1): "FILE: PATH: what was expected and the remedy", without a line
 * break. Owned by `faults`. In the order in which the file was read.
 */
const char *gw_faults_text(const gw_faults *faults, int index);

/** The same for warnings. */
int gw_faults_warnings(const gw_faults *faults);
const char *gw_faults_warning(const gw_faults *faults, int index);

/** Adds a line, for checks made outside the readers. Control characters become spaces. */
void gw_faults_add(gw_faults *faults, bool warning, const char *text);

/** Frees every line and leaves the list empty and usable. */
void gw_faults_free(gw_faults *faults);

GW_API_END

#endif
