/* SPDX-License-Identifier: MIT */
/*
 * Whole runs: the commands as they are, in this process, with the standard streams turned into memory (glibc
 * lets them be assigned). Whatever the case, there is an answer or one line that says why not: never a
 * number that is none, never half an answer beside a failure.
 */
#include "cli/command.h"
#include "fuzz/target.h"

#include <cjson/cJSON.h>
#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

enum { MOST_WORDS = 16 };

/* What a result always holds; elsewhere null may say that there is none. */
static const char *const NEVER_NULL[] = {
    "camber_change_deg",
    "toe_change_deg",
    "caster_change_deg",
    "camber_deg",
    "toe_deg",
    "wheel_centre_mm",
    "contact_patch_mm",
    "spring_force_N",
    "deflection_mm",
    "rotation_deg",
    "force_N",
    "moment_Nm",
    "toe_share_deg",
    "camber_share_deg",
    "travel_toe_deg",
    "geometry_toe_deg",
    "travel_camber_deg",
    "geometry_camber_deg",
    "roll_deg",
    "travel_mm",
    "dive_mm",
    "patch_force_N",
    "hub_force_N",
    "patch_moment_Nm",
    "camber_to_road_deg",
    "static_camber_deg",
    "radial_N_per_mm",
    "axial_N_per_mm",
    "conical_Nm_per_deg",
    "torsional_Nm_per_deg",
    "comfort_ms2",
    "harshness_N",
    "harshness_dB",
    "road_noise_N",
    "road_noise_dB",
    "body_force_N",
    "dB_from_baseline",
    "wheel_rate_N_per_mm",
    "tilt_deg",
    "offset_mm",
    "clock_deg",
    "length_change_mm",
    "turns",
    "shim_mm",
    NULL,
};

typedef struct gw_said {
    char *text;
    size_t n;
} gw_said;

static void prepare(void)
{
    gsl_set_error_handler_off();
    setenv("NO_COLOR", "1", 1);
}

/* The words of the key "// run" and the case; options that write files are not for here. */
static int command_line(const cJSON *root, const char *path, char *words, size_t room, char **argv)
{
    const cJSON *run = cJSON_GetObjectItemCaseSensitive(root, "// run");
    int n = 0;
    snprintf(words, room, "%s", cJSON_IsString(run) ? run->valuestring : "compare");
    for (char *w = strtok(words, " "); w && n < MOST_WORDS - 2; w = strtok(NULL, " "))
        if (strncmp(w, "-o", 2) != 0 && strncmp(w, "--o", 3) != 0 && strncmp(w, "--m", 3) != 0) argv[n++] = w;
    argv[n++] = (char *)path;
    return n;
}

static bool is_word(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == '"';
}

/* nan, inf and infinity as words of their own, as printf writes them. */
static void check_numbers(const char *text, const char *what)
{
    for (const char *p = text; *p; p++) {
        if (p != text && is_word(p[-1])) continue;
        size_t n = strncasecmp(p, "infinity", 8) == 0 ? 8 : 3;
        if (n == 3 && strncasecmp(p, "nan", 3) != 0 && strncasecmp(p, "inf", 3) != 0) continue;
        if (!is_word(p[n])) gw_fuzz_found("%s: %.60s", what, p);
    }
}

static void check_nulls(const cJSON *at, const char *key)
{
    if (at->string) key = at->string;
    for (int i = 0; cJSON_IsNull(at) && NEVER_NULL[i]; i++)
        if (strcmp(NEVER_NULL[i], key) == 0) gw_fuzz_found("the result has no number for %s", key);
    for (const cJSON *c = at->child; c; c = c->next) check_nulls(c, key);
}

static void check_json(const char *text)
{
    cJSON *root = cJSON_Parse(text);
    if (root)
        check_nulls(root, "");
    else
        gw_fuzz_found("the result is no JSON: %.100s", text);
    cJSON_Delete(root);
}

static int count_lines(const char *text)
{
    int n = 0;
    for (const char *p = text; *p; p = strchr(p, '\n') + 1) {
        if (!strchr(p, '\n')) gw_fuzz_found("a message without an end: %s", p);
        n += strncmp(p, "warning: ", 9) != 0;
    }
    return n;
}

/* `each`: a command that tells every kit's fault, not the first. */
static void judge(int status, const gw_said *out, const gw_said *err, bool json, bool each)
{
    int complaints = count_lines(err->text);
    check_numbers(out->text, "output");
    check_numbers(err->text, "message");
    if (status == GW_EXIT_DONE) {
        if (out->n == 0) gw_fuzz_found("done, but nothing was printed");
        if (json) check_json(out->text);
        return;
    }
    bool partly = status == GW_EXIT_MODEL && out->n; /* some loads failed: the others are printed */
    if (partly && json) check_json(out->text);
    if (out->n && !partly) gw_fuzz_found("exit status %d, but something was printed", status);
    if (status != GW_EXIT_INPUT && status != GW_EXIT_USAGE && status != GW_EXIT_MODEL)
        gw_fuzz_found("exit status %d: %s", status, err->text);
    if (complaints < 1 || (status == GW_EXIT_MODEL && !partly && !each && complaints != 1))
        gw_fuzz_found("exit status %d with %d lines", status, complaints);
}

static void run_command(const gw_command *command, int argc, char **argv)
{
    FILE *real_out = stdout, *real_err = stderr;
    gw_said out = { 0 }, err = { 0 };
    gw_args args = { 0 };
    gw_error wrong = { 0 };
    if (gw_args_parse(command, argc, argv, &args, &wrong) != GW_OK) return;
    bool json = gw_args_is(&args, GW_OPT_FORMAT, "json"), help = gw_args_has(&args, GW_OPT_HELP);
    stdout = open_memstream(&out.text, &out.n);
    stderr = open_memstream(&err.text, &err.n);
    int status = help ? GW_EXIT_DONE : command->run(&args);
    fclose(stdout);
    fclose(stderr);
    stdout = real_out;
    stderr = real_err;
    if (!help) judge(status, &out, &err, json, strcmp(command->name, "check") == 0);
    gw_args_free(&args);
    free(out.text);
    free(err.text);
}

void gw_fuzz_run(const uint8_t *data, size_t size)
{
    char words[512], *argv[MOST_WORDS];
    prepare();
    cJSON *root = cJSON_ParseWithLength((const char *)data, size);
    if (!root) return; /* the reader's own target tries what is no JSON */
    const char *path = gw_fuzz_write("json", data, size);
    int n = command_line(root, path, words, sizeof words, argv);
    cJSON_Delete(root);
    const gw_command *command = gw_command_find(argv[0]);
    if (command) run_command(command, n - 1, argv + 1);
}
