/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a height that was only sketched say so and widen the doubt?
 * Answer:    one lift, once measured, once sketched: the assumption, the spread and the driver.
 * Not here:  doubt itself. */
#include "assess.h"
#include "document.h"
#include "edit.h"

#define LIFT HS_SOURCE_ROOT "/tests/gui/pump.handspike.json"

static const hs_doubt_check *
doubt_of(const hs_results *results, hs_check_id check)
{
    for (int i = 0; i < results->doubt[0].n_checks; i++)
        if (results->doubt[0].checks[i].check == check)
            return &results->doubt[0].checks[i];
    g_error("no doubt about the check");
}

static void
assess(hs_document *document, hs_arena *arena, hs_results *ret_results)
{
    hs_error error;

    g_assert_nonnull(hs_document_task(document));
    g_assert_cmpint(
        hs_assess(hs_document_task(document), HS_ASSESS_DOUBT, arena, ret_results, &error), ==,
        HS_OK);
    g_assert_cmpint(ret_results->n_doubt, >, 0);
}

static gboolean
is_assumed(const hs_results *results, const char *path)
{
    for (const hs_assumption *at = results->assumptions.first; at != NULL; at = at->next)
        if (g_str_equal(at->path, path))
            return TRUE;
    return FALSE;
}

static gboolean
is_driver(const hs_results *results)
{
    for (int i = 0; i < results->doubt[0].n_drivers; i++)
        if (g_str_equal(results->doubt[0].drivers[i].input, "sketched"))
            return TRUE;
    return FALSE;
}

static void
sketched__is_told_and_widens_the_doubt(void)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) measured = hs_document_load(LIFT, faults, NULL);
    hs_edit *edit = hs_edit_new("sketch");
    hs_arena *arena = hs_arena_new();
    hs_results before, after;

    g_assert_nonnull(measured);
    hs_edit_set_bool(edit, "route.points[0].sketched", TRUE);
    hs_edit_set_bool(edit, "route.points[4].sketched", TRUE);
    g_autoptr(hs_document) drawn = hs_document_apply(measured, edit, FALSE, NULL);
    g_assert_nonnull(drawn);
    hs_edit_free(edit);
    assess(measured, arena, &before);
    assess(drawn, arena, &after);
    g_assert_false(is_assumed(&before, "route.points[0].sketched"));
    g_assert_true(is_assumed(&after, "route.points[0].sketched"));
    g_assert_true(is_assumed(&after, "route.points[4].sketched"));
    g_assert_false(is_assumed(&after, "route.points[1].sketched"));
    g_assert_false(is_driver(&before));
    g_assert_true(is_driver(&after));
    const hs_doubt_check *narrow = doubt_of(&before, HS_CHECK_spine_compression),
                         *wide = doubt_of(&after, HS_CHECK_spine_compression);
    g_assert_cmpfloat(wide->value_p95 - wide->value_p05, >,
                      narrow->value_p95 - narrow->value_p05);
    hs_arena_free(arena);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/sketched/is_told_and_widens_the_doubt",
                    sketched__is_told_and_widens_the_doubt);
    return g_test_run();
}
