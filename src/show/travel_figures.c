/* SPDX-License-Identifier: MIT */
#include "show/travel_figures.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"

#include <math.h>

static const double FAR = 100.0; /* an instant centre farther away is as good as none [m] */

static void figure(gw_table *t, const char *what, const char *value, const char *unit, const char *words)
{
    gw_table_cell(t, what);
    gw_table_cell(t, value);
    gw_table_cell(t, unit);
    gw_table_cell(t, words);
    gw_table_end_row(t);
}

static const char *toe_words(double rate)
{
    if (fabs(rate) < 0.05 * GW_DEG) return "next to none";
    return rate > 0.0 ? "toe-in in bump" : "toe-out in bump";
}

static void wheel_figures(gw_table *t, const gw_travel_item *item)
{
    const gw_travel_point *p = &item->rest;
    figure(t, "bump steer", gw_signed(p->rates.toe / GW_DEG, 2).s, "deg/m", toe_words(p->rates.toe));
    figure(t, "camber", gw_signed(p->rates.camber / GW_DEG, 2).s, "deg/m",
           p->rates.camber > 0.0 ? "top outboard in bump" : "top inboard in bump");
    figure(t, "roll centre", gw_fixed(p->roll_centre / GW_MM, 1).s, "mm", "above the ground, on this path");
    if (item->load < 0)
        figure(t, "roll centre, load held", gw_fixed(item->roll_centre_held / GW_MM, 1).s, "mm",
               "without the give of bushes to more load");
}

static void swing_arm(gw_table *t, const gw_travel_point *p)
{
    double length = gw_side_view_centre(&p->rates).across;
    if (!(fabs(length) < FAR))
        figure(t, "side-view swing arm", "none", "", "the upright does not turn in side view");
    else
        figure(t, "side-view swing arm", gw_fixed(fabs(length) / GW_MM, 0).s, "mm",
               length > 0.0 ? "its centre ahead of the wheel" : "its centre behind the wheel");
    figure(t, "slope at the contact patch", gw_signed(atan(p->rates.patch_forward) / GW_DEG, 2).s, "deg",
           "forward in bump is positive; what brakes feel");
    figure(t, "slope at the wheel centre", gw_signed(atan(p->rates.hub_forward) / GW_DEG, 2).s, "deg",
           "what drive through a half-shaft feels");
}

static void anti_figures(gw_table *t, const gw_travel_item *item)
{
    bool front = item->axle == GW_FRONT;
    figure(t, front ? "anti-dive, braking" : "anti-lift, braking", gw_signed(100.0 * item->anti_brake, 1).s,
           "%", "of the load transfer; outboard brakes");
    if (isnan(item->anti_drive)) return;
    figure(t, front ? "anti-lift, driving" : "anti-squat, driving", gw_signed(100.0 * item->anti_drive, 1).s,
           "%",
           isnan(item->drive_share)  ? "if this axle alone drives"
           : item->drive_share < 1.0 ? "of the load transfer; both axles drive alike"
                                     : "of the load transfer; half-shafts");
}

static void rate_figures(gw_table *t, const gw_travel_item *item)
{
    const gw_travel_point *p = &item->rest;
    figure(t, "wheel rate", gw_fixed(p->rates.wheel_rate / GW_N_PER_MM, 2).s, "N/mm", "");
    if (item->load >= 0) return;
    if (isfinite(p->parasitic)) {
        gw_table_cell(t, "of it, bushes being turned");
        gw_table_cell(t, gw_fixed(p->parasitic / GW_N_PER_MM, 2).s);
        gw_table_cell(t, "N/mm");
        gw_table_cellf(t, "%s %%: the parasitic rate",
                       gw_fixed(100.0 * p->parasitic / p->rates.wheel_rate, 1).s);
        gw_table_end_row(t);
    } else {
        figure(t, "of it, bushes being turned", GW_NO_NUMBER, "",
               item->no_parasitic ? "the corner does not stand without it" : "");
    }
}

gw_status gw_travel_rest_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err)
{
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "at ride height");
    gw_table_column(&table, GW_RIGHT, "");
    gw_table_column(&table, GW_LEFT, "");
    gw_table_column(&table, GW_LEFT, "");
    wheel_figures(&table, item);
    swing_arm(&table, &item->rest);
    if (item->has_anti) anti_figures(&table, item);
    rate_figures(&table, item);
    gw_buf_add(p->out, "\n");
    gw_status status = gw_table_print(&table, p->width, 2, p->bold, p->out, err);
    gw_table_free(&table);
    return status;
}

static void verdict_cell(gw_table *t, const gw_travel_bearing *b)
{
    bool up = isfinite(b->binds_up), down = isfinite(b->binds_dn);
    if (b->holds)
        gw_table_cell(t, "free");
    else if (up && down)
        gw_table_cellf(t, "BINDS at %s and at %s mm", gw_signed(b->binds_dn / GW_MM, 1).s,
                       gw_signed(b->binds_up / GW_MM, 1).s);
    else
        gw_table_cellf(t, "BINDS at %s mm", gw_signed((up ? b->binds_up : b->binds_dn) / GW_MM, 1).s);
}

gw_status gw_travel_tilt_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err)
{
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "tilt of joints with a limit");
    gw_table_column(&table, GW_RIGHT, "largest\ndeg");
    gw_table_column(&table, GW_RIGHT, "at travel\nmm");
    gw_table_column(&table, GW_RIGHT, "limit\ndeg");
    gw_table_column(&table, GW_RIGHT, "margin\ndeg");
    gw_table_column(&table, GW_LEFT, "");
    for (int i = 0; i < item->n_bearings; i++) {
        const gw_travel_bearing *b = &item->bearing[i];
        gw_table_cell(&table, p->c->corners[item->axle].joints[b->joint].name);
        gw_table_cell(&table, gw_fixed(b->tilt / GW_DEG, 2).s);
        gw_table_cell(&table, gw_signed(b->at / GW_MM, 0).s);
        gw_table_cell(&table, gw_fixed(b->limit / GW_DEG, 1).s);
        gw_table_cell(&table, gw_signed((b->limit - b->tilt) / GW_DEG, 2).s);
        verdict_cell(&table, b);
        gw_table_end_row(&table);
    }
    gw_buf_add(p->out, "\n");
    gw_status status = gw_table_print(&table, p->width, 2, p->bold, p->out, err);
    gw_table_free(&table);
    return status;
}

static void clamp_words(const gw_travel_page *p, const gw_travel_clamp *clamp)
{
    gw_buf line = { 0 };
    gw_buf_fmt(
        &line,
        "Tightened there, these bushes carry %s N of the body at ride height, so that it stands %s mm %s; "
        "the wheel rate there is %s N/mm",
        gw_fixed(fabs(clamp->lift), 0).s, gw_fixed(fabs(clamp->ride_height) / GW_MM, 1).s,
        clamp->ride_height >= 0.0 ? "higher" : "lower", gw_fixed(clamp->rest_rate / GW_N_PER_MM, 2).s);
    if (isfinite(clamp->rest_parasitic))
        gw_buf_fmt(&line, ", of which %s by bushes being turned",
                   gw_fixed(clamp->rest_parasitic / GW_N_PER_MM, 2).s);
    gw_buf_add(&line, ". Rubber bushes are tightened with the car standing on its wheels (common practice).");
    gw_buf_paragraph(p->out, gw_buf_str(&line), p->width, 2);
    if (line.failed) p->out->failed = true;
    gw_buf_free(&line);
}

gw_status gw_travel_clamp_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err)
{
    const gw_travel_clamp *clamp = &item->clamp;
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "tightened at another height");
    gw_table_column(&table, GW_RIGHT, "at travel\nmm");
    gw_table_column(&table, GW_RIGHT, "twist at ride height\ndeg");
    gw_table_column(&table, GW_RIGHT, "torque\nN m");
    for (int i = 0; i < clamp->n; i++) {
        gw_table_cell(&table, p->c->corners[item->axle].joints[clamp->joint[i]].name);
        gw_table_cell(&table, gw_signed(clamp->clamped_at[i] / GW_MM, 0).s);
        gw_table_cell(&table, gw_signed(clamp->twist[i] / GW_DEG, 2).s);
        gw_table_cell(&table, gw_signed(clamp->torque[i], 2).s);
        gw_table_end_row(&table);
    }
    gw_buf_add(p->out, "\n");
    gw_status status = gw_table_print(&table, p->width, 2, p->bold, p->out, err);
    gw_table_free(&table);
    clamp_words(p, clamp);
    return status;
}
