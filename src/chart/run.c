/* SPDX-License-Identifier: MIT */
/*
 * gnuplot reads its script from a socket pair in place of a pipe: sending can then be told not to
 * raise SIGPIPE, so that a process that dies early is an error message and no setting of the host
 * program is touched. Its complaints are read while the script is sent, so that neither side can
 * wait for the other. Several run at once, each with a part of the charts.
 */
#include "chart/gnuplot.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { SLICE_MS = 20, LONGEST_COMPLAINT = 65536 };

typedef struct child {
    pid_t pid;
    int script; /* -1 once all is sent */
    int complaints;
    int wait_status;
    bool ended;
    const gw_buf *text; /* its script */
    size_t sent;
    gw_buf said;
} child;

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void close_if_open(int *fd)
{
    if (*fd >= 0) close(*fd);
    *fd = -1;
}

extern char **environ;

/*
 * The environment without its locale, but for letters in UTF-8: gnuplot cannot turn its degree sign into
 * plain ASCII, and the same charts must come out wherever they are drawn. NULL when memory is out. The
 * strings are those of the environment; free the array alone.
 */
static char **plain_environment(void)
{
    static char letters[] = "LC_ALL=C.UTF-8";
    size_t n = 0, kept = 0;
    while (environ && environ[n]) n++;
    char **plain = calloc(n + 2, sizeof *plain);
    for (size_t i = 0; plain && i < n; i++)
        if (strncmp(environ[i], "LC_", 3) != 0 && strncmp(environ[i], "LANG", 4) != 0)
            plain[kept++] = environ[i];
    if (plain) plain[kept] = letters;
    return plain;
}

/* In the child, between fork and exec: only calls that are safe there. The reason of a failure goes up
 * `report`. */
static void become_gnuplot(const char *dir, char **environment, int script, int complaints, int report)
{
    char *const argv[] = { "gnuplot", "-d", "-", NULL }; /* -d: no start-up files of the user */
    int nothing = open("/dev/null", O_WRONLY);
    setpgid(0, 0); /* so that the time limit reaches whatever it starts */
    signal(SIGPIPE, SIG_DFL);
    signal(SIGXFSZ, SIG_DFL); /* else it goes on past the largest file and leaves half a chart */
    environ = environment;
    if (nothing >= 0 && chdir(dir) == 0 && dup2(script, 0) >= 0 && dup2(nothing, 1) >= 0 &&
        dup2(complaints, 2) >= 0)
        execvp(argv[0], argv);
    int why = errno;
    ssize_t ignored = write(report, &why, sizeof why);
    (void)ignored;
    _exit(127);
}

/* Starts the process; returns 0 or the errno of what failed, ENOENT where there is no gnuplot. */
static int start(const char *dir, child *c)
{
    int script[2] = { -1, -1 }, complaints[2] = { -1, -1 }, report[2] = { -1, -1 };
    int why = 0;
    char **environment = plain_environment();
    if (!environment) return ENOMEM;
    if (socketpair(AF_UNIX, SOCK_STREAM, 0, script) || pipe(complaints) || pipe(report)) why = errno;
    int *all[] = { &script[0], &script[1], &complaints[0], &complaints[1], &report[0], &report[1] };
    for (int i = 0; i < 6; i++)
        if (*all[i] >= 0) fcntl(*all[i], F_SETFD, FD_CLOEXEC);
    if (!why && (c->pid = fork()) < 0) why = errno;
    if (!why && c->pid == 0) become_gnuplot(dir, environment, script[1], complaints[1], report[1]);
    free(environment);
    close_if_open(&script[1]);
    close_if_open(&complaints[1]);
    close_if_open(&report[1]);
    /* The report closes by itself when exec succeeds. */
    if (!why && read(report[0], &why, sizeof why) != (ssize_t)sizeof why)
        why = 0;
    else if (why && c->pid > 0)
        waitpid(c->pid, NULL, 0);
    close_if_open(&report[0]);
    if (why) {
        close_if_open(&script[0]);
        close_if_open(&complaints[0]);
        return why;
    }
    fcntl(script[0], F_SETFL, O_NONBLOCK);
    fcntl(complaints[0], F_SETFL, O_NONBLOCK);
    c->script = script[0];
    c->complaints = complaints[0];
    return 0;
}

static void send_some(child *c)
{
    ssize_t k = send(c->script, c->text->s + c->sent, c->text->n - c->sent, MSG_NOSIGNAL);
    if (k > 0) c->sent += (size_t)k;
    bool gone = k < 0 && errno != EAGAIN && errno != EINTR;
    if (gone || c->sent == c->text->n) close_if_open(&c->script);
}

static void hear_some(child *c)
{
    char block[1024];
    ssize_t k;
    while ((k = read(c->complaints, block, sizeof block)) > 0)
        if (c->said.n < LONGEST_COMPLAINT) gw_buf_bytes(&c->said, block, (size_t)k);
    if (k == 0) close_if_open(&c->complaints);
}

static bool ended_well(const child *c)
{
    return c->ended && WIFEXITED(c->wait_status) && WEXITSTATUS(c->wait_status) == 0;
}

/* Waits a moment, then sends and hears whatever can be. Returns how many still run; -1: one has failed. */
static int converse(child *c, int n)
{
    struct pollfd fds[2 * GW_MAX_PLOTTERS];
    int running = 0;
    for (int i = 0; i < n; i++) { /* a closed one is -1, which poll passes over */
        fds[2 * i] = (struct pollfd){ c[i].script, POLLOUT, 0 };
        fds[2 * i + 1] = (struct pollfd){ c[i].complaints, POLLIN, 0 };
    }
    poll(fds, 2 * (nfds_t)n, SLICE_MS);
    for (int i = 0; i < n; i++) {
        if (fds[2 * i].revents && c[i].script >= 0) send_some(&c[i]);
        if (fds[2 * i + 1].revents && c[i].complaints >= 0) hear_some(&c[i]);
        if (!c[i].ended) c[i].ended = waitpid(c[i].pid, &c[i].wait_status, WNOHANG) == c[i].pid;
        if (c[i].ended && !ended_well(&c[i])) running = -1;
        if (!c[i].ended && running >= 0) running++;
    }
    return running;
}

/* Ends it where it still runs. */
static void finish(child *c, gw_buf *said)
{
    if (!c->ended) {
        kill(-c->pid, SIGKILL);
        kill(c->pid, SIGKILL);
        waitpid(c->pid, &c->wait_status, 0);
    }
    close_if_open(&c->script);
    close_if_open(&c->complaints);
    gw_buf_add(said, gw_buf_str(&c->said));
    gw_buf_free(&c->said);
}

/* The last line that says something; gnuplot puts the reason there. */
static void last_line(const gw_buf *said, gw_buf *line)
{
    const char *s = gw_buf_str(said), *end = s + said->n;
    while (end > s && strchr(" \n\t", end[-1])) end--;
    const char *begin = end;
    while (begin > s && begin[-1] != '\n') begin--;
    begin += strspn(begin, " \t");
    gw_buf_bytes(line, begin, begin < end ? (size_t)(end - begin) : 0);
}

static gw_status judge(const child *c, int seconds, gw_error *err)
{
    if (!c->ended)
        return gw_fail(err, GW_E_IO, "gnuplot did not finish within %d s and was ended; no charts", seconds);
    if (WIFSIGNALED(c->wait_status))
        return gw_fail(err, GW_E_IO, "gnuplot was ended by signal %d; no charts", WTERMSIG(c->wait_status));
    gw_buf line = { 0 }, clean = { 0 };
    last_line(&c->said, &line);
    gw_buf_clean(&clean, gw_buf_str(&line));
    gw_status st = gw_fail(err, GW_E_IO, "gnuplot failed with status %d; no charts: %s",
                           WEXITSTATUS(c->wait_status), gw_buf_str(&clean));
    gw_buf_free(&line);
    gw_buf_free(&clean);
    return st;
}

/* The first that failed by itself; else the first that was still running when time was up. */
static gw_status judge_all(const child *c, int n, int seconds, gw_error *err)
{
    const child *worst = NULL;
    for (int i = n - 1; i >= 0; i--)
        if (!c[i].ended && (!worst || !worst->ended)) worst = &c[i];
    for (int i = n - 1; i >= 0; i--)
        if (c[i].ended && !ended_well(&c[i])) worst = &c[i];
    return worst ? judge(worst, seconds, err) : GW_OK;
}

gw_status gw_gnuplot_run(const char *dir, const gw_buf *script, int n, int seconds, bool *missing,
                         gw_buf *said, gw_error *err)
{
    child c[GW_MAX_PLOTTERS];
    gw_status st = GW_OK;
    int started = 0, why = 0;
    double deadline = now() + seconds;
    *missing = false;
    for (; started < n && !why; started += !why) {
        c[started] = (child){ .script = -1, .complaints = -1, .text = &script[started] };
        why = start(dir, &c[started]);
    }
    while (!why && now() < deadline && converse(c, n) > 0) continue;
    for (int i = 0; i < started; i++)
        if (c[i].complaints >= 0) hear_some(&c[i]);
    if (why == ENOENT && access(dir, X_OK) == 0)
        *missing = true;
    else if (why)
        st = gw_fail(err, GW_E_IO, "gnuplot cannot be started in %s: %s", dir, strerror(why));
    else
        st = judge_all(c, n, seconds, err);
    for (int i = 0; i < started; i++) finish(&c[i], said);
    return st;
}
