/* SPDX-License-Identifier: MIT */
/**
 * Which bushes to fit: every combination of what is on offer by the full models, the best of them in
 * unsteadiness, harshness and cost at once, and what each step of money buys. SI units. Results are owned by
 * the study; they point into the case.
 */
#ifndef GIVEWAY_CHOOSE_H
#define GIVEWAY_CHOOSE_H

#include "giveway/api.h"
#include "giveway/compare.h"
#include "giveway/study.h"

GW_API_BEGIN

enum { GW_MOST_COMBINATIONS = 100000 };

/** A figure that goals ask for: one load on one wheel. */
typedef struct gw_chosen_figure {
    int load;
    gw_axle axle;
    gw_wheel_side wheel; /**< of a manoeuvre the left one is the outer */
    gw_goal_figure figure;
    double weight, wanted; /**< as of its goal [rad] or [m] */
} gw_chosen_figure;

/** One bush for each choice, and what comes of it. */
typedef struct gw_combination {
    int *option;         /**< [choice]: index into its bushes; -1: as in the first kit                    */
    double *value;       /**< [figure]: as it is, not less what is wanted [rad] or [m]                    */
    double unsteadiness; /**< root mean square of the goals' figures less what is wanted [rad] or [m]     */
    double harshness, noise; /**< the larger of the corners', over the first kit [dB]                     */
    double price, minutes;   /**< in the currency of the case; [min]                                      */
    double cost;             /**< price and work                                                          */
    bool step;               /**< on the front: nothing as cheap or cheaper is as steady              */
} gw_combination;

/** One of the fittings that lead to a recommendation, after those before it. */
typedef struct gw_choose_fitting {
    int choice, option;
    double unsteadiness; /**< then; NAN: the car cannot carry a goal's load so [rad] or [m] */
} gw_choose_fitting;

/** In how many of the drawn cars a recommendation is steadier. */
typedef struct gw_choose_sure {
    const char *than; /**< "now", or the cheaper recommendation's name               */
    double share;     /**< of the draws                                               */
} gw_choose_sure;

/** Work that is done once for all its joints that get another bush. */
typedef struct gw_choose_job {
    const char *label;
    int joints;            /**< of them, those that get another bush, with their mirror images once */
    double minutes, price; /**< [min], in the currency of the case */
    double saved;          /**< against doing it anew for each of those joints [min] */
} gw_choose_job;

typedef struct gw_recommendation {
    const char *name; /**< "value", "quiet" or "steady"     */
    int member;       /**< of the front                     */
    double gain;      /**< unsteadiness less than the first kit's [rad] or [m] */
    int n_order;
    gw_choose_fitting *order;
    gw_kit kit; /**< the case's first kit with it fitted */
    int n_jobs;
    gw_choose_job *job; /**< that it brings along */
    int n_beyond;
    const char **beyond; /**< joints beyond a limit of strength, in words */
    int n_sure;
    gw_choose_sure sure[3];
} gw_recommendation;

/** A single change of the first kit. */
typedef struct gw_swap {
    int choice, option;
    double gain;
    bool within_limits;
    gw_combination is;
} gw_swap;

/** A joint on offer. */
typedef struct gw_offered_joint {
    int choice, joint; /**< which choice, and which of its joints */
    const char *name;  /**< "front.rack_left"                     */
} gw_offered_joint;

/** A kit of the case, to be placed among what is on offer. */
typedef struct gw_own_kit_place {
    int kit;
    gw_combination is; /**< without options */
} gw_own_kit_place;

typedef enum gw_recommended { GW_FOR_VALUE, GW_FOR_QUIET, GW_FOR_STEADY, GW_RECOMMENDED } gw_recommended;

typedef struct gw_choose_study {
    gw_arena arena;
    gw_choose offer; /**< as it was taken: choices and steps, goals as they are in `figure` */
    double hourly_rate;
    bool in_mm;    /**< goals are lengths, else angles                    */
    bool has_ride; /**< else harshness and noise are 0                    */
    int n_joints;
    gw_offered_joint *joint; /**< choice by choice */
    int n_figures;
    gw_chosen_figure *figure;
    int combinations, within_limits, failed;
    gw_combination now; /**< the first kit */
    int n_front;
    gw_combination *front; /**< by cost */
    bool has_recommended;
    gw_recommendation recommended[GW_RECOMMENDED];
    long draws; /**< cars drawn for how sure it is; 0: none */
    int n_own;
    gw_own_kit_place *own; /**< every kit of the case but the first */
    int n_swaps;
    gw_swap *swap;           /**< by gain, the greatest first             */
    double least[GW_LIMITS]; /**< that any combination reaches; NAN: none */
    double freed[GW_LIMITS]; /**< the least unsteadiness without that limit alone; NAN: not given, or none */
    double unlimited;        /**< the least unsteadiness without any limit; NAN: none                      */
    int n_warnings;
    const char **warning;
} gw_choose_study;

typedef struct gw_choose_options {
    long draws; /**< for how sure it is; 0: that is left out                       */
    /** Called now and then with what is done, never twice at once; false: stop. May be NULL. */
    bool (*progress)(void *context, int done, int of);
    void *context;
    const gw_ride_study *ride; /**< of the case's own kits, where it is known; NULL: it is worked out      */
} gw_choose_options;

/**
 * @retval GW_OK        also where no combination is within the limits.
 * @retval GW_E_SCHEMA  nothing to choose among, no goal's load, a limit of dB without ride.
 * @retval GW_E_RANGE   more than GW_MOST_COMBINATIONS; a bush without a price.
 * @retval GW_E_NUMERIC the first kit cannot carry a goal's load.
 * @retval GW_E_USAGE   it was stopped; the message says how far it got.
 * @retval GW_E_MECHANISM, GW_E_NOMEM
 */
gw_status gw_study_choose(const gw_case *c, const gw_selection *wanted, const gw_choose_options *options,
                          gw_choose_study *out, gw_error *err);
void gw_choose_study_free(gw_choose_study *study);

/** Whether there is something to choose: what gw_study_choose refuses before it works out any combination. */
gw_status gw_study_choose_offer(const gw_case *c, const gw_selection *wanted, gw_error *err);

/** The bush that a combination has in a joint of a choice. */
int gw_choose_bush(const gw_case *c, const gw_choose *offer, const int *option, int choice, int joint);

GW_API_END

#endif
