/* SPDX-License-Identifier: MIT */
/** What the files of the planner share. */
#ifndef STUDY_CHOOSE_PARTS_H
#define STUDY_CHOOSE_PARTS_H

#include "car/again.h"
#include "giveway/choose.h"
#include "study/run.h"

#include <pthread.h>

/** All that the bushes on one axle decide alone. */
typedef struct gw_axle_kits {
    int n;                /**< combinations of the axle's choices; 1 without any     */
    int *part;            /**< [kit]: its part of the number of a combination        */
    double *unsteady;     /**< [kit]: sum of w f^2 of those; NAN: cannot be carried   */
    double *harsh, *loud; /**< [kit]: over the first kit [dB]                        */
    double *price, *minutes;
    unsigned char *jobs; /**< [kit * n_jobs]: a job is due                           */
} gw_axle_kits;

/** How far the work has got, for all threads. */
typedef struct gw_plan_watch {
    pthread_mutex_t lock;
    int done;
    bool stopped;
} gw_plan_watch;

typedef struct gw_planner {
    const gw_case *c;
    const gw_choose_options *options;
    gw_run run; /**< opened; copied for each thread */
    gw_choose_study *out;
    gw_plan_watch *watch;
    gw_arena *arena;       /**< of the study */
    double weights;        /**< of all figures together */
    bool corner[GW_AXLES]; /**< that are looked at */
    bool on_road;          /**< a figure needs the whole car */
    int n_drives;          /**< manoeuvres that the whole car is solved for */
    gw_manoeuvre *drive;
    int *drive_of; /**< [figure]: index into `drive`; -1: its axle alone decides it */
    gw_axle_kits axle[GW_AXLES];
    double *unsteadiness;                             /**< [combination]; NAN: cannot be carried */
    double base_harsh[GW_AXLES], base_loud[GW_AXLES]; /**< of the first kit [N] */
} gw_planner;

/* choose_plan.c */
/** So many combinations more are done; false: the work is to stop. */
bool gw_plan_goes_on(const gw_planner *p, int more);
gw_status gw_plan_offer(gw_planner *p, const gw_selection *wanted, gw_error *err);
gw_status gw_plan_figures(gw_planner *p, const gw_selection *wanted, gw_error *err);
gw_status gw_plan_kits(gw_planner *p, gw_error *err);
/** The options of a kit of an axle, into those of the axle's choices. */
void gw_kit_options(const gw_planner *p, gw_axle axle, int kit, int *option);
void gw_combination_options(const gw_planner *p, int number, int *option);
int gw_choices(const gw_planner *p);

/* choose_fit.c: one kit in hand at a time */
typedef struct gw_bench_kit {
    gw_run run; /**< its case is the one below */
    gw_case c;  /**< the case with two kits: the first, and the one in hand */
    gw_kit kit[2];
    int *option;                  /**< [choice] */
    gw_corner_ws *pair[GW_AXLES]; /**< both wheels with the kit in hand; owned */
    gw_corner_ws *like[GW_AXLES]; /**< the corner that was opened last, with whatever fitted; NULL; owned */
} gw_bench_kit;
gw_status gw_bench_kit_open(const gw_planner *p, gw_bench_kit **out, gw_error *err);
void gw_bench_kit_close(gw_bench_kit *kit);
/** Put `option` in hand. */
void gw_bench_kit_fit(const gw_planner *p, gw_bench_kit *kit);
/** Figures that one axle decides; others of `value` are left alone. */
gw_status gw_kit_alone(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, double *value, gw_error *err);
/** As it is known of a kit of the case with the same bushes on the axle, or worked out. */
gw_status gw_kit_ride(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, double *harsh, double *loud,
                      gw_error *err);
gw_status gw_kit_pair(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, gw_corner_ws **out,
                      gw_error *err);
/** What is lost, not a car that cannot carry a load. */
bool gw_is_serious(gw_status status);
double gw_unsteady_part(const gw_chosen_figure *figure, double value);
double gw_figure_value(const gw_corner_result *wheel, double camber_to_road, gw_goal_figure figure);

/* choose_cost.c */
gw_status gw_plan_costs(gw_planner *p, gw_error *err);
void gw_cost_of_options(const gw_planner *p, const int *option, gw_combination *out);
void gw_cost_of_pair(const gw_planner *p, int front, int rear, gw_combination *out);

/* choose_axle.c */
gw_status gw_work_axles(gw_planner *p, gw_error *err);

/* choose_car.c */
gw_status gw_work_cars(gw_planner *p, gw_error *err);
/** Figures of the whole car for the kit in hand, as `compare` finds them. */
gw_status gw_kit_on_road(const gw_planner *p, gw_bench_kit *kit, gw_road **road, double *value,
                         gw_error *err);

/* choose_each.c: any combinations, each from the start */
enum {
    GW_EACH_MAY_FAIL = 1,
    GW_EACH_WITHOUT_RIDE = 2,
    GW_EACH_IN_SUM = 4 /* without figures: where all of it is on offer its unsteadiness is known already */
};
/** Everything of combinations whose options are given; one that may fail has an unsteadiness of NAN then. */
gw_status gw_work_each(const gw_planner *p, gw_combination *const *list, int n, int flags, gw_error *err);
gw_status gw_combination_make(const gw_planner *p, gw_combination *out, gw_error *err);
/** Figures and unsteadiness of the options in hand; `road` is opened where it is NULL and needed. */
gw_status gw_kit_figures(const gw_planner *p, gw_bench_kit *kit, gw_road **road, double *value,
                         double *unsteadiness, gw_error *err);

/** A kit of the case as it is; its unsteadiness is NAN where it cannot carry a goal's load. */
gw_status gw_own_kit(const gw_planner *p, int own, gw_combination *out, gw_error *err);

/* choose_front.c: arithmetic on numbers alone, in the units in which they are shown */
typedef struct gw_rated {
    double unsteadiness, harshness, cost;
    int number;     /**< of the combination: the order of what is equal */
    bool step;      /**< out */
    long long u, h; /**< out: in steps that a person can tell apart */
} gw_rated;
/** Leaves of `n` the front, by cost; returns how many; -1: out of memory. */
int gw_front_of(gw_rated *rated, int n, double tell_unsteadiness, double tell_harshness);
/** Which of the front are recommended; `now`: unsteadiness of the first kit. False: nothing gains. */
bool gw_recommend(const gw_rated *front, int n, double now, int member[GW_RECOMMENDED]);

/* choose_result.c */
gw_status gw_choose_results(gw_planner *p, gw_error *err);
bool gw_is_within_limits(const gw_planner *p, const gw_combination *of, int but);
/* choose_next.c */
gw_status gw_choose_orders(gw_planner *p, gw_error *err);
gw_status gw_choose_swaps(gw_planner *p, gw_error *err);
/* choose_kits.c: what is recommended as kits of the case: strength, jobs */
gw_status gw_choose_kits(gw_planner *p, const gw_selection *wanted, gw_error *err);
/* choose_sure.c */
gw_status gw_choose_sureness(gw_planner *p, const gw_selection *wanted, gw_error *err);

#endif
