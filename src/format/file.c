/* SPDX-License-Identifier: MIT */
#include "format/file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static gw_status io_fail(gw_error *err, const char *what, const char *path)
{
    return gw_fail(err, GW_E_IO, "%s: %s: %s", path, what, strerror(errno));
}

/* One level; that it is there already is fine as long as it is a directory. */
static gw_status make_one(const char *dir, gw_error *err)
{
    struct stat st;
    if (mkdir(dir, 0777) == 0) return GW_OK;
    int why = errno;
    if (stat(dir, &st) == 0) {
        if (S_ISDIR(st.st_mode)) return GW_OK;
        why = ENOTDIR;
    }
    errno = why;
    return io_fail(err, "cannot make the directory", dir);
}

gw_status gw_dir_make(const char *dir, gw_error *err)
{
    gw_buf part = { 0 };
    gw_status st = GW_OK;
    if (!*dir) return gw_fail(err, GW_E_IO, "the name of the output directory is empty");
    for (const char *p = dir; st == GW_OK; p++) {
        if ((*p == '/' || !*p) && part.n > 0 && part.s[part.n - 1] != '/') st = make_one(part.s, err);
        if (!*p) break;
        gw_buf_bytes(&part, p, 1);
        if (part.failed) st = gw_buf_status(&part, err);
    }
    gw_buf_free(&part);
    return st;
}

/* Making it says the same, and makes nothing where a file is in the way. */
gw_status gw_dir_may_be(const char *dir, gw_error *err)
{
    struct stat st;
    bool blocked = stat(dir, &st) == 0 ? !S_ISDIR(st.st_mode) : errno == ENOTDIR || !*dir;
    return blocked ? gw_dir_make(dir, err) : GW_OK;
}

gw_status gw_file_aside(const char *path, gw_buf *aside, gw_error *err)
{
    const char *slash = strrchr(path, '/');
    const char *name = slash ? slash + 1 : path;
    gw_buf made = { 0 };
    gw_buf_bytes(&made, path, (size_t)(name - path));
    gw_buf_fmt(&made, ".%s.XXXXXX", name);
    if (made.failed) return gw_buf_status(&made, err);
    int fd = mkstemp(made.s);
    if (fd < 0) {
        io_fail(err, "cannot write", path);
        gw_buf_free(&made);
        return GW_E_IO;
    }
    mode_t mask = umask(0); /* there is no call that only asks */
    umask(mask);
    (void)fchmod(fd, 0666 & ~mask); /* failing leaves it readable by its owner alone: good enough */
    close(fd);
    gw_buf_free(aside);
    *aside = made;
    return GW_OK;
}

gw_status gw_file_commit(const char *aside, const char *path, gw_error *err)
{
    if (rename(aside, path) == 0) return GW_OK;
    gw_status st = io_fail(err, "cannot write", path);
    unlink(aside);
    return st;
}

/* True where all is on its way to the disk; errno says why not. */
static bool write_all(const char *path, const char *bytes, size_t n)
{
    int fd = open(path, O_WRONLY | O_TRUNC);
    if (fd < 0) return false;
    bool ok = true;
    while (ok && n > 0) {
        ssize_t k = write(fd, bytes, n);
        if (k < 0 && errno == EINTR) continue;
        ok = k > 0;
        if (ok) bytes += k, n -= (size_t)k;
    }
    ok = ok && fsync(fd) == 0;
    int why = errno;
    if (close(fd) != 0 && ok) return false;
    errno = why;
    return ok;
}

gw_status gw_file_write(const char *path, const char *bytes, size_t n, gw_error *err)
{
    gw_buf aside = { 0 };
    gw_status st = gw_file_aside(path, &aside, err);
    if (st == GW_OK && !write_all(gw_buf_str(&aside), bytes, n)) {
        st = io_fail(err, "cannot write", path);
        unlink(gw_buf_str(&aside));
    } else if (st == GW_OK) {
        st = gw_file_commit(gw_buf_str(&aside), path, err);
    }
    gw_buf_free(&aside);
    return st;
}

gw_status gw_file_read(const char *path, gw_buf *out, gw_error *err)
{
    char block[16384];
    FILE *f = fopen(path, "rb");
    if (!f) return io_fail(err, "cannot read", path);
    for (size_t n; (n = fread(block, 1, sizeof block, f)) > 0;) gw_buf_bytes(out, block, n);
    gw_status st = ferror(f) ? io_fail(err, "cannot read", path) : gw_buf_status(out, err);
    fclose(f);
    return st;
}

gw_status gw_file_write_text(const char *path, const gw_buf *text, gw_error *err)
{
    gw_status st = gw_buf_status(text, err);
    return st == GW_OK ? gw_file_write(path, gw_buf_str(text), text->n, err) : st;
}
