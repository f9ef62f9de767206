/* SPDX-License-Identifier: MIT */
/** A case in memory: everything a case file says, in SI units, names resolved to indices. */
#ifndef GIVEWAY_CASE_H
#define GIVEWAY_CASE_H

#include "giveway/api.h"
#include "giveway/arena.h"
#include "giveway/bush.h"
#include "giveway/corner.h"
#include "giveway/ride.h"
#include "giveway/vehicle.h"

GW_API_BEGIN

/** A kit: one bush a joint. */
typedef struct gw_kit {
    const char *name;
    const char *label;   /**< for people; the name where the case gives none        */
    int *fits[GW_AXLES]; /**< [axle][joint of the pair] = index into bushes; NULL: no such axle */
} gw_kit;

typedef enum gw_load_kind { GW_LOAD_DIRECT, GW_LOAD_MANOEUVRE } gw_load_kind;

typedef struct gw_load {
    const char *name;
    gw_load_kind kind;
    gw_axle axle;           /**< direct: the corner it acts on                      */
    bool static_vertical;   /**< direct: the vertical force is the static load      */
    gw_corner_load direct;  /**< direct (vertical already filled in)                */
    gw_other_wheel other;   /**< direct: what the other wheel of the axle does      */
    gw_manoeuvre manoeuvre; /**< manoeuvre                                          */
    bool both;              /**< manoeuvre: the outer wheel and the inner           */
} gw_load;

typedef enum gw_adjuster_kind { GW_ADJUST_OFFSET, GW_ADJUST_LENGTH, GW_ADJUST_SHIM } gw_adjuster_kind;

typedef struct gw_adjuster {
    gw_adjuster_kind kind;
    int joint;           /**< OFFSET, SHIM                                           */
    int body;            /**< LENGTH: the member                                     */
    double min, max;     /**< allowed movement [m]; OFFSET: 0 to max                 */
    double thread_pitch; /**< LENGTH [m], > 0                                        */
    int threads;         /**< LENGTH: 2 = opposite (two pitches a turn), 1 = single  */
    gw_vec3 along;       /**< SHIM: unit direction                                   */
    double step;         /**< SHIM [m], > 0                                          */
} gw_adjuster;

/** What the ramp reads on one side before work begins; what was not read stays as the model has it. */
typedef struct gw_measured {
    bool has_camber, has_toe, has_caster;
    double camber, toe, caster; /**< [rad] */
} gw_measured;

typedef struct gw_align {
    bool present;
    bool measured;         /**< the sides were read on the ramp: each has its own result */
    gw_measured side[2];   /**< left, right                                              */
    bool has_caster_angle; /**< the target is a caster angle, reached from the measured one */
    double caster_angle;   /**< [rad] */
    bool has_camber, has_toe, has_caster;
    double camber, toe, caster;                               /**< targets [rad]    */
    double camber_tolerance, toe_tolerance, caster_tolerance; /**< [rad]; 0: none   */
    double shock_factor; /**< on peak loads of bearings, >= 1; 0: not given      */
    int n_adjusters;
    gw_adjuster *adjusters;
} gw_align;

/** What is uncertain in a case; see giveway/uncertain.h. */
typedef struct gw_uncertain {
    bool given;               /**< the case has a list; else this is common practice            */
    int n;                    /**< figures                                                      */
    int n_ride;               /**< of these, at the end, those that only ride knows of          */
    struct gw_unsure *figure; /**< in the order of the list                                     */
    int n_targets;
    struct gw_drawn_number *target; /**< numbers in the file that follow them                         */
} gw_uncertain;

/** What the workshop reckons prices with. */
typedef struct gw_shop {
    const char *currency; /**< as it is printed beside a sum; NULL: not given                 */
    bool has_labour, has_tax;
    double labour; /**< for an hour's work, in the currency of the case, >= 0               */
    double tax;    /**< on parts and labour together, as a fraction, 0 to 1                 */
} gw_shop;

/** Work that is done once for the car if any of its joints gets another bush than in the first kit. */
typedef struct gw_shop_joint {
    gw_axle axle;
    int joint;
} gw_shop_joint;

typedef struct gw_shop_job {
    const char *label;
    int n_joints;
    gw_shop_joint *joints;
    double minutes, price; /**< [min], in the currency of the case; >= 0 */
} gw_shop_job;

/** Joints of one axle that get the same bush, and the bushes they may get. */
typedef struct gw_among {
    gw_axle axle;
    int n_joints;
    int *joint; /**< of the corner, as written: the left ones where the axle holds both sides */
    int n_bushes;
    int *bush; /**< all different, in the order of the list                             */
} gw_among;

/** What a goal looks at; the words are GW_GOAL_FIGURES. */
typedef enum gw_goal_figure {
    GW_GOAL_TOE,
    GW_GOAL_CAMBER,
    GW_GOAL_CASTER,
    GW_GOAL_FORE_AFT,
    GW_GOAL_TO_ROAD
} gw_goal_figure;

/** A figure that should be near a wanted one. */
typedef struct gw_goal {
    int load;
    gw_goal_figure figure;
    bool one_corner, one_wheel; /**< else every one that the load tells                      */
    gw_axle axle;               /**< of one_corner                                           */
    gw_wheel_side wheel;        /**< of one_wheel: the left one is the outer                 */
    double weight;              /**< >= 0                                                    */
    double wanted;              /**< [rad] or [m]                                            */
} gw_goal;

typedef enum gw_choose_limit {
    GW_LIMIT_PRICE,
    GW_LIMIT_MINUTES,
    GW_LIMIT_COST,
    GW_LIMIT_HARSHNESS,
    GW_LIMIT_NOISE,
    GW_LIMITS
} gw_choose_limit;

/** What is on offer and what is wanted of it. */
typedef struct gw_choose {
    bool present;
    int n_among; /**< 0: not given: what the kits differ in */
    gw_among *among;
    int n_goals; /**< 0: not given: every toe change        */
    gw_goal *goal;
    bool has_limit[GW_LIMITS];
    double limit[GW_LIMITS]; /**< [currency], [min], [currency], [dB], [dB] */
    bool has_rate;
    double hourly_rate;       /**< in the currency of the case                              */
    double tell_unsteadiness; /**< steps that a person can tell apart [rad] or [m]; 0: none */
    double tell_harshness;    /**< [dB]; 0: none                                            */
} gw_choose;

typedef struct gw_case {
    gw_arena arena;
    const char *path;
    const char *title;
    bool has_vehicle;
    gw_vehicle vehicle;
    bool has_corner[GW_AXLES];
    gw_corner corners[GW_AXLES]; /**< the left corner; where the wheels share parts, the whole axle   */
    gw_corner pairs[GW_AXLES];   /**< both wheels of every axle; joints of the left corner come first */
    int n_bushes;                /**< named ones first, then those written in place, named AXLE.JOINT */
    gw_bush *bushes;
    int n_kits; /**< at least one where there is a corner: without kits, the joints as written */
    gw_kit *kits;
    int n_loads;
    gw_load *loads;
    gw_ride ride;
    gw_align align[GW_AXLES];
    gw_shop shop;
    int n_jobs;
    gw_shop_job *jobs;
    gw_choose choose;
    int n_overridden;        /**< parts of shelves in whose place others stand                      */
    const char **overridden; /**< a line each                                                       */
    gw_uncertain uncertain;
    void *document; /**< the file as it was read; NULL: this case was not read from a file         */
    const struct gw_material_set *materials; /**< that it was read with; borrowed                  */
} gw_case;

GW_API_END

#endif
