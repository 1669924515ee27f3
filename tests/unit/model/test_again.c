/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does an assessment that remembers the ones before say the same as one that does not?
 * Answer:    every example through a drag, a change of person, of suit and back again: the same text of results, bit by bit.
 * Not here:  how fast it is (tests/bench). */
#include "assess.h"
#include "edit.h"
#include "examples.h"
#include "results_json.h"

static hs_arena *arena;

static char *
said(hs_document *document, hs_assess_mode mode, hs_memo *memo)
{
    hs_results results;
    hs_error error;

    hs_arena_reset(arena);
    g_assert_cmpint(
        hs_assess_again(hs_document_task(document), mode, memo, arena, &results, &error), ==,
        HS_OK);
    return hs_results_to_json(document, &results, NULL);
}

static void
check_same(hs_document *document, hs_assess_mode mode, hs_memo *memo)
{
    g_autofree char *fresh = said(document, mode, NULL), *again = said(document, mode, memo);

    /* Not g_assert_cmpstr: a difference would print both whole. */
    g_assert_true(g_str_equal(fresh, again));
}

static hs_document *
changed(hs_document *document, int step)
{
    const hs_task *task = hs_document_task(document);
    g_autoptr(hs_edit) edit = hs_edit_new("change");
    hs_fault *fault = NULL;
    const hs_point *point = &task->route.points[1];
    hs_document *made;

    switch (step) {
    case 3:
        hs_edit_set_number(edit, "workers[0].stature_m", 1.69);
        break;
    case 4:
        hs_edit_set_number(edit, "workers[0].mass_kg", 78.0);
        break;
    case 5:
        hs_edit_set_number(edit, "policy.strength_percentile", 50.0);
        break;
    case 6:
        hs_edit_set_number(edit, "work.hours", 6.0);
        break;
    default:
        hs_edit_move_point(edit, 1, point->x_m, point->z_m + 0.01 * (step % 2));
        break;
    }
    made = hs_document_apply(document, edit, FALSE, &fault);
    g_assert_nonnull(made);
    return made;
}

static void
asked_again(const char *path, const char *name)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);
    hs_memo *memo = hs_memo_new();

    (void)name;
    for (int step = 0; step < 8; step++) {
        g_autoptr(hs_document) next = changed(document, step);

        check_same(next, HS_ASSESS_LIVE, memo);
    }
    check_same(document, HS_ASSESS_PLAIN, memo);
    hs_memo_free(memo);
}

static void
results_are_the_same(void)
{
    hs_each_example(asked_again);
}

int
main(int argc, char **argv)
{
    int failed;

    g_test_init(&argc, &argv, NULL);
    arena = hs_arena_new();
    g_test_add_func("/again/results_are_the_same", results_are_the_same);
    failed = g_test_run();
    hs_arena_free(arena);
    return failed;
}
