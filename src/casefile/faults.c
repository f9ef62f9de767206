/* SPDX-License-Identifier: MIT */
#include "giveway/faults.h"

typedef struct gw_fault_line {
    struct gw_fault_line *next;
    bool warning;
    char *text;
} gw_fault_line;

void gw_faults_add(gw_faults *faults, bool warning, const char *text)
{
    if ((warning ? faults->n_warnings : faults->n_faults) >= GW_MAX_FAULTS) {
        if (!warning) faults->overflow = true;
        return;
    }
    gw_fault_line *line = gw_arena_alloc(&faults->arena, 1, sizeof *line);
    char *copy = gw_arena_strdup(&faults->arena, text);
    if (!line || !copy) {
        faults->out_of_memory = true;
        return;
    }
    for (char *c = copy; *c; c++)
        if ((unsigned char)*c < 0x20 || *c == 0x7F) *c = ' ';
    line->warning = warning;
    line->text = copy;
    *(faults->last ? &faults->last->next : &faults->first) = line;
    faults->last = line;
    *(warning ? &faults->n_warnings : &faults->n_faults) += 1;
}

static const char *line_text(const gw_faults *faults, bool warning, int index)
{
    for (const gw_fault_line *l = faults->first; l; l = l->next)
        if (l->warning == warning && index-- == 0) return l->text;
    return "";
}

int gw_faults_count(const gw_faults *faults)
{
    return faults->n_faults + faults->overflow + faults->out_of_memory;
}

const char *gw_faults_text(const gw_faults *faults, int index)
{
    if (index < faults->n_faults) return line_text(faults, false, index);
    if (faults->overflow && index == faults->n_faults)
        return "there are more faults than can be listed: correct these first";
    return "out of memory while the file was read";
}

int gw_faults_warnings(const gw_faults *faults)
{
    return faults->n_warnings;
}

const char *gw_faults_warning(const gw_faults *faults, int index)
{
    return line_text(faults, true, index);
}

void gw_faults_free(gw_faults *faults)
{
    gw_arena_free(&faults->arena);
    *faults = (gw_faults){ 0 };
}
