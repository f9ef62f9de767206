/* SPDX-License-Identifier: MIT */
/* Charts of the page: drawn in a folder of their own, read back, and set into the page. */
#include "page/charts.h"
#include "page/budget.h"
#include "page/sections.h"

#include "chart/set.h"
#include "giveway/pick.h"
#include "show/compare_charts.h"
#include "show/ride.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* Every chart of the page, by the name it has for each axle ("NAME-front"), in the order of the page. */
typedef enum gw_page_part { GRIP, RIDE, SWEEP } gw_page_part;

static const struct {
    const char *name;
    gw_page_part part;
    bool workshop; /* in the workshop's copy alone */
} CHARTS[] = {
    { "axle-behind", GRIP, false },
    { "contributions-braking", GRIP, false },
    { "contributions-cornering", GRIP, false },
    { "camber-budget", GRIP, false },
    { "grip-against-harshness", GRIP, false },
    { "third-octaves", RIDE, false },
    { "bump", RIDE, false },
    { "paths", RIDE, true },
    { "toe-braking", SWEEP, true },
    { "camber-cornering", SWEEP, true },
};
enum { N_CHARTS = sizeof CHARTS / sizeof *CHARTS };

static bool is_called(const char *stem, const char *name)
{
    size_t n = strlen(name);
    return strncmp(stem, name, n) == 0 && (strcmp(stem + n, "-front") == 0 || strcmp(stem + n, "-rear") == 0);
}

static bool wants(const char *stem, bool workshop)
{
    for (int i = 0; i < N_CHARTS; i++)
        if (is_called(stem, CHARTS[i].name)) return workshop || !CHARTS[i].workshop;
    return false;
}

static bool workshop_wants(const char *stem)
{
    return wants(stem, true);
}

static bool customer_wants(const char *stem)
{
    return wants(stem, false);
}

/* Each axle from behind, with the first kit that is shown. */
static void axles_from_behind(const gw_report *r, gw_charts *charts)
{
    static const char *const STEMS[GW_AXLES] = { "axle-behind-front", "axle-behind-rear" };
    int load = gw_pick_load(r->c, &r->deflect, GW_PICK_CORNER);
    for (gw_axle a = GW_FRONT; a < GW_AXLES && load >= 0; a++) {
        const gw_axle_pictures *of = gw_pictures_find(&r->pictures, r->baseline, a);
        if (of) gw_behind_chart(r->c, &r->pictures, of, load, STEMS[a], charts);
    }
}

void gw_page_charts_gather(const gw_report *r, bool workshop, gw_charts *charts)
{
    const gw_comparison cmp = { .c = r->c,
                                .deflect = &r->deflect,
                                .ride = &r->ride,
                                .no_ride = r->no_ride,
                                .handling = &r->handling,
                                .bands = r->banded ? &r->bands : NULL,
                                .baseline = r->baseline };
    charts->wants = workshop ? workshop_wants : customer_wants;
    gw_compare_charts(&cmp, charts);
    axles_from_behind(r, charts);
    gw_page_budget_charts(r, charts);
    if (r->ride.n) gw_ride_charts(r->c, &r->ride, charts);
    if (workshop && r->c->has_vehicle) {
        gw_sweep_charts(&cmp, &r->brake, charts);
        gw_sweep_charts(&cmp, &r->lateral, charts);
    }
}

static gw_status make_folder(gw_buf *path, gw_error *err)
{
    const char *where = getenv("TMPDIR");
    gw_buf_fmt(path, "%s/giveway-XXXXXX", where && *where ? where : "/tmp");
    if (path->failed) return gw_buf_status(path, err);
    if (!mkdtemp(path->s)) {
        gw_fail(err, GW_E_IO, "%s: cannot make a folder for charts: %s", path->s, strerror(errno));
        gw_buf_free(path);
        return GW_E_IO;
    }
    return GW_OK;
}

static char *text_of(const char *s, gw_status *status, gw_error *err)
{
    gw_buf text = { 0 };
    gw_buf_add(&text, s);
    if (*status == GW_OK) *status = gw_buf_status(&text, err);
    return text.s;
}

static gw_status take(gw_chart_file *file, gw_page_chart *out, gw_error *err)
{
    gw_status status = GW_OK;
    out->svg = file->made;
    file->made = (gw_buf){ 0 };
    out->stem = text_of(file->page->stem, &status, err);
    out->title = text_of(file->page->layout.title, &status, err);
    out->what = text_of(file->page->layout.what, &status, err);
    return status;
}

static gw_status take_all(gw_charts *charts, gw_page_charts *out, gw_error *err)
{
    gw_status status = GW_OK;
    out->chart = calloc((size_t)charts->n_files + 1, sizeof *out->chart);
    if (!out->chart) return gw_fail(err, GW_E_NOMEM, "out of memory for charts");
    for (int i = 0; i < charts->n_files && status == GW_OK; i++)
        status = take(&charts->file[i], &out->chart[out->n++], err);
    return status;
}

gw_status gw_page_charts_draw(const gw_report *report, bool workshop, gw_page_charts *out, gw_error *err)
{
    gw_page_charts drawn = { 0 };
    gw_charts charts = { 0 };
    gw_buf folder = { 0 };
    gw_status status = make_folder(&folder, err);
    if (status != GW_OK) return status;
    gw_charts_begin(&charts, folder.s, GW_CHART_SVG);
    charts.inlined = true;
    gw_page_charts_gather(report, workshop, &charts);
    status = gw_charts_draw(&charts, err);
    drawn.left_out = charts.left_out;
    if (status == GW_OK && !drawn.left_out) status = take_all(&charts, &drawn, err);
    rmdir(folder.s);
    gw_charts_free(&charts);
    gw_buf_free(&folder);
    if (status == GW_OK)
        *out = drawn;
    else
        gw_page_charts_free(&drawn);
    return status;
}

void gw_page_charts_free(gw_page_charts *charts)
{
    for (int i = 0; i < charts->n; i++) {
        free(charts->chart[i].stem);
        free(charts->chart[i].title);
        free(charts->chart[i].what);
        gw_buf_free(&charts->chart[i].svg);
    }
    free(charts->chart);
    *charts = (gw_page_charts){ 0 };
}

/* ---- in the page ---- */

static gw_axle axle_of(const char *stem)
{
    size_t n = strlen(stem), rear = strlen("-rear");
    return n >= rear && strcmp(stem + n - rear, "-rear") == 0 ? GW_REAR : GW_FRONT;
}

/* The wheel that is not chosen stays hidden until it is; the workshop's copy shows both. */
static void put_chart(const gw_page *p, gw_slots *part, const gw_page_chart *chart)
{
    gw_axle axle = axle_of(chart->stem);
    gw_slots *of = gw_slots_element(part, "charts");
    GW_SLOTS(of, { "stem", chart->stem }, { "title", chart->title }, { "what", chart->what },
             { "svg", strstr(gw_buf_str(&chart->svg), "<svg") });
    gw_slots_fmt(of, "axle", "%d", (int)axle);
    gw_slots_flag(of, "hidden", axle != p->axle && !p->wish->workshop);
}

static void put_part(const gw_page *p, gw_slots *slots, gw_page_part part, const char *name)
{
    gw_slots *of = NULL;
    for (int k = 0; k < N_CHARTS; k++)
        for (int i = 0; i < p->charts->n && CHARTS[k].part == part; i++) {
            if (!is_called(p->charts->chart[i].stem, CHARTS[k].name)) continue;
            if (!of) of = gw_slots_element(slots, name);
            put_chart(p, of, &p->charts->chart[i]);
        }
}

void gw_page_figures(const gw_page *p, gw_slots *slots)
{
    gw_slots_flag(slots, "no_charts", p->charts->left_out);
    put_part(p, slots, GRIP, "grip");
    put_part(p, slots, RIDE, "ride");
    put_part(p, slots, SWEEP, "sweep");
    GW_SLOTS(slots, { "no_ride", p->r->no_ride }, { "static_only", GW_TOLD(STATIC_ONLY) });
}
