/* SPDX-License-Identifier: MIT */
/** Small invented cases as text, and a way to spoil them in one place. */
#ifndef TESTS_CASE_SAMPLE_H
#define TESTS_CASE_SAMPLE_H

#include "giveway/casefile.h"

/** A trailing arm: the least that a case with a corner needs. */
extern const char SAMPLE_MINIMAL[];

/** Every section, every type of bush, every kind of load and adjuster. */
extern const char SAMPLE_FULL[];

/** `text` with the one place where `from` stands replaced by `to`; the test fails unless it stands there
 * once. */
char *sample_change(const char *text, const char *from, const char *to);

/** Reads text as "sample.json" with the built-in materials, and keeps it with sample_keep. */
gw_status sample_read(const char *text, gw_case *out, gw_faults *faults);

/** A whole case file with the built-in materials; the test fails where it is not sound. */
void sample_load(const char *path, gw_case *out);

/**
 * Where GIVEWAY_SAMPLES names a folder, puts the text there with what the reader said of it, for whoever
 * reads the same files in another way: KIND-NUMBER.json, and KIND-NUMBER.faults with a line each (empty:
 * sound). What is no JSON at all, or could not be read for another reason, is left out.
 */
void sample_keep(const char *kind, const char *text, gw_status verdict, const gw_faults *faults);

#endif
