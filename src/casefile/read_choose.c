/* SPDX-License-Identifier: MIT */
/* Which bushes are on offer where, and within which limits. */
#include "casefile/corner_reader.h"
#include "casefile/nearest.h"
#include "giveway/casefile.h"
#include "giveway/units.h"

#include <string.h>

static const char *const KEYS[] = { "among", "goals", "limits", "tell_apart", NULL };
static const char *const AMONG_KEYS[] = { "joints", "bushes", NULL };

/* Joints that stand in a choice already, by the choice's number from 1. */
typedef struct gw_taken {
    int in[GW_AXLES][GW_MAX_JOINTS];
} gw_taken;

/* "front.rack_left": the axle, and its joint as written; false: a fault was told. */
static bool find_joint(const gw_case_reader *cr, const gw_node *at, gw_axle *axle, int *joint)
{
    const char *name = gw_behind_axle(at->json->valuestring, axle);
    if (!name) {
        gw_fault(&cr->rd, at, "expected a joint like \"front.upper_rear\": the corner, a dot, the joint");
        return false;
    }
    const gw_corner *corner = &cr->c->corners[*axle];
    if (!cr->c->has_corner[*axle]) {
        gw_fault(&cr->rd, at, "there is no %s corner in \"corners\"", gw_axle_name(*axle));
        return false;
    }
    if (!corner->n_joints) return false; /* what is wrong with the corner has been said */
    if ((*joint = gw_joint_named(&cr->rd, at, corner, name)) < 0) return false;
    const char *written = gw_joint_as_written(corner, *joint);
    if (strcmp(written, name) == 0) return true;
    gw_fault(&cr->rd, at, "a choice fits both sides alike: name the joint \"%s.%s\"", gw_axle_name(*axle),
             written);
    return false;
}

static void take_joint(const gw_case_reader *cr, const gw_node *at, gw_among *among, int number,
                       gw_taken *taken)
{
    gw_axle axle;
    int joint;
    char found[80];
    if (!cJSON_IsString(at->json)) {
        gw_fault(&cr->rd, at, "expected the name of a joint, found %s", gw_found(at, found));
        return;
    }
    if (!find_joint(cr, at, &axle, &joint)) return;
    if (among->n_joints && axle != among->axle) {
        gw_fault(&cr->rd, at, "this choice is of the %s axle: make a choice of its own of the %s joint",
                 GW_AXLE_NAMES[among->axle], GW_AXLE_NAMES[axle]);
        return;
    }
    int *in = &taken->in[axle][joint];
    if (*in == number)
        gw_fault(&cr->rd, at, "this joint stands in the choice already: take it out here");
    else if (*in)
        gw_fault(&cr->rd, at, "this joint stands in choose.among[%d] too: it can be in one choice only",
                 *in - 1);
    if (*in) return;
    *in = number;
    among->axle = axle;
    among->joint[among->n_joints++] = joint;
}

static void read_joints(const gw_case_reader *cr, const gw_node *node, gw_among *among, int number,
                        gw_taken *taken)
{
    gw_node list;
    int index = 0;
    if (!gw_get_list(&cr->rd, node, "joints", GW_REQUIRED, &list) ||
        !gw_is_within(&cr->rd, &list, GW_MAX_JOINTS, "joints"))
        return;
    int n = gw_node_count(&list);
    if (n == 0) gw_fault(&cr->rd, &list, "expected at least one joint, like \"front.upper_rear\"");
    if (!(among->joint = gw_reader_make(&cr->rd, n + 1, sizeof *among->joint))) return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e)) {
        gw_node at = gw_node_entry(&list, e, index++);
        take_joint(cr, &at, among, number, taken);
    }
}

static bool all_have_housing(const gw_case *c, const gw_among *among)
{
    for (int j = 0; j < among->n_joints; j++)
        if (c->corners[among->axle].joints[among->joint[j]].housing < 0) return false;
    return true;
}

static void take_bush(gw_case_reader *cr, const gw_node *at, gw_among *among)
{
    char found[80];
    if (!cJSON_IsString(at->json)) {
        gw_fault(&cr->rd, at, "expected the name of a bush under \"bushes\", found %s", gw_found(at, found));
        return;
    }
    int bush = gw_read_bush_ref(cr, at, NULL, all_have_housing(cr->c, among));
    if (bush < 0) return;
    for (int i = 0; i < among->n_bushes; i++)
        if (among->bush[i] == bush) {
            gw_fault(&cr->rd, at, "this bush stands in the list already: take it out here");
            return;
        }
    among->bush[among->n_bushes++] = bush;
    const char *lacks = cr->c->n_kits ? gw_choose_lacks(cr->c, among, bush) : NULL;
    if (lacks)
        gw_fault(&cr->rd, at, "a bush on offer needs %s: give it in bushes.%s", lacks, at->json->valuestring);
}

static void read_bushes(gw_case_reader *cr, const gw_node *node, gw_among *among)
{
    gw_node list;
    int index = 0;
    if (!gw_get_list(&cr->rd, node, "bushes", GW_REQUIRED, &list) ||
        !gw_is_within(&cr->rd, &list, GW_MAX_BUSHES, "bushes"))
        return;
    int n = gw_node_count(&list);
    if (n == 0) gw_fault(&cr->rd, &list, "expected at least one bush that may be fitted there");
    if (!(among->bush = gw_reader_make(&cr->rd, n + 1, sizeof *among->bush))) return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e)) {
        gw_node at = gw_node_entry(&list, e, index++);
        take_bush(cr, &at, among);
    }
}

static void read_among(gw_case_reader *cr, const gw_node *choose)
{
    gw_node list;
    gw_taken *taken;
    gw_choose *out = &cr->c->choose;
    int index = 0;
    if (!gw_get_list(&cr->rd, choose, "among", GW_OPTIONAL, &list) ||
        !gw_is_within(&cr->rd, &list, GW_AXLES * GW_MAX_JOINTS, "choices"))
        return;
    int n = gw_node_count(&list);
    if (n == 0)
        gw_fault(
            &cr->rd, &list,
            "expected at least one choice of joints and bushes: leave \"among\" out to choose among what the "
            "kits fit");
    out->among = gw_reader_make(&cr->rd, n + 1, sizeof *out->among);
    taken = gw_reader_make(&cr->rd, 1, sizeof *taken);
    if (!out->among || !taken) return;
    for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e), index++) {
        gw_node node = gw_node_entry(&list, e, index);
        gw_among *among = &out->among[out->n_among++];
        if (!gw_is_object(&cr->rd, &node, "an object { } with joints and bushes")) continue;
        gw_check_keys(&cr->rd, &node, NULL, 0, AMONG_KEYS);
        read_joints(cr, &node, among, out->n_among, taken);
        read_bushes(cr, &node, among);
    }
}

/* What the kits fit has to have prices as well. */
static void check_kits(gw_case_reader *cr, const gw_node *choose)
{
    gw_choose by_kits = { 0 };
    gw_node at = gw_node_key(choose, "among");
    if (gw_choose_by_kits(cr->c, cr->rd.arena, &by_kits, NULL) != GW_OK) cr->rd.faults->out_of_memory = true;
    if (by_kits.n_among == 0)
        gw_fault(&cr->rd, &at, "the kits differ in no joint: give the joints and the bushes on offer");
    for (int i = 0; i < by_kits.n_among; i++)
        for (int b = 0; b < by_kits.among[i].n_bushes; b++) {
            int bush = by_kits.among[i].bush[b];
            const char *lacks = gw_choose_lacks(cr->c, &by_kits.among[i], bush);
            if (lacks)
                gw_fault(&cr->rd, &at, "a kit's bush is on offer and needs %s: give it in bushes.%s", lacks,
                         cr->c->bushes[bush].name);
        }
}

static void read_limits(gw_case_reader *cr, const gw_node *choose)
{
    static const gw_number_key NUMBERS[] = {
        { "price", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_choose, limit[GW_LIMIT_PRICE]) },
        { "fit_minutes", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_choose, limit[GW_LIMIT_MINUTES]) },
        { "cost", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_choose, limit[GW_LIMIT_COST]) },
        { "harshness_dB", GW_OPTIONAL, GW_FROM(-100, 100), 1, 0,
          offsetof(gw_choose, limit[GW_LIMIT_HARSHNESS]) },
        { "road_noise_dB", GW_OPTIONAL, GW_FROM(-100, 100), 1, 0,
          offsetof(gw_choose, limit[GW_LIMIT_NOISE]) },
    };
    gw_node limits;
    gw_choose *out = &cr->c->choose;
    if (!gw_get_object(&cr->rd, choose, "limits", GW_OPTIONAL, &limits)) return;
    gw_check_keys(&cr->rd, &limits, NUMBERS, GW_COUNT(NUMBERS), NULL);
    gw_get_numbers(&cr->rd, &limits, NUMBERS, GW_COUNT(NUMBERS), out);
    for (int l = 0; l < GW_LIMITS; l++) {
        gw_node at = gw_node_key(&limits, GW_LIMIT_NAMES[l]);
        out->has_limit[l] = at.json != NULL;
        if (at.json && l >= GW_LIMIT_HARSHNESS && !gw_node_key(&cr->top, "ride").json)
            gw_fault(&cr->rd, &at,
                     "without \"ride\" there is no such figure: give \"ride\", or take the limit out");
        if (at.json && l < GW_LIMIT_HARSHNESS && !gw_case_has_prices(cr->c))
            gw_fault(&cr->rd, &at,
                     "no bush has a price or fit_minutes: give them in bushes, or take the limit out");
    }
}

static void check_first_kit(const gw_case_reader *cr, const gw_node *choose)
{
    gw_axle axle;
    int joint;
    if (!gw_choose_is_one_sided(cr->c, &axle, &joint)) return;
    gw_fault(&cr->rd, choose,
             "the first kit fits \"%s.%s\" on one side only: fit both sides alike there, a choice is of both",
             GW_AXLE_NAMES[axle], gw_joint_as_written(&cr->c->corners[axle], joint));
}

void gw_read_choose(gw_case_reader *cr)
{
    static const gw_number_key NUMBERS[] = {
        { "hourly_rate", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_choose, hourly_rate) },
    };
    gw_node choose;
    gw_choose *out = &cr->c->choose;
    const int before = gw_faults_count(cr->rd.faults);
    if (!gw_get_object(&cr->rd, &cr->top, "choose", GW_OPTIONAL, &choose)) return;
    out->present = true;
    gw_check_keys(&cr->rd, &choose, NUMBERS, GW_COUNT(NUMBERS), KEYS);
    gw_get_numbers(&cr->rd, &choose, NUMBERS, GW_COUNT(NUMBERS), out);
    out->has_rate = gw_node_key(&choose, "hourly_rate").json != NULL;
    read_among(cr, &choose);
    gw_read_goals(cr, &choose);
    read_limits(cr, &choose);
    if (gw_faults_count(cr->rd.faults) != before || cr->c->n_kits == 0) return;
    check_first_kit(cr, &choose);
    if (out->n_among == 0) check_kits(cr, &choose);
}
