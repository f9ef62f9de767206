/* SPDX-License-Identifier: MIT */
#include "base/parallel.h"

#include <pthread.h>
#include <stdatomic.h>
#include <unistd.h>

enum { MAX_THREADS = 64 };

typedef struct gw_pool {
    atomic_int next;
    int n;
    void (*work)(void *context, int index);
    void *context;
} gw_pool;

/* Pieces are handed out one by one, since some take much longer than others. */
static void *take_pieces(void *argument)
{
    gw_pool *pool = argument;
    for (int i; (i = atomic_fetch_add(&pool->next, 1)) < pool->n;) pool->work(pool->context, i);
    return NULL;
}

static int threads_for(int n)
{
    long processors = sysconf(_SC_NPROCESSORS_ONLN);
    if (processors > MAX_THREADS) processors = MAX_THREADS;
    return processors < n ? (int)processors : n;
}

void gw_parallel(int n, void (*work)(void *context, int index), void *context)
{
    gw_pool pool = { .n = n, .work = work, .context = context };
    pthread_t helper[MAX_THREADS];
    int helpers = 0, wanted = threads_for(n) - 1;
    while (helpers < wanted && pthread_create(&helper[helpers], NULL, take_pieces, &pool) == 0) helpers++;
    take_pieces(&pool);
    for (int i = 0; i < helpers; i++) pthread_join(helper[i], NULL);
}
