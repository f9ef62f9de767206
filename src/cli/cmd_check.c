/* SPDX-License-Identifier: MIT */
/* giveway check: is the case free of faults? Every fault at once: those of the file, and then whether the car
 * stands.
 */
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/session.h"
#include "format/csv.h"
#include "format/json.h"
#include "giveway/bands.h"
#include "giveway/left_out.h"
#include "giveway/plausible.h"

typedef struct counts {
    int corners, bodies, joints;
} counts;

static counts count_corners(const gw_case *c)
{
    counts n = { 0 };
    for (int a = 0; a < GW_AXLES; a++) {
        if (!c->has_corner[a]) continue;
        n.corners++;
        n.bodies += c->corners[a].n_bodies - 1; /* the chassis does not move */
        n.joints += c->corners[a].n_joints;
    }
    return n;
}

static const char *plural(int n, const char *one, const char *many)
{
    return n == 1 ? one : many;
}

static void say_counts(const gw_session *s, gw_buf *out)
{
    const gw_case *c = &s->c;
    counts n = count_corners(c);
    gw_buf_clean(out, c->path);
    gw_buf_add(out, ": no faults found");
    gw_buf_fmt(out, ": %d %s, %d moving %s, %d %s, %d %s, %d %s, %d %s", n.corners,
               plural(n.corners, "corner", "corners"), n.bodies, plural(n.bodies, "body", "bodies"), n.joints,
               plural(n.joints, "joint", "joints"), c->n_bushes, plural(c->n_bushes, "bush", "bushes"),
               c->n_kits, plural(c->n_kits, "kit", "kits"), c->n_loads, plural(c->n_loads, "load", "loads"));
    int warnings = gw_faults_warnings(&s->faults);
    if (warnings) gw_buf_fmt(out, "; %d %s", warnings, plural(warnings, "warning", "warnings"));
    gw_buf_add(out, "\n");
    for (int i = 0; i < c->n_overridden; i++) {
        gw_buf_add(out, "  ");
        gw_buf_clean(out, c->overridden[i]);
        gw_buf_add(out, "\n");
    }
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
        gw_buf_clean(out, v->why);
        gw_buf_add(out, "\n");
    }
}

/* What the case does not have of the whole car, and what that does. */
static void say_left_out(const gw_left_out *left, gw_buf *out)
{
    for (int i = 0; i < left->n; i++) {
        gw_buf_add(out, "  left out of the case, ");
        gw_buf_add(out, left->text[i]);
        gw_buf_add(out, "\n");
    }
}

static void put_left_out(const gw_left_out *left, gw_json *json)
{
    gw_json_array(json, "left_out");
    for (int i = 0; i < left->n; i++) gw_json_string(json, NULL, left->text[i]);
    gw_json_close(json);
}

static void put_uses(const gw_uses *uses, gw_json *json)
{
    gw_json_array(json, "commands");
    for (int u = 0; u < GW_USES && uses->use[u].command; u++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "command", uses->use[u].command);
        gw_json_bool(json, "runs", uses->use[u].runs);
        if (uses->use[u].why) gw_json_string(json, "why", uses->use[u].why);
        gw_json_close(json);
    }
    gw_json_close(json);
}

/* What was found of a clean case. */
typedef struct findings {
    gw_uses uses;
    gw_left_out left;
    gw_bands_study bands;
} findings;

/* Paths of the figures that matter, the one that makes most of the band first. */
static void each_that_matters(const gw_bands_study *b, void (*say_it)(void *, const char *), void *to)
{
    double last = 2.0;
    int at = -1;
    for (int i = 0; i < b->n_needed; i++) {
        int most = -1;
        for (int j = 0; j < b->n_figures; j++) {
            bool later = b->share[j] < last || (b->share[j] == last && j > at);
            if (later && (most < 0 || b->share[j] > b->share[most])) most = j;
        }
        if (most < 0) return;
        last = b->share[at = most];
        say_it(to, b->figure[most].of);
    }
}

static void say_path(void *out, const char *path)
{
    gw_buf_add(out, "    ");
    gw_buf_clean(out, path);
    gw_buf_add(out, "\n");
}

static void put_path(void *json, const char *path)
{
    gw_json_string(json, NULL, path);
}

static void say_sure(const gw_case *c, const gw_bands_study *b, gw_buf *out)
{
    if (!b->n_needed) return;
    gw_buf_fmt(out, "  %d %s uncertain%s; %d of them %s 80 %% of the band on toe:\n", b->n_figures,
               plural(b->n_figures, "figure is", "figures are"),
               c->uncertain.given ? "" : ", all by common practice", b->n_needed,
               plural(b->n_needed, "makes", "make"));
    each_that_matters(b, say_path, out);
}

static void put_sure(const gw_case *c, const gw_bands_study *b, gw_json *json)
{
    if (!b->n_needed) return;
    gw_json_object(json, "uncertain");
    gw_json_int(json, "figures", b->n_figures);
    gw_json_int(json, "by_common_practice", c->uncertain.given ? 0 : b->n_figures);
    gw_json_array(json, "that_matter");
    each_that_matters(b, put_path, json);
    gw_json_close(json);
    gw_json_close(json);
}

static void put_lines(gw_json *json, const char *key, const gw_faults *faults, int n,
                      const char *(*line)(const gw_faults *, int))
{
    gw_json_array(json, key);
    for (int i = 0; i < n; i++) gw_json_string(json, NULL, line(faults, i));
    gw_json_close(json);
}

static void say_json(const gw_session *s, const findings *f, const char *path, bool clean, gw_buf *out)
{
    gw_json json = { .out = out };
    counts n = count_corners(&s->c);
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", "check");
    gw_json_string(&json, "file", path);
    gw_json_bool(&json, "free_of_faults", clean);
    if (clean) {
        gw_json_string(&json, "case", s->c.title);
        gw_json_int(&json, "corners", n.corners);
        gw_json_int(&json, "bodies", n.bodies);
        gw_json_int(&json, "joints", n.joints);
        gw_json_int(&json, "bushes", s->c.n_bushes);
        gw_json_int(&json, "kits", s->c.n_kits);
        gw_json_int(&json, "loads", s->c.n_loads);
    }
    put_uses(&f->uses, &json);
    if (clean) put_left_out(&f->left, &json);
    put_sure(&s->c, &f->bands, &json);
    if (clean && s->c.n_overridden) {
        gw_json_array(&json, "overridden");
        for (int i = 0; i < s->c.n_overridden; i++) gw_json_string(&json, NULL, s->c.overridden[i]);
        gw_json_close(&json);
    }
    put_lines(&json, "faults", &s->faults, gw_faults_count(&s->faults), gw_faults_text);
    put_lines(&json, "warnings", &s->faults, gw_faults_warnings(&s->faults), gw_faults_warning);
    gw_json_close(&json);
}

static void csv_heads(gw_buf *out)
{
    gw_csv csv = { .out = out };
    gw_csv_string(&csv, "kind");
    gw_csv_string(&csv, "text");
    gw_csv_end_row(&csv);
}

static void say_csv(const gw_session *s, const findings *f, gw_buf *out)
{
    const gw_uses *uses = &f->uses;
    gw_csv csv = { .out = out };
    int n = gw_faults_count(&s->faults), w = gw_faults_warnings(&s->faults);
    for (int i = 0; i < n + w; i++) {
        gw_csv_string(&csv, i < n ? "fault" : "warning");
        gw_csv_string(&csv, i < n ? gw_faults_text(&s->faults, i) : gw_faults_warning(&s->faults, i - n));
        gw_csv_end_row(&csv);
    }
    for (int i = 0; i < f->left.n; i++) {
        gw_csv_string(&csv, "left out");
        gw_csv_string(&csv, f->left.text[i]);
        gw_csv_end_row(&csv);
    }
    for (int u = 0; u < GW_USES && uses->use[u].command; u++) {
        const gw_use_verdict *v = &uses->use[u];
        gw_buf text = { 0 };
        gw_buf_fmt(&text, "%s%s%s", v->command, v->why ? ": " : "", v->why ? v->why : "");
        gw_csv_string(&csv, v->runs ? "runs" : "cannot run");
        gw_csv_string(&csv, gw_buf_str(&text));
        gw_csv_end_row(&csv);
        if (text.failed) out->failed = true;
        gw_buf_free(&text);
    }
}

static int look_further(const gw_args *args, gw_session *s, findings *f)
{
    gw_error err = { 0 };
    gw_status st = gw_study_uses(&s->c, &f->uses, &err);
    if (st == GW_OK) st = gw_study_left_out(&s->c, &f->left, &err);
    return st == GW_OK ? GW_EXIT_DONE : gw_complain(args->command->name, &err);
}

/* What of the case matters most: nothing where no load asks for it, or where the loads cannot be carried. */
static int look_how_sure(const gw_args *args, const gw_session *s, gw_bands_study *bands)
{
    const gw_selection all = { 0 };
    const gw_case *c = &s->c;
    gw_error err = { 0 };
    if (!c->n_loads || !(c->has_corner[GW_FRONT] || c->has_corner[GW_REAR])) return GW_EXIT_DONE;
    return gw_study_bands(c, &all, bands, &err) == GW_E_NOMEM ? gw_complain(args->command->name, &err)
                                                              : GW_EXIT_DONE;
}

static void say(const gw_args *args, const gw_session *s, const findings *f, const char *path, bool clean,
                gw_buf *out)
{
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        say_json(s, f, path, clean, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        say_csv(s, f, out);
    else if (clean) {
        say_counts(s, out);
        say_uses(&f->uses, out);
        say_left_out(&f->left, out);
        say_sure(&s->c, &f->bands, out);
    }
}

static int check_one(const gw_args *args, const char *path, gw_faults *told, gw_buf *out)
{
    gw_session session;
    findings f = { 0 };
    int status = gw_session_open_among(args, path, told, &session);
    if (status == GW_EXIT_DONE) status = gw_session_stand(args, &session);
    bool clean = status == GW_EXIT_DONE;
    if (clean) status = look_further(args, &session, &f);
    if (clean && status == GW_EXIT_DONE) status = look_how_sure(args, &session, &f.bands);
    if (status != GW_EXIT_OUTPUT) say(args, &session, &f, path, clean, out);
    gw_bands_study_free(&f.bands);
    gw_left_out_free(&f.left);
    gw_uses_free(&f.uses);
    gw_session_close(&session);
    return status;
}

/* Several results in JSON are a list. The worst of them is the exit status. */
static int run(const gw_args *args)
{
    gw_buf out = { 0 };
    gw_faults told = { 0 };
    int status = GW_EXIT_DONE;
    const bool list = args->n_words > 1 && gw_args_is(args, GW_OPT_FORMAT, "json");
    if (gw_args_is(args, GW_OPT_FORMAT, "csv")) csv_heads(&out);
    if (list) gw_buf_add(&out, "[\n");
    for (int i = 0; i < args->n_words && status != GW_EXIT_OUTPUT; i++) {
        if (list && i) gw_buf_add(&out, ",\n");
        int one = check_one(args, args->words[i], &told, &out);
        if (one > status) status = one;
    }
    if (list) gw_buf_add(&out, "]\n");
    if (status != GW_EXIT_OUTPUT && gw_emit(&out) != GW_EXIT_DONE) status = GW_EXIT_OUTPUT;
    gw_faults_free(&told);
    gw_buf_free(&out);
    return status;
}

const gw_command GW_COMMAND_CHECK = {
    .name = "check",
    .args = "CASE ...",
    .summary = "is the case free of faults? every fault at once, each with its path and remedy",
    .options = GW_TAKES_COMMON,
    .min_words = 1,
    .max_words = 1000,
    .run = run,
    .details =
        "Faults go to standard error, a line each. The other commands stop with the same list. A case that "
        "reads well is then loaded with its own weight, with every kit: a mechanism is reported with the "
        "bodies "
        "that move and the direction. Figures that no car has are warned of with what is usual; then each "
        "command is named that can run the case, or cannot, and why, and what the case leaves out of the "
        "whole car. A rack, a subframe, a beam or a bar on the chassis of one corner is warned of, with the "
        "JSON that shares it between both wheels. After a change on a shelf, several "
        "cases tell "
        "which of them no longer hold.",
    .examples = { "giveway check cases/fast-saloon.json",
                  "giveway check --materials my-materials cases/fast-saloon.json" },
};
