/* SPDX-License-Identifier: MIT */
/* What libFuzzer calls; TARGET and, for cases, CASES are given when it is compiled. */
#include "fuzz/target.h"

#ifndef TARGET /* so that the file can be read, and checked, by itself */
#define TARGET gw_fuzz_case
#endif

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t room, unsigned seed);
size_t LLVMFuzzerMutate(uint8_t *data, size_t size, size_t room);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    TARGET(data, size);
    return 0;
}

#ifdef CASES
/* CASES: of so many changes one is libFuzzer's own, which breaks the JSON; 0: none. */
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t room, unsigned seed)
{
    size_t n = CASES && seed % (CASES + 1) == CASES ? 0 : gw_fuzz_mutate(data, size, room, seed);
    if (n || !CASES) return n ? n : size;
    return LLVMFuzzerMutate(data, size, room);
}
#endif
