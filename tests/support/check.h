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

/** `text` contains `part`. */
void check_contains(const char *text, const char *part);

#endif
