/* SPDX-License-Identifier: MIT */
/** The sheet that says what to measure: written, for a clipboard, and read back. */
#ifndef START_SHEET_H
#define START_SHEET_H

#include "base/buf.h"
#include "giveway/arena.h"
#include "giveway/faults.h"
#include "giveway/status.h"
#include "start/car.h"

/** The first nine columns of a sheet, which are what is read back. */
typedef enum gw_start_head {
    GW_START_WHAT,
    GW_START_OF,
    GW_START_TO,
    GW_START_X,
    GW_START_Y,
    GW_START_Z,
    GW_START_VALUE,
    GW_START_UNIT,
    GW_START_WITHIN,
    GW_START_HEADS
} gw_start_head;

extern const char *const GW_START_HEAD[GW_START_HEADS];

/** The rows of a filled sheet as they stood there; {0}: none. */
typedef struct gw_start_filled {
    gw_arena arena;
    const char *(*cell)[GW_START_HEADS]; /**< [n] */
    bool *written;                       /**< [n], where a sheet has taken the row up */
    int n;
} gw_start_filled;

/**
 * The sheet of what to measure, in the order one walks round the car.
 * @param[in] car     as assumed, before anything was read.
 * @param     filled  what a sheet says already stands in its rows again; rows of its own come last.
 */
void gw_start_sheet(const gw_start_car *car, gw_start_filled *filled, gw_buf *out);

/** The same for a clipboard: HTML of A4 pages, with a drawing of each corner that numbers its points. */
void gw_start_page(const gw_start_car *car, gw_buf *out);

/**
 * Puts what a filled sheet says into the car.
 * @param[in]  as_read  do not take figures far off the assumption for slips.
 * @param[out] filled   its rows, for another sheet; the caller frees the arena, whatever is returned; NULL:
 * not wanted.
 * @retval GW_OK; else faults with line and column are added, and the car is untouched.
 */
gw_status gw_start_read(const char *path, bool as_read, gw_start_car *car, gw_start_filled *filled,
                        gw_faults *faults);

#endif
