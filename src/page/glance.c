/* SPDX-License-Identifier: MIT */
/* The kits in one table. */
#include "page/page.h"

#include "giveway/cost.h"

/* A column of angles, front / rear: how far the wheels turn or lean under a load. */
typedef struct column {
    int load;
    bool camber;
} column;

enum { MAX_COLUMNS = 2 };

static int columns_of(const gw_page *p, column *out)
{
    int n = 0;
    if (p->brake_load >= 0) out[n++] = (column){ p->brake_load, false };
    if (p->corner_load >= 0) out[n++] = (column){ p->corner_load, true };
    if (!n) out[n++] = (column){ p->load, false };
    return n;
}

static bool has_total(const gw_page *p)
{
    return p->c->shop.has_labour || p->c->shop.has_tax;
}

static void head(const gw_page *p, const column *col, int n)
{
    static const gw_words KIT[] = { GW_WORDS_PAGE_GLANCE_KIT };
    const gw_words rest[] = { GW_WORDS_PAGE_GLANCE_HARSH, GW_WORDS_PAGE_GLANCE_NOISE,
                              GW_WORDS_PAGE_GLANCE_PARTS, GW_WORDS_PAGE_GLANCE_FIT,
                              p->c->shop.has_tax ? GW_WORDS_PAGE_GLANCE_TAX : GW_WORDS_PAGE_GLANCE_TOTAL };
    const int first = p->r->ride.n ? 0 : 2;
    gw_buf_add(p->out, "<thead><tr>");
    gw_page_heads(p, KIT, 1);
    for (int i = 0; i < n; i++) {
        gw_buf_add(p->out, "<th scope=\"col\">");
        GW_SAY_ID(p->out, col[i].camber ? GW_WORDS_PAGE_GLANCE_CAMBER : GW_WORDS_PAGE_GLANCE_TOE,
                  { "load", gw_page_load_said(p, col[i].load) });
        gw_buf_add(p->out, "</th>");
    }
    gw_page_heads(p, rest + first, (has_total(p) ? 5 : 4) - first);
    gw_buf_add(p->out, "</tr></thead>\n");
}

/* What a program that reads the page finds a figure by: kit, axle, load and the key of the result. */
static void figure_begin(const gw_page *p, int kit, gw_axle axle, int load, const char *key)
{
    gw_buf_fmt(p->out, "<span data-of-kit=\"%d\" data-of-axle=\"%d\"", kit, (int)axle);
    if (load >= 0) gw_buf_fmt(p->out, " data-of-load=\"%d\"", load);
    gw_buf_fmt(p->out, " data-key=\"%s\">", key);
}

static void angle_cell(const gw_page *p, const column *col, int kit)
{
    bool first = true;
    gw_buf_add(p->out, "<td>");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_deflection *item = gw_page_find(p, kit, a, col->load);
        if (!item) continue;
        if (!first) gw_buf_add(p->out, " / ");
        figure_begin(p, kit, a, col->load, col->camber ? "camber_to_road_deg" : "toe_change_deg");
        gw_page_angle(p->out, col->camber ? item->camber_to_road : item->result.toe_change, true);
        gw_buf_add(p->out, "</span>");
        first = false;
    }
    gw_buf_add(p->out, "</td>");
}

static void decibel_cell(const gw_page *p, int kit, bool noise)
{
    bool first = true;
    gw_buf_add(p->out, "<td>");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_ride_item *item = gw_ride_find(&p->r->ride, kit, a);
        if (!item) continue;
        if (!first) gw_buf_add(p->out, " / ");
        figure_begin(p, kit, a, -1, noise ? "road_noise_dB" : "harshness_dB");
        gw_html_figure(p->out, gw_signed(noise ? item->difference.noise : item->difference.harshness, 1), "");
        gw_buf_add(p->out, "</span>");
        first = false;
    }
    gw_buf_add(p->out, "\xC2\xA0"
                       "dB</td>");
}

/* A kit that changes nothing costs nothing; what has no figure at all costs nobody knows what. */
static void cost_cell(const gw_page *p, int parts, bool known, const char *sum)
{
    gw_html_put(p->out, "<td>{}</td>", !parts ? GW_TOLD(PAGE_NOTHING) : known ? sum : GW_TOLD(PAGE_UNKNOWN));
}

static void cost_cells(const gw_page *p, int kit)
{
    gw_car_cost cost = gw_car_cost_of(p->c, kit);
    gw_cost_sum price = gw_cost_price(&cost), time = gw_cost_time(&cost), total = gw_cost_total(&cost);
    gw_buf minutes = { 0 };
    gw_page_minutes(&minutes, time.value);
    if (time.more) gw_buf_add(&minutes, "+");
    cost_cell(p, cost.parts, price.known, gw_page_money_said(p, price.value, price.more));
    cost_cell(p, cost.parts, time.known, gw_page_kept(p, &minutes));
    if (has_total(p)) cost_cell(p, cost.parts, total.known, gw_page_money_said(p, total.value, total.more));
}

static void row(const gw_page *p, const column *col, int n, int kit)
{
    gw_buf_add(p->out, "<tr><th scope=\"row\">");
    gw_page_swatch(p, kit);
    gw_html_name(p->out, gw_page_kit(p, kit));
    gw_buf_add(p->out, "</th>");
    for (int i = 0; i < n; i++) angle_cell(p, &col[i], kit);
    if (p->r->ride.n) {
        decibel_cell(p, kit, false);
        decibel_cell(p, kit, true);
    }
    cost_cells(p, kit);
    gw_buf_add(p->out, "</tr>\n");
}

/* A sum that some parts are missing from carries a plus sign, and this says so. */
static bool any_incomplete(const gw_page *p)
{
    for (int k = 0; k < p->c->n_kits; k++) {
        gw_car_cost cost = gw_car_cost_of(p->c, k);
        bool more = gw_cost_price(&cost).more || gw_cost_time(&cost).more || gw_cost_total(&cost).more;
        if (gw_page_has_kit(p, k) && more) return true;
    }
    return false;
}

void gw_page_glance(const gw_page *p)
{
    column col[MAX_COLUMNS] = { 0 };
    int n = columns_of(p, col);
    gw_page_section_begin(p, "glance", NULL, GW_WORDS_PAGE_GLANCE);
    gw_buf_add(p->out, "<div class=\"wide\"><table class=\"glance\">\n");
    head(p, col, n);
    gw_buf_add(p->out, "<tbody>\n");
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) row(p, col, n, k);
    gw_buf_add(p->out, "</tbody></table></div>\n<p class=\"note\">");
    GW_SAY(p->out, PAGE_GLANCE_NOTE, { "kit", gw_page_kit(p, 0) });
    gw_buf_add(p->out, " ");
    GW_SAY(p->out, PAGE_COST_NOTE, { "kit", gw_page_kit(p, 0) });
    if (any_incomplete(p)) {
        gw_buf_add(p->out, " ");
        GW_TELL(p->out, PAGE_COST_PART);
    }
    gw_buf_add(p->out, "</p>\n</section>\n");
}
