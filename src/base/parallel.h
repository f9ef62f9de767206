/* SPDX-License-Identifier: MIT */
/** Independent pieces of work on all processors. */
#ifndef GIVEWAY_BASE_PARALLEL_H
#define GIVEWAY_BASE_PARALLEL_H

/**
 * Call work(context, i) once for each i from 0 to n - 1, on as many threads as there are processors, and
 * return when all are done. Which thread does which piece is left open, so a piece must write nothing that
 * another one reads; what is put together afterwards is then the same on any number of processors.
 * Where no thread can be started, the caller does the work alone.
 */
void gw_parallel(int n, void (*work)(void *context, int index), void *context);

#endif
