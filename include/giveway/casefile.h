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
 * @retval GW_OK        the case has no faults.
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

/**
 * What is on offer where a case does not say it: the joints at which the kits differ, those of an axle that
 * every kit treats alike together, each with the bushes that kits fit on both sides, in their order.
 *
 * @param[out] out  n_among and among, in the arena.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_choose_by_kits(const gw_case *c, gw_arena *arena, gw_choose *out, gw_error *err);

/** Whether the case has a job, or a bush with a price or a fitting time. */
bool gw_case_has_prices(const gw_case *c);

/** What keeps a bush on offer from being reckoned with: "price", "fit_minutes", both in one text, or NULL.
 * The bush that the first kit has in all joints of the choice costs nothing, and where no bush of the case
 * has a price or a time, none lacks one: there the choice is told without money. */
const char *gw_choose_lacks(const gw_case *c, const gw_among *among, int bush);

/** A joint of the first kit that has another bush on the other side of the car; false: there is none. */
bool gw_choose_is_one_sided(const gw_case *c, gw_axle *axle, int *joint);

/**
 * The file of the case with these kits in place of its own, and without `choose`: with everything that
 * shelves gave, and without bands on what other kits had.
 *
 * @param[in]  kits  n of them, the same bush on both sides of the car.
 * @param[out] out   JSON, zero-terminated; owned by the caller (free).
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_case_with_kits(const gw_case *c, const gw_kit *const *kits, int n, char **out, gw_error *err);

/**
 * True where a load tells of a wheel whatever both sides are fitted with alike: the wheels that a manoeuvre
 * names; of a direct load the right one only where it differs from the left.
 */
bool gw_load_tells(const gw_case *c, const gw_load *load, gw_wheel_side wheel);

/** A degree [rad] or a millimetre [m]: what a figure of this kind is told in. */
double gw_goal_unit(gw_goal_figure figure);

/** Index of the bush, kit, joint or body of that name; -1: none. In an axle the name as written finds the
 * left. */
int gw_case_find_bush(const gw_case *c, const char *name);
int gw_case_find_kit(const gw_case *c, const char *name);
int gw_case_find_load(const gw_case *c, const char *name);
int gw_corner_find_joint(const gw_corner *corner, const char *name);
int gw_corner_find_body(const gw_corner *corner, const char *name);

GW_API_END

#endif
