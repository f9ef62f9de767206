/* SPDX-License-Identifier: MIT */
#include "support/check.h"

#include "format/file.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static char dir[] = "/tmp/giveway-file-XXXXXX";

static int setup(void **state)
{
    (void)state;
    return mkdtemp(dir) && chdir(dir) == 0 ? 0 : -1;
}

static int teardown(void **state)
{
    (void)state;
    char command[64];
    snprintf(command, sizeof command, "rm -rf %s", dir);
    return chdir("/") == 0 && system(command) == 0 ? 0 : -1;
}

static void check_file(const char *path, const char *want)
{
    gw_buf got = { 0 };
    assert_int_equal(gw_file_read(path, &got, NULL), GW_OK);
    assert_string_equal(gw_buf_str(&got), want);
    gw_buf_free(&got);
}

static int entries(const char *path)
{
    int n = 0;
    DIR *d = opendir(path);
    assert_non_null(d);
    while (readdir(d)) n++;
    closedir(d);
    return n - 2;
}

static void directories_are_made_all_the_way_down(void **state)
{
    (void)state;
    assert_int_equal(gw_dir_make("a//b/c/", NULL), GW_OK);
    assert_int_equal(gw_dir_make("a/b/c", NULL), GW_OK);
    assert_int_equal(access("a/b/c", F_OK), 0);
}

static void a_file_in_the_way_of_a_directory_is_named(void **state)
{
    (void)state;
    gw_error err = { 0 };
    assert_int_equal(gw_file_write("plain", "x", 1, NULL), GW_OK);
    assert_int_equal(gw_dir_make("plain/sub", &err), GW_E_IO);
    check_contains(err.msg, "plain: cannot make the directory: Not a directory");
    assert_int_equal(gw_dir_make("", &err), GW_E_IO);
}

static void what_is_in_the_way_is_told_without_making_anything(void **state)
{
    (void)state;
    gw_error err = { 0 };
    assert_int_equal(gw_file_write("file", "x", 1, NULL), GW_OK);
    assert_int_equal(gw_dir_may_be("file", &err), GW_E_IO);
    check_contains(err.msg, "file: cannot make the directory: Not a directory");
    assert_int_equal(gw_dir_may_be("file/sub", &err), GW_E_IO);
    check_contains(err.msg, "file: cannot make the directory: Not a directory");
    assert_int_equal(gw_dir_may_be("", &err), GW_E_IO);
    assert_int_equal(gw_dir_may_be("will/be", NULL), GW_OK);
    assert_int_not_equal(access("will", F_OK), 0);
    assert_int_equal(gw_dir_may_be(".", NULL), GW_OK);
}

static void a_file_is_replaced_whole_and_nothing_is_left_beside_it(void **state)
{
    (void)state;
    assert_int_equal(gw_dir_make("out", NULL), GW_OK);
    assert_int_equal(gw_file_write("out/page", "first, the longer one", 21, NULL), GW_OK);
    assert_int_equal(gw_file_write("out/page", "second", 6, NULL), GW_OK);
    check_file("out/page", "second");
    assert_int_equal(entries("out"), 1);
}

static void file_mode_follows_the_umask(void **state)
{
    (void)state;
    struct stat st;
    mode_t old = umask(027);
    assert_int_equal(gw_file_write("mode", "x", 1, NULL), GW_OK);
    umask(old);
    assert_int_equal(stat("mode", &st), 0);
    assert_int_equal(st.st_mode & 0777, 0640);
}

static void a_failing_write_names_path_and_reason_and_leaves_the_earlier_file(void **state)
{
    (void)state;
    gw_error err = { 0 };
    assert_int_equal(gw_dir_make("keep/page", NULL), GW_OK); /* a directory where the file should go */
    assert_int_equal(gw_file_write("keep/page", "x", 1, &err), GW_E_IO);
    check_contains(err.msg, "keep/page: cannot write: ");
    assert_int_equal(entries("keep"), 1);
    assert_int_equal(gw_file_write("nowhere/page", "x", 1, &err), GW_E_IO);
    check_contains(err.msg, "nowhere/page: cannot write: No such file or directory");
    assert_int_equal(gw_file_read("nowhere/page", &(gw_buf){ 0 }, &err), GW_E_IO);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(directories_are_made_all_the_way_down),
        cmocka_unit_test(a_file_in_the_way_of_a_directory_is_named),
        cmocka_unit_test(what_is_in_the_way_is_told_without_making_anything),
        cmocka_unit_test(a_file_is_replaced_whole_and_nothing_is_left_beside_it),
        cmocka_unit_test(file_mode_follows_the_umask),
        cmocka_unit_test(a_failing_write_names_path_and_reason_and_leaves_the_earlier_file),
    };
    return cmocka_run_group_tests(tests, setup, teardown);
}
