/* SPDX-License-Identifier: MIT */
/* What to fit, in words: the recommendations, what more money buys, single changes, what limits cost. */
#include "format/number.h"
#include "giveway/casefile.h"
#include "show/choose.h"
#include "show/words.h"

#include <math.h>

static const double SURE = 0.95; /* of the drawn cars */

static void put_unsteady(const gw_choose_study *s, double x, gw_buf *out)
{
    gw_buf_fmt(out, "%s %s", gw_fixed(gw_unit_out(gw_choose_unit(s), x), s->in_mm ? 2 : 3).s,
               gw_unit_word(gw_choose_unit(s)));
}

static void put_money(const gw_case *c, double sum, gw_buf *out)
{
    gw_buf_add(out, gw_fixed(sum, sum == floor(sum) ? 0 : 2).s);
    if (!c->shop.currency) return;
    gw_buf_say(out, " %s", c->shop.currency);
}

/* As the workshop says it, where the case does. */
static const char *joint_words(const gw_case *c, const gw_choose_study *s, int index)
{
    const gw_offered_joint *at = &s->joint[index];
    const gw_among *among = &s->offer.among[at->choice];
    const char *label = c->corners[among->axle].joints[among->joint[at->joint]].label;
    return label ? label : at->name;
}

static int first_joint(const gw_choose_study *s, int choice)
{
    int first = 0;
    while (s->joint[first].choice != choice) first++;
    return first;
}

static void put_joints(const gw_case *c, const gw_choose_study *s, int choice, gw_buf *out)
{
    int n = s->offer.among[choice].n_joints, first = first_joint(s, choice);
    for (int j = 0; j < n; j++) {
        if (j) gw_buf_add(out, j == n - 1 ? " and " : ", ");
        gw_buf_clean(out, joint_words(c, s, first + j));
    }
}

/* "rack_poly in steering rack, left mounting and steering rack, right mounting" */
static void put_change(const gw_case *c, const gw_choose_study *s, int choice, int option, gw_buf *out)
{
    gw_buf_say(out, "%s in ", c->bushes[s->offer.among[choice].bush[option]].name);
    put_joints(c, s, choice, out);
}

/* -- what was asked -- */

static void put_limit(const gw_case *c, gw_choose_limit limit, double at, gw_buf *out)
{
    switch (limit) {
    case GW_LIMIT_PRICE:
        gw_buf_add(out, "a price of ");
        put_money(c, at, out);
        break;
    case GW_LIMIT_MINUTES:
        gw_buf_fmt(out, "%s min of work", gw_fixed(at, 0).s);
        break;
    case GW_LIMIT_COST:
        gw_buf_add(out, "a cost of ");
        put_money(c, at, out);
        break;
    case GW_LIMIT_HARSHNESS:
        gw_buf_fmt(out, "%s dB of harshness", gw_significant(at, 3).s);
        break;
    default:
        gw_buf_fmt(out, "%s dB of road noise", gw_significant(at, 3).s);
        break;
    }
}

bool gw_choose_say_limits(const gw_case *c, const gw_choose_study *s, gw_buf *out)
{
    int n = 0;
    for (int l = 0; l < GW_LIMITS; l++) {
        if (!s->offer.has_limit[l]) continue;
        gw_buf_add(out, n++ ? ", " : " within the limits (");
        put_limit(c, (gw_choose_limit)l, s->offer.limit[l], out);
    }
    if (n) gw_buf_add(out, ")");
    return n > 0;
}

static void head(const gw_case *c, const gw_choose_study *s, gw_paper *paper)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%d combinations of the bushes on offer, each calculated as compare calculates a kit",
               s->combinations);
    if (s->failed) gw_buf_fmt(&text, "; %d cannot carry the load of a goal and are left out", s->failed);
    gw_buf_fmt(&text, ". %d of them are", s->within_limits);
    if (!gw_choose_say_limits(c, s, &text)) gw_buf_add(&text, " to choose from");
    gw_buf_say(&text,
               ". The front has %d: nothing else is steadier%s at once. Unsteadiness is the root mean square "
               "of %d figures less what is wanted, in %s; dB are over kit %s, which is what is fitted now.",
               s->n_front, gw_case_has_prices(c) ? ", less harsh and cheaper" : " and less harsh",
               s->n_figures, gw_unit_word(gw_choose_unit(s)), c->kits[0].name);
    gw_paper_say_of(paper, 0, &text);
    if (!s->has_ride)
        gw_paper_say(paper, 0, "Harshness and road noise are taken as 0: the case has no ride to tell them.");
    if (!gw_case_has_prices(c))
        gw_paper_say(paper, 0,
                     "No prices: no bush of the case has a price or fit_minutes, so that nothing here weighs "
                     "what a change costs.");
}

/* -- the table -- */

/* "now", or which recommendations a combination is. */
static void put_names(const gw_place *place, gw_buf *out)
{
    const gw_choose_study *s = GW_IT(place, gw_choose_study);
    const gw_combination *of = GW_IT(place, gw_combination);
    int n = 0;
    if (of == &s->now) gw_buf_add(out, "now");
    for (int i = 0; i < s->n_own; i++)
        if (of == &s->own[i].is) {
            gw_buf_say(out, "kit %s", place->c->kits[s->own[i].kit].name);
        }
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (&s->front[s->recommended[r].member] == of)
            gw_buf_fmt(out, "%s%s", n++ ? ", " : "", s->recommended[r].name);
}

static void put_gain(const gw_place *place, gw_buf *out)
{
    const gw_choose_study *s = GW_IT(place, gw_choose_study);
    double gain = s->now.unsteadiness - GW_IT(place, gw_combination)->unsteadiness;
    gw_buf_add(out, gw_signed(gw_unit_out(gw_choose_unit(s), gain), 3).s);
}

static const gw_column SUMS[] = {
    GW_CELL_COLUMN("", put_names),
    GW_FIGURE_COLUMN("unsteadiness", "unsteadiness", GW_FIXED, 3),
    { .head = "gain", .cell = put_gain, .side = GW_RIGHT },
    GW_FIGURE_COLUMN("harshness", "harshness", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("road_noise", "road noise", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("price", "price", GW_FIXED, 2),
    GW_FIGURE_COLUMN("fit_minutes", "minutes", GW_FIXED, 0),
    GW_FIGURE_COLUMN("cost", "cost", GW_FIXED, 2),
};

/* Without prices the last three are left out. */
static int sums(const gw_case *c)
{
    return GW_COLUMNS(SUMS) - (gw_case_has_prices(c) ? 0 : 3);
}

static bool member(const gw_place *top, int i, gw_place *out)
{
    return gw_place_element(gw_row_of(top, "front"), top, i, out);
}

static void table(gw_paper *paper, const gw_place *top)
{
    const gw_choose_study *s = top->it;
    gw_place place;
    gw_place_enter(gw_row_of(top, "now"), top, &place);
    gw_paper_gap(paper);
    gw_paper_begin(paper, place.record, SUMS, sums(top->c));
    gw_paper_row(paper, &place);
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (gw_choose_is_first(s, r) && member(top, s->recommended[r].member, &place))
            gw_paper_row(paper, &place);
    for (int i = 0; i < s->n_own; i++) {
        const gw_place own = { top->c, top, place.record, &s->own[i].is, i, 0 };
        gw_paper_row(paper, &own);
    }
    gw_paper_end(paper);
}

/* -- one recommendation -- */

static const char *meaning(const gw_case *c, int r)
{
    static const char *const WORDS[GW_RECOMMENDED] = { "most of the gain for its share of the cost",
                                                       "the least harsh with two thirds of the best gain",
                                                       "the steadiest" };
    return r == GW_FOR_VALUE && !gw_case_has_prices(c) ? "the most gain, as no cost is known" : WORDS[r];
}

static void put_order(const gw_case *c, const gw_choose_study *s, const gw_recommendation *r, gw_buf *out)
{
    for (int i = 0; i < r->n_order; i++) {
        const gw_choose_fitting *f = &r->order[i];
        if (r->n_order > 1) gw_buf_fmt(out, "%s%d. ", i ? "; " : "", i + 1);
        put_change(c, s, f->choice, f->option, out);
        gw_buf_fmt(out, " (%s)",
                   isnan(f->unsteadiness) ? "cannot carry a goal's load alone"
                                          : gw_fixed(gw_unit_out(gw_choose_unit(s), f->unsteadiness), 3).s);
    }
    gw_buf_add(out, ".");
}

static void put_shared_work(const gw_recommendation *r, gw_buf *out)
{
    for (int i = 0; i < r->n_jobs; i++) {
        const gw_choose_job *job = &r->job[i];
        gw_buf_say(out, "%s%s (%s min), once for %d joint%s", i ? "; " : " With it: ", job->label,
                   gw_fixed(job->minutes, 0).s, job->joints, job->joints == 1 ? "" : "s");
        if (job->saved > 0.0) gw_buf_fmt(out, ", which saves %s min", gw_fixed(job->saved, 0).s);
    }
    if (r->n_jobs) gw_buf_add(out, ".");
}

static bool is_fitted_now(const gw_choose_study *s, const char *recommended)
{
    for (int r = 0; r < GW_RECOMMENDED; r++)
        if (s->recommended[r].name == recommended) return s->recommended[r].n_order == 0;
    return false;
}

static void put_sure(const gw_case *c, const gw_choose_study *s, const gw_recommendation *r, gw_buf *out)
{
    for (int i = 0; i < r->n_sure && r->n_order; i++) {
        const gw_choose_sure *sure = &r->sure[i];
        bool now = i == 0;
        if (!now && is_fitted_now(s, sure->than)) continue; /* told already */
        gw_buf_fmt(out, " Steadier than %s in %s %% of %ld such cars%s", now ? "what is fitted" : sure->than,
                   gw_fixed(100.0 * sure->share, 0).s, s->draws,
                   sure->share >= SURE       ? "."
                   : sure->share <= 1 - SURE ? ": it is not."
                   : now                     ? ": that cannot be told apart."
                   : !gw_case_has_prices(c)  ? ": the two cannot be told apart."
                                             : ": the two cannot be told apart, so take the cheaper.");
    }
}

static void recommendation(const gw_case *c, const gw_choose_study *s, int which, gw_paper *paper)
{
    const gw_recommendation *r = &s->recommended[which];
    gw_buf text = { 0 };
    gw_paper_gap(paper);
    gw_buf_fmt(&text, "%s, %s", r->name, meaning(c, which));
    for (int i = which + 1; i < GW_RECOMMENDED; i++)
        if (s->recommended[i].member == r->member)
            gw_buf_fmt(&text, "; also %s, %s", s->recommended[i].name, meaning(c, i));
    gw_buf_add(&text, r->n_order > 1 ? ". In this order, if not all is fitted at once: " : ". Fit ");
    if (r->n_order)
        put_order(c, s, r, &text);
    else
        gw_buf_add(&text, "nothing: it is what is fitted now.");
    put_shared_work(r, &text);
    put_sure(c, s, r, &text);
    gw_paper_say_of(paper, 2, &text);
    for (int i = 0; i < r->n_beyond; i++)
        gw_paper_say(paper, 2, "Beyond a limit of strength: %s.", r->beyond[i]);
}

/* -- the ladder -- */

/* What a step has that the one before has not. */
static void put_differences(const gw_place *place, gw_buf *out)
{
    const gw_choose_study *s = GW_IT(place, gw_choose_study);
    const gw_combination *of = GW_IT(place, gw_combination), *last = &s->now;
    int n = 0;
    for (const gw_combination *m = s->front; m < of; m++)
        if (m->step) last = m;
    for (int j = 0; j < s->n_joints; j++) {
        const gw_offered_joint *at = &s->joint[j];
        int bush = gw_choose_bush(place->c, &s->offer, of->option, at->choice, at->joint);
        if (bush == gw_choose_bush(place->c, &s->offer, last->option, at->choice, at->joint)) continue;
        if (n++) gw_buf_add(out, "; ");
        gw_buf_say(out, "%s: %s", joint_words(place->c, s, j), place->c->bushes[bush].name);
    }
    if (!n) gw_buf_add(out, "nothing");
}

static const gw_column LADDER[] = {
    GW_FIGURE_COLUMN("cost", "cost", GW_FIXED, 2),
    GW_FIGURE_COLUMN("unsteadiness", "unsteadiness", GW_FIXED, 3),
    GW_FIGURE_COLUMN("harshness", "harshness", GW_SIGNED, 1),
    GW_CELL_COLUMN("fitted otherwise than in the line above", put_differences),
};

static bool is_step(const gw_paper *paper, const gw_place *place)
{
    (void)paper;
    return GW_IT(place, gw_combination)->step;
}

static void ladder(gw_paper *paper, const gw_place *top)
{
    gw_paper_heading(paper, "what more money buys");
    gw_paper_list(paper, top, "front", LADDER, GW_COLUMNS(LADDER), is_step);
}

static void whole_front(gw_paper *paper, const gw_place *top)
{
    gw_paper_heading(paper, "the front");
    gw_paper_list(paper, top, "front", SUMS, sums(top->c), NULL);
}

/* -- single changes -- */

/* Most gain for its cost within the limits; NULL: none gains. */
static const gw_swap *first_to_do(const gw_choose_study *s)
{
    const gw_swap *best = NULL;
    for (int i = 0; i < s->n_swaps; i++) {
        const gw_swap *w = &s->swap[i];
        if (!w->within_limits || !(w->gain > 0.0)) continue;
        if (!best || w->gain * best->is.cost > best->gain * w->is.cost) best = w;
    }
    return best;
}

static void put_swap(const gw_case *c, const gw_choose_study *s, const gw_swap *w, gw_buf *out)
{
    put_change(c, s, w->choice, w->option, out);
    gw_buf_add(out, w->gain >= 0.0 ? " takes away " : " adds ");
    put_unsteady(s, fabs(w->gain), out);
    gw_buf_fmt(out, " (%s dB", gw_signed(w->is.harshness, 1).s);
    if (gw_case_has_prices(c)) {
        gw_buf_add(out, ", ");
        put_money(c, w->is.cost, out);
    }
    gw_buf_add(out, w->within_limits ? ")" : ", beyond a limit)");
}

static void say_swaps(const gw_case *c, const gw_choose_study *s, gw_paper *paper)
{
    gw_buf text = { 0 };
    const gw_swap *first = first_to_do(s);
    gw_paper_heading(paper, "single changes of what is fitted");
    for (int i = 0; i < 2 && i < s->n_swaps; i++) {
        gw_buf_add(&text, i ? "; then " : "Most: ");
        put_swap(c, s, &s->swap[i], &text);
    }
    gw_buf_add(&text, s->n_swaps ? ". " : "There is none. ");
    if (first) {
        gw_buf_add(&text, gw_case_has_prices(c) ? "To do first, most for its cost within the limits: "
                                                : "To do first, most within the limits: ");
        put_swap(c, s, first, &text);
        gw_buf_add(&text, ".");
    } else {
        gw_buf_add(&text, "None within the limits makes it steadier.");
    }
    gw_paper_say_of(paper, 2, &text);
}

static const gw_column SWAPS[] = {
    GW_WORD_COLUMN("bush", "bush"),
    GW_FIGURE_COLUMN("gain", "gain", GW_SIGNED, 3),
    GW_FIGURE_COLUMN("harshness", "harshness", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("road_noise", "road noise", GW_SIGNED, 1),
    GW_FIGURE_COLUMN("cost", "cost", GW_FIXED, 2),
};

static void put_swap_joints(const gw_place *place, gw_buf *out)
{
    const gw_choose_study *s = GW_IT(place, gw_choose_study);
    int choice = GW_IT(place, gw_swap)->choice, first = first_joint(s, choice);
    for (int j = 0; j < s->offer.among[choice].n_joints; j++) {
        if (j) gw_buf_add(out, " ");
        gw_buf_clean(out, s->joint[first + j].name);
    }
}

static void all_swaps(gw_paper *paper, const gw_place *top)
{
    gw_column columns[GW_COLUMNS(SWAPS) + 1] = { GW_CELL_COLUMN("joint", put_swap_joints) };
    const int n = GW_COLUMNS(columns) - (gw_case_has_prices(top->c) ? 0 : 1);
    for (int i = 0; i < GW_COLUMNS(SWAPS); i++) columns[1 + i] = SWAPS[i];
    gw_paper_gap(paper);
    gw_paper_list(paper, top, "swaps", columns, n, NULL);
}

/* -- limits -- */

/* Nothing is within all: which limit, and how near the nearest comes. */
static void say_why_none(const gw_case *c, const gw_choose_study *s, gw_paper *paper)
{
    gw_paper_say(paper, 0, "Nothing on offer is within all limits:");
    for (int l = 0; l < GW_LIMITS; l++) {
        gw_buf text = { 0 };
        double least = s->least[l];
        if (!s->offer.has_limit[l] || isnan(least)) continue;
        put_limit(c, (gw_choose_limit)l, s->offer.limit[l], &text);
        if (least > s->offer.limit[l] + 1e-6) {
            gw_buf_add(&text, ": the nearest misses it by ");
            put_limit(c, (gw_choose_limit)l, least - s->offer.limit[l], &text);
        } else {
            gw_buf_add(&text, ": the least is ");
            put_limit(c, (gw_choose_limit)l, least, &text);
            gw_buf_add(&text, ", but nothing that is within it is within the others");
        }
        gw_buf_add(&text, ".");
        gw_paper_say_of(paper, 2, &text);
    }
}

static void say_limits(const gw_case *c, const gw_choose_study *s, gw_paper *paper)
{
    bool any = false;
    if (!s->has_recommended) return;
    double best = s->front[s->recommended[GW_FOR_STEADY].member].unsteadiness;
    for (int l = 0; l < GW_LIMITS; l++) {
        gw_buf text = { 0 };
        if (!s->offer.has_limit[l] || isnan(s->freed[l])) continue;
        if (!any) gw_paper_heading(paper, "what the limits cost");
        any = true;
        gw_buf_add(&text, "Without the limit of ");
        put_limit(c, (gw_choose_limit)l, s->offer.limit[l], &text);
        double less = best - s->freed[l];
        if (gw_unit_out(gw_choose_unit(s), less) > 1e-6) {
            gw_buf_add(&text, s->in_mm ? " the steadiest would move " : " the steadiest would turn ");
            put_unsteady(s, less, &text);
            gw_buf_add(&text, " less.");
        } else {
            gw_buf_add(&text, " the steadiest would be no steadier.");
        }
        gw_paper_say_of(paper, 2, &text);
    }
}

void gw_choose_text(const gw_case *c, const void *study, gw_paper *paper)
{
    const gw_choose_study *s = study;
    const gw_place top = gw_place_top(&GW_CHOOSE_RESULT, c, study);
    gw_paper_line(paper, "%s", c->title);
    head(c, s, paper);
    table(paper, &top);
    if (!s->n_front) say_why_none(c, s, paper);
    if (s->n_front && !s->has_recommended)
        gw_paper_say(
            paper, 0,
            "Nothing within the limits is steadier than what is fitted now: no change is recommended.");
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (gw_choose_is_first(s, r)) recommendation(c, s, r, paper);
    if (s->n_front && gw_case_has_prices(c)) ladder(paper, &top);
    if (paper->detail && s->n_front) whole_front(paper, &top);
    say_swaps(c, s, paper);
    if (paper->detail) all_swaps(paper, &top);
    say_limits(c, s, paper);
    gw_say_closing(paper, GW_WORDS_STATIC_ONLY);
}
