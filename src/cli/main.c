/* SPDX-License-Identifier: MIT */
#include "casefile/nearest.h"
#include "cli/command.h"
#include "cli/memory.h"
#include "cli/output.h"
#include "giveway/version.h"
#include "show/results.h"

#include <fcntl.h>
#include <gsl/gsl_errno.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

static int unknown_command(const char *name)
{
    char hint[GW_HINT_MAX];
    gw_nearest near = { .want = name };
    for (const gw_command *const *c = GW_COMMANDS; *c; c++) gw_nearest_offer(&near, (*c)->name);
    fprintf(stderr, "giveway: there is no command \"%s\"%s (see giveway --help)\n", name,
            gw_nearest_hint(&near, hint));
    return GW_EXIT_USAGE;
}

static void print_version(void)
{
    printf("giveway %s\n", GW_VERSION);
}

static int run_command(const gw_command *command, int argc, char **argv)
{
    gw_args args = { 0 };
    gw_error err = { 0 };
    gw_status st = gw_args_parse(command, argc, argv, &args, &err);
    if (st != GW_OK) {
        fprintf(stderr, "giveway %s: %s (see giveway help %s)\n", command->name, err.msg, command->name);
        return gw_exit_of(st);
    }
    int status = GW_EXIT_DONE;
    if (gw_args_has(&args, GW_OPT_HELP))
        gw_help_command(command, stdout);
    else if (gw_args_has(&args, GW_OPT_VERSION))
        print_version();
    else
        status = command->run(&args);
    gw_args_free(&args);
    return status;
}

static int print_schema(void)
{
    gw_buf out = { 0 };
    gw_results_schema(&out);
    int status = gw_emit(&out);
    gw_buf_free(&out);
    return status;
}

/* What the keys of a result mean. */
static int print_keys(int argc, char **argv)
{
    gw_buf out = { 0 };
    if (argc != 1 || !gw_command_find(argv[0])) {
        fprintf(stderr, "giveway help: keys of what? giveway help keys COMMAND\n");
        return GW_EXIT_USAGE;
    }
    if (!gw_results_keys(argv[0], &out)) {
        fprintf(stderr, "giveway help: %s prints no keys: it has no --format json\n", argv[0]);
        return GW_EXIT_USAGE;
    }
    int status = gw_emit(&out);
    gw_buf_free(&out);
    return status;
}

static int run_help(int argc, char **argv)
{
    if (argc == 0) {
        gw_help_program(stdout);
        return GW_EXIT_DONE;
    }
    if (strcmp(argv[0], "schema") == 0 && argc == 1) return print_schema();
    if (strcmp(argv[0], "keys") == 0) return print_keys(argc - 1, argv + 1);
    const gw_command *command = gw_command_find(argv[0]);
    if (!command) return unknown_command(argv[0]);
    if (argc > 1) {
        fprintf(stderr, "giveway help: \"%s\" is one word too many: giveway help COMMAND\n", argv[1]);
        return GW_EXIT_USAGE;
    }
    gw_help_command(command, stdout);
    return GW_EXIT_DONE;
}

static int run(int argc, char **argv)
{
    if (argc < 2) {
        gw_help_program(stderr);
        return GW_EXIT_USAGE;
    }
    const char *word = argv[1];
    if (strcmp(word, "--version") == 0) {
        print_version();
        return GW_EXIT_DONE;
    }
    if (strcmp(word, "help") == 0) return run_help(argc - 2, argv + 2);
    if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0) return run_help(0, NULL);
    if (word[0] == '-') {
        fprintf(stderr, "giveway: a command comes first, then its options: giveway COMMAND %s\n", word);
        return GW_EXIT_USAGE;
    }
    const gw_command *command = gw_command_find(word);
    return command ? run_command(command, argc - 2, argv + 2) : unknown_command(word);
}

/*
 * A closed standard stream would give its number to the next file opened, and results would go there.
 * A read-only stand-in keeps the number taken, and writing to it fails as it should.
 */
static void hold_standard_streams(void)
{
    for (int fd = 0; fd <= 2; fd++)
        if (fcntl(fd, F_GETFD) < 0 && open("/dev/null", O_RDONLY) < 0) return;
}

int main(int argc, char **argv)
{
    hold_standard_streams();
    gw_memory_in_large_pages();
    gsl_set_error_handler_off();
    signal(SIGPIPE, SIG_IGN); /* a write to a closed pipe then fails, and gw_close_output sees it */
    signal(SIGXFSZ, SIG_IGN); /* and so does one past the largest file that the user may write */
    return gw_close_output(run(argc, argv));
}
