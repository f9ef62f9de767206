/* SPDX-License-Identifier: MIT */
/** GW_WIDE before a function: with vectors of four doubles where the processor has them. */
#ifndef GIVEWAY_BASE_WIDE_H
#define GIVEWAY_BASE_WIDE_H

#include <limits.h> /* which C library it is */

/*
 * Compiled a second time for processors with AVX2, where the loader finds one. No fused multiply-add is in
 * it, so both give the same bytes. Not under sanitisers, which are not yet awake when the loader asks, and
 * not with clang, which (14 at least) gives the function a name that no other file finds.
 */
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#define GW_SANITISED
#endif
#if defined(__x86_64__) && defined(__GLIBC__) && defined(__GNUC__) && !defined(__clang__) &&                 \
    !defined(GW_SANITISED)
#define GW_WIDE __attribute__((target_clones("avx2", "default")))
/*
 * Before a function that says itself where its vectors of eight doubles are, and is called where there are
 * such: GW_HAS_EIGHT. Not in GW_WIDE: vectors of eight are slower than of four where a processor has only
 * those, and where gcc 12 finds them itself it fuses products, -ffp-contract=off or not.
 */
#define GW_EIGHT     __attribute__((target("avx512f")))
#define GW_HAS_EIGHT __builtin_cpu_supports("avx512f")
#else
#define GW_WIDE
#endif

#endif
