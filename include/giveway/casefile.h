/* SPDX-License-Identifier: MIT */
/**
 * Reading a case file: strict, everything checked, every fault at once.
 *
 * The file is JSON (RFC 8259), at most 4 MiB, nested at most 32 deep. A key that begins with "//" is a
 * comment. Anything else that is not known, is missing, is of the wrong kind or out of range is a fault
 * with its path in the file. Numbers are read in the C locale: the library never calls setlocale,
 * and neither may a program that uses it.
 */
#ifndef GIVEWAY_CASEFILE_H
#define GIVEWAY_CASEFILE_H

#include "giveway/api.h"
#include "giveway/case.h"
#include "giveway/faults.h"
#include "giveway/materials.h"

GW_API_BEGIN

/** Limits of a case, besides GW_CORNER_BODIES and GW_CORNER_JOINTS of a corner. */
enum {
    GW_MAX_FILE_BYTES = 4 << 20,
    GW_MAX_NESTING = 32,
    GW_MAX_POINTS = 1000, /**< in a corner                                           */
    GW_MAX_BUSHES = 1000, /**< named ones and those written in place together        */
    GW_MAX_KITS = 64,
    GW_MAX_LOADS = 1000,
    GW_MAX_ADJUSTERS = 64,     /**< in a corner                                           */
    GW_MAX_NAME_BYTES = 63,    /**< of a bush, joint, point, member, kit or load          */
    GW_MAX_TEXT_BYTES = 1000,  /**< of a title or label                                  */
    GW_MAX_CURRENCY_BYTES = 12 /**< of the currency, as it is printed beside a sum      */
};

/**
 * Reads and checks a case.
 *
 * @param[in]     path       of the file.
 * @param[in]     materials  compounds that bushes may name; copied into the bushes that use them.
 * @param[out]    out        written only when GW_OK is returned; free it with gw_case_free. SI units.
 * @param[in,out] faults     every fault and warning; at least one fault unless GW_OK is returned.
 * @retval GW_OK        the case is sound.
 * @retval GW_E_IO      the file cannot be read, or is larger than GW_MAX_FILE_BYTES.
 * @retval GW_E_PARSE   not JSON: one fault, with line and column.
 * @retval GW_E_SCHEMA  anything else that is wrong with it.
 * @retval GW_E_NOMEM   out of memory.
 *
 * What only some commands need (vehicle, ride, align, corners, masses and tyre data of the wheel) may be
 * missing here; those commands say what they lack.
 */
gw_status gw_case_load(const char *path, const gw_material_set *materials, gw_case *out, gw_faults *faults);

/** The same from `size` bytes in memory; `file` is only named in faults. */
gw_status gw_case_read(const char *file, const char *text, size_t size, const gw_material_set *materials,
                       gw_case *out, gw_faults *faults);

/** Frees everything and zeroes the case; a zeroed case is allowed. */
void gw_case_free(gw_case *c);

/** True where a manoeuvre is an equilibrium of the whole car; else loads are shared by roll centres. */
bool gw_case_on_road(const gw_case *c);

/** Index of the bush, kit, joint or body of that name; -1: none. In an axle the name as written finds the
 * left. */
int gw_case_find_bush(const gw_case *c, const char *name);
int gw_case_find_kit(const gw_case *c, const char *name);
int gw_case_find_load(const gw_case *c, const char *name);
int gw_corner_find_joint(const gw_corner *corner, const char *name);
int gw_corner_find_body(const gw_corner *corner, const char *name);

GW_API_END

#endif
