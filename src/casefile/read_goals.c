/* SPDX-License-Identifier: MIT */
/* What is to be held steady: figures under loads, each near a wanted value. */
#include "casefile/nearest.h"
#include "casefile/section.h"

enum { MAX_GOALS = 1000 };
static const char *const WORDS[] = { "load", "figure", "corner", "wheel", NULL };
static const gw_number_key NUMBERS[] = {
    { "weight", GW_OPTIONAL, GW_FROM(0, 1e9), 1, 0, offsetof(gw_goal, weight) },
    { "wanted", GW_OPTIONAL, GW_FROM(-1000, 1000), 1, 0, offsetof(gw_goal, wanted) },
};

static bool is_length(const gw_goal *goal)
{
    return goal->figure == GW_GOAL_FORE_AFT;
}

static int find_load(gw_case_reader *cr, const gw_node *node)
{
    char found[80], hint[GW_HINT_MAX];
    const char *word;
    gw_node at = gw_node_key(node, "load");
    if (!gw_get_word(&cr->rd, node, "load", GW_REQUIRED, &word)) return -1;
    gw_nearest near = { .want = word };
    int load = gw_case_find_load(cr->c, word);
    if (load >= 0) return load;
    for (int l = 0; l < cr->c->n_loads; l++)
        if (cr->c->loads[l].name) gw_nearest_offer(&near, cr->c->loads[l].name);
    gw_fault(&cr->rd, &at, "expected the name of a load, found %s%s", gw_found(&at, found),
             gw_nearest_hint(&near, hint));
    return -1;
}

static void read_corner(gw_case_reader *cr, const gw_node *node, const gw_load *load, gw_goal *goal)
{
    int axle;
    gw_node at = gw_node_key(node, "corner");
    if (!gw_get_choice(&cr->rd, node, "corner", GW_OPTIONAL, GW_AXLE_NAMES, 2, &axle)) return;
    goal->one_corner = true;
    goal->axle = (gw_axle)axle;
    if (!cr->c->has_corner[axle])
        gw_fault(&cr->rd, &at, "there is no %s corner in \"corners\"", GW_AXLE_NAMES[axle]);
    else if (load->kind == GW_LOAD_DIRECT && load->axle != goal->axle)
        gw_fault(&cr->rd, &at, "this load acts on the %s corner: name that, or leave \"corner\" out",
                 GW_AXLE_NAMES[load->axle]);
}

static void read_wheel(gw_case_reader *cr, const gw_node *node, const gw_load *load, gw_goal *goal)
{
    static const char *const WHEELS[] = { "outer", "inner", "left", "right" };
    int word;
    bool direct = load->kind == GW_LOAD_DIRECT;
    gw_node at = gw_node_key(node, "wheel");
    if (!gw_get_choice(&cr->rd, node, "wheel", GW_OPTIONAL, WHEELS, 4, &word)) return;
    goal->one_wheel = true;
    goal->wheel = word % 2 ? GW_RIGHT_WHEEL : GW_LEFT_WHEEL;
    if (direct != (word >= 2))
        gw_fault(&cr->rd, &at, "the wheels of a %s are \"%s\" and \"%s\"",
                 direct ? "direct load" : "manoeuvre", WHEELS[direct ? 2 : 0], WHEELS[direct ? 3 : 1]);
    else if (!gw_load_tells(cr->c, load, goal->wheel))
        gw_fault(&cr->rd, &at,
                 "this load does not tell that wheel: give the load %s, or name the other wheel",
                 direct ? "\"other_wheel\"" : "\"wheel\": \"both\"");
}

/* Most of a camber change in a bend follows the road. */
static void warn_of_camber(const gw_case_reader *cr, const gw_node *node, const gw_load *load,
                           const gw_goal *goal)
{
    gw_node at = gw_node_key(node, "figure");
    bool camber = goal->figure == GW_GOAL_CAMBER || goal->figure == GW_GOAL_TO_ROAD;
    bool bend = load->kind == GW_LOAD_MANOEUVRE && load->manoeuvre.lateral_g > 0.0;
    if (camber && bend && !gw_node_key(node, "wanted").json)
        gw_warn(
            &cr->rd, &at,
            "most of the camber change in a bend follows the road, and making it small rewards soft bushes: "
            "give \"wanted\"");
}

static void read_goal(gw_case_reader *cr, const gw_node *node, gw_goal *goal)
{
    int figure;
    *goal = (gw_goal){ .load = -1, .weight = 1.0 };
    if (!gw_is_object(&cr->rd, node, "an object { } with load and figure")) return;
    gw_check_keys(&cr->rd, node, NUMBERS, GW_COUNT(NUMBERS), WORDS);
    if (gw_get_choice(&cr->rd, node, "figure", GW_REQUIRED, GW_GOAL_FIGURES, 5, &figure))
        goal->figure = (gw_goal_figure)figure;
    gw_get_numbers(&cr->rd, node, NUMBERS, GW_COUNT(NUMBERS), goal);
    goal->wanted *= gw_goal_unit(goal->figure);
    if ((goal->load = find_load(cr, node)) < 0) return;
    const gw_load *load = &cr->c->loads[goal->load];
    gw_node at = gw_node_key(node, "figure");
    if (goal->figure == GW_GOAL_TO_ROAD && load->kind == GW_LOAD_DIRECT)
        gw_fault(&cr->rd, &at,
                 "camber to the road is a figure of manoeuvres: take \"camber_change_deg\" here");
    read_corner(cr, node, load, goal);
    read_wheel(cr, node, load, goal);
    warn_of_camber(cr, node, load, goal);
}

static void check_sum(const gw_case_reader *cr, const gw_node *list)
{
    const gw_choose *choose = &cr->c->choose;
    double weights = 0.0;
    for (int i = 0; i < choose->n_goals; i++) {
        gw_node entry = { NULL, list, NULL, i }, at = gw_node_key(&entry, "figure");
        weights += choose->goal[i].weight;
        if (is_length(&choose->goal[i]) != is_length(&choose->goal[0])) {
            gw_fault(&cr->rd, &at, "goals are all in degrees or all in mm: the first is in %s, this is not",
                     is_length(&choose->goal[0]) ? "mm" : "degrees");
            return;
        }
    }
    if (choose->n_goals && !(weights > 0.0))
        gw_fault(&cr->rd, list, "the weights are all 0: give at least one goal a weight above 0");
}

static void read_tell_apart(gw_case_reader *cr, const gw_node *choose)
{
    static const gw_number_key STEPS[] = {
        { "unsteadiness", GW_OPTIONAL, GW_FROM(0, 1000), 1, 0, offsetof(gw_choose, tell_unsteadiness) },
        { "harshness_dB", GW_OPTIONAL, GW_FROM(0, 100), 1, 0, offsetof(gw_choose, tell_harshness) },
    };
    gw_node node;
    gw_choose *out = &cr->c->choose;
    if (!gw_get_object(&cr->rd, choose, "tell_apart", GW_OPTIONAL, &node)) return;
    gw_check_keys(&cr->rd, &node, STEPS, GW_COUNT(STEPS), NULL);
    gw_get_numbers(&cr->rd, &node, STEPS, GW_COUNT(STEPS), out);
    out->tell_unsteadiness *= gw_goal_unit(out->n_goals ? out->goal[0].figure : GW_GOAL_TOE);
}

void gw_read_goals(gw_case_reader *cr, const gw_node *choose)
{
    gw_node list;
    gw_choose *out = &cr->c->choose;
    int index = 0;
    if (gw_get_list(&cr->rd, choose, "goals", GW_OPTIONAL, &list) &&
        gw_is_within(&cr->rd, &list, MAX_GOALS, "goals")) {
        int n = gw_node_count(&list);
        if (n == 0)
            gw_fault(&cr->rd, &list,
                     "expected at least one goal: leave \"goals\" out to hold every toe change small");
        if (!(out->goal = gw_reader_make(&cr->rd, n + 1, sizeof *out->goal))) return;
        for (const cJSON *e = gw_first(&list); e; e = gw_node_next(e)) {
            gw_node node = gw_node_entry(&list, e, index++);
            read_goal(cr, &node, &out->goal[out->n_goals++]);
        }
        check_sum(cr, &list);
    }
    read_tell_apart(cr, choose);
}
