/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the memo give back what was kept, and nothing else?
 * Answer:    found by every bit of the key; two generations; a bounded number of entries.
 * Not here:  whether postures found again are the same (unit/model/test_again.c). */
#include "memo.h"

#include <glib.h>

static void
keep(hs_memo *memo, double a, double b, int value)
{
    double key[2] = {a, b};

    hs_memo_keep(memo, key, 2, &value, sizeof value);
}

/* -1: not there */
static int
find(hs_memo *memo, double a, double b)
{
    double key[2] = {a, b};
    const int *found = hs_memo_find(memo, key, 2);

    return found != NULL ? *found : -1;
}

static void
every_bit_of_the_key_counts(void)
{
    hs_memo *memo = hs_memo_new();
    double longer[3] = {1.0, 2.0, 0.0};

    keep(memo, 1.0, 2.0, 7);
    keep(memo, 2.0, 1.0, 8);
    keep(memo, 0.0, 0.0, 9);
    g_assert_cmpint(find(memo, 1.0, 2.0), ==, 7);
    g_assert_cmpint(find(memo, 2.0, 1.0), ==, 8);
    g_assert_cmpint(find(memo, 1.0, 2.0000000000000004), ==, -1);
    g_assert_cmpint(find(memo, 0.0, -0.0), ==, -1);
    g_assert_null(hs_memo_find(memo, longer, 3));
    g_assert_null(hs_memo_find(memo, longer, 1));
    hs_memo_free(memo);
}

static void
what_is_not_asked_for_is_forgotten(void)
{
    hs_memo *memo = hs_memo_new();

    keep(memo, 1.0, 1.0, 1);
    keep(memo, 2.0, 2.0, 2);
    hs_memo_turn(memo);
    g_assert_cmpint(find(memo, 1.0, 1.0), ==, 1);
    hs_memo_turn(memo);
    g_assert_cmpint(find(memo, 2.0, 2.0), ==, -1);
    g_assert_cmpint(find(memo, 1.0, 1.0), ==, 1);
    hs_memo_free(memo);
}

static void
the_number_of_entries_is_bounded(void)
{
    hs_memo *memo = hs_memo_new();
    int n_found = 0;

    for (int i = 0; i < 100000; i++) {
        keep(memo, i, 0.5, i);
        g_assert_cmpint(find(memo, i, 0.5), ==, i);
    }
    for (int i = 0; i < 100000; i++)
        n_found += find(memo, i, 0.5) == i;
    g_assert_cmpint(n_found, >, 1000);
    g_assert_cmpint(n_found, <, 20000);
    hs_memo_free(memo);
}

static void
no_memo_keeps_nothing(void)
{
    keep(NULL, 1.0, 1.0, 1);
    g_assert_cmpint(find(NULL, 1.0, 1.0), ==, -1);
    hs_memo_turn(NULL);
    hs_memo_free(NULL);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/memo/every_bit_of_the_key_counts", every_bit_of_the_key_counts);
    g_test_add_func("/memo/what_is_not_asked_for_is_forgotten",
                    what_is_not_asked_for_is_forgotten);
    g_test_add_func("/memo/the_number_of_entries_is_bounded", the_number_of_entries_is_bounded);
    g_test_add_func("/memo/no_memo_keeps_nothing", no_memo_keeps_nothing);
    return g_test_run();
}
