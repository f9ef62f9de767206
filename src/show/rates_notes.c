/* SPDX-License-Identifier: MIT */
/* What kind of bush a row is, and what the six rates do not say of it. */
#include "show/rates.h"

#include "format/number.h"

static const char BEARING_LEFT_OUT[] =
    "left out are housing, pin, rings and bracket, which make a fitted bearing several times softer: give "
    "its measured rates, or bracket_N_per_mm at the joint, where they are known";

static void contact_words(const gw_rates_row *row, gw_buf *out)
{
    const gw_bearing *bearing = &row->bush->bearing;
    const gw_bearing_stiffness s = row->contact;
    if (!row->has_contact) return;
    gw_buf_fmt(out,
               "%s from the contact of ball and %s at a working load of %s N (15 MPa on ball diameter "
               "times width, common practice)",
               bearing->radial > 0.0 ? "axial rate" : "rates",
               bearing->liner == GW_LINER_PTFE ? "PTFE-fabric liner" : "cup (Hertz)",
               gw_significant(s.load, 3).s);
    if (bearing->liner == GW_LINER_STEEL && !s.hertz_holds)
        gw_buf_add(out, ", where the cup wraps round the ball further than Hertz allows, so an upper guide");
    gw_buf_fmt(out, "; %s", BEARING_LEFT_OUT);
}

static void bearing_words(const gw_rates_row *row, gw_buf *out)
{
    const gw_bearing *bearing = &row->bush->bearing;
    bool all_given = bearing->radial > 0.0 && (bearing->axial > 0.0 || bearing->floats);
    gw_buf_add(out, "spherical plain bearing; ");
    if (all_given)
        gw_buf_add(out, "radial and axial rate as given in the case");
    else
        contact_words(row, out);
    gw_buf_add(out, ". It turns freely up to its tilt limit");
}

static void kind_words(const gw_rates_row *row, gw_buf *out)
{
    switch (row->bush->type) {
    case GW_BUSH_BONDED:
        gw_buf_add(out, "rubber bonded to both sleeves");
        break;
    case GW_BUSH_UNBONDED:
        gw_buf_add(out, "held in the outer sleeve, turning and sliding on the inner one; the axial rate is "
                        "that of flanges as thick as the wall, an estimate within a factor of 1.5");
        break;
    case GW_BUSH_BEARING:
        bearing_words(row, out);
        break;
    case GW_BUSH_BALL_JOINT:
        gw_buf_add(out, "ball joint; rates as given in the case, turning freely");
        break;
    case GW_BUSH_RIGID:
        gw_buf_add(out, "welded: as near to it as a joint can be");
        break;
    case GW_BUSH_MEASURED:
        gw_buf_add(out, "measured: rates are the slopes of its curves at zero, or as given");
        break;
    case GW_BUSH_RATES:
        gw_buf_add(out, "rates as given in the case, nothing calculated");
        break;
    }
}

static void put_stop(const gw_rates_row *row, const char *what, const gw_stop *stop, gw_paper *paper)
{
    if (stop->rate > 0.0)
        gw_paper_say(paper, 2, "%s: %s after %s mm, %s N/mm more", row->bush->name, what,
                     gw_significant(gw_unit_out(GW_UNIT_MM, stop->gap), 3).s,
                     gw_significant(gw_unit_out(GW_UNIT_N_PER_MM, stop->rate), 3).s);
}

static void put_figure(const gw_rates_row *row, const char *before, gw_unit unit, double value,
                       const char *after, gw_paper *paper)
{
    if (value > 0.0)
        gw_paper_say(paper, 2, "%s: %s%s%s", row->bush->name, before,
                     gw_significant(gw_unit_out(unit, value), 3).s, after);
}

static void put_kind(const gw_rates_row *row, gw_paper *paper)
{
    gw_buf text = { 0 };
    kind_words(row, &text);
    gw_paper_say(paper, 2, "%s: %s", row->bush->name, gw_buf_str(&text));
    gw_buf_drop(&text, paper->out);
}

void gw_rates_notes(const gw_rates_row *row, bool kind, gw_paper *paper)
{
    const gw_bush_law *law = &row->report.law;
    if (kind) put_kind(row, paper);
    put_stop(row, "stop", &law->stop, paper);
    put_stop(row, "void closes along e1", &law->void_stop, paper);
    put_figure(row, "play of ", GW_UNIT_MM, law->clearance, " mm each side of centre", paper);
    put_figure(row, "turns against ", GW_UNIT_NM, law->breakaway, " N m of friction without load", paper);
    put_figure(row, "stiffens with travel: radial force k r (1 + s r^2), s = ", GW_UNIT_PER_MM2,
               law->stiffening, " per mm2", paper);
}

void gw_rates_kinds(const gw_rates_row *rows, int n, gw_buf *out)
{
    bool given = false, contact = false, friction = false;
    for (int i = 0; i < n; i++) {
        gw_bush_type type = rows[i].bush->type;
        given = given || type == GW_BUSH_RATES || type == GW_BUSH_BALL_JOINT;
        contact = contact || (type == GW_BUSH_BEARING && rows[i].bush->bearing.radial <= 0.0);
        friction = friction || rows[i].report.law.breakaway > 0.0;
    }
    if (given) gw_buf_add(out, " Types rates and ball_joint: as given in the case.");
    if (contact) gw_buf_fmt(out, " Bearings: the contact of ball and liner alone; %s.", BEARING_LEFT_OUT);
    if (friction) gw_buf_add(out, " Friction is given, but angles and rates know none of it: see travel.");
}
