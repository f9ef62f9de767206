/* SPDX-License-Identifier: MIT */
/** What a kit costs to buy and to fit, as far as the case gives prices and times. */
#ifndef GIVEWAY_COST_H
#define GIVEWAY_COST_H

#include "giveway/api.h"
#include "giveway/case.h"

GW_API_BEGIN

typedef struct gw_car_cost {
    int parts;             /**< bushes to buy for the whole car                                   */
    int unpriced, untimed; /**< of them, those without a price, without a fitting time           */
    double price;          /**< of those with a price, in the currency of the case               */
    double minutes;        /**< of those with a time [min]                                        */
    double labour;         /**< for those minutes; NAN: the case has no labour_per_hour           */
    double tax;   /**< on price and labour (price alone where labour is not known); 0: no tax given */
    double total; /**< price, labour where known, tax                                    */
} gw_car_cost;

/** A sum of money or time. */
typedef struct gw_cost_sum {
    double value;
    bool known; /**< something of it has a figure, or there is nothing to buy */
    bool more;  /**< something of it has none: the whole is more than `value` */
} gw_cost_sum;

/** Parts and jobs, in the currency of the case; their fitting time [min]; both with labour and tax. */
gw_cost_sum gw_cost_price(const gw_car_cost *cost);
gw_cost_sum gw_cost_time(const gw_car_cost *cost);
gw_cost_sum gw_cost_total(const gw_car_cost *cost);

/**
 * Counts what differs from the first kit of the case, in every corner and on both sides of the car, and the
 * jobs that this brings with it. Of the first kit itself, every bush that has a price or a time, and their
 * jobs: renewing it all, so never less than gw_car_cost_renewed of a part of it.
 *
 * A joint stands for two on the car, left and right, unless its corner holds its mirror image as well (a
 * rack mounted left and right) or it lies on the centre line.
 */
gw_car_cost gw_car_cost_of(const gw_case *c, int kit);

/**
 * What the first kit's bushes would cost in the joints that `kit` changes: the sum to set beside the kit's
 * own, because it buys the same work. Of the first kit itself, as gw_car_cost_of.
 */
gw_car_cost gw_car_cost_renewed(const gw_case *c, int kit);

/** Work that a kit's bushes share: a job done once, however many of its joints get another bush. */
typedef struct gw_shared_job {
    const gw_shop_job *job;
    int joints;   /**< of them, those that get another bush (the first kit itself: a new one), a left one
                       with its right; 0: not due                                                      */
    double saved; /**< against doing the job anew for each of those joints [min]                       */
} gw_shared_job;

gw_shared_job gw_shared_job_of(const gw_case *c, const gw_shop_job *job, const gw_kit *kit);
/** Of all jobs of the case together [min]. */
double gw_shared_minutes_saved(const gw_case *c, int kit);
/** Whether `kit` has another bush than the first kit in a joint of a job, on either side; of the first kit
 * itself, which is told by its place in the case: whether its bush has a price or a time, so that it is
 * renewed. */
bool gw_job_joint_changes(const gw_case *c, const gw_kit *kit, const gw_shop_joint *at);

/** One line of a quotation: bushes for a joint, or a job that is done once for the car. */
typedef struct gw_quote_line {
    const char *job; /**< its label; NULL: bushes                            */
    gw_axle axle;
    int joint, bush; /**< of bushes: joint of the corner, bush of the case   */
    int count;       /**< on the car                                         */
    int of_pair; /**< of one side alone: which joint of the pair; -1: of both sides, or of a joint that is one
                  */
    double price;   /**< of all of them, in the currency of the case; NAN: not known */
    double minutes; /**< of all of them [min]; NAN: not known                        */
} gw_quote_line;

/**
 * The lines that gw_car_cost_of adds up, joints first; one for left and right where both get the same bush.
 *
 * @param[out] out  the first `most` of them.
 * @return how many there are.
 */
int gw_quote_lines(const gw_case *c, int kit, gw_quote_line *out, int most);

/** The joint on the other side of an axle with shared parts, where both stand in the case; else `joint`. */
int gw_joint_image(const gw_case *c, gw_axle axle, int joint);

/** How many of a joint there are on the car with its image: 1 or 2. */
int gw_joint_count_both(const gw_case *c, gw_axle axle, int joint);

/** Whether a joint can be taken apart: not a weld, and not the twist between the two halves of one body. */
bool gw_joint_is_bolted(const gw_case *c, gw_axle axle, int joint);

/** How many of a joint there are on the car: 1 or 2; 1 of one that has an image of its own, and of every
 * joint of an axle with shared parts, which has an image in the list or, as a Panhard rod, none on the car.
 */
int gw_joint_count_on_car(const gw_corner *corner, int joint);

GW_API_END

#endif
