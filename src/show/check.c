/* SPDX-License-Identifier: MIT */
#include "show/check.h"

#include "format/csv.h"
#include "record/json.h"
#include "show/results.h"

#include <math.h>
#include <stdlib.h>

/* ---- gathered before it is shown ---- */

static void count_corners(gw_check_made *made)
{
    for (int a = 0; a < GW_AXLES; a++) {
        if (!made->c->has_corner[a]) continue;
        made->corners++;
        made->bodies += made->c->corners[a].n_bodies - 1; /* the chassis does not move */
        made->joints += made->c->corners[a].n_joints;
    }
}

/* The figure that makes most of the band of those from `last` and, among equals, `after` on; -1: none is
 * left. */
static int next_that_matters(const gw_bands_study *b, double last, int after)
{
    int most = -1;
    for (int j = 0; j < b->n_figures; j++) {
        bool later = b->share[j] < last || (b->share[j] == last && j > after);
        if (later && (most < 0 || b->share[j] > b->share[most])) most = j;
    }
    return most;
}

gw_status gw_check_gather(gw_check_made *made, gw_error *err)
{
    const gw_bands_study *b = &made->bands;
    count_corners(made);
    made->matters = calloc((size_t)b->n_needed + 1, sizeof *made->matters);
    if (!made->matters) return gw_fail(err, GW_E_NOMEM, "out of memory");
    int at = -1;
    for (int i = 0; i < b->n_needed; i++) {
        at = next_that_matters(b, at < 0 ? HUGE_VAL : b->share[at], at);
        made->matters[i] = at < 0 ? "" : b->figure[at].of;
        if (at < 0) break;
    }
    return GW_OK;
}

void gw_check_free(gw_check_made *made)
{
    free(made->matters);
    gw_bands_study_free(&made->bands);
    gw_left_out_free(&made->left);
    gw_uses_free(&made->uses);
}

/* ---- for people ---- */

static const char *plural(int n, const char *one, const char *many)
{
    return n == 1 ? one : many;
}

static void say_counts(const gw_check_made *made, gw_buf *out)
{
    const gw_case *c = made->c;
    int warnings = gw_faults_warnings(made->faults);
    gw_buf_say(out, "%s: no faults found: %d %s, %d moving %s, %d %s, %d %s, %d %s, %d %s", c->path,
               made->corners, plural(made->corners, "corner", "corners"), made->bodies,
               plural(made->bodies, "body", "bodies"), made->joints, plural(made->joints, "joint", "joints"),
               c->n_bushes, plural(c->n_bushes, "bush", "bushes"), c->n_kits,
               plural(c->n_kits, "kit", "kits"), c->n_loads, plural(c->n_loads, "load", "loads"));
    if (warnings) gw_buf_fmt(out, "; %d %s", warnings, plural(warnings, "warning", "warnings"));
    gw_buf_add(out, "\n");
}

static void say_line(const char *before, const char *text, gw_buf *out)
{
    gw_buf_say(out, "%s%s", before, text);
    gw_buf_add(out, "\n");
}

/* What runs in one line, what does not, or not whole, in one each. */
static void say_uses(const gw_uses *uses, gw_buf *out)
{
    int n = 0;
    for (int u = 0; u < GW_USES; u++)
        if (uses->use[u].runs)
            gw_buf_fmt(out, "%s%s", n++ ? ", " : "  can be run by: ", uses->use[u].command);
    if (n) gw_buf_add(out, "\n");
    for (int u = 0; u < GW_USES; u++) {
        const gw_use_verdict *v = &uses->use[u];
        if (!v->why) continue;
        gw_buf_fmt(out, "  %s, %s: ", v->runs ? "left out" : "cannot be run", v->command);
        say_line("", v->why, out);
    }
}

static void say_sure(const gw_check_made *made, gw_buf *out)
{
    const gw_bands_study *b = &made->bands;
    if (!b->n_needed) return;
    gw_buf_fmt(out, "  %d %s uncertain%s; %d of them %s 80 %% of the band on toe:\n", b->n_figures,
               plural(b->n_figures, "figure is", "figures are"),
               made->c->uncertain.given ? "" : ", all by common practice", b->n_needed,
               plural(b->n_needed, "makes", "make"));
    for (int i = 0; i < b->n_needed && made->matters[i]; i++) say_line("    ", made->matters[i], out);
}

void gw_check_text(const gw_check_made *made, gw_buf *out)
{
    if (!made->clean) return;
    say_counts(made, out);
    for (int i = 0; i < made->c->n_overridden; i++) say_line("  ", made->c->overridden[i], out);
    say_uses(&made->uses, out);
    for (int i = 0; i < made->left.n; i++) say_line("  left out of the case, ", made->left.text[i], out);
    say_sure(made, out);
}

/* ---- rows ---- */

/* NULL, and so left out, where the case was not looked at so far. */
GW_READS(const void *, use_at, gw_check_made, it->uses.use[p->index].command ? &it->uses.use[p->index] : NULL)
GW_READS(const void *, uncertain, gw_check_made, it->bands.n_needed ? it : NULL)
GW_READS(double, by_common_practice, gw_check_made, it->c->uncertain.given ? 0 : it->bands.n_figures)
GW_READS(const void *, if_overridden, gw_check_made, it->clean && it->c->n_overridden ? it : NULL)
GW_READS(int, faults, gw_check_made, gw_faults_count(it->faults))
GW_READS(const char *, fault_at, gw_check_made, gw_faults_text(it->faults, p->index))
GW_READS(int, warnings, gw_check_made, gw_faults_warnings(it->faults))
GW_READS(const char *, warning_at, gw_check_made, gw_faults_warning(it->faults, p->index))

static GW_RECORD(OF_CASE_RECORD, gw_case,
    GW_MEMBER("bushes", PLAIN, gw_case, n_bushes, 0, "on offer"),
    GW_MEMBER("kits", PLAIN, gw_case, n_kits, 0, "of bushes"),
    GW_MEMBER("loads", PLAIN, gw_case, n_loads, 0, "that they are looked at under"));

static GW_RECORD(COUNTS_RECORD, gw_check_made,
    GW_MEMBER("corners", PLAIN, gw_check_made, corners, 0, "that are described"),
    GW_MEMBER("bodies", PLAIN, gw_check_made, bodies, 0, "that move"),
    GW_MEMBER("joints", PLAIN, gw_check_made, joints, 0, "of all corners"),
    GW_PART_BEHIND(gw_check_made, c, &OF_CASE_RECORD, GW_ALWAYS));

static GW_RECORD(USE_RECORD, gw_use_verdict,
    GW_MEMBER("command", PLAIN, gw_use_verdict, command, 0, "of giveway"),
    GW_MEMBER("runs", PLAIN, gw_use_verdict, runs, 0, "it can run the case"),
    GW_MEMBER("why", PLAIN, gw_use_verdict, why, GW_SOMETIMES, "not, or not whole, and what to add"));

static GW_RECORD(LEFT_RECORD, gw_check_made,
    GW_TEXTS("left_out", gw_check_made, left.n, left.text, 0, "what the case does not have of the whole car, and what that does"));

static GW_RECORD(UNCERTAIN_RECORD, gw_check_made,
    GW_MEMBER("figures", PLAIN, gw_check_made, bands.n_figures, 0, "that are uncertain"),
    GW_COUNTED("by_common_practice", by_common_practice, 0, "of them, where the case does not say"),
    GW_TEXTS("that_matter", gw_check_made, bands.n_needed, matters, 0, "they make 80 % of the band on toe; the most first"));

static GW_RECORD(OVERRIDDEN_RECORD, gw_check_made,
    GW_TEXTS("overridden", gw_case, n_overridden, overridden, 0, "what the case changes of its shelf"));

static GW_RECORD(RESULT_RECORD, gw_check_made,
    GW_MEMBER("file", PLAIN, gw_check_made, file, 0, "as given"),
    GW_MEMBER("free_of_faults", PLAIN, gw_check_made, clean, 0, "the case reads well, and the car stands"),
    GW_PART_IF(gw_check_made, clean, &COUNTS_RECORD),
    GW_EVERY("commands", GW_USES, use_at, &USE_RECORD, GW_ON_LINE, "that can run the case, or cannot"),
    GW_PART_IF(gw_check_made, clean, &LEFT_RECORD),
    GW_INSIDE("uncertain", uncertain, &UNCERTAIN_RECORD, 0, "how sure the case is"),
    GW_PART_FOUND(if_overridden, &OVERRIDDEN_RECORD, 0),
    GW_SAYINGS("faults", faults, fault_at, 0, "a line each, with its path and remedy"),
    GW_SAYINGS("warnings", warnings, warning_at, 0, "a line each"));

const gw_result GW_CHECK_RESULT = { "check", &RESULT_RECORD, .rows = "", .caseless = true };

void gw_check_json(const gw_check_made *made, gw_buf *out)
{
    gw_result_json(&GW_CHECK_RESULT, made->clean ? made->c : NULL, made, out);
}

/* ---- for spreadsheets ---- */

static void csv_row(const char *kind, const char *text, gw_buf *out)
{
    gw_csv csv = { .out = out };
    gw_csv_string(&csv, kind);
    gw_csv_string(&csv, text);
    gw_csv_end_row(&csv);
}

void gw_check_csv_heads(gw_buf *out)
{
    csv_row("kind", "text", out);
}

void gw_check_csv(const gw_check_made *made, gw_buf *out)
{
    const gw_faults *f = made->faults;
    for (int i = 0; i < gw_faults_count(f); i++) csv_row("fault", gw_faults_text(f, i), out);
    for (int i = 0; i < gw_faults_warnings(f); i++) csv_row("warning", gw_faults_warning(f, i), out);
    for (int i = 0; i < made->left.n; i++) csv_row("left out", made->left.text[i], out);
    for (int u = 0; u < GW_USES && made->uses.use[u].command; u++) {
        const gw_use_verdict *v = &made->uses.use[u];
        gw_buf text = { 0 };
        gw_buf_fmt(&text, "%s%s%s", v->command, v->why ? ": " : "", v->why ? v->why : "");
        csv_row(v->runs ? "runs" : "cannot run", gw_buf_str(&text), out);
        gw_buf_drop(&text, out);
    }
}
