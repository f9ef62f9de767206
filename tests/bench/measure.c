/* SPDX-License-Identifier: MIT */
/**
 * Times a whole process: measure RUNS COMMAND [ARGUMENT...]
 * Prints median and least wall time and mean processor time [ms], largest memory [MB] and the exit status,
 * with tabs between.
 * What the command prints is thrown away.
 */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { MAX_RUNS = 1000 };

static double now_ms(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return 1e3 * (double)t.tv_sec + 1e-6 * (double)t.tv_nsec;
}

static void become(char **command)
{
    int nowhere = open("/dev/null", O_RDWR);
    if (nowhere >= 0) {
        dup2(nowhere, STDIN_FILENO);
        dup2(nowhere, STDOUT_FILENO);
        dup2(nowhere, STDERR_FILENO);
    }
    execvp(command[0], command);
    _exit(127);
}

/** Wall time of one run [ms], negative when it could not be started. */
static double run_once(char **command, int *status)
{
    double start = now_ms();
    pid_t child = fork();
    if (child < 0) return -1.0;
    if (child == 0) become(command);
    int raw = 0;
    if (waitpid(child, &raw, 0) < 0) return -1.0;
    *status = WIFEXITED(raw) ? WEXITSTATUS(raw) : 128 + WTERMSIG(raw);
    return now_ms() - start;
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/** Processor time, of the program and of the system for it [ms]. */
static double used_ms(const struct rusage *used)
{
    return 1e3 * (double)(used->ru_utime.tv_sec + used->ru_stime.tv_sec) +
           1e-3 * (double)(used->ru_utime.tv_usec + used->ru_stime.tv_usec);
}

int main(int argc, char **argv)
{
    long runs = argc > 2 ? strtol(argv[1], NULL, 10) : 0;
    if (runs < 1 || runs > MAX_RUNS) {
        fprintf(stderr, "usage: measure RUNS COMMAND [ARGUMENT...]   (1 to %d runs)\n", MAX_RUNS);
        return 2;
    }
    double ms[MAX_RUNS] = { 0.0 };
    int status = 0;
    for (long i = 0; i < runs; i++) {
        ms[i] = run_once(argv + 2, &status);
        if (ms[i] < 0.0) {
            perror("measure");
            return 1;
        }
        if (status != 0) runs = i + 1; /* a failing command is not worth repeating */
    }
    qsort(ms, (size_t)runs, sizeof ms[0], by_size);
    struct rusage used;
    getrusage(RUSAGE_CHILDREN, &used);
    printf("%.1f\t%.1f\t%.1f\t%.1f\t%d\n", ms[runs / 2], ms[0], used_ms(&used) / (double)runs,
           (double)used.ru_maxrss / 1024.0, status);
    return 0;
}
