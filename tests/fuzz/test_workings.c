/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does every working that a person could ever see give its printed result?
 * Answer:    random documents, every check in full: each printed line is done again by the tests' own evaluator.
 * Not here:  that answers hold together (test_random.c), every equation with arbitrary terms (test_working.c).
 *
 * test-workings [--documents N] [--from NUMBER]   300 documents from 1. */
#include "assess.h"
#include "document.h"
#include "evaluate.h"
#include "random_document.h"
#include "words.h"

#include <locale.h>
#include <stdlib.h>
#include <string.h>

static guint n_documents = 300, first = 1;

typedef struct {
    guint number, n_lines, n_faults;
    gboolean was_met[HS_N_EQUATIONS];
} tally;

static void
redo(tally *sum, const hs_finding *finding)
{
    g_autoptr(GPtrArray) all = hs_words_worked(finding);
    const hs_working_line *line = finding->working.first;

    for (guint i = 0; i < all->len; i++, line = line->next) {
        const hs_worked *worked = g_ptr_array_index(all, i);
        g_autofree char *why = NULL;

        sum->n_lines++;
        sum->was_met[line->equation] = TRUE;
        if (!hs_evaluate_line(worked->numbers, &why) && sum->n_faults++ < 20)
            g_test_message("document %u, %s, %s: %s: %s", sum->number,
                           hs_words_check_id(finding->check),
                           hs_equation_get(line->equation)->id, worked->numbers, why);
    }
}

static void
redo_document(tally *sum, const char *text, hs_arena *arena)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_from_bytes(text, strlen(text), faults);
    hs_results results;
    hs_error error;

    g_assert_nonnull(document);
    hs_arena_reset(arena);
    g_assert_cmpint(
        hs_assess(hs_document_task(document), HS_ASSESS_PLAIN, arena, &results, &error), ==,
        HS_OK);
    for (int o = 0; o < results.n_options; o++)
        for (int i = 0; i < results.options[o].n_findings; i++)
            redo(sum, &results.options[o].findings[i]);
}

static void
every_printed_working_gives_its_result(void)
{
    hs_arena *arena = hs_arena_new();
    tally sum = {0};
    guint n_met = 0;

    for (guint n = 0; n < n_documents; n++) {
        g_autofree char *text = hs_random_document(first + n);

        sum.number = first + n;
        redo_document(&sum, text, arena);
    }
    for (int i = 0; i < HS_N_EQUATIONS; i++)
        n_met += sum.was_met[i];
    g_test_message("%u documents, %u lines of %u equations, %u faults", n_documents,
                   sum.n_lines, n_met, sum.n_faults);
    g_assert_cmpuint(sum.n_lines, >, 10 * n_documents);
    g_assert_cmpuint(sum.n_faults, ==, 0);
    hs_arena_free(arena);
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    for (int i = 1; i + 1 < argc; i += 2) {
        if (strcmp(argv[i], "--documents") == 0)
            n_documents = (guint)atoi(argv[i + 1]);
        else if (strcmp(argv[i], "--from") == 0)
            first = (guint)atoi(argv[i + 1]);
    }
    g_test_add_func("/workings/every_printed_working_gives_its_result",
                    every_printed_working_gives_its_result);
    return g_test_run();
}
