/* SPDX-License-Identifier: MIT */
/**
 * What is fuzzed. A target takes any bytes and either comes back or calls gw_fuzz_found, which ends the
 * process: a fuzzer and the replay of its corpus use the same ones.
 */
#ifndef TESTS_FUZZ_TARGET_H
#define TESTS_FUZZ_TARGET_H

#include <stddef.h>
#include <stdint.h>

void gw_fuzz_case(const uint8_t *data, size_t size);     /**< the case reader                           */
void gw_fuzz_material(const uint8_t *data, size_t size); /**< the material reader                       */
void gw_fuzz_tyre(const uint8_t *data, size_t size);     /**< the reader of tyre tables (CSV)            */
void gw_fuzz_table(const uint8_t *data, size_t size);    /**< the reader of every other table            */
void gw_fuzz_bench(const uint8_t *data, size_t size);    /**< files of a press or a test rig, and their laws */
void gw_fuzz_readings(const uint8_t *data, size_t size); /**< readings from the ramp, table and JSON       */
void gw_fuzz_sheet(const uint8_t *data, size_t size);    /**< the filled sheet of a first case, and its case  */

/**
 * A command on a case, in this process. The words of the command line stand in the case's key "// run",
 * "compare --format json" for example; left out: "compare".
 */
void gw_fuzz_run(const uint8_t *data, size_t size);

/** Writes the bytes to a file of this process, removed when it ends; returns its path. */
const char *gw_fuzz_write(const char *ending, const uint8_t *data, size_t size);

/** Says what is wrong and aborts. */
_Noreturn void gw_fuzz_found(const char *fmt, ...) __attribute__((format(printf, 1, 2)));

/**
 * Changes a case as somebody might who wants to break the program: rates from 1e-3 to 1e12, points on top of
 * one another or in line, joints left out, entries doubled. What comes out is JSON again.
 *
 * @param[in,out] data  `size` bytes in room for `room`; returns how many there are now, 0 where it is no
 * JSON.
 */
size_t gw_fuzz_mutate(uint8_t *data, size_t size, size_t room, unsigned seed);

#endif
