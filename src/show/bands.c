/* SPDX-License-Identifier: MIT */
#include "show/bands.h"

/* What is linear in normal numbers is normal: its mean and its median are its value. */
static void six(const gw_half_band *b, double *x)
{
    const double all[6] = { b->value,           b->value, 0.5 * b->half,
                            b->value - b->half, b->value, b->value + b->half };
    for (int i = 0; i < 6; i++) x[i] = all[i];
}

#define GW_FILLS(name, type, member)                                                                         \
    static void name(const gw_place *p, double *x)                                                           \
    {                                                                                                        \
        six(&GW_IT(p, type)->member, x);                                                                     \
    }
GW_FILLS(toe, gw_bands_item, own[GW_SPREAD_TOE])
GW_FILLS(camber, gw_bands_item, own[GW_SPREAD_CAMBER])
GW_FILLS(fore_aft, gw_bands_item, own[GW_SPREAD_FORE_AFT])
GW_FILLS(toe_apart, gw_bands_item, difference[GW_SPREAD_TOE])
GW_FILLS(camber_apart, gw_bands_item, difference[GW_SPREAD_CAMBER])
GW_FILLS(fore_aft_apart, gw_bands_item, difference[GW_SPREAD_FORE_AFT])
GW_FILLS(unsteadiness, gw_bands_kit, unsteadiness)
GW_FILLS(unsteadiness_apart, gw_bands_kit, difference)

static GW_RECORD(DIFFERENCE_RECORD, gw_bands_item,
    GW_FILLED("toe_change", DEG, GW_BAND, toe_apart, GW_MAY_LACK, "the toe change less that of the first kit shown, in the same car"),
    GW_FILLED("camber_change", DEG, GW_BAND, camber_apart, GW_MAY_LACK, "the same of the camber change"),
    GW_FILLED("wheel_fore_aft", MM, GW_BAND, fore_aft_apart, GW_MAY_LACK, "the same of the wheel centre's movement along x"),
    GW_MEMBER("too_close_to_call", PLAIN, gw_bands_item, close, 0, "whether the toe changes less in size than with the first kit shown: the band of their difference or of their sum includes zero"));

GW_RECORD(GW_BAND_FIGURES_RECORD, gw_bands_item,
    GW_FILLED("toe_change", DEG, GW_BAND, toe, GW_MAY_LACK, "since standing still"),
    GW_FILLED("camber_change", DEG, GW_BAND, camber, GW_MAY_LACK, "since standing still"),
    GW_FILLED("wheel_fore_aft", MM, GW_BAND, fore_aft, GW_MAY_LACK, "x of the wheel centre's movement"),
    GW_HERE_IF("difference", gw_bands_item, has_difference, &DIFFERENCE_RECORD, 0, "less the first kit shown, in the same car; not of that kit"));

static GW_RECORD(DRIVEN_RECORD, gw_bands_item,
    GW_WORD("wheel", gw_bands_item, side, GW_SIDE_NAMES, 0, "of a manoeuvre"));
static GW_RECORD(SIDED_RECORD, gw_bands_item,
    GW_WORD("side", gw_bands_item, wheel, GW_WHEEL_NAMES, 0, "which wheel of the axle, where both are given"));

static GW_RECORD(ITEM_RECORD, gw_bands_item,
    GW_KIT("kit", gw_bands_item, kit, 0, "name of the kit"),
    GW_WORD("corner", gw_bands_item, axle, GW_AXLE_NAMES, 0, "the axle"),
    GW_LOADED("load", gw_bands_item, load, 0, "name of the load"),
    GW_PART_IF(gw_bands_item, sided, &SIDED_RECORD),
    GW_PART_IF(gw_bands_item, manoeuvre, &DRIVEN_RECORD),
    GW_PART_SAME(&GW_BAND_FIGURES_RECORD));

static GW_RECORD(APART_RECORD, gw_bands_kit,
    GW_FILLED("unsteadiness", DEG, GW_BAND, unsteadiness_apart, GW_MAY_LACK, "less that of the first kit shown, in the same car"),
    GW_MEMBER("too_close_to_call", PLAIN, gw_bands_kit, close, 0, "which of the two is steadier: the band of the difference includes zero"));

static GW_RECORD(KIT_RECORD, gw_bands_kit,
    GW_KIT("kit", gw_bands_kit, kit, 0, "name of the kit"),
    GW_FILLED("unsteadiness", DEG, GW_BAND, unsteadiness, GW_MAY_LACK, "root mean square of all its toe changes"),
    GW_HERE_IF("difference", gw_bands_kit, has_difference, &APART_RECORD, 0, "less the first kit shown, in the same car; not of that kit"));

GW_READS(const char *, method, gw_bands_study,
         "slopes at the case as written; draws, which know curvature too: giveway spread")

GW_RECORD(GW_BANDS_RECORD, gw_bands_study,
    GW_SAID("method", method, 0, "where the bands come from"),
    GW_MEMBER("uncertain_figures", PLAIN, gw_bands_study, n_figures, 0, "figures of the case that are uncertain"),
    GW_MEMBER("figures_that_matter", PLAIN, gw_bands_study, n_needed, 0, "of these the fewest that make 80 % of the variance of all toe changes together"),
    GW_ROWS("results", gw_bands_study, n, item, &ITEM_RECORD, 0, "by kit, corner and load; each band holds 95 of 100"),
    GW_ROWS("kits", gw_bands_study, n_kits, kit, &KIT_RECORD, 0, "all toe changes of a kit together"));

const gw_bands_item *gw_band_of(const gw_bands_study *bands, const gw_deflection *item)
{
    return bands && item ? gw_bands_find(bands, item->kit, item->axle, item->load, item->wheel) : NULL;
}

bool gw_band_is_close(const gw_bands_study *bands, const gw_deflection *item)
{
    const gw_bands_item *band = gw_band_of(bands, item);
    return band && band->has_difference && band->close;
}

bool gw_band_may_be_same(const gw_bands_study *bands, const gw_deflection *item)
{
    const gw_bands_item *band = gw_band_of(bands, item);
    return band && band->has_difference && gw_is_close(&band->difference[GW_SPREAD_TOE]);
}

/* "rubber and poly" */
static void pair(const gw_case *c, int a, int b, gw_buf *out)
{
    gw_buf_say(out, "%s and %s", c->kits[a].name, c->kits[b].name);
}

/* Pairs whose order the bands leave open, every pair once. */
static int say_pairs(const gw_case *c, const gw_bands_study *s, gw_buf *out)
{
    int n = 0;
    for (int i = 0; i < s->n_kits; i++)
        for (int j = i + 1; j < s->n_kits; j++) {
            gw_half_band between = gw_bands_between_kits(s, &s->kit[i], &s->kit[j]);
            if (!gw_is_close(&between)) continue;
            gw_buf_add(out, n++ ? ", " : "Too close to call which is steadier over all loads: ");
            pair(c, s->kit[i].kit, s->kit[j].kit, out);
        }
    if (n) gw_buf_add(out, ". ");
    return n;
}

void gw_bands_words(const gw_case *c, const gw_bands_study *s, gw_paper *paper)
{
    gw_buf text = { 0 };
    if (s->n_figures == 0) return;
    gw_buf_fmt(
        &text,
        "How sure: %d figures of the car are not known exactly%s; %d of them make 80 %% of the band on toe. ",
        s->n_figures, c->uncertain.given ? "" : " (common practice)", s->n_needed);
    if (!say_pairs(c, s, &text) && s->n_kits > 1)
        gw_buf_add(&text, "Over all loads the kits keep their order in 95 of 100 such cars. ");
    gw_buf_add(&text, "Bands: slopes at the case as written; giveway spread draws such cars and tells what "
                      "to measure next.");
    gw_paper_say_of(paper, 2, &text);
}
