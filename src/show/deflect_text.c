/* SPDX-License-Identifier: MIT */
#include "show/deflect.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "show/contributors.h"
#include "show/strength.h"
#include "show/words.h"

/* What one call prints with, so that the parts below take few arguments. */
typedef struct gw_deflect_page {
    const gw_case *c;
    const gw_deflect_study *study;
    int width;
    bool bold;
    gw_buf *out;
} gw_deflect_page;

static void heading(const gw_deflect_page *p, const gw_deflection *item)
{
    const gw_kit *kit = &p->c->kits[item->kit];
    gw_buf_fmt(p->out, "\n%s%s corner, kit ", p->bold ? "\033[1m" : "", gw_axle_name(item->axle));
    gw_buf_clean(p->out, kit->name);
    if (kit->label != kit->name) {
        gw_buf_add(p->out, ": ");
        gw_buf_clean(p->out, kit->label);
    }
    gw_buf_add(p->out, p->bold ? "\033[0m\n" : "\n");
    if (item->off_centre)
        gw_buf_fmt(p->out, "  its off-centre bushes give a static camber of %s deg, toe set again\n",
                   gw_signed(item->static_camber / GW_DEG, 2).s);
}

static void wheel_columns(gw_table *t)
{
    gw_table_column(t, GW_LEFT, "load");
    gw_table_column(t, GW_RIGHT, "travel\n\nmm");
    gw_table_column(t, GW_RIGHT, "toe\nchange\ndeg");
    gw_table_column(t, GW_RIGHT, "toe\n\ndeg");
    gw_table_column(t, GW_RIGHT, "camber\nchange\ndeg");
    gw_table_column(t, GW_RIGHT, "camber\n\ndeg");
    gw_table_column(t, GW_RIGHT, "caster\nchange\ndeg");
    gw_table_column(t, GW_RIGHT, "wheel\nfore-aft\nmm");
    gw_table_column(t, GW_RIGHT, "patch\nsideways\nmm");
    gw_table_column(t, GW_RIGHT, "spring\nforce\nN");
}

static void wheel_row(gw_table *t, const gw_case *c, const gw_deflection *item)
{
    const gw_corner_result *r = &item->result;
    gw_table_cell(t, c->loads[item->load].name);
    gw_table_cell(t, gw_signed(item->applied.travel / GW_MM, 1).s);
    gw_table_cell(t, gw_signed(r->toe_change / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(r->toe / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(r->camber_change / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(r->camber / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(r->caster_change / GW_DEG, 3).s);
    gw_table_cell(t, gw_signed(r->wheel_centre.x / GW_MM, 2).s);
    gw_table_cell(t, gw_signed(r->contact_patch.y / GW_MM, 2).s);
    gw_table_cell(t, gw_fixed(r->spring_force, 0).s);
    gw_table_end_row(t);
}

void gw_failed_line(const gw_case *c, const gw_deflection *item, bool kit, int width, gw_buf *out)
{
    gw_buf text = { 0 };
    gw_buf_clean(&text, kit ? c->kits[item->kit].name : c->loads[item->load].name);
    gw_buf_fmt(&text, ": not carried: %s", item->failed);
    gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
    if (text.failed) out->failed = true;
    gw_buf_free(&text);
}

/* Items [from, to) share kit and corner. */
static gw_status wheel_table(const gw_deflect_page *p, int from, int to, gw_error *err)
{
    gw_table table = { 0 };
    wheel_columns(&table);
    int rows = 0;
    for (int i = from; i < to; i++) {
        if (p->study->item[i].failed) continue;
        wheel_row(&table, p->c, &p->study->item[i]);
        rows++;
    }
    gw_status status = rows ? gw_table_print(&table, p->width, 2, p->bold, p->out, err) : GW_OK;
    gw_table_free(&table);
    for (int i = from; i < to; i++)
        if (p->study->item[i].failed) gw_failed_line(p->c, &p->study->item[i], false, p->width, p->out);
    return status;
}

static bool any_carried(const gw_deflect_page *p, int from, int to)
{
    for (int i = from; i < to; i++)
        if (!p->study->item[i].failed) return true;
    return false;
}

static void blame_line(const gw_deflect_page *p, const gw_deflection *item, gw_angle which)
{
    gw_contributor top[3];
    int n = gw_contributors(&p->c->corners[item->axle], &item->result, which, 3, top);
    gw_buf line = { 0 };
    gw_buf_clean(&line, p->c->loads[item->load].name);
    gw_buf_add(&line, which == GW_TOE ? ", toe: " : ", camber: ");
    if (n)
        gw_contributors_words(top, n, which, &line);
    else
        gw_buf_add(&line, "no bush moves it");
    gw_buf_paragraph(p->out, gw_buf_str(&line), p->width, 4);
    if (line.failed) p->out->failed = true;
    gw_buf_free(&line);
}

static void three(gw_table *t, const double v[3], double unit, int decimals)
{
    gw_table_cellf(t, "%s %s %s", gw_signed(v[0] / unit, decimals).s, gw_signed(v[1] / unit, decimals).s,
                   gw_signed(v[2] / unit, decimals).s);
}

static void share_row(gw_table *t, const char *name, double toe, double camber)
{
    gw_table_cell(t, name);
    gw_table_cell(t, "");
    gw_table_cell(t, "");
    gw_table_cell(t, gw_signed(toe / GW_DEG, 4).s);
    gw_table_cell(t, gw_signed(camber / GW_DEG, 4).s);
    gw_table_end_row(t);
}

/* What each joint gives way by, the force it carries, and what of toe and camber that makes. */
static gw_status push_table(const gw_deflect_page *p, const gw_deflection *item, gw_error *err)
{
    const gw_corner *corner = &p->c->corners[item->axle];
    const gw_corner_result *r = &item->result;
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "joint");
    gw_table_column(&table, GW_RIGHT, "deflection\ne1, e2, e3\nmm");
    gw_table_column(&table, GW_RIGHT, "force\ne1, e2, e3\nN");
    gw_table_column(&table, GW_RIGHT, "toe\nshare\ndeg");
    gw_table_column(&table, GW_RIGHT, "camber\nshare\ndeg");
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint_result *joint = &r->joints[j];
        gw_table_cell(&table, corner->joints[j].name);
        three(&table, joint->u, GW_MM, 3);
        three(&table, joint->f, 1.0, 0);
        gw_table_cell(&table, gw_signed(joint->toe_share / GW_DEG, 4).s);
        gw_table_cell(&table, gw_signed(joint->camber_share / GW_DEG, 4).s);
        gw_table_end_row(&table);
    }
    share_row(&table, "travel of the wheel", r->travel_toe, r->travel_camber);
    share_row(&table, "geometry (beyond linear)", r->geometry_toe, r->geometry_camber);
    share_row(&table, "together", r->toe_change, r->camber_change);
    gw_status status = gw_table_print(&table, p->width, 2, p->bold, p->out, err);
    gw_table_free(&table);
    return status;
}

/* How far each joint turns, and what it costs where the bush resists. */
static gw_status turn_table(const gw_deflect_page *p, const gw_deflection *item, gw_error *err)
{
    const gw_corner *corner = &p->c->corners[item->axle];
    gw_table table = { 0 };
    gw_table_column(&table, GW_LEFT, "joint");
    gw_table_column(&table, GW_RIGHT, "rotation\nabout e1, e2, e3\ndeg");
    gw_table_column(&table, GW_RIGHT, "moment\nabout e1, e2, e3\nN m");
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint_result *joint = &item->result.joints[j];
        gw_table_cell(&table, corner->joints[j].name);
        three(&table, joint->theta, GW_DEG, 2);
        three(&table, joint->m, 1.0, 1);
        gw_table_end_row(&table);
    }
    gw_status status = gw_table_print(&table, p->width, 2, p->bold, p->out, err);
    gw_table_free(&table);
    return status;
}

static gw_status joint_tables(const gw_deflect_page *p, const gw_deflection *item, gw_error *err)
{
    gw_buf_add(p->out, "\n  ");
    gw_buf_clean(p->out, p->c->loads[item->load].name);
    gw_buf_add(p->out, ", joint by joint, in the frame of each bush:\n");
    gw_status status = push_table(p, item, err);
    gw_buf_add(p->out, "\n");
    if (status == GW_OK) status = turn_table(p, item, err);
    return status == GW_OK ? gw_strength_text(p->c, item, p->width, p->bold, p->out, err) : status;
}

static int end_of_group(const gw_deflect_study *study, int from)
{
    int to = from + 1;
    while (to < study->n && study->item[to].kit == study->item[from].kit &&
           study->item[to].axle == study->item[from].axle)
        to++;
    return to;
}

static gw_status group(const gw_deflect_page *p, int from, int to, bool all, gw_error *err)
{
    heading(p, &p->study->item[from]);
    gw_status status = wheel_table(p, from, to, err);
    if (!all && any_carried(p, from, to))
        gw_buf_add(p->out, "  which joints let it (share of all contributions by size):\n");
    for (int i = from; i < to && status == GW_OK; i++) {
        const gw_deflection *item = &p->study->item[i];
        if (item->failed) continue;
        if (all) {
            status = joint_tables(p, item, err);
        } else {
            blame_line(p, item, GW_TOE);
            blame_line(p, item, GW_CAMBER);
        }
    }
    return status;
}

gw_status gw_deflect_text(const gw_case *c, const gw_deflect_study *study, const gw_strength_study *strength,
                          bool all, int width, bool bold, gw_buf *out, gw_error *err)
{
    const gw_deflect_page page = { c, study, width, bold, out };
    gw_status status = GW_OK;
    gw_buf_clean(out, c->title);
    gw_buf_add(out, "\n");
    gw_buf_paragraph(
        out,
        "Changes are from the car standing still (static load, wheel set to its static camber and "
        "toe). Positive are: bump, toe-in, camber with the top outboard, caster with the top "
        "rearward, the wheel forward, the contact patch outward.",
        width, 0);
    for (int i = 0; i < study->n && status == GW_OK;) {
        int to = end_of_group(study, i);
        status = group(&page, i, to, all, err);
        i = to;
    }
    gw_overloads_text(c, strength, width, bold, out);
    gw_buf_add(out, "\n");
    gw_buf_paragraph(out, gw_words_text(GW_WORDS_STATIC_ONLY), width, 0);
    gw_buf_paragraph(out, gw_words_text(GW_WORDS_SAFETY), width, 0);
    gw_buf_paragraph(out, gw_words_text(GW_WORDS_DEFER), width, 0);
    return status == GW_OK ? gw_buf_status(out, err) : status;
}
