/* SPDX-License-Identifier: MIT */
/* ride --explain: what is in the model, what each unknown does to the figures, what is left out. */
#include "format/number.h"
#include "show/ride.h"
#include "show/ride_words.h"

static const char *const INSIDE[] = {
    ("Parts: body (up and down, fore and aft), wheel with hub, every arm and link as a stiff part with its "
     "weight at its joints, every bush in six directions, spring, damper behind its top mount, tyre."),
    ("Rubber: stiffer and lossier with frequency, softer with movement (Kraus); each bush at the movement "
     "that it makes on this road, the sine of equal power."),
    ("Friction: joints and damper as dashpots of the same power lost (statistical linearisation), and the "
     "jumps that this leaves, whenever the wheel turns round, as a force of their own: the crackle."),
    ("Tyre: spring and damping, slip with relaxation, and where the case gives tyre_mass_kg the belt on its "
     "sidewalls. Without it what is heard comes out too low, and its difference mostly too high."),
    "Road: ISO 8608, averaged over the contact length, pushing up and by its slope back.",
    ("Felt (harshness): force into the body, 20 to 200 Hz, all attachments together. Heard: the same "
     "weighted by A, 40 to 315 Hz."),
};

static const char *const LEFT_OUT[] = {
    ("Air, wind, engine and every other path into the cabin; how the body passes each place and frequency "
     "on. No share of them could be found in print, so no loudness is claimed."),
    ("Bending of arms, the body's own modes, rattle of play, squeal, a grip that fades as a joint starts to "
     "slip."),
    "Wet, cold and worn parts: rubber is that of room temperature.",
};

static void list(gw_paper *paper, const char *head, const char *const *text, size_t n)
{
    gw_paper_heading(paper, "%s", head);
    for (size_t i = 0; i < n; i++) gw_paper_say(paper, 2, "%s", text[i]);
}

static bool is_shown(const gw_ride_item *item, gw_axle axle)
{
    return item->axle == axle && item->kit > 0;
}

static void head_of(const gw_case *c, const gw_ride_study *study, gw_axle axle, bool heard, gw_table *t)
{
    gw_table_column(t, GW_LEFT, heard ? "heard, dB" : "felt, dB");
    gw_table_column(t, GW_LEFT, "taken");
    for (int i = 0; i < study->n && t->columns < GW_TABLE_COLUMNS; i++) {
        gw_buf name = { 0 };
        if (!is_shown(&study->item[i], axle)) continue;
        gw_buf_clean(&name, c->kits[study->item[i].kit].name);
        gw_table_column_of(t, GW_RIGHT, &name);
    }
}

static void unknown_row(const gw_ride_study *study, gw_axle axle, bool heard, int unknown, gw_table *t)
{
    gw_table_cells(t, gw_ride_unknown_name(unknown), gw_ride_unknown_limits(unknown));
    for (int i = 0, columns = 2; i < study->n && columns < GW_TABLE_COLUMNS; i++) {
        const gw_ride_difference *d = &study->item[i].difference;
        if (!is_shown(&study->item[i], axle)) continue;
        gw_table_cell(t, gw_signed(heard ? d->heard_effect[unknown] : d->felt_effect[unknown], 1).s);
        columns++;
    }
}

static bool has_kits(const gw_ride_study *study, gw_axle axle)
{
    for (int i = 0; i < study->n; i++)
        if (is_shown(&study->item[i], axle)) return true;
    return false;
}

static void corner(const gw_case *c, const gw_ride_study *study, gw_axle axle, gw_paper *paper)
{
    if (!has_kits(study, axle)) return;
    gw_paper_heading(paper, "What each unknown does to the figures, %s corner", gw_axle_name(axle));
    for (int heard = 0; heard < 2; heard++) {
        gw_table t = { 0 };
        if (heard) gw_paper_gap(paper);
        head_of(c, study, axle, heard, &t);
        for (int u = 0; u < GW_UNKNOWNS; u++) unknown_row(study, axle, heard, u, &t);
        gw_paper_table(paper, &t, 2);
    }
}

void gw_ride_explain(const gw_case *c, const gw_ride_study *study, gw_paper *paper)
{
    list(paper, "What is in the model", INSIDE, sizeof INSIDE / sizeof *INSIDE);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) corner(c, study, a, paper);
    gw_paper_say(
        paper, 2,
        "What the upper end of each adds to a kit's decibels, the others in their middle; the lower end "
        "takes it away. Kit and first kit are taken in the same state. Eight states of all seven together "
        "make the range (Plackett and Burman, Biometrika 33 (1946)).");
    list(paper, "What is left out", LEFT_OUT, sizeof LEFT_OUT / sizeof *LEFT_OUT);
}
