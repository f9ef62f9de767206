/* SPDX-License-Identifier: MIT */
/** What every unit test uses: cmocka with its headers in order, and checks in double precision. */
#ifndef TESTS_CHECK_H
#define TESTS_CHECK_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/** |got - want| <= tol, or the test fails and names what. Written so that NaN fails. */
void check_abs(double got, double want, double tol, const char *what);

/** |got - want| <= tol |want|. */
void check_rel(double got, double want, double tol, const char *what);

/**
 * From here to the end of the block, check_abs and check_rel compare with the world outside the program, and
 * `source` says where the wanted values stand or which general-purpose solver gave them. Where
 * GIVEWAY_VALIDATION names a file, each such check adds a row to it, of which scripts/validate.sh makes a
 * table.
 */
#define check_from(source) CHECK_IN_BLOCK(GW_CHECK_FORMULA, source)

/*
 * How strong a proof is. check_from stands for the weakest of what is worked out: a formula of the source
 * evaluated again, apart from this program. Where the wanted values themselves are printed in the source, say
 * check_printed_in; where a general-purpose solver gave them, check_solved_by. A source that says "from
 * memory" counts as that, whichever of these names it. The table counts them apart.
 */
#define check_printed_in(source) CHECK_IN_BLOCK(GW_CHECK_PRINTED, source)
#define check_solved_by(source)  CHECK_IN_BLOCK(GW_CHECK_SOLVED, source)

/** The same where the program only carries a printed table over, so that nothing is worked out: a weaker
 * proof. */
#define check_copy_of(source) CHECK_IN_BLOCK(GW_CHECK_COPIED, source)

/** What the next checks of such a block are about; stands in the row before their own words. */
void check_about(const char *fmt, ...) __attribute__((format(printf, 1, 2)));

/** `text` contains `part`. */
void check_contains(const char *text, const char *part);

/* The parts of check_from and check_copy_of. The end of a block ends its source. (A failed test leaves by
 * a long jump and does not, but where a test fails no table is made.) */
typedef enum check_kind {
    GW_CHECK_NONE,
    GW_CHECK_FORMULA,
    GW_CHECK_PRINTED,
    GW_CHECK_SOLVED,
    GW_CHECK_COPIED
} check_kind;
int check_source_begin(check_kind kind, const char *source);
void check_source_end(const int *unused);
#define CHECK_PASTE_(a, b) a##b
#define CHECK_PASTE(a, b)  CHECK_PASTE_(a, b)
#define CHECK_IN_BLOCK(kind, source)                                                                         \
    __attribute__((cleanup(check_source_end), unused)) const int CHECK_PASTE(check_block_, __LINE__) =       \
        check_source_begin(kind, source)

#endif
