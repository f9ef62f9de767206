/* SPDX-License-Identifier: MIT */
/**
 * Files that are written whole or not at all: written aside in the same directory and renamed when
 * complete, so that an interrupted run leaves the earlier file as it was.
 */
#ifndef FORMAT_FILE_H
#define FORMAT_FILE_H

#include "base/buf.h"

/** Makes a directory and those above it where they are missing. GW_E_IO names path and reason. */
gw_status gw_dir_make(const char *dir, gw_error *err);

/** Before long work: GW_E_IO where a file stands in the way of that directory already. Makes nothing. */
gw_status gw_dir_may_be(const char *dir, gw_error *err);

/**
 * Writes `n` bytes to `path`, replacing what was there.
 * @retval GW_OK, GW_E_IO (path and reason; the earlier file is untouched), GW_E_NOMEM
 */
gw_status gw_file_write(const char *path, const char *bytes, size_t n, gw_error *err);

/** The same of a text; GW_E_NOMEM where it is not whole. */
gw_status gw_file_write_text(const char *path, const gw_buf *text, gw_error *err);

/** Reads a whole file into `out`. */
gw_status gw_file_read(const char *path, gw_buf *out, gw_error *err);

/** An empty file beside `path` for another program to fill; its name goes to `aside`, owned by the caller. */
gw_status gw_file_aside(const char *path, gw_buf *aside, gw_error *err);

/** Puts the file `aside` in the place of `path`; removes it where that fails. */
gw_status gw_file_commit(const char *aside, const char *path, gw_error *err);

#endif
