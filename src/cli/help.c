/* SPDX-License-Identifier: MIT */
#include "cli/command.h"

#include "format/table.h"
#include "giveway/version.h"
#include "show/words.h"

#include <stdio.h>
#include <string.h>

enum { HELP_WIDTH = 96 };

const gw_command *const GW_COMMANDS[] = {
#define GW_AS_ENTRY(id) &GW_COMMAND_##id,
    GW_COMMAND_LIST(GW_AS_ENTRY)
#undef GW_AS_ENTRY
        NULL,
};

const gw_command *gw_command_find(const char *name)
{
    for (const gw_command *const *c = GW_COMMANDS; *c; c++)
        if (strcmp((*c)->name, name) == 0) return *c;
    return NULL;
}

/* Help must not depend on memory being there for more than a line: what fails to fit is left out. */
static void put_paragraph(FILE *to, const char *text, int indent)
{
    gw_buf out = { 0 };
    gw_buf_paragraph(&out, text, HELP_WIDTH, indent);
    fputs(gw_buf_str(&out), to);
    gw_buf_free(&out);
}

void gw_help_program(FILE *to)
{
    fprintf(to,
            "giveway %s: what a suspension bush gives away under load, and what each kit changes\n\n"
            "usage: giveway COMMAND [words and options]\n\n",
            GW_VERSION);
    for (const gw_command *const *c = GW_COMMANDS; *c; c++)
        fprintf(to, "  %-8s %s\n", (*c)->name, (*c)->summary);
    fprintf(to, "  %-8s %s\n\n", "help", "help on a command: giveway help COMMAND");
    fprintf(to, "exit status: 0 done, 1 the input is wrong, 2 the command line is wrong,\n"
                "  3 the model cannot carry the load or did not converge, 4 a file could not be written\n\n");
    put_paragraph(to, gw_words_text(GW_WORDS_SAFETY), 0);
    put_paragraph(to, gw_words_text(GW_WORDS_DEFER), 0);
}

static void put_option(FILE *to, gw_option option, const gw_command *command)
{
    const gw_option_spec *spec = &GW_OPTIONS[option];
    const char *text = option == GW_OPT_OUT && command->out ? command->out : spec->text;
    char left[64];
    const char *brief = option == GW_OPT_OUT ? "-o, " : option == GW_OPT_HELP ? "-h, " : "";
    snprintf(left, sizeof left, "%s--%s%s%s", brief, spec->name, *spec->values ? " " : "", spec->values);
    fprintf(to, "  %-28s %s\n", left, text);
}

void gw_help_command(const gw_command *command, FILE *to)
{
    fprintf(to, "giveway %s: %s\n\nusage: giveway %s%s%s [options]\n\n", command->name, command->summary,
            command->name, *command->args ? " " : "", command->args);
    if (command->details) {
        put_paragraph(to, command->details, 0);
        fputs("\n", to);
    }
    for (int i = 0; i < GW_OPTION_COUNT; i++)
        if (command->options >> i & 1) put_option(to, (gw_option)i, command);
    fprintf(to, "\nexamples:\n  %s\n  %s\n", command->examples[0], command->examples[1]);
}
