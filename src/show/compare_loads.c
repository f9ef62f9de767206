/* SPDX-License-Identifier: MIT */
/* The loads of a comparison on one screen: a column a kit, as few rows as the width allows. */
#include "show/handling.h"

#include "format/number.h"
#include "record/unit.h"

#include <string.h>

enum { TOE, RIM, CAMBER, ALONG, FIGURES };

static const char *const NAMES[FIGURES] = { "toe", "rim", "camber", "x" };

/* Figures of the first row of a load and of the second, as bits; the first layout whose table fits is taken.
 */
typedef struct gw_load_layout {
    unsigned row[2]; /* 0: no second row */
} gw_load_layout;

static const gw_load_layout LAYOUTS[] = {
    { { 1u << TOE | 1u << RIM | 1u << CAMBER | 1u << ALONG, 0 } },
    { { 1u << TOE | 1u << CAMBER | 1u << ALONG, 0 } },
    { { 1u << TOE | 1u << RIM, 1u << CAMBER | 1u << ALONG } },
};
enum { N_LAYOUTS = sizeof LAYOUTS / sizeof *LAYOUTS };

typedef struct gw_loads_page {
    const gw_handling_page *p;
    const gw_load_layout *layout;
    int width[FIGURES]; /* of the longest figure of its kind: they stand under each other */
    bool rim;           /* some wheel has one */
} gw_loads_page;

static bool is_tried(const gw_comparison *cmp, gw_axle axle, int load)
{
    for (int i = 0; i < cmp->deflect->n; i++)
        if (cmp->deflect->item[i].axle == axle && cmp->deflect->item[i].load == load) return true;
    return false;
}

static double rim_of(const gw_comparison *cmp, gw_axle axle)
{
    return cmp->c->corners[axle].wheel.rim_diameter;
}

static gw_number figure(const gw_comparison *cmp, const gw_deflection *item, int which)
{
    const gw_corner_result *r = &item->result;
    double rim = rim_of(cmp, item->axle);
    switch (which) {
    case TOE:
        return gw_signed(gw_unit_out(GW_UNIT_DEG, r->toe_change), 2);
    case RIM:
        return gw_signed(rim > 0.0 ? gw_unit_out(GW_UNIT_MM, gw_toe_at_rim(r->toe_change, rim)) : (double)NAN,
                         1);
    case CAMBER:
        return gw_signed(gw_unit_out(GW_UNIT_DEG, r->camber_change), 2);
    default:
        return gw_signed(gw_unit_out(GW_UNIT_MM, r->wheel_centre.x), 1);
    }
}

static void measure(gw_loads_page *page)
{
    const gw_comparison *cmp = page->p->cmp;
    for (int f = 0; f < FIGURES; f++) page->width[f] = (int)strlen(NAMES[f]);
    for (int i = 0; i < cmp->deflect->n; i++) {
        page->rim = page->rim || rim_of(cmp, cmp->deflect->item[i].axle) > 0.0;
        for (int f = 0; f < FIGURES && !cmp->deflect->item[i].failed; f++) {
            int w = (int)strlen(figure(cmp, &cmp->deflect->item[i], f).s);
            if (w > page->width[f]) page->width[f] = w;
        }
    }
}

/* What a row holds of one kit; of its head with item NULL. */
static void put_figures(const gw_loads_page *page, int row, const gw_deflection *item, gw_buf *out)
{
    int n = 0;
    for (int f = 0; f < FIGURES; f++) {
        if (!(page->layout->row[row] & 1u << f) || (f == RIM && !page->rim)) continue;
        gw_buf_fmt(out, "%s%*s", n++ ? " " : "", page->width[f],
                   item ? figure(page->p->cmp, item, f).s : NAMES[f]);
    }
}

static const gw_deflection *of_wheel(const gw_comparison *cmp, int kit, gw_axle axle, int load,
                                     gw_wheel_side wheel)
{
    for (int i = 0; i < cmp->deflect->n; i++) {
        const gw_deflection *d = &cmp->deflect->item[i];
        if (d->kit == kit && d->axle == axle && d->load == load && d->wheel == wheel) return d;
    }
    return NULL;
}

/* Where a kit fits the sides apart and the load tells both wheels, the right one is told, too. */
static bool tells_right(const gw_comparison *cmp, gw_axle axle, int load)
{
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (gw_compare_shows(cmp, k) && gw_kit_is_lopsided(cmp->c, k, axle) &&
            of_wheel(cmp, k, axle, load, GW_LEFT_WHEEL) && of_wheel(cmp, k, axle, load, GW_RIGHT_WHEEL))
            return true;
    return false;
}

/* Of a kit that is alike on both sides a load that is, too, tells the left wheel for both. */
static const gw_deflection *found(const gw_comparison *cmp, int kit, gw_axle axle, int load, bool right)
{
    const gw_deflection *other = right ? of_wheel(cmp, kit, axle, load, GW_RIGHT_WHEEL) : NULL;
    if (other) return other->failed ? NULL : other;
    return gw_deflect_find(cmp->deflect, kit, axle, load);
}

/* "hard stop, front"; with `side` " left" or " right". */
static void load_cell(const gw_comparison *cmp, gw_axle axle, int load, const char *side, gw_table *t)
{
    gw_buf text = { 0 };
    gw_buf_say(&text, "%s, %s%s", cmp->c->loads[load].name, gw_axle_name(axle), side);
    gw_table_cell_of(t, &text);
}

/* "toe, rim": in two rows, no head above can say what stands in which. */
static void names_cell(const gw_loads_page *page, int row, gw_table *t)
{
    gw_buf text = { 0 };
    for (int f = 0; f < FIGURES; f++)
        if ((page->layout->row[row] & 1u << f) && (f != RIM || page->rim))
            gw_buf_fmt(&text, "%s%s", text.n ? ", " : "", NAMES[f]);
    gw_table_cell_of(t, &text);
}

static void kit_cell(const gw_loads_page *page, int row, const gw_deflection *item, gw_table *t)
{
    gw_buf text = { 0 };
    if (item)
        put_figures(page, row, item, &text);
    else if (row == 0)
        gw_buf_add(&text, "failed");
    gw_table_cell_of(t, &text);
}

static void rows(const gw_loads_page *page, gw_axle axle, int load, bool right, gw_table *t)
{
    const gw_comparison *cmp = page->p->cmp;
    bool two = page->layout->row[1];
    const char *side = !tells_right(cmp, axle, load) ? "" : right ? " right" : " left";
    for (int r = 0; r <= two; r++) {
        if (r == 0) load_cell(cmp, axle, load, side, t);
        if (r == 1) gw_table_cell(t, "");
        if (two) names_cell(page, r, t);
        for (int k = 0; k < cmp->c->n_kits; k++)
            if (gw_compare_shows(cmp, k)) kit_cell(page, r, found(cmp, k, axle, load, right), t);
    }
}

static void kit_column(const gw_loads_page *page, int kit, gw_table *t)
{
    gw_buf head = { 0 };
    gw_buf_clean(&head, page->p->cmp->c->kits[kit].name);
    if (!page->layout->row[1]) {
        gw_buf_add(&head, "\n");
        put_figures(page, 0, NULL, &head);
    }
    gw_table_column_of(t, GW_RIGHT, &head);
}

static void fill(const gw_loads_page *page, gw_table *t)
{
    const gw_comparison *cmp = page->p->cmp;
    bool two = page->layout->row[1], rim = page->rim && page->layout->row[0] & 1u << RIM;
    gw_table_column(t, GW_LEFT,
                    two   ? "load, wheel"
                    : rim ? "load, wheel\ndeg; rim, x in mm"
                          : "load, wheel\ndeg; x in mm");
    if (two) gw_table_column(t, GW_LEFT, "deg, mm");
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (gw_compare_shows(cmp, k)) kit_column(page, k, t);
    for (int l = 0; l < cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int w = 0; is_tried(cmp, a, l) && w <= tells_right(cmp, a, l); w++)
                rows(page, a, l, w == 1, t);
}

void gw_compare_loads(const gw_handling_page *p)
{
    gw_loads_page page = { .p = p };
    gw_table t = { 0 };
    measure(&page);
    for (int i = 0; i < N_LAYOUTS; i++) {
        page.layout = &LAYOUTS[i];
        gw_table_free(&t);
        fill(&page, &t);
        if (gw_table_fits(&t, p->paper->width, 2)) break;
    }
    gw_paper_gap(p->paper);
    gw_paper_table(p->paper, &t, 2);
}
