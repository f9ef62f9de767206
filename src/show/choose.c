/* SPDX-License-Identifier: MIT */
/* The rows of what is recommended. */
#include "show/choose.h"

#include "record/csv.h"
#include "show/results.h"

gw_unit gw_choose_unit(const gw_choose_study *s)
{
    return s->in_mm ? GW_UNIT_MM : GW_UNIT_DEG;
}

GW_READS(gw_unit, unit_of, gw_choose_study, gw_choose_unit(it))

bool gw_choose_is_first(const gw_choose_study *s, int recommended)
{
    for (int i = 0; i < recommended; i++)
        if (s->recommended[i].member == s->recommended[recommended].member) return false;
    return true;
}

/* -- figures -- */

const char *gw_choose_wheel(const gw_case *c, const gw_chosen_figure *figure)
{
    bool drives = c->loads[figure->load].kind == GW_LOAD_MANOEUVRE;
    return drives ? gw_side_name(figure->wheel == GW_LEFT_WHEEL ? GW_OUTER : GW_INNER)
                  : GW_WHEEL_NAMES[figure->wheel];
}

GW_READS(const char *, wheel, gw_chosen_figure, gw_choose_wheel(p->c, it))

static GW_RECORD(FIGURE_RECORD, gw_chosen_figure,
    GW_LOADED("load", gw_chosen_figure, load, 0, "of a goal"),
    GW_WORD("corner", gw_chosen_figure, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_SAID("wheel", wheel, 0, "outer or inner of a manoeuvre, left or right of a direct load"),
    GW_WORD("figure", gw_chosen_figure, figure, GW_GOAL_FIGURES, 0, "what is looked at, with its unit"),
    GW_ENTRY_IN("value", unit_of, gw_combination, value, gw_chosen_figure, 0, "as it is, not less what is wanted"));

/* -- a combination -- */

GW_READS(int, joints_on_offer, gw_choose_study, it->n_joints)
GW_READS(const char *, joint_name, gw_choose_study, it->joint[p->index].name)

static const char *fitted(const gw_place *p)
{
    const gw_choose_study *s = GW_IT(p, gw_choose_study);
    const gw_offered_joint *at = &s->joint[p->index];
    int bush = gw_choose_bush(p->c, &s->offer, GW_IT(p, gw_combination)->option, at->choice, at->joint);
    return p->c->bushes[bush].name;
}

static GW_RECORD(SUMS_RECORD, gw_combination,
    GW_MEMBER_IN("unsteadiness", unit_of, gw_combination, unsteadiness, GW_MAY_LACK, "root mean square of the goals' figures less what is wanted, in their unit"),
    GW_MEMBER("harshness", DB, gw_combination, harshness, 0, "over the first kit; the larger of the corners'"),
    GW_MEMBER("road_noise", DB, gw_combination, noise, 0, "over the first kit; the larger of the corners'"),
    GW_MEMBER("price", PLAIN, gw_combination, price, 0, "of parts and jobs"),
    GW_MEMBER("fit_minutes", PLAIN, gw_combination, minutes, 0, "of work"),
    GW_MEMBER("cost", PLAIN, gw_combination, cost, 0, "price and work"));

static GW_RECORD(COMBINATION_RECORD, gw_combination,
    GW_TEXTS_BY_NAME("fits", joints_on_offer, joint_name, fitted, GW_ON_LINE, "the bush in every joint on offer"),
    GW_ROWS("figures", gw_choose_study, n_figures, figure, &FIGURE_RECORD, GW_ON_LINE, "what the goals look at"),
    GW_PART_SAME(&SUMS_RECORD));

static GW_RECORD(MEMBER_RECORD, gw_combination,
    GW_PART_SAME(&COMBINATION_RECORD),
    GW_MEMBER("step", PLAIN, gw_combination, step, 0, "nothing as cheap or cheaper is as steady"));

/* -- single changes -- */

static int choice_joints(const gw_place *p, int choice)
{
    return GW_IT(p, gw_choose_study)->offer.among[choice].n_joints;
}

/* Joints of a choice stand one after the other. */
static const char *choice_joint(const gw_place *p, int choice)
{
    const gw_choose_study *s = GW_IT(p, gw_choose_study);
    int first = 0;
    while (s->joint[first].choice != choice) first++;
    return s->joint[first + p->index].name;
}

static const char *bush_of(const gw_place *p, int choice, int option)
{
    return p->c->bushes[GW_IT(p, gw_choose_study)->offer.among[choice].bush[option]].name;
}

GW_READS(int, swap_joints, gw_swap, choice_joints(p, it->choice))
GW_READS(const char *, swap_joint, gw_swap, choice_joint(p, it->choice))
GW_READS(const char *, swap_bush, gw_swap, bush_of(p, it->choice, it->option))

static GW_RECORD(SWAP_RECORD, gw_swap,
    GW_SAYINGS("joints", swap_joints, swap_joint, GW_ON_LINE, "that get it"),
    GW_SAID("bush", swap_bush, 0, "what is fitted there alone"),
    GW_MEMBER_IN("gain", unit_of, gw_swap, gain, 0, "of unsteadiness, in the goals' unit"),
    GW_MEMBER("within_limits", PLAIN, gw_swap, within_limits, 0, "of the case"),
    GW_PART_OF(gw_swap, is, &SUMS_RECORD));

GW_READS(int, fitting_joints, gw_choose_fitting, choice_joints(p, it->choice))
GW_READS(const char *, fitting_joint, gw_choose_fitting, choice_joint(p, it->choice))
GW_READS(const char *, fitting_bush, gw_choose_fitting, bush_of(p, it->choice, it->option))

static GW_RECORD(FITTING_RECORD, gw_choose_fitting,
    GW_SAYINGS("joints", fitting_joints, fitting_joint, GW_ON_LINE, "that get it next"),
    GW_SAID("bush", fitting_bush, 0, "what is fitted there"),
    GW_MEMBER_IN("unsteadiness", unit_of, gw_choose_fitting, unsteadiness, GW_MAY_LACK, "then"));

/* -- recommendations -- */

static GW_RECORD(SURE_RECORD, gw_choose_sure,
    GW_MEMBER("than", PLAIN, gw_choose_sure, than, 0, "the first kit (now), or a cheaper recommendation"),
    GW_MEMBER("share", PLAIN, gw_choose_sure, share, GW_MAY_LACK, "of the drawn cars in which it is steadier"));

static GW_RECORD(JOB_RECORD, gw_choose_job,
    GW_MEMBER("label", PLAIN, gw_choose_job, label, 0, "the job"),
    GW_MEMBER("joints", PLAIN, gw_choose_job, joints, 0, "that get another bush in it"),
    GW_MEMBER("fit_minutes", PLAIN, gw_choose_job, minutes, 0, "of work, once for all of them"),
    GW_MEMBER("price", PLAIN, gw_choose_job, price, 0, "once for all of them"),
    GW_MEMBER("saved_minutes", PLAIN, gw_choose_job, saved, 0, "against doing it again for each of them"));

GW_READS(const void *, member_of, gw_recommendation, &GW_IT(p, gw_choose_study)->front[it->member])

static GW_RECORD(RECOMMENDATION_RECORD, gw_recommendation,
    GW_PART_FOUND(member_of, &MEMBER_RECORD, GW_ALWAYS),
    GW_MEMBER_IN("gain", unit_of, gw_recommendation, gain, 0, "of unsteadiness over the first kit, in the goals' unit"),
    GW_ROWS("order", gw_recommendation, n_order, order, &FITTING_RECORD, GW_ON_LINE, "if not all is fitted at once: always what leaves least unsteadiness"),
    GW_ROWS("jobs", gw_recommendation, n_jobs, job, &JOB_RECORD, GW_ON_LINE, "that it brings along"),
    GW_TEXTS("beyond_strength", gw_recommendation, n_beyond, beyond, 0, "joints beyond a limit of strength"),
    GW_ARRAY("steadier", gw_recommendation, n_sure, sure, &SURE_RECORD, GW_ON_LINE, "in how many of the drawn cars"));

static GW_RECORD(RECOMMENDED_RECORD, gw_choose_study,
    GW_WITHIN("value", gw_choose_study, recommended[GW_FOR_VALUE], &RECOMMENDATION_RECORD, 0, "most of the gain for its share of the cost"),
    GW_WITHIN("quiet", gw_choose_study, recommended[GW_FOR_QUIET], &RECOMMENDATION_RECORD, 0, "the least harsh with two thirds of the gain"),
    GW_WITHIN("steady", gw_choose_study, recommended[GW_FOR_STEADY], &RECOMMENDATION_RECORD, 0, "the steadiest"));

/* -- the case's own kits -- */

static GW_RECORD(OWN_RECORD, gw_own_kit_place,
    GW_KIT("kit", gw_own_kit_place, kit, 0, "of the case"),
    GW_PART_OF(gw_own_kit_place, is, &SUMS_RECORD));

/* -- limits -- */

static GW_RECORD(LEAST_RECORD, gw_choose_study,
    GW_MEMBER("price", PLAIN, gw_choose_study, least[GW_LIMIT_PRICE], GW_MAY_LACK, "of parts and jobs"),
    GW_MEMBER("fit_minutes", PLAIN, gw_choose_study, least[GW_LIMIT_MINUTES], GW_MAY_LACK, "of work"),
    GW_MEMBER("cost", PLAIN, gw_choose_study, least[GW_LIMIT_COST], GW_MAY_LACK, "price and work"),
    GW_MEMBER("harshness", DB, gw_choose_study, least[GW_LIMIT_HARSHNESS], GW_MAY_LACK, "over the first kit"),
    GW_MEMBER("road_noise", DB, gw_choose_study, least[GW_LIMIT_NOISE], GW_MAY_LACK, "over the first kit"));

static GW_RECORD(FREED_RECORD, gw_choose_study,
    GW_MEMBER_IN("price", unit_of, gw_choose_study, freed[GW_LIMIT_PRICE], GW_SOMETIMES, "without this limit"),
    GW_MEMBER_IN("fit_minutes", unit_of, gw_choose_study, freed[GW_LIMIT_MINUTES], GW_SOMETIMES, "without this limit"),
    GW_MEMBER_IN("cost", unit_of, gw_choose_study, freed[GW_LIMIT_COST], GW_SOMETIMES, "without this limit"),
    GW_MEMBER_IN("harshness_dB", unit_of, gw_choose_study, freed[GW_LIMIT_HARSHNESS], GW_SOMETIMES, "without this limit"),
    GW_MEMBER_IN("road_noise_dB", unit_of, gw_choose_study, freed[GW_LIMIT_NOISE], GW_SOMETIMES, "without this limit"));

GW_READS(double, draws, gw_choose_study, (double)it->draws)

GW_RECORD(GW_CHOOSE_RECORD, gw_choose_study,
    GW_MEMBER("combinations", PLAIN, gw_choose_study, combinations, 0, "of what is on offer"),
    GW_MEMBER("within_limits", PLAIN, gw_choose_study, within_limits, 0, "of them"),
    GW_MEMBER("failed", PLAIN, gw_choose_study, failed, 0, "of them, that cannot carry the load of a goal"),
    GW_WITHIN("now", gw_choose_study, now, &COMBINATION_RECORD, 0, "the first kit"),
    GW_ROWS("front", gw_choose_study, n_front, front, &MEMBER_RECORD, 0, "what no other beats or equals in unsteadiness, harshness and cost at once, by cost"),
    GW_HERE_IF("recommended", gw_choose_study, has_recommended, &RECOMMENDED_RECORD, GW_MAY_LACK, "null: nothing is steadier"),
    GW_ROWS("kits", gw_choose_study, n_own, own, &OWN_RECORD, GW_ON_LINE, "of the case, but the first"),
    GW_ROWS("swaps", gw_choose_study, n_swaps, swap, &SWAP_RECORD, GW_ON_LINE, "every single change of the first kit, the greatest gain first"),
    GW_HERE("least", &LEAST_RECORD, GW_ON_LINE, "that any combination reaches, limit by limit"),
    GW_HERE("without_limit", &FREED_RECORD, GW_ON_LINE, "the least unsteadiness without one limit alone, in the goals' unit"),
    GW_COUNTED("draws", draws, 0, "cars drawn for how sure it is"),
    GW_TEXTS("warnings", gw_choose_study, n_warnings, warning, 0, "as on standard error"));

/* -- in CSV: a row a member of the front, its bush in each joint on offer and its figures in columns -- */

static double is_recommended(const gw_place *p)
{
    const gw_choose_study *s = GW_IT(p, gw_choose_study);
    return s->has_recommended && &s->front[s->recommended[GW_WHICH(p)].member] == GW_IT(p, gw_combination);
}

static GW_RECORD(COLUMNS_RECORD, gw_combination,
    GW_MEMBER("step", PLAIN, gw_combination, step, 0, "as above"),
    GW_ASKED_OF("value", is_recommended, GW_FOR_VALUE, 0, "recommended for it"),
    GW_ASKED_OF("quiet", is_recommended, GW_FOR_QUIET, 0, "recommended for it"),
    GW_ASKED_OF("steady", is_recommended, GW_FOR_STEADY, 0, "recommended for it"),
    GW_PART_SAME(&SUMS_RECORD));

static void put_heads(const gw_case *c, const gw_choose_study *s, gw_csv *csv)
{
    gw_record_heads(csv, &COLUMNS_RECORD, "");
    for (int j = 0; j < s->n_joints; j++) gw_csv_string(csv, s->joint[j].name);
    for (int f = 0; f < s->n_figures; f++) {
        const gw_chosen_figure *figure = &s->figure[f];
        gw_buf head = { 0 };
        gw_buf_fmt(&head, "%s, %s, %s: %s", c->loads[figure->load].name, gw_axle_name(figure->axle),
                   gw_choose_wheel(c, figure), GW_GOAL_FIGURES[figure->figure]);
        gw_csv_text(csv, &head);
    }
    gw_csv_end_row(csv);
}

static void put_member(const gw_place *member, const gw_choose_study *s, gw_csv *csv)
{
    const gw_combination *of = GW_IT(member, gw_combination);
    gw_record_fields(csv, &COLUMNS_RECORD, member);
    for (int j = 0; j < s->n_joints; j++) {
        int bush = gw_choose_bush(member->c, &s->offer, of->option, s->joint[j].choice, s->joint[j].joint);
        gw_csv_string(csv, member->c->bushes[bush].name);
    }
    for (int f = 0; f < s->n_figures; f++) gw_csv_number(csv, gw_unit_out(gw_choose_unit(s), of->value[f]));
    gw_csv_end_row(csv);
}

static void put_csv(const gw_case *c, const void *study, gw_buf *out)
{
    const gw_choose_study *s = study;
    const gw_place top = gw_place_top(&GW_CHOOSE_RESULT, c, study);
    gw_csv csv = { .out = out };
    put_heads(c, s, &csv);
    for (int i = 0; i < s->n_front; i++) {
        gw_place member;
        if (gw_place_element(gw_row_of(&top, "front"), &top, i, &member)) put_member(&member, s, &csv);
    }
}

const gw_result GW_CHOOSE_RESULT = {
    .command = "choose", .record = &GW_CHOOSE_RECORD, .rows = "front", .csv = put_csv
};
