/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a break-even figure that is printed hold?
 * Answer:    each one of every worked scenario is put into the task and the whole assessed anew: the option stands with it, and with
 *            a little more of what makes it harder it does not.
 * Not here:  how it is searched (core/whatif). */
#include "assess.h"
#include "changed_task.h"
#include "defaults.h"
#include "document.h"
#include "examples.h"
#include "place.h"

#include <glib.h>
#include <string.h>

#define HARDER   0.03 /* of a mass or a gain */
#define HARDER_m 0.012

static int n_asked, n_turned;

static gboolean
stands(const hs_task *task, const char *option, hs_arena *arena)
{
    hs_results results;

    g_assert_cmpint(hs_assess(task, HS_ASSESS_PLAIN, arena, &results, NULL), ==, HS_OK);
    for (int i = 0; i < results.n_options; i++)
        if (strcmp(results.options[i].id, option) == 0)
            return results.options[i].verdict.status == HS_VERDICT_SUPPORTED ||
                   results.options[i].verdict.status == HS_VERDICT_WITH_CONDITIONS;
    g_assert_not_reached();
}

static int
index_of(const hs_task *task, const char *option)
{
    for (int i = 0; i < task->n_options; i++)
        if (strcmp(task->options[i].id, option) == 0)
            return i;
    return -1; /* added by the program */
}

static double
gain_of(const hs_task *task, const hs_option *option)
{
    for (int b = 0; b < option->n_bearers; b++)
        if (option->bearers[b].suit >= 0)
            return task->suits[option->bearers[b].suit].gain_hands;
    return HS_ABSENT;
}

/* The task with the figure, and more of it by `more`, in the direction that makes the work harder; NULL: not asked here. */
static const hs_task *
with(const hs_task *task,
     const hs_break_even *at,
     int option,
     double mass_kg,
     gboolean more,
     hs_arena *arena)
{
    if (strcmp(at->quantity, "mass_kg") == 0)
        return hs_change_mass(task, at->value * (more ? 1.0 + HARDER : 1.0) / mass_kg, arena);
    if (strcmp(at->quantity, "gain") == 0)
        return hs_change_gain(task,
                              at->value * (more ? 1.0 - HARDER : 1.0) /
                                  gain_of(task, &task->options[option]),
                              arena);
    if (strcmp(at->quantity, "reach_m") == 0) {
        const double *reach_m;
        double most_m = 0.0;

        g_assert_cmpint(hs_setup_reach(task, option, arena, &reach_m, NULL), ==, HS_OK);
        for (int i = 0; i < task->route.n_points; i++)
            most_m = fmax(most_m, reach_m[i]);
        return hs_change_reach(task, option, reach_m,
                               at->value - most_m + (more ? HARDER_m : 0.0), arena);
    }
    return NULL;
}

static void
ask_example(const char *path, const char *name)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);
    hs_arena *arena = hs_arena_new();
    hs_results results;
    const hs_task *task;

    g_assert_nonnull(document);
    task = hs_defaults_apply(hs_document_task(document), arena, NULL);
    g_assert_cmpint(hs_assess(task, HS_ASSESS_FULL, arena, &results, NULL), ==, HS_OK);
    for (int i = 0; i < results.n_break_even; i++) {
        const hs_break_even *at = &results.break_even[i];
        int option = index_of(task, at->option);
        const hs_task *there =
            option >= 0 ? with(task, at, option, results.load.mass_kg, FALSE, arena) : NULL;

        if (there == NULL)
            continue;
        n_asked++;
        if (!stands(there, at->option, arena))
            g_error("%s, %s: %s %g does not stand", name, at->option, at->quantity, at->value);
        n_turned += !stands(with(task, at, option, results.load.mass_kg, TRUE, arena),
                            at->option, arena);
    }
    hs_arena_free(arena);
}

static void
every_figure_holds(void)
{
    hs_each_example(ask_example);
    g_test_message("%d figures stand, %d of them turn a little further", n_asked, n_turned);
    g_assert_cmpint(n_asked, >=, 20);
    g_assert_cmpint(n_turned, >=, n_asked * 9 / 10);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/break_even/every_figure_holds", every_figure_holds);
    return g_test_run();
}
