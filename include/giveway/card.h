/* SPDX-License-Identifier: MIT */
/** What a customer feels of each kit, in five figures with their bands and one scale each. SI units. */
#ifndef GIVEWAY_CARD_H
#define GIVEWAY_CARD_H

#include "giveway/api.h"
#include "giveway/choose.h"
#include "giveway/cost.h"
#include "giveway/report.h"
#include "giveway/stand.h"

GW_API_BEGIN

typedef enum gw_feel {
    GW_FEEL_BRAKES, /**< how far the wheels turn in the stop, root mean square of all told [rad]   */
    GW_FEEL_CORNER, /**< how far the outer wheels lean to the road in the corner, their mean [rad] */
    GW_FEEL_FELT,   /**< harshness over the first kit, of the axle where it is most [dB]           */
    GW_FEEL_HEARD,  /**< road noise, likewise [dB]                                                 */
    GW_FEEL_MONEY,  /**< parts, work and tax as far as the case knows them [its currency]          */
    GW_FEELS
} gw_feel;

/** Less is better for each of them. */
typedef struct gw_gauge {
    bool known;
    double value, low, high; /**< with its band; equal where it has none                            */
    double change;           /**< less the first kit's; 0 of that kit; NAN: some price is not known */
    bool close;              /**< the band of the change holds zero: better or worse cannot be told */
    int step;                /**< -3 much better to 3 much worse than the first kit; 0: as before   */
    bool one_side;           /**< left and right differ in their bushes and the left wheels are what is told:
                                no word of better or worse holds for the car */
    int grade;               /**< of what is felt and heard: see gw_ride_grade                      */
} gw_gauge;

typedef struct gw_card {
    int kit;
    gw_gauge gauge[GW_FEELS];
    bool has_balance;
    double understeer_change; /**< understeer gradient less the first kit's [rad/g]                 */
    bool toe_out;             /**< the rear wheel gains toe-out: it makes a car nervous             */
    double pull;              /**< side drift in an even stop, left positive [m]; 0: not worth telling */
    int beyond;               /**< joints beyond a limit under the loads of the case                */
    bool near_limit;          /**< none beyond, one close to it                                     */
    gw_car_cost cost;
    int beaten_by; /**< a gw_recommended that is steadier, no harsher or louder and no dearer; -1: none */
} gw_card;

typedef struct gw_card_study {
    gw_arena arena;
    int stop, corner; /**< the loads looked at; -1: none                              */
    int n;
    gw_card *card;                       /**< by kit, in the order of the case, those of the report       */
    double from[GW_FEELS], to[GW_FEELS]; /**< one scale for all cards; holds every band               */
} gw_card_study;

/**
 * Puts the cards together from what a report holds.
 *
 * @param choose  what to fit for the money; NULL: not asked.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_study_cards(const gw_report *report, const gw_choose_study *choose, gw_card_study *out,
                         gw_error *err);
void gw_card_study_free(gw_card_study *study);

/** Below this two understeer gradients are alike [rad/g]: a tenth of a degree. */
#define GW_BALANCE_ALIKE (0.1 * 0.017453292519943295)

GW_API_END

#endif
