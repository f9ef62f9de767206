/* SPDX-License-Identifier: MIT */
#include "cli/output.h"

#include "cli/command.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

/* Why standard output failed, kept until the end because later calls overwrite errno. */
static int output_errno;

int gw_emit(const gw_buf *text)
{
    gw_error err = { 0 };
    if (gw_buf_status(text, &err) != GW_OK) {
        fprintf(stderr, "giveway: %s\n", err.msg);
        return GW_EXIT_OUTPUT;
    }
    errno = 0;
    bool ok = fwrite(gw_buf_str(text), 1, text->n, stdout) == text->n && fflush(stdout) == 0;
    if (!ok && !output_errno) output_errno = errno;
    return ok ? GW_EXIT_DONE : GW_EXIT_OUTPUT;
}

int gw_close_output(int status)
{
    errno = 0;
    bool ok = fflush(stdout) == 0 && !ferror(stdout);
    if (ok) return status;
    int why = output_errno ? output_errno : errno;
    if (why != EPIPE)
        fprintf(stderr, "giveway: cannot write to standard output: %s\n", why ? strerror(why) : "it failed");
    return GW_EXIT_OUTPUT;
}

int gw_complain(const char *command, const gw_error *err)
{
    fprintf(stderr, "giveway %s: %s\n", command, err->msg[0] ? err->msg : gw_status_text(err->code));
    return gw_exit_of(err->code);
}

/* The first kit that the same axle fails with for the same reason. */
static bool told_before(const gw_deflect_study *d, int at)
{
    const gw_deflection *item = &d->item[at];
    for (int i = 0; i < at; i++)
        if (d->item[i].failed && d->item[i].load == item->load &&
            strcmp(d->item[i].failed, item->failed) == 0)
            return true;
    return false;
}

int gw_tell_failed(const char *command, const gw_case *c, const gw_deflect_study *d, int status)
{
    for (int i = 0; i < d->n; i++) {
        const gw_deflection *item = &d->item[i];
        if (!item->failed || told_before(d, i)) continue;
        fprintf(stderr, "giveway %s: %s: load \"%s\", kit %s: %s\n", command, c->path,
                c->loads[item->load].name, c->kits[item->kit].name, item->failed);
    }
    return d->n_failed && status == GW_EXIT_DONE ? GW_EXIT_MODEL : status;
}

static bool is_set(const char *name)
{
    const char *value = getenv(name);
    return value && *value;
}

void gw_print_faults(const gw_faults *faults, bool quiet)
{
    for (int i = 0; i < gw_faults_count(faults); i++) fprintf(stderr, "%s\n", gw_faults_text(faults, i));
    for (int i = 0; !quiet && i < gw_faults_warnings(faults); i++)
        fprintf(stderr, "warning: %s\n", gw_faults_warning(faults, i));
}

gw_status gw_refuse_existing(const char *path, gw_error *err)
{
    if (!path || access(path, F_OK) != 0) return GW_OK;
    return gw_fail(err, GW_E_IO, "%s: there is a file of this name, which is left alone: name another", path);
}

void gw_print_warnings(bool quiet, const char **warnings, int n)
{
    for (int i = 0; !quiet && i < n; i++) fprintf(stderr, "warning: %s\n", warnings[i]);
}

bool gw_wants_bold(void)
{
    const char *term = getenv("TERM");
    return isatty(STDOUT_FILENO) && !is_set("NO_COLOR") && term && strcmp(term, "dumb") != 0;
}

static int output_width(int without_terminal)
{
    struct winsize size;
    if (!isatty(STDOUT_FILENO) || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || !size.ws_col)
        return without_terminal;
    return size.ws_col < 40 ? 40 : size.ws_col > 160 ? 160 : size.ws_col;
}

int gw_output_width(void)
{
    return output_width(100);
}

int gw_output_wide(void)
{
    return output_width(120);
}

void gw_progress(bool quiet, const char *text)
{
    static size_t shown;
    if (quiet || !isatty(STDERR_FILENO)) return;
    size_t n = text ? strlen(text) : 0;
    fprintf(stderr, "\r%s%*s\r%s", text ? text : "", shown > n ? (int)(shown - n) : 0, "", text ? text : "");
    fflush(stderr);
    shown = n;
}

int gw_exit_of(gw_status status)
{
    switch (status) {
    case GW_OK:
        return GW_EXIT_DONE;
    case GW_E_USAGE:
        return GW_EXIT_USAGE;
    case GW_E_MECHANISM:
    case GW_E_NUMERIC:
        return GW_EXIT_MODEL;
    case GW_E_IO:
    case GW_E_NOMEM:
        return GW_EXIT_OUTPUT;
    default:
        return GW_EXIT_INPUT;
    }
}
