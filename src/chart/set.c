/* SPDX-License-Identifier: MIT */
#include "chart/set.h"

#include "chart/gnuplot.h"
#include "format/file.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

const char GW_CHARTS_LEFT_OUT[] = "charts left out: gnuplot is not installed (the tables are complete; on "
                                  "Debian: apt-get install gnuplot-nox)";

enum { WORTH_A_PROCESS = 4 }; /* pictures; to start another gnuplot takes as long as some of them */

void gw_charts_begin(gw_charts *charts, const char *dir, int formats)
{
    *charts = (gw_charts){ .dir = dir, .formats = formats, .seconds = GW_CHART_SECONDS };
}

static void free_files(gw_charts *charts)
{
    for (int i = 0; i < charts->n_files; i++) {
        free(charts->file[i].path);
        free(charts->file[i].aside);
        gw_buf_free(&charts->file[i].made);
    }
    free(charts->file);
    charts->file = NULL;
    charts->n_files = 0;
}

void gw_charts_free(gw_charts *charts)
{
    free_files(charts);
    free(charts->page);
    gw_arena_free(&charts->arena);
    gw_buf_free(&charts->said);
    *charts = (gw_charts){ 0 };
}

/* ---- what charts are made of ---- */

void *gw_charts_room(gw_charts *charts, int n, size_t size)
{
    void *room = gw_arena_alloc(&charts->arena, (size_t)n + 1, size);
    if (!room) charts->failed = true;
    return room;
}

const char *gw_charts_kept(gw_charts *charts, gw_buf *text)
{
    return gw_buf_kept(text, &charts->arena, &charts->failed);
}

const char *gw_charts_fmt(gw_charts *charts, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    const char *kept = gw_buf_vkept(&charts->arena, &charts->failed, fmt, args);
    va_end(args);
    return kept;
}

/* ---- pages ---- */

static char *safe_stem(gw_charts *charts, const char *stem)
{
    static const char KNOWN[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_";
    char *copy = gw_arena_strdup(&charts->arena, *stem ? stem : "chart");
    for (char *p = copy; p && *p; p++)
        if (!strchr(KNOWN, *p)) *p = '-';
    return copy;
}

static bool is_there(const gw_charts *charts, const char *stem)
{
    for (int i = 0; i < charts->n_pages; i++)
        if (strcmp(charts->page[i].stem, stem) == 0) return true;
    return false;
}

static gw_chart_page *new_page(gw_charts *charts)
{
    if (charts->n_pages == charts->cap) {
        int cap = charts->cap ? 2 * charts->cap : 16;
        gw_chart_page *page = realloc(charts->page, (size_t)cap * sizeof *page);
        if (!page) return NULL;
        charts->page = page;
        charts->cap = cap;
    }
    return &charts->page[charts->n_pages];
}

void gw_charts_figure(gw_charts *charts, const char *stem, const gw_figure *figure)
{
    if (charts->failed || (charts->wants && !charts->wants(stem))) return;
    gw_chart_page *page = new_page(charts);
    const char *name = safe_stem(charts, stem);
    if (page && name && is_there(charts, name)) return; /* two files, one name */
    charts->failed = !page || !name ||
                     gw_figure_lay_out(figure, charts->inlined, &charts->arena, &page->layout, NULL) != GW_OK;
    if (charts->failed) return;
    page->stem = name;
    charts->n_pages++;
}

/* ---- files ---- */

static gw_status add_file(gw_charts *charts, const gw_chart_page *page, bool svg, gw_error *err)
{
    gw_buf path = { 0 }, aside = { 0 };
    gw_chart_file *f = &charts->file[charts->n_files++];
    gw_buf_fmt(&path, "%s/%s.%s", charts->dir, page->stem, svg ? "svg" : "png");
    gw_status st = gw_buf_status(&path, err);
    *f = (gw_chart_file){ .path = path.s, .page = page, .svg = svg };
    if (st == GW_OK) st = gw_file_aside(f->path, &aside, err);
    f->aside = aside.s;
    return st;
}

static gw_status add_files(gw_charts *charts, gw_error *err)
{
    gw_status st = GW_OK;
    free_files(charts);
    charts->file = calloc(2 * (size_t)charts->n_pages, sizeof *charts->file);
    if (!charts->file) return gw_fail(err, GW_E_NOMEM, "out of memory while charts were made");
    for (int i = 0; i < charts->n_pages && st == GW_OK; i++) {
        if (charts->formats & GW_CHART_SVG) st = add_file(charts, &charts->page[i], true, err);
        if (charts->formats & GW_CHART_PNG && st == GW_OK)
            st = add_file(charts, &charts->page[i], false, err);
    }
    return st;
}

static void remove_asides(gw_charts *charts)
{
    for (int i = 0; i < charts->n_files; i++) {
        if (charts->file[i].aside) unlink(charts->file[i].aside);
        free(charts->file[i].aside);
        charts->file[i].aside = NULL;
    }
}

/* ---- scripts ---- */

/* What drawing takes, in pixels: those of a PNG are compressed one by one; an SVG costs next to nothing. */
static double effort(const gw_charts *charts, const gw_layout *l)
{
    return (charts->formats & GW_CHART_PNG ? 4.0 : 0.1) * l->width * l->height;
}

/* A page has few and small ones, and the planner works beside them: to start a second gnuplot costs more. */
static int plotters(const gw_charts *charts)
{
    if (charts->inlined) return 1;
    long processors = sysconf(_SC_NPROCESSORS_ONLN);
    int n = charts->n_pages / WORTH_A_PROCESS;
    if (processors > GW_MAX_PLOTTERS) processors = GW_MAX_PLOTTERS;
    if (n > processors) n = (int)processors;
    return n > 1 ? n : 1;
}

static void add_page(const gw_charts *charts, int page, gw_buf *script)
{
    gw_gnuplot_output output[2];
    int n = 0;
    for (int i = 0; i < charts->n_files; i++) {
        const gw_chart_file *f = &charts->file[i];
        if (f->page != &charts->page[page]) continue;
        const char *slash = strrchr(f->aside, '/');
        gw_gnuplot_name(i, slash ? slash + 1 : f->aside, script);
        output[n++] = (gw_gnuplot_output){ i, f->svg };
    }
    gw_gnuplot_page(&charts->page[page].layout, output, n, script);
}

/* Each page to the script that has least to do so far. */
static void write_scripts(const gw_charts *charts, gw_buf *script, int n)
{
    double load[GW_MAX_PLOTTERS] = { 0.0 };
    for (int i = 0; i < n; i++) gw_gnuplot_begin(&script[i]);
    for (int p = 0; p < charts->n_pages; p++) {
        int least = 0;
        for (int i = 1; i < n; i++)
            if (load[i] < load[least]) least = i;
        add_page(charts, p, &script[least]);
        load[least] += effort(charts, &charts->page[p].layout);
    }
}

/* ---- drawing ---- */

static gw_status finish_svg(gw_chart_file *f, bool inlined, gw_error *err)
{
    gw_buf raw = { 0 }, tidy = { 0 };
    gw_status st = gw_file_read(f->aside, &raw, err);
    if (st == GW_OK) {
        const gw_layout *l = &f->page->layout;
        gw_svg_tidy(gw_buf_str(&raw), f->page->stem, l->title, l->description, &tidy);
        st = gw_buf_status(&tidy, err);
    }
    if (st == GW_OK && inlined) {
        f->made = tidy;
        tidy = (gw_buf){ 0 };
    } else if (st == GW_OK) {
        st = gw_file_write(f->path, gw_buf_str(&tidy), tidy.n, err);
    }
    gw_buf_free(&raw);
    gw_buf_free(&tidy);
    return st;
}

/* gnuplot ends well on a full disk, too. Each format has an end of its own. */
static bool is_whole(const gw_chart_file *f)
{
    static const char PNG_END[] = "IEND\xAE\x42\x60\x82", SVG_END[] = "</svg>";
    char tail[16] = "";
    FILE *file = fopen(f->aside, "rb");
    size_t n = 0, want = f->svg ? sizeof SVG_END - 1 : sizeof PNG_END - 1;
    if (!file) return false;
    if (fseek(file, -(long)(want + 4), SEEK_END) == 0) n = fread(tail, 1, want + 4, file);
    fclose(file);
    if (!f->svg) return n == want + 4 && memcmp(tail + 4, PNG_END, want) == 0;
    while (n > 0 && (tail[n - 1] == '\n' || tail[n - 1] == '\r')) n--;
    return n >= want && memcmp(tail + n - want, SVG_END, want) == 0;
}

static gw_status finish(gw_chart_file *f, bool inlined, gw_error *err)
{
    if (!is_whole(f))
        return gw_fail(err, GW_E_IO, "%s: gnuplot left no chart, or half of one: is the disk full?", f->path);
    if (f->svg) return finish_svg(f, inlined, err); /* the raw one is removed with what else is left */
    gw_status status = gw_file_commit(f->aside, f->path, err);
    free(f->aside);
    f->aside = NULL;
    return status;
}

static gw_status run(gw_charts *charts, gw_error *err)
{
    gw_buf script[GW_MAX_PLOTTERS] = { { 0 } };
    int n = plotters(charts);
    gw_status st = GW_OK;
    write_scripts(charts, script, n);
    for (int i = 0; i < n && st == GW_OK; i++) st = gw_buf_status(&script[i], err);
    if (st == GW_OK)
        st = gw_gnuplot_run(charts->dir, script, n, charts->seconds, &charts->left_out, &charts->said, err);
    for (int i = 0; i < n; i++) gw_buf_free(&script[i]);
    return st;
}

gw_status gw_charts_draw(gw_charts *charts, gw_error *err)
{
    charts->left_out = false;
    if (charts->failed) return gw_fail(err, GW_E_NOMEM, "out of memory while charts were made");
    if (charts->n_pages == 0) return GW_OK;
    gw_status st = gw_dir_make(charts->dir, err);
    if (st == GW_OK) st = add_files(charts, err);
    if (st == GW_OK) st = run(charts, err);
    for (int i = 0; st == GW_OK && !charts->left_out && i < charts->n_files; i++)
        st = finish(&charts->file[i], charts->inlined, err);
    remove_asides(charts);
    return st;
}
