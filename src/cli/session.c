/* SPDX-License-Identifier: MIT */
#include "cli/session.h"

#include "casefile/nearest.h"
#include "cli/output.h"

#include <stdio.h>
#include <string.h>

/* A file that cannot be read is wrong input; only a lack of memory is the machine's fault. */
static int exit_of_reading(gw_status status)
{
    if (status == GW_OK) return GW_EXIT_DONE;
    return status == GW_E_NOMEM ? GW_EXIT_OUTPUT : GW_EXIT_INPUT;
}

static bool is_told(gw_faults *told, bool warning, const char *line)
{
    if (!told) return false;
    int n = warning ? gw_faults_warnings(told) : gw_faults_count(told);
    for (int i = 0; i < n; i++)
        if (strcmp(warning ? gw_faults_warning(told, i) : gw_faults_text(told, i), line) == 0) return true;
    gw_faults_add(told, warning, line);
    return false;
}

static void print_faults(const gw_session *s, int from, int warnings_from, bool quiet)
{
    const gw_faults *faults = &s->faults;
    int n = gw_faults_count(faults);
    /* What else was found is not to be trusted where part of the file had no memory; its line is the last. */
    for (int i = faults->out_of_memory ? n - 1 : from; i < n; i++)
        if (!is_told(s->told, false, gw_faults_text(faults, i)))
            fprintf(stderr, "%s\n", gw_faults_text(faults, i));
    for (int i = warnings_from; !quiet && i < gw_faults_warnings(faults); i++)
        if (!is_told(s->told, true, gw_faults_warning(faults, i)))
            fprintf(stderr, "warning: %s\n", gw_faults_warning(faults, i));
}

int gw_session_open_among(const gw_args *args, const char *path, gw_faults *told, gw_session *session)
{
    const char *dir = gw_args_text(args, GW_OPT_MATERIALS, 0);
    *session = (gw_session){ .told = told };
    gw_status st = gw_materials_builtin(&session->materials, &session->faults);
    if (st == GW_OK && dir) st = gw_materials_add_dir(&session->materials, dir, &session->faults);
    if (st == GW_OK && path) st = gw_case_load(path, &session->materials, &session->c, &session->faults);
    print_faults(session, 0, 0, gw_args_has(args, GW_OPT_QUIET));
    if (st != GW_OK && gw_faults_count(&session->faults) == 0)
        fprintf(stderr, "giveway %s: %s\n", args->command->name, gw_status_text(st));
    return exit_of_reading(st);
}

int gw_session_open(const gw_args *args, const char *path, gw_session *session)
{
    return gw_session_open_among(args, path, NULL, session);
}

int gw_session_stand(const gw_args *args, gw_session *session)
{
    int told = gw_faults_count(&session->faults), warned = gw_faults_warnings(&session->faults);
    gw_status st = gw_study_standing(&session->c, &session->faults);
    print_faults(session, told, warned, gw_args_has(args, GW_OPT_QUIET));
    return gw_exit_of(st);
}

void gw_session_close(gw_session *session)
{
    gw_case_free(&session->c);
    gw_materials_free(&session->materials);
    gw_faults_free(&session->faults);
}

/* All of them where they are few: who is told what there is need not open the case. */
static void list_names(const gw_name_list *names, gw_buf *out)
{
    enum { FEW = 12 };
    for (int i = 0; i < names->n && i < FEW; i++) {
        gw_buf_say(out, "%s%s", i ? ", " : "; it has ", names->name(names->of, i));
    }
    if (names->n > FEW) gw_buf_fmt(out, " and %d more", names->n - FEW);
}

gw_status gw_session_missing(const char *what, const char *name, const gw_name_list *names, gw_error *err)
{
    char hint[GW_HINT_MAX];
    gw_nearest near = { .want = name };
    gw_buf list = { 0 };
    for (int i = 0; i < names->n; i++) gw_nearest_offer(&near, names->name(names->of, i));
    gw_nearest_hint(&near, hint);
    if (!*hint) list_names(names, &list);
    gw_status status = gw_fail(err, GW_E_SCHEMA, "there is no %s \"%s\" in the case%s%s", what, name, hint,
                               gw_buf_str(&list));
    gw_buf_free(&list);
    return status;
}

int gw_session_no_such(const gw_args *args, const char *what, const char *name, const gw_name_list *names)
{
    gw_error err = { 0 };
    gw_session_missing(what, name, names, &err);
    return gw_complain(args->command->name, &err);
}

int gw_session_readings(const gw_args *args, gw_session *session, gw_readings *out)
{
    gw_faults faults = { 0 };
    const char *path = gw_args_text(args, GW_OPT_READINGS, 0);
    gw_status st = gw_readings_load(path, &session->c, out, &faults);
    gw_print_faults(&faults, st != GW_OK || gw_args_has(args, GW_OPT_QUIET));
    if (st != GW_OK && gw_faults_count(&faults) == 0)
        fprintf(stderr, "giveway %s: %s\n", args->command->name, gw_status_text(st));
    gw_faults_free(&faults);
    if (st == GW_OK) return GW_EXIT_DONE;
    return st == GW_E_NOMEM ? GW_EXIT_OUTPUT : GW_EXIT_INPUT;
}
