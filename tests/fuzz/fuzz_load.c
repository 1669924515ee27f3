/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which bytes harm the reader or the core?
 * Answer:    a libFuzzer target: bytes, document, live assessment, what must hold of every result.
 * Not here:  the seeded tests that always run (test_mutated.c, test_random.c). How to run: docs/testing.md. */
#include "assess.h"
#include "walk.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerInitialize(int *argc, char ***argv);
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int
LLVMFuzzerInitialize(G_GNUC_UNUSED int *argc, G_GNUC_UNUSED char ***argv)
{
    /* A misuse of GLib is a finding too. */
    g_log_set_always_fatal(G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL);
    return 0;
}

int
LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_from_bytes((const char *)data, size, faults);
    hs_arena *arena;
    hs_results results;
    hs_error error;

    if (document == NULL)
        return 0;
    arena = hs_arena_new();
    if (hs_assess(hs_document_task(document), HS_ASSESS_LIVE, arena, &results, &error) ==
        HS_OK) {
        g_autofree char *fault = hs_walk_results(&results);

        if (fault != NULL) {
            g_printerr("%s\n", fault);
            abort();
        }
    }
    hs_arena_free(arena);
    return 0;
}
