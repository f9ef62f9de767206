/* SPDX-License-Identifier: MIT */
/**
 * What of a case is uncertain, and the case as another draw of it would be written.
 *
 * Every uncertain figure follows a standard normal z of its own: a length or an angle is value + scale z, a
 * stiffness or any other size value x exp(scale z). Bands hold 95 %: two standard deviations each way.
 */
#ifndef GIVEWAY_UNCERTAIN_H
#define GIVEWAY_UNCERTAIN_H

#include "giveway/api.h"
#include "giveway/case.h"
#include "giveway/status.h"

GW_API_BEGIN

/** The unit that a figure is told in. */
typedef enum gw_unsure_unit { GW_UNSURE_FACTOR, GW_UNSURE_MM, GW_UNSURE_DEG } gw_unsure_unit;

/** One uncertain figure. */
typedef struct gw_unsure {
    const char *of;      /**< its path in the case, or that of the entry that takes many together      */
    gw_unsure_unit unit; /**< FACTOR: value x exp(scale z); else value + scale z                        */
    double scale;        /**< per z: natural logarithm, or mm, or deg; > 0                              */
    double value;        /**< as written, in the unit of the key; of many: 1 of a factor, 0 of a shift  */
    bool stiffness;      /**< the figure is how stiff a bush is                                         */
} gw_unsure;

/** The value of a figure at z. */
double gw_unsure_at(const gw_unsure *figure, double z);

/** A number in the file that follows a figure. */
typedef struct gw_drawn_number {
    int node;        /**< holder or number, counted through the file from its top    */
    const char *key; /**< of the number in its holder, where it may be left out; else NULL */
    int figure;      /**< index into the figures                                      */
    double value;    /**< as written, or what is taken where it is left out           */
    double relative; /**< its scale over that of the figure: 1, but where compounds of several hardnesses go
                          together                                                    */
} gw_drawn_number;

/** Makes cases from a case and one z a figure. One for each thread. */
typedef struct gw_drawer gw_drawer;

/**
 * @param[in]  c    read from a file; must outlive the drawer and every case that it makes, with the materials
 * it was read with.
 * @param[out] out  owned by the caller, closed with gw_drawer_close.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_drawer_open(const gw_case *c, gw_drawer **out, gw_error *err);
void gw_drawer_close(gw_drawer *drawer); /**< NULL is allowed */

/**
 * The case as if its file had been written with these figures: everything is read and checked anew, but that
 * the static load agrees with the mass.
 *
 * @param[in]  z    one a figure (c->uncertain.n), finite.
 * @param[out] out  written only on GW_OK; freed with gw_case_free before `c`. Bushes and kits as in `c`.
 * @retval GW_OK
 * @retval GW_E_RANGE  the figures make no case (an inner diameter beyond the outer): the first fault.
 * @retval GW_E_NOMEM
 */
gw_status gw_drawer_make(gw_drawer *drawer, const double *z, gw_case *out, gw_error *err);

/**
 * The same from a case that differs by one figure alone: what that figure does not reach is taken over.
 *
 * @param[in] near    made with the drawer's case, with the same z but for the figure; must outlive `out`.
 * @param[in] figure  index; -1: none.
 */
gw_status gw_drawer_make_near(gw_drawer *drawer, const gw_case *near, const double *z, int figure,
                              gw_case *out, gw_error *err);

/**
 * One flag a bush: after gw_drawer_make, true where more of it than its stiffness factor may differ, so that
 * its law has to be worked out anew. Owned by the drawer.
 */
const bool *gw_drawer_anew(const gw_drawer *drawer);

/**
 * The file of the case with these figures written into it and `uncertain` replaced by independent bands:
 * entry by entry `of`, and percent, mm or deg of two standard deviations.
 *
 * @param[in]  z    one a figure.
 * @param[in]  sd   standard deviation of each z, >= 0.
 * @param[out] out  JSON, zero-terminated; owned by the caller (free).
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_case_rewritten(const gw_case *c, const double *z, const double *sd, char **out, gw_error *err);

/** Where an uncertain figure stands on the car. */
typedef enum gw_unsure_kind {
    GW_UNSURE_BUSH,  /**< `name`; `joint` holds it, or NULL where no joint that does has a label */
    GW_UNSURE_POINT, /**< `name` of `name_length` bytes, a coordinate; `joint` of that name with a label, or
                        NULL */
    GW_UNSURE_WHEEL, /**< a coordinate of the wheel's centre */
    GW_UNSURE_ELSEWHERE
} gw_unsure_kind;

typedef struct gw_unsure_place {
    gw_unsure_kind kind;
    const char *name; /**< in the path: borrowed */
    int name_length;
    gw_axle axle;
    int coordinate; /**< 0 to 2: x, y, z */
    const gw_joint *joint;
} gw_unsure_place;

/** What the path of an uncertain figure leads to, for words. */
gw_unsure_place gw_unsure_place_of(const gw_case *c, const char *path);

GW_API_END

#endif
