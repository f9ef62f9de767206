/* SPDX-License-Identifier: MIT */
/*
 * Memory that runs out, at every allocation of a run, one by one.
 *
 *   allocation [--from N] [--every N] [--apart DIR] ARGUMENTS...     the arguments are those of giveway
 *   allocation --at N ARGUMENTS...                    aborts at that allocation, for a debugger
 *
 * The whole program is in this process. It runs twice without a fault, to learn what it prints, and once
 * more, when at each allocation a child is forked in which that one fails, and another in which all fail from
 * there on. Each child must come to its end with exit status 4, one line that says why and either all of the
 * output or none, or go on as if nothing had been; and it must give back what it took. With --apart each
 * failure has a run of its own from the beginning, for runs that write files to DIR (an option -o DIR is put
 * behind the arguments): every file there must be whole or absent, and no other may be left.
 *
 * malloc and its kin are defined here, over those of the GNU C library; the number of processors is one, so
 * that the order of allocations is the same in every run.
 */
#define _GNU_SOURCE /* fopencookie */
#include <dirent.h>
#include <dlfcn.h>
#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "cli/command.h"

extern void *__libc_malloc(size_t size);
extern void *__libc_calloc(size_t n, size_t size);
extern void *__libc_realloc(void *p, size_t size);
extern void __libc_free(void *p);
extern void __gcov_dump(void) __attribute__((weak));

int gw_program(int argc, char **argv); /* main of the program, under another name */

enum { STREAM_BYTES = 4 << 20, MOST_SECONDS = 30, MOST_TOLD = 20, MOST_FILES = 64, MOST_WORDS = 32 };

typedef struct gw_stream {
    char *text;
    size_t n;
    char buffer[65536];
} gw_stream;

static gw_stream out_stream, err_stream;
static char *whole; /* what the program prints when nothing fails */
static size_t whole_n;

static struct {
    bool armed, forking, child, all_from_here;
    long count, fail_at, abort_at, from, every, tried, wrong, live, live_before;
    void *caller; /* of the allocation that failed first */
} now = { .every = 1 };

/* Memory */

static void fork_failure(bool all);

/* The allocating functions of GSL 2.7 keep what they have when the next piece fails: up to this many. */
enum { GSL_KEEPS = 4 };

static bool is_gsl(void *caller)
{
    Dl_info info;
    return dladdr(caller, &info) && info.dli_fname && strstr(info.dli_fname, "libgsl.");
}

static bool fails(void *caller)
{
    if (!now.armed) return false;
    now.caller = now.child || (now.fail_at && now.count >= now.fail_at) ? now.caller : caller;
    now.count++;
    if (now.count == now.abort_at) abort();
    if (now.child) return now.all_from_here;
    if (now.forking) {
        if (now.count < now.from || now.count % now.every != 0) return false;
        fork_failure(false);
        if (!now.child) fork_failure(true);
        return now.child;
    }
    return now.count == now.fail_at || (now.all_from_here && now.fail_at && now.count > now.fail_at);
}

static void *refuse(void)
{
    errno = ENOMEM;
    return NULL;
}

void *malloc(size_t size)
{
    if (fails(__builtin_return_address(0))) return refuse();
    now.live++;
    return __libc_malloc(size);
}

void *calloc(size_t n, size_t size)
{
    if (fails(__builtin_return_address(0))) return refuse();
    now.live++;
    return __libc_calloc(n, size);
}

void *realloc(void *p, size_t size)
{
    if (fails(__builtin_return_address(0))) return refuse();
    now.live += !p;
    return __libc_realloc(p, size);
}

void free(void *p)
{
    now.live -= p != NULL;
    __libc_free(p);
}

/* One processor: no threads, whose order would differ and which a fork leaves behind. */
long sysconf(int name)
{
    return name == _SC_PAGESIZE ? 4096 : 1;
}

/* Streams that need no memory of their own */

static ssize_t take(void *cookie, const char *bytes, size_t n)
{
    gw_stream *s = cookie;
    if (s->n + n > STREAM_BYTES) return 0;
    memcpy(s->text + s->n, bytes, n);
    s->n += n;
    return (ssize_t)n;
}

static FILE *open_stream(gw_stream *s)
{
    const cookie_io_functions_t io = { .write = take };
    s->text = __libc_calloc(1, STREAM_BYTES + 1);
    FILE *f = s->text ? fopencookie(s, "w", io) : NULL;
    if (!f) abort();
    setvbuf(f, s->buffer, _IOFBF, sizeof s->buffer);
    return f;
}

static void empty_streams(void)
{
    out_stream.n = err_stream.n = 0;
    memset(err_stream.text, 0, STREAM_BYTES);
}

/* One run */

static int run(int argc, char **argv)
{
    empty_streams();
    now.count = 0;
    now.live_before = now.live;
    now.armed = true;
    int status = gw_program(argc, argv);
    now.armed = false;
    fflush(stdout);
    fflush(stderr);
    return status;
}

static int complaints(void)
{
    int n = 0;
    err_stream.text[err_stream.n] = '\0';
    for (const char *p = err_stream.text, *end; (end = strchr(p, '\n')); p = end + 1)
        n += strncmp(p, "warning: ", 9) != 0;
    return n;
}

/* NULL where a run with a failure ended as it should, else what is wrong with it. */
static const char *judge(int status)
{
    bool all = out_stream.n == whole_n && memcmp(out_stream.text, whole, whole_n) == 0;
    if (now.live - now.live_before > (is_gsl(now.caller) ? GSL_KEEPS : 0) || now.live < now.live_before)
        return "memory is not given back";
    if (status == GW_EXIT_DONE) return all ? NULL : "done, but the output is not whole";
    if (status != GW_EXIT_OUTPUT) return "another exit status than 4";
    if (out_stream.n && !all) return "half an output";
    return complaints() == 1 ? NULL : "not one line";
}

static void tell(FILE *to, long at, const char *wrong, int status)
{
    fprintf(to, "# allocation %ld%s: %s; exit status %d, %ld left\n#   %.300s\n", at,
            now.all_from_here ? " and all after it" : "", wrong, status, now.live - now.live_before,
            err_stream.text);
}

static FILE *real_out; /* where this program itself speaks */

_Noreturn static void end_child(int status)
{
    const char *wrong = judge(status);
    if (wrong) tell(real_out, now.fail_at, wrong, status);
    fflush(real_out);
    if (__gcov_dump) __gcov_dump();
    _exit(wrong != NULL);
}

static void count_child(pid_t pid, long at)
{
    int ended;
    waitpid(pid, &ended, 0);
    now.tried++;
    if (WIFEXITED(ended) && WEXITSTATUS(ended) == 0) return;
    now.wrong++;
    if (WIFSIGNALED(ended)) fprintf(real_out, "# allocation %ld: ended by signal %d\n", at, WTERMSIG(ended));
    if (now.wrong == MOST_TOLD) {
        fprintf(real_out, "# and so on\n");
        exit(1);
    }
}

/* A child reads on in the files that its parent has open: each is put back to its place. */
static void keep_places(off_t *place, bool back)
{
    for (int fd = 3; fd < MOST_FILES; fd++)
        if (!back)
            place[fd] = lseek(fd, 0, SEEK_CUR);
        else if (place[fd] >= 0)
            lseek(fd, place[fd], SEEK_SET);
}

static void fork_failure(bool all)
{
    off_t place[MOST_FILES];
    now.armed = false;
    keep_places(place, false);
    pid_t pid = fork();
    if (pid < 0) abort();
    if (pid == 0) {
        alarm(MOST_SECONDS);
        now.child = now.armed = true;
        now.all_from_here = all;
        now.fail_at = now.count;
        return;
    }
    count_child(pid, now.count);
    keep_places(place, true);
    now.armed = true;
}

/* Files */

static bool same_bytes(const char *one, const char *two)
{
    FILE *f = fopen(one, "rb"), *g = fopen(two, "rb");
    int c = EOF, d = EOF;
    bool both = f && g;
    while (both) {
        c = getc(f);
        d = getc(g);
        if (c != d || c == EOF) break;
    }
    if (f) fclose(f);
    if (g) fclose(g);
    return both && c == d;
}

/* Each file in `dir` is the same in `whole_dir`; they are removed. NULL, or what is wrong. */
static const char *judge_files(const char *dir, const char *whole_dir)
{
    const char *wrong = NULL;
    char path[512], there[512];
    DIR *d = opendir(dir);
    for (struct dirent *e; d && (e = readdir(d));) {
        if (strcmp(e->d_name, ".") == 0 || strcmp(e->d_name, "..") == 0) continue;
        snprintf(path, sizeof path, "%s/%s", dir, e->d_name);
        snprintf(there, sizeof there, "%s/%s", whole_dir, e->d_name);
        if (!same_bytes(path, there)) wrong = e->d_name[0] == '.' ? "a file is left over" : "half a file";
        unlink(path);
    }
    if (d) closedir(d);
    rmdir(dir);
    return wrong;
}

static void check_files(const char *dir, long at)
{
    char whole_dir[256];
    snprintf(whole_dir, sizeof whole_dir, "%s.whole", dir);
    const char *wrong = judge_files(dir, whole_dir);
    if (!wrong) return;
    fprintf(real_out, "# allocation %ld: %s\n", at, wrong);
    now.wrong++;
}

/* Every failure in a run of its own. */
static void run_apart(int argc, char **argv, const char *dir, long n)
{
    for (long at = now.from + now.every; at <= n; at += now.every)
        for (int all = 0; all < 2; all++) {
            pid_t pid = fork();
            if (pid < 0) abort();
            if (pid == 0) {
                alarm(MOST_SECONDS);
                now.fail_at = at;
                now.all_from_here = all;
                end_child(run(argc, argv));
            }
            count_child(pid, at);
            check_files(dir, at);
        }
}

static void learn_whole(int argc, char **argv)
{
    run(argc, argv); /* the C library takes what it keeps for good, such as the time zone */
    int status = run(argc, argv);
    whole_n = out_stream.n;
    whole = __libc_malloc(whole_n + 1);
    if (!whole) abort();
    memcpy(whole, out_stream.text, whole_n);
    if (status != GW_EXIT_DONE) {
        fprintf(real_out, "Bail out! without any failure the exit status is %d: %s\n", status,
                err_stream.text);
        exit(2);
    }
    if (now.live != now.live_before) {
        fprintf(real_out, "not ok - %ld allocations are not given back\n", now.live - now.live_before);
        exit(1);
    }
}

/* Options of this program; returns the index of the first word that is none. */
static int take_options(int argc, char **argv, const char **dir)
{
    int i = 1;
    for (; i + 1 < argc && strncmp(argv[i], "--", 2) == 0; i += 2) {
        long n = strtol(argv[i + 1], NULL, 10);
        if (strcmp(argv[i], "--apart") == 0) *dir = argv[i + 1];
        if (strcmp(argv[i], "--every") == 0 && n > 0) now.every = n;
        if (strcmp(argv[i], "--from") == 0) now.from = n;
        if (strcmp(argv[i], "--at") == 0) now.abort_at = n;
    }
    return i;
}

static void sum_up(char **words, long n)
{
    fprintf(real_out, "%s - giveway", now.wrong ? "not ok" : "ok");
    while (*words) fprintf(real_out, " %s", *words++);
    fprintf(real_out, ": %ld allocations, %ld failures, %ld of them wrong\n", n, now.tried, now.wrong);
}

int main(int argc, char **argv)
{
    static char buffer[4096], *words[MOST_WORDS + 4] = { "giveway" };
    const char *dir = NULL;
    int n_words = 1, i = take_options(argc, argv, &dir);
    real_out = stdout;
    setvbuf(real_out, buffer, _IOLBF, sizeof buffer);
    stdout = open_stream(&out_stream);
    stderr = open_stream(&err_stream);
    for (; i < argc && n_words < MOST_WORDS; i++) words[n_words++] = argv[i];
    if (dir) {
        words[n_words++] = "-o";
        words[n_words++] = (char *)dir;
    }
    learn_whole(n_words, words);
    long n = now.count;
    if (dir) {
        char whole_dir[256];
        snprintf(whole_dir, sizeof whole_dir, "%s.whole", dir);
        if (rename(dir, whole_dir) != 0) abort();
        run_apart(n_words, words, dir, n);
    } else {
        now.forking = true;
        int status = run(n_words, words);
        if (now.child) end_child(status);
        if (status != GW_EXIT_DONE || now.count != n) now.wrong++; /* the parent was to see none of it */
    }
    sum_up(words + 1, n);
    return now.wrong != 0;
}
