/* SPDX-License-Identifier: MIT */
#include "show/chart_set.h"

#include "show/chart_canvas.h"
#include "show/file.h"
#include "show/gnuplot.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

const char GW_CHARTS_LEFT_OUT[] = "charts left out: gnuplot is not installed (the tables are complete; on "
                                  "Debian: apt-get install gnuplot-nox)";

void gw_charts_begin(gw_charts *charts, const char *dir, int formats)
{
    *charts = (gw_charts){ .dir = dir, .formats = formats, .seconds = GW_CHART_SECONDS };
}

void gw_charts_free(gw_charts *charts)
{
    for (int i = 0; i < charts->n_files; i++) {
        gw_chart_file *f = &charts->files[i];
        free(f->path);
        free(f->aside);
        free(f->stem);
        free(f->title);
    }
    free(charts->files);
    gw_buf_free(&charts->script);
    gw_buf_free(&charts->said);
    *charts = (gw_charts){ 0 };
}

const char *gw_charts_path(const gw_charts *charts, int index)
{
    return charts->files[index].path;
}

static char *copy_of(const char *s)
{
    gw_buf b = { 0 };
    gw_buf_add(&b, s);
    if (!b.failed && !b.s) gw_buf_bytes(&b, "", 0);
    if (b.failed) gw_buf_free(&b);
    return b.s;
}

static char *safe_stem(const char *stem)
{
    static const char KNOWN[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_";
    char *copy = copy_of(*stem ? stem : "chart");
    for (char *p = copy; p && *p; p++)
        if (!strchr(KNOWN, *p)) *p = '-';
    return copy;
}

static gw_chart_file *new_file(gw_charts *charts)
{
    if (charts->n_files == charts->cap) {
        int cap = charts->cap ? 2 * charts->cap : 16;
        gw_chart_file *files = realloc(charts->files, (size_t)cap * sizeof *files);
        if (!files) return NULL;
        charts->files = files;
        charts->cap = cap;
    }
    gw_chart_file *f = &charts->files[charts->n_files++];
    *f = (gw_chart_file){ 0 };
    return f;
}

/* The name that the script draws to is made when it is drawn; until then a number stands for it. */
static void add_output(gw_charts *charts, const char *stem, const char *title, int height, bool svg)
{
    gw_chart_file *f = new_file(charts);
    gw_buf path = { 0 };
    if (!f) {
        charts->failed = true;
        return;
    }
    f->svg = svg;
    f->stem = safe_stem(stem);
    f->title = copy_of(title ? title : "");
    gw_buf_fmt(&path, "%s/%s.%s", charts->dir, f->stem ? f->stem : "", svg ? "svg" : "png");
    f->path = path.s;
    if (!f->stem || !f->title || path.failed) charts->failed = true;
    if (svg)
        gw_buf_fmt(
            &charts->script,
            "set terminal svg size %d,%d dynamic noenhanced font 'sans-serif,%d' background '#ffffff'\n",
            gw_charts_width(charts), height, GW_TYPE_TEXT);
    else /* pngcairo takes sizes as points of 96 to the inch: 3/4 makes them the pixels of the SVG, twice over
          */
        gw_buf_fmt(
            &charts->script,
            "set terminal pngcairo size %d,%d noenhanced font 'sans-serif,%d' fontscale 1.5 linewidth 2 "
            "pointscale 2 background '#ffffff'\n",
            2 * gw_charts_width(charts), 2 * height, GW_TYPE_TEXT);
    gw_buf_fmt(&charts->script, "set output f%d\n", charts->n_files - 1);
}

static bool is_there(const gw_charts *charts, const char *stem)
{
    for (int i = 0; i < charts->n_files; i++)
        if (charts->files[i].stem && strcmp(charts->files[i].stem, stem) == 0) return true;
    return false;
}

void gw_charts_add_page(gw_charts *charts, const char *stem, const char *title, int height,
                        const gw_buf *page)
{
    if (page->failed) charts->failed = true;
    if ((charts->wants && !charts->wants(stem)) || is_there(charts, stem)) return; /* two files, one name */
    gw_buf *script = &charts->script;
    for (int format = GW_CHART_SVG; format <= GW_CHART_PNG; format <<= 1) {
        if (!(charts->formats & format)) continue;
        add_output(charts, stem, title, height, format == GW_CHART_SVG);
        gw_buf_add(script, gw_buf_str(page));
        gw_buf_add(script, "unset output\n");
    }
}

static gw_status make_asides(gw_charts *charts, gw_buf *script, gw_error *err)
{
    for (int i = 0; i < charts->n_files; i++) {
        gw_chart_file *f = &charts->files[i];
        gw_buf aside = { 0 };
        gw_status st = gw_file_aside(f->path, &aside, err);
        if (st != GW_OK) return st;
        f->aside = aside.s;
        const char *slash = strrchr(aside.s, '/');
        gw_buf_fmt(script, "f%d = ", i);
        gw_plot_quote(script, slash ? slash + 1 : aside.s);
        gw_buf_add(script, "\n");
    }
    gw_buf_add(script, gw_buf_str(&charts->script));
    return gw_buf_status(script, err);
}

static void remove_asides(gw_charts *charts)
{
    for (int i = 0; i < charts->n_files; i++) {
        if (charts->files[i].aside) unlink(charts->files[i].aside);
        free(charts->files[i].aside);
        charts->files[i].aside = NULL;
    }
}

static gw_status finish_svg(const gw_chart_file *f, gw_error *err)
{
    gw_buf raw = { 0 }, tidy = { 0 };
    gw_status st = gw_file_read(f->aside, &raw, err);
    if (st == GW_OK) {
        gw_svg_tidy(gw_buf_str(&raw), f->stem, f->title, &tidy);
        st = gw_buf_status(&tidy, err);
    }
    if (st == GW_OK) st = gw_file_write(f->path, gw_buf_str(&tidy), tidy.n, err);
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

static gw_status finish(gw_chart_file *f, gw_error *err)
{
    if (!is_whole(f))
        return gw_fail(err, GW_E_IO, "%s: gnuplot left no chart, or half of one: is the disk full?", f->path);
    if (f->svg) return finish_svg(f, err); /* the raw one is removed with what else is left */
    gw_status status = gw_file_commit(f->aside, f->path, err);
    free(f->aside);
    f->aside = NULL;
    return status;
}

gw_status gw_charts_draw(gw_charts *charts, gw_error *err)
{
    gw_buf script = { 0 };
    gw_status st = GW_OK;
    charts->left_out = false;
    if (charts->failed || charts->script.failed)
        return gw_fail(err, GW_E_NOMEM, "out of memory while charts were made");
    if (charts->n_files == 0) return GW_OK;
    st = gw_dir_make(charts->dir, err);
    if (st == GW_OK) st = make_asides(charts, &script, err);
    if (st == GW_OK)
        st = gw_gnuplot_run(charts->dir, &script, charts->seconds, &charts->left_out, &charts->said, err);
    for (int i = 0; st == GW_OK && !charts->left_out && i < charts->n_files; i++)
        st = finish(&charts->files[i], err);
    remove_asides(charts);
    gw_buf_free(&script);
    return st;
}
