/* SPDX-License-Identifier: MIT */
#include "cli/command.h"

#include "casefile/nearest.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

const gw_option_spec GW_OPTIONS[GW_OPTION_COUNT] = {
#define GW_AS_SPEC(id, name, kind, values, text)                                                             \
    [GW_OPT_##id] = { name, "--" name, GW_OPTION_##kind, values, text },
    GW_OPTION_LIST_ALL(GW_AS_SPEC)
#undef GW_AS_SPEC
};

static bool takes(const gw_command *command, gw_option option)
{
    return command->options >> option & 1;
}

static bool is_short_for(const char *word, gw_option option)
{
    return (option == GW_OPT_OUT && word[1] == 'o') || (option == GW_OPT_HELP && strcmp(word, "-h") == 0);
}

/* Finds the option of a word that begins with '-'; `value` is what is attached to it, or NULL. */
static bool find_option(const gw_command *command, const char *word, gw_option *option, const char **value)
{
    const char *name = word + 2;
    size_t n = strcspn(name, "=");
    bool is_long = word[1] == '-';
    *value = NULL;
    for (int i = 0; i < GW_OPTION_COUNT; i++) {
        *option = (gw_option)i;
        if (!takes(command, *option)) continue;
        if (is_long && strlen(GW_OPTIONS[i].name) == n && strncmp(GW_OPTIONS[i].name, name, n) == 0) {
            if (name[n] == '=') *value = name + n + 1;
            return true;
        }
        if (!is_long && is_short_for(word, *option)) {
            if (word[2]) *value = word + 2;
            return true;
        }
    }
    return false;
}

/* No slip of the pen: it would only be told a name that looks like it. */
static bool is_elsewhere(const char *name)
{
    for (int i = 0; i < GW_OPTION_COUNT; i++)
        if (strcmp(GW_OPTIONS[i].dashed, name) == 0) return true;
    return false;
}

static gw_status unknown_option(const gw_command *command, const char *word, gw_error *err)
{
    char hint[GW_HINT_MAX], name[64];
    size_t n = strcspn(word, "=");
    if (n >= sizeof name) n = sizeof name - 1;
    memcpy(name, word, n);
    name[n] = '\0';
    gw_nearest near = { .want = name };
    if (is_elsewhere(name))
        return gw_fail(err, GW_E_USAGE, "unknown option \"%s\": other commands have it, %s does not", name,
                       command->name);
    for (int i = 0; i < GW_OPTION_COUNT; i++)
        if (takes(command, (gw_option)i)) gw_nearest_offer(&near, GW_OPTIONS[i].dashed);
    return gw_fail(err, GW_E_USAGE, "unknown option \"%s\"%s", name, gw_nearest_hint(&near, hint));
}

/* `word` is one of "a|b|c". */
static bool is_choice(const char *choices, const char *word)
{
    size_t n = strlen(word);
    for (const char *c = choices; n > 0; c++) {
        size_t k = strcspn(c, "|");
        if (k == n && strncmp(c, word, n) == 0) return true;
        c += k;
        if (!*c) break;
    }
    return false;
}

static gw_status check_value(gw_option option, struct gw_given *given, gw_error *err)
{
    const gw_option_spec *spec = &GW_OPTIONS[option];
    if (spec->kind == GW_OPTION_CHOICE && !is_choice(spec->values, given->value))
        return gw_fail(err, GW_E_USAGE, "--%s takes %s, not \"%s\"", spec->name, spec->values, given->value);
    if (spec->kind == GW_OPTION_NUMBER || spec->kind == GW_OPTION_SIGNED) {
        char *end;
        bool positive = spec->kind == GW_OPTION_NUMBER;
        given->number = strtod(given->value, &end);
        bool is_number = end != given->value && !*end && isfinite(given->number);
        if (!is_number || (positive && given->number <= 0))
            return gw_fail(err, GW_E_USAGE, "--%s takes a number%s, not \"%s\"", spec->name,
                           positive ? " above zero" : "", given->value);
    } else if (!*given->value) {
        return gw_fail(err, GW_E_USAGE, "--%s must not be empty", spec->name);
    }
    return GW_OK;
}

/* One option at argv[*i]; moves *i past a value that stands as a word of its own. */
static gw_status take_option(gw_args *args, int argc, char **argv, int *i, gw_error *err)
{
    gw_option option;
    const char *value;
    if (!find_option(args->command, argv[*i], &option, &value))
        return unknown_option(args->command, argv[*i], err);
    const gw_option_spec *spec = &GW_OPTIONS[option];
    if (spec->kind != GW_OPTION_LIST && gw_args_has(args, option))
        return gw_fail(err, GW_E_USAGE, "--%s is given twice", spec->name);
    struct gw_given *given = &args->given[args->n_given];
    *given = (struct gw_given){ .option = option };
    if (spec->kind == GW_OPTION_FLAG) {
        if (value) return gw_fail(err, GW_E_USAGE, "--%s takes no value", spec->name);
        args->n_given++;
        return GW_OK;
    }
    if (!value) {
        const char *next = *i + 1 < argc ? argv[*i + 1] : NULL;
        bool looks_like_option = next && next[0] == '-' && next[1] && !strchr("0123456789.", next[1]);
        if (!next || looks_like_option)
            return gw_fail(err, GW_E_USAGE, "--%s needs a value: %s", spec->name, spec->values);
        value = argv[++*i];
    }
    given->value = value;
    gw_status st = check_value(option, given, err);
    if (st == GW_OK) args->n_given++;
    return st;
}

static gw_status check_words(const gw_args *args, gw_error *err)
{
    const gw_command *command = args->command;
    if (gw_args_has(args, GW_OPT_HELP) || gw_args_has(args, GW_OPT_VERSION)) return GW_OK;
    if (gw_args_has(args, GW_OPT_FORMAT_CHARTS) && !gw_args_has(args, GW_OPT_OUT))
        return gw_fail(err, GW_E_USAGE, "--format-charts is for charts: say with -o DIR where they go");
    if (args->n_words < command->words[0])
        return gw_fail(err, GW_E_USAGE, "something is missing: giveway %s %s", command->name, command->args);
    if (args->n_words > command->words[1])
        return gw_fail(err, GW_E_USAGE, "\"%s\" is one word too many: giveway %s%s%s",
                       args->words[command->words[1]], command->name, *command->args ? " " : "",
                       command->args);
    return GW_OK;
}

/* Sorts the words of the command line into options and others. */
static gw_status take_words(gw_args *args, int argc, char **argv, gw_error *err)
{
    bool only_words = false;
    for (int i = 0; i < argc; i++) {
        gw_status st = GW_OK;
        if (!only_words && strcmp(argv[i], "--") == 0)
            only_words = true;
        else if (!only_words && argv[i][0] == '-' && argv[i][1])
            st = take_option(args, argc, argv, &i, err);
        else
            args->words[args->n_words++] = argv[i];
        if (st != GW_OK) return st;
    }
    return check_words(args, err);
}

gw_status gw_args_parse(const gw_command *command, int argc, char **argv, gw_args *out, gw_error *err)
{
    size_t room = (size_t)argc + 1;
    gw_args args = { .command = command,
                     .words = calloc(room, sizeof *args.words),
                     .given = calloc(room, sizeof *args.given) };
    if (!args.words || !args.given) {
        gw_args_free(&args);
        return gw_fail(err, GW_E_NOMEM, "out of memory");
    }
    gw_status st = take_words(&args, argc, argv, err);
    if (st == GW_OK)
        *out = args;
    else
        gw_args_free(&args);
    return st;
}

void gw_args_free(gw_args *args)
{
    free(args->words);
    free(args->given);
    *args = (gw_args){ 0 };
}

int gw_args_count(const gw_args *args, gw_option option)
{
    int n = 0;
    for (int i = 0; i < args->n_given; i++) n += args->given[i].option == option;
    return n;
}

bool gw_args_has(const gw_args *args, gw_option option)
{
    return gw_args_count(args, option) > 0;
}

static const struct gw_given *given_at(const gw_args *args, gw_option option, int index)
{
    for (int i = 0; i < args->n_given; i++)
        if (args->given[i].option == option && index-- == 0) return &args->given[i];
    return NULL;
}

const char *gw_args_text(const gw_args *args, gw_option option, int index)
{
    const struct gw_given *given = given_at(args, option, index);
    return given ? given->value : NULL;
}

double gw_args_number(const gw_args *args, gw_option option)
{
    const struct gw_given *given = given_at(args, option, 0);
    return given ? given->number : 0.0;
}

bool gw_args_is(const gw_args *args, gw_option option, const char *value)
{
    const char *given = gw_args_text(args, option, 0);
    return given && strcmp(given, value) == 0;
}
