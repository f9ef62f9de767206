/* SPDX-License-Identifier: MIT */
#include "show/travel.h"
#include "show/words.h"

#include <math.h>
#include <stdio.h>

enum { USUAL_ROWS = 13 }; /* places of travel shown unless all are asked for */

static const double FAR = 100.0; /* an instant centre farther away is as good as none [m] */

static void heading(gw_paper *paper, const gw_place *place)
{
    const gw_travel_item *item = GW_IT(place, gw_travel_item);
    const gw_kit *kit = &place->c->kits[item->kit];
    bool labelled = kit->label != kit->name, loaded = item->load >= 0;
    gw_paper_heading(paper, "%s corner%s%s%s, kit %s%s%s%s%s", gw_axle_name(item->axle),
                     item->sided ? ", " : "", item->sided ? GW_WHEEL_NAMES[item->wheel] : "",
                     item->sided ? " wheel" : "", kit->name, labelled ? ": " : "", labelled ? kit->label : "",
                     loaded ? "; under the forces of " : "", loaded ? place->c->loads[item->load].name : "");
}

/* -- the path -- */

static const gw_column PATH[] = {
    GW_FIGURE_COLUMN("travel", "travel", GW_SIGNED, 0),
    GW_FIGURE_COLUMN("toe_change", "toe", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("toe_change", "", GW_MINUTES, 1),
    GW_FIGURE_COLUMN("camber_change", "camber", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("caster_change", "caster", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("track_change", "track", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("wheelbase_change", "wheelbase", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("vertical_load", "load", GW_FIXED, 0),
    GW_FIGURE_COLUMN("wheel_rate", "wheel rate", GW_FIXED, 2),
    GW_FIGURE_COLUMN("roll_centre", "roll centre", GW_FIXED, 1),
};

/* The wheels do not move alike: neither track nor wheel rate of both. */
static const gw_column APART[] = {
    GW_FIGURE_COLUMN("travel", "travel", GW_SIGNED, 0),
    GW_FIGURE_COLUMN("other_travel", "other", GW_SIGNED, 0),
    GW_FIGURE_COLUMN("toe_change", "toe", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("toe_change", "", GW_MINUTES, 1),
    GW_FIGURE_COLUMN("camber_change", "camber", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("caster_change", "caster", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("wheelbase_change", "wheelbase", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("vertical_load", "load", GW_FIXED, 0),
};

/* Every k-th place counted from the one nearest to travel 0, and both ends. */
static bool is_shown(const gw_paper *paper, const gw_place *place)
{
    const gw_travel_item *item = GW_IT(place, gw_travel_item);
    int index = GW_INDEX(place, gw_travel_point);
    int zero = 0, every = (item->n - 1 + USUAL_ROWS - 2) / (USUAL_ROWS - 1);
    if (paper->detail || index == 0 || index == item->n - 1 || every < 2) return true;
    for (int i = 1; i < item->n; i++)
        if (fabs(item->point[i].travel) < fabs(item->point[zero].travel)) zero = i;
    return (index - zero) % every == 0;
}

/* -- at ride height -- */

static void toe_words(const gw_place *place, gw_fact_line *line)
{
    (void)place;
    const char *way = line->shown > 0.0 ? "toe-in in bump" : "toe-out in bump";
    line->words = fabs(line->shown) < 0.05 ? "next to none" : way;
}

static void camber_words(const gw_place *place, gw_fact_line *line)
{
    (void)place;
    const char *way = line->shown > 0.0 ? "top outboard in bump" : "top inboard in bump";
    line->words = fabs(line->shown) < 0.05 ? "next to none" : way;
}

/* A live axle that goes aside as it rises takes both patches along: that path tells nothing of roll. */
static void path_words(const gw_place *place, gw_fact_line *line)
{
    static const double ASIDE = 50.0; /* [mm] */
    const gw_travel_item *item = GW_IT(place, gw_travel_item);
    double held = gw_unit_out(GW_UNIT_MM, item->roll_centre_held);
    bool aside = item->load < 0 && place->c->corners[item->axle].shared && fabs(line->shown - held) > ASIDE;
    line->words = aside ? "both wheels alike; as it rolls: the next line" : "above the ground, on this path";
}

static void swing_arm(const gw_place *place, gw_fact_line *line)
{
    double length = GW_IT(place, gw_travel_point)->side_view.across;
    if (fabs(length) < FAR) {
        line->words = length > 0.0 ? "its centre ahead of the wheel" : "its centre behind the wheel";
        return;
    }
    snprintf(line->figure.s, sizeof line->figure.s, "none");
    line->unit = "";
    line->words = "the upright does not turn in side view";
}

static void parasitic(const gw_place *place, gw_fact_line *line)
{
    const gw_travel_item *item = GW_IT(place, gw_travel_item);
    const gw_travel_point *p = GW_IT(place, gw_travel_point);
    line->left_out = item->load >= 0 || isnan(p->rates.wheel_rate);
    if (item->no_parasitic) line->words = "the corner does not stand without it";
    if (!isfinite(p->parasitic)) return;
    snprintf(line->own, sizeof line->own, "%s %%: the parasitic rate",
             gw_fixed(100.0 * p->parasitic / p->rates.wheel_rate, 1).s);
    line->words = line->own;
}

static void drive_words(const gw_place *place, gw_fact_line *line)
{
    const gw_travel_item *item = GW_IT(place, gw_travel_item);
    const double share = item->drive_share;
    const gw_corner *corner = &place->c->corners[item->axle];
    if (corner->final_drive != GW_CHASSIS) {
        snprintf(line->own, sizeof line->own, "of the load transfer; the final drive is on %s",
                 corner->bodies[corner->final_drive].name);
        line->words = line->own;
        return;
    }
    line->words = isnan(share)  ? "if this axle alone drives"
                  : share < 1.0 ? "of the load transfer; both axles drive alike"
                                : "of the load transfer; half-shafts";
}

/* clang-format off */
static const gw_fact AT_REST[] = {
    { "bump steer", "toe_rate", GW_SIGNED, 2, NULL, toe_words },
    { "camber", "camber_rate", GW_SIGNED, 2, NULL, camber_words },
    { "roll centre", "roll_centre", GW_FIXED, 1, NULL, path_words },
    { "roll centre, load held", "roll_centre_load_held", GW_FIXED, 1, "without the give of bushes to more load", NULL },
    { "side-view swing arm", "side_view_swing_arm", GW_SIZE, 0, NULL, swing_arm },
    { "slope at the contact patch", "brake_angle", GW_SIGNED, 2, "forward in bump is positive; what brakes feel", NULL },
    { "slope at the wheel centre", "drive_angle", GW_SIGNED, 2, "what drive through a half-shaft feels", NULL },
    { "anti-dive, braking", "anti_dive", GW_SIGNED, 1, "of the load transfer; outboard brakes", NULL },
    { "anti-lift, braking", "anti_lift_braking", GW_SIGNED, 1, "of the load transfer; outboard brakes", NULL },
    { "anti-lift, driving", "anti_lift_driving", GW_SIGNED, 1, NULL, drive_words },
    { "anti-squat, driving", "anti_squat", GW_SIGNED, 1, NULL, drive_words },
    { "wheel rate", "wheel_rate", GW_FIXED, 2, NULL, NULL },
    { "of it, bushes being turned", "parasitic_rate", GW_FIXED, 2, NULL, parasitic },
    { "wheel rate on a tyre", "wheel_rate_rolling", GW_FIXED, 2, "its contact stays below the wheel centre", NULL },
};
/* clang-format on */

/* clang-format off */
static const gw_fact ROLLING[] = {
    { "roll centre", "roll_centre", GW_FIXED, 1, "above the ground, on this wheel's path", NULL },
    { "roll steer", "roll_steer_deg_per_deg", GW_SIGNED, 3, "degrees of toe per degree of roll, left wheel in bump", NULL },
    { "roll camber", "roll_camber_deg_per_deg", GW_SIGNED, 3, "degrees to the body per degree of roll", NULL },
    { "roll stiffness", "roll_stiffness", GW_FIXED, 0, "of the axle, with the bars that are in the joints", NULL },
};
/* clang-format on */

/* -- tilt -- */

static void verdict(const gw_place *place, gw_buf *out)
{
    const gw_travel_bearing *b = GW_IT(place, gw_travel_bearing);
    bool up = isfinite(b->binds_up), down = isfinite(b->binds_dn);
    gw_buf_add(out, b->holds ? "free" : "BINDS at ");
    if (b->holds) return;
    if (down) gw_buf_add(out, gw_paper_figure(place, "binds_in_rebound", GW_SIGNED, 1).s);
    if (up && down) gw_buf_add(out, " and at ");
    if (up) gw_buf_add(out, gw_paper_figure(place, "binds_in_bump", GW_SIGNED, 1).s);
    gw_buf_add(out, " mm");
}

static const gw_column TILT[] = {
    GW_WORD_COLUMN("joint", "tilt of joints with a limit"),
    GW_FIGURE_COLUMN("tilt", "largest", GW_FIXED, 2),
    GW_FIGURE_COLUMN("at_travel", "at travel", GW_SIGNED, 0),
    GW_FIGURE_COLUMN("limit", "limit", GW_FIXED, 1),
    GW_FIGURE_COLUMN("margin", "margin", GW_SIGNED, 2),
    GW_CELL_COLUMN("", verdict),
};

/* -- tightened elsewhere -- */

static const gw_column CLAMPED[] = {
    GW_WORD_COLUMN("joint", "tightened at another height"),
    GW_FIGURE_COLUMN("clamp_travel", "at travel", GW_SIGNED, 0),
    GW_FIGURE_COLUMN("twist", "twist at ride height", GW_SIGNED, 2),
    GW_FIGURE_COLUMN("torque", "torque", GW_SIGNED, 2),
};

static void clamped(gw_paper *paper, const gw_place *item)
{
    gw_place place;
    if (!gw_place_enter(gw_row_of(item, "clamped"), item, &place)) return;
    const gw_travel_clamp *clamp = GW_IT(&place, gw_travel_clamp);
    bool known = isfinite(clamp->rest_parasitic);
    gw_paper_gap(paper);
    gw_paper_list(paper, &place, "bushes", CLAMPED, GW_COLUMNS(CLAMPED), NULL);
    gw_paper_say(
        paper, 2,
        "Tightened there, these bushes carry %s N of the body at ride height, so that it stands %s mm %s; "
        "the wheel rate there is %s N/mm%s%s%s. Rubber bushes are tightened with the car standing on its "
        "wheels (common practice).",
        gw_paper_figure(&place, "carried_by_bushes", GW_SIZE, 0).s,
        gw_paper_figure(&place, "body_rises", GW_SIZE, 1).s, clamp->ride_height >= 0.0 ? "higher" : "lower",
        gw_paper_figure(&place, "wheel_rate", GW_FIXED, 2).s, known ? ", of which " : "",
        known ? gw_paper_figure(&place, "parasitic_rate", GW_FIXED, 2).s : "",
        known ? " by bushes being turned" : "");
}

/* What rubs, and the most of it by name. */
static void friction(gw_paper *paper, const gw_place *item)
{
    const gw_travel_item *of = GW_IT(item, gw_travel_item);
    const gw_friction *f = of->friction;
    int most = 0;
    if (!f) return;
    gw_paper_gap(paper);
    if (!f->n) {
        gw_paper_say(paper, 2, "Friction at the wheel: none, as the case has it.");
        return;
    }
    for (int i = 1; i < f->n; i++)
        if (f->part[i].wheel > f->part[most].wheel) most = i;
    int joint = f->part[most].joint;
    gw_paper_say(paper, 2, "Friction at the wheel: %s N before it moves; most of it %s%s, %s N.",
                 gw_paper_figure(item, "friction", GW_FIXED, 1).s, joint < 0 ? "the damper" : "",
                 joint < 0 ? "" : item->c->corners[of->axle].joints[joint].name,
                 gw_fixed(f->part[most].wheel, 1).s);
}

static void item_text(gw_paper *paper, const gw_place *item)
{
    gw_place rest;
    heading(paper, item);
    const gw_travel_item *it = GW_IT(item, gw_travel_item);
    bool apart = it->n > 0 && isnan(it->point[0].track_change);
    if (apart)
        gw_paper_list(paper, item, "points", APART, GW_COLUMNS(APART), is_shown);
    else
        gw_paper_list(paper, item, "points", PATH, GW_COLUMNS(PATH), is_shown);
    if (it->rolls) gw_paper_facts(paper, "as the body rolls", item, ROLLING, GW_COLUMNS(ROLLING));
    gw_place_enter(gw_row_of(item, "ride_height"), item, &rest);
    gw_paper_facts(paper, "at ride height", &rest, AT_REST, GW_COLUMNS(AT_REST));
    if (it->n_bearings) {
        gw_paper_gap(paper);
        gw_paper_list(paper, item, "bearings", TILT, GW_COLUMNS(TILT), NULL);
    }
    clamped(paper, item);
    friction(paper, item);
}

void gw_travel_text(const gw_case *c, const void *study, gw_paper *paper)
{
    const gw_place top = gw_place_top(&GW_TRAVEL_RESULT, c, study);
    gw_paper_line(paper, "%s", c->title);
    gw_paper_say(
        paper, 0,
        "Through bump and rebound under vertical load, the spring on its rate; changes are from the "
        "car standing still. Positive are: bump, toe-in, camber with the top outboard, caster with the top "
        "rearward, a wider track, a longer wheelbase; %s.",
        ((const gw_travel_study *)study)->plan.wheels == GW_OTHER_SAME
            ? "track and roll centre with both wheels alike"
        : ((const gw_travel_study *)study)->plan.wheels == GW_OTHER_OPPOSITE
            ? "the other wheel goes as far the other way"
            : "the left wheel moves, the right one stays where it is");
    gw_paper_each(paper, &top, "results", item_text);
    gw_say_closing(paper, GW_WORDS_STATIC_ONLY);
}
