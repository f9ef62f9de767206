/* SPDX-License-Identifier: MIT */
#include "giveway/card.h"

#include "giveway/pick.h"
#include "giveway/reversal.h"

#include <math.h>

static const double DEGREE = 0.017453292519943295;
static const gw_gauge UNKNOWN = { .known = false };

/* How much better or worse: the least change that counts, and from where on it is plain, and much. */
static int step_of(double change, double least, double plain, double much)
{
    double size = fabs(change);
    int step = size < least ? 0 : size < plain ? 1 : size < much ? 2 : 3;
    return change < 0.0 ? -step : step;
}

/* Better or worse cannot be told. Where all that the change may be is less than what counts, it is none. */
static bool is_open(double change, double apart, double least)
{
    return fabs(change) <= apart && fabs(change) + apart >= least;
}

static bool differs(const gw_report *r, int kit)
{
    bool unlike = false;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) unlike = unlike || gw_kit_differs_by_side(r->c, kit, a);
    return unlike;
}

/* The left wheels alone are told; of an even kit beside an even one they speak for the car. */
static bool of_one_side(const gw_report *r, int kit)
{
    return kit != r->baseline && (differs(r, kit) || differs(r, r->baseline));
}

/* ---- steadiness on the brakes ---- */

/* Root mean square of the toe changes under a load, and its slope with each figure that is not sure. */
static double turned(const gw_report *r, int kit, int load, double *slope)
{
    double sum = 0.0;
    int n = 0;
    for (int i = 0; i < r->deflect.n; i++) {
        const gw_deflection *d = &r->deflect.item[i];
        if (d->kit != kit || d->load != load || d->failed) continue;
        const gw_bands_item *band = r->banded ? gw_bands_find(&r->bands, kit, d->axle, load, d->wheel) : NULL;
        for (int f = 0; band && slope && f < r->bands.n_figures; f++)
            slope[f] += d->result.toe_change * band->toe[f];
        sum += d->result.toe_change * d->result.toe_change;
        n++;
    }
    if (!n) return (double)NAN;
    double rms = sqrt(sum / n);
    for (int f = 0; slope && f < r->bands.n_figures && rms > 0.0; f++) slope[f] /= n * rms;
    return rms;
}

/* Two standard deviations of what is linear in normal numbers; `less` may be NULL. */
static double half_of(const double *slope, const double *less, int n)
{
    double sum = 0.0;
    for (int f = 0; f < n; f++) {
        double s = slope[f] - (less ? less[f] : 0.0);
        sum += s * s;
    }
    return 2.0 * sqrt(sum);
}

static gw_status brakes(const gw_report *r, const gw_card_study *study, gw_card *card, gw_arena *arena,
                        gw_error *err)
{
    size_t n = r->banded ? (size_t)r->bands.n_figures : 0;
    double *slope = gw_arena_alloc(arena, n + 1, sizeof *slope);
    double *first = gw_arena_alloc(arena, n + 1, sizeof *first);
    if (!slope || !first) return gw_fail(err, GW_E_NOMEM, "out of memory for the cards");
    double value = study->stop < 0 ? (double)NAN : turned(r, card->kit, study->stop, n ? slope : NULL);
    double base = study->stop < 0 ? (double)NAN : turned(r, r->baseline, study->stop, n ? first : NULL);
    if (!isfinite(value) || !isfinite(base)) return GW_OK;
    double half = half_of(slope, NULL, (int)n), apart = half_of(slope, first, (int)n);
    gw_gauge *g = &card->gauge[GW_FEEL_BRAKES];
    *g = (gw_gauge){ .known = true, .value = value, .low = fmax(value - half, 0.0), .high = value + half };
    g->change = value - base;
    const double least = fmax(0.005 * DEGREE, 0.03 * base);
    g->step = step_of(g->change, least, 0.15 * base, 0.4 * base);
    g->close = card->kit != r->baseline && n && is_open(g->change, apart, least);
    g->one_side = of_one_side(r, card->kit);
    return GW_OK;
}

/* ---- grip in a corner: how upright the outer tyres stand ---- */

typedef struct lean {
    double value, half, apart;
    int n;
} lean;

static lean lean_of(const gw_report *r, int kit, int load)
{
    lean out = { 0 };
    for (int i = 0; i < r->deflect.n; i++) {
        const gw_deflection *d = &r->deflect.item[i];
        if (d->kit != kit || d->load != load || d->failed || d->side != GW_OUTER || !d->manoeuvre) continue;
        const gw_bands_item *band = r->banded ? gw_bands_find(&r->bands, kit, d->axle, load, d->wheel) : NULL;
        out.value += d->camber_to_road;
        if (band) out.half += band->own[GW_SPREAD_CAMBER].half;
        if (band && band->has_difference) out.apart += band->difference[GW_SPREAD_CAMBER].half;
        out.n++;
    }
    if (out.n) out.value /= out.n, out.half /= out.n, out.apart /= out.n;
    return out;
}

static void corner(const gw_report *r, const gw_card_study *study, gw_card *card)
{
    if (study->corner < 0) return;
    lean now = lean_of(r, card->kit, study->corner), base = lean_of(r, r->baseline, study->corner);
    gw_gauge *g = &card->gauge[GW_FEEL_CORNER];
    if (!now.n || now.n != base.n || !isfinite(now.half)) return;
    *g = (gw_gauge){
        .known = true, .value = now.value, .low = now.value - now.half, .high = now.value + now.half
    };
    g->change = now.value - base.value;
    /* Better is more upright: leaning in beyond upright is no gain. */
    const double least = 0.05 * DEGREE;
    g->step = step_of(fabs(now.value) - fabs(base.value), least, 0.25 * DEGREE, 0.6 * DEGREE);
    g->close = card->kit != r->baseline && r->banded && is_open(g->change, now.apart, least);
    g->one_side = of_one_side(r, card->kit);
}

static void balance(const gw_report *r, gw_card *card)
{
    const gw_balance_item *now = gw_balance_find(&r->handling, card->kit),
                          *base = gw_balance_find(&r->handling, r->baseline);
    if (!now || !base) return;
    card->understeer_change = now->quoted.understeer - base->quoted.understeer;
    card->has_balance = isfinite(card->understeer_change);
}

/* ---- felt and heard: the axle where most comes through speaks for the car ---- */

static gw_gauge through(const gw_report *r, int kit, bool heard)
{
    gw_gauge g = UNKNOWN;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_ride_item *item = gw_ride_find(&r->ride, kit, a);
        if (!item || !item->result.settled) continue;
        const gw_ride_difference *d = &item->difference;
        double value = heard ? d->noise : d->harshness;
        if (g.known && value <= g.value) continue;
        g = (gw_gauge){ .known = true,
                        .value = value,
                        .low = heard ? d->noise_low : d->harshness_low,
                        .high = heard ? d->noise_high : d->harshness_high };
    }
    g.change = g.value;
    g.step = step_of(g.value, 1.0, 3.0, 8.0);
    g.grade = gw_ride_grade(g.value);
    g.close = g.known && kit != r->baseline && g.low < 0.0 && g.high > 0.0;
    return g;
}

/* ---- money ---- */

static void money(const gw_report *r, gw_card *card)
{
    card->cost = gw_car_cost_of(r->c, card->kit);
    if (!card->cost.parts || !gw_cost_price(&card->cost).known) return;
    gw_car_cost again = gw_car_cost_renewed(r->c, card->kit);
    gw_cost_sum was = gw_cost_total(&again);
    bool sure = was.known && !was.more && !gw_cost_total(&card->cost).more;
    double total = card->cost.total;
    card->gauge[GW_FEEL_MONEY] = (gw_gauge){ .known = true,
                                             .value = total,
                                             .low = total,
                                             .high = total,
                                             .change = sure ? total - was.value : (double)NAN };
}

/* ---- warnings, and what is to be had for less ---- */

static void warnings(const gw_report *r, gw_card *card)
{
    enum { MOST = 16 };
    gw_reversal turns[MOST];
    int n = gw_reversals_find(r->c, &r->deflect, r->baseline, card->kit, turns, MOST);
    for (int i = 0; i < n && i < MOST; i++) card->toe_out = card->toe_out || turns[i].warns;
    card->pull = gw_braking_pull(&r->handling, card->kit);
    gw_stand stand = gw_stand_of(r->c, &r->deflect, &r->strength, card->kit);
    card->beyond = gw_stand_joints_beyond(r->c, &r->strength, card->kit);
    card->near_limit = !card->beyond && stand.state == GW_STAND_CLOSE;
}

static bool beats(const gw_combination *a, const gw_combination *b)
{
    return a->unsteadiness < b->unsteadiness && a->harshness <= b->harshness && a->noise <= b->noise &&
           a->cost <= b->cost;
}

static int beaten_by(const gw_choose_study *choose, int kit)
{
    if (!choose || !choose->has_recommended) return -1;
    for (int i = 0; i < choose->n_own; i++)
        for (int r = 0; r < GW_RECOMMENDED && choose->own[i].kit == kit; r++)
            if (beats(&choose->front[choose->recommended[r].member], &choose->own[i].is)) return r;
    return -1;
}

/* ---- all of it ---- */

static bool is_in(const gw_report *r, int kit)
{
    for (int i = 0; i < r->deflect.n; i++)
        if (r->deflect.item[i].kit == kit) return true;
    return false;
}

/* Where other kits cost something, one that changes nothing costs nothing; of the first kit, all new, nobody
 * knows then. */
static void money_of_nothing(gw_card_study *study)
{
    bool any = false;
    for (int i = 0; i < study->n; i++) any = any || study->card[i].gauge[GW_FEEL_MONEY].known;
    for (int i = 0; i < study->n && any; i++)
        if (!study->card[i].cost.parts && study->card[i].kit)
            study->card[i].gauge[GW_FEEL_MONEY] = (gw_gauge){ .known = true };
}

static void scale(gw_card_study *study)
{
    for (int f = 0; f < GW_FEELS; f++) {
        double from = 0.0, to = 0.0; /* nothing is a place on every scale */
        for (int i = 0; i < study->n; i++) {
            const gw_gauge *g = &study->card[i].gauge[f];
            if (!g->known) continue;
            from = fmin(from, g->low);
            to = fmax(to, g->high);
        }
        study->from[f] = from;
        study->to[f] = to > from ? to : from + 1.0;
    }
}

static gw_status run_all(const gw_report *r, const gw_choose_study *choose, gw_card_study *study,
                         gw_error *err)
{
    gw_status status = GW_OK;
    study->stop = gw_pick_load(r->c, &r->deflect, GW_PICK_STOP);
    study->corner = gw_pick_load(r->c, &r->deflect, GW_PICK_CORNER);
    study->card = gw_arena_alloc(&study->arena, (size_t)r->c->n_kits + 1, sizeof *study->card);
    if (!study->card) return gw_fail(err, GW_E_NOMEM, "out of memory for the cards");
    for (int k = 0; k < r->c->n_kits && status == GW_OK; k++) {
        if (!is_in(r, k)) continue;
        gw_card *card = &study->card[study->n++];
        card->kit = k;
        status = brakes(r, study, card, &study->arena, err);
        corner(r, study, card);
        balance(r, card);
        card->gauge[GW_FEEL_FELT] = through(r, k, false);
        card->gauge[GW_FEEL_HEARD] = through(r, k, true);
        money(r, card);
        warnings(r, card);
        card->beaten_by = beaten_by(choose, k);
    }
    money_of_nothing(study);
    scale(study);
    return status;
}

gw_status gw_study_cards(const gw_report *report, const gw_choose_study *choose, gw_card_study *out,
                         gw_error *err)
{
    gw_card_study study = { 0 };
    gw_status status = run_all(report, choose, &study, err);
    if (status == GW_OK)
        *out = study;
    else
        gw_card_study_free(&study);
    return status;
}

void gw_card_study_free(gw_card_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_card_study){ 0 };
}
