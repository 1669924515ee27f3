/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does every valid document get an answer that holds together?
 * Answer:    random documents through reading and assessment, a fixed number of them; every hundredth in full and with doubt.
 * Not here:  damaged ones (test_mutated.c).
 *
 * test-random [--documents N] [--from NUMBER]   10,000 documents from 1; --from N --documents 1 is one document again. */
#include "assess.h"
#include "random_document.h"
#include "walk.h"

#include <stdlib.h>
#include <string.h>

static guint n_documents = 10000, first = 1;

static char *
try_document(const char *text, guint number, hs_arena *arena)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_from_bytes(text, strlen(text), faults);
    hs_results results;
    hs_error error;
    char *fault;

    if (document == NULL)
        return g_strdup_printf("refused: %s: %s", ((const hs_fault *)faults->pdata[0])->path,
                               ((const hs_fault *)faults->pdata[0])->text);
    hs_arena_reset(arena);
    if (hs_assess(hs_document_task(document),
                  number % 100 == 0 ? HS_ASSESS_DOUBT : HS_ASSESS_LIVE, arena, &results,
                  &error) != HS_OK)
        return g_strdup_printf("not assessed: %d %s", (int)error.status, error.where);
    fault = hs_walk_results(&results);
    return fault != NULL || number % 10 != 0 ? fault : hs_walk_json(document, &results);
}

static void
every_valid_document_is_answered(void)
{
    hs_arena *arena = hs_arena_new();
    gint64 slowest = 0;
    guint n = 0, n_faults = 0, slowest_number = 0;

    for (; n < n_documents; n++) {
        g_autofree char *text = hs_random_document(first + n), *fault = NULL;
        gint64 before = g_get_monotonic_time();

        if (n % 100 == 0)
            g_test_message("from document %u", first + n);
        fault = try_document(text, first + n, arena);
        if (fault != NULL && n_faults++ < 20)
            g_test_message("document %u: %s", first + n, fault);
        if (g_get_monotonic_time() - before > slowest) {
            slowest = g_get_monotonic_time() - before;
            slowest_number = first + n;
        }
        if (n_documents == 1)
            g_printerr("%s\n", text);
    }
    g_test_message("%u documents, %u faults, slowest %.0f ms (document %u)", n, n_faults,
                   (double)slowest * 1e-3, slowest_number);
    g_assert_cmpuint(n, >, 0);
    g_assert_cmpuint(n_faults, ==, 0);
    hs_arena_free(arena);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    for (int i = 1; i + 1 < argc; i += 2) {
        if (strcmp(argv[i], "--documents") == 0)
            n_documents = (guint)atoi(argv[i + 1]);
        else if (strcmp(argv[i], "--from") == 0)
            first = (guint)atoi(argv[i + 1]);
    }
    g_test_add_func("/random/every_valid_document_is_answered",
                    every_valid_document_is_answered);
    return g_test_run();
}
