/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does an assessment cost, live and in full?
 * Answer:    median milliseconds of processor time of the live pass (a drag step) and of the full one, memory taken, for each example given.
 * Not here:  pictures (bench_draw.c), one body (bench_body.c). Never passes or fails. */
#include "assess.h"
#include "document.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double
now_ms(void)
{
    struct timespec at;

    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec * 1e3 + (double)at.tv_nsec * 1e-6;
}

static int
by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;

    return (x > y) - (x < y);
}

static double
median_ms(const hs_task *task, hs_assess_mode mode, int runs, size_t *ret_bytes)
{
    double took[64];
    hs_arena *arena = hs_arena_new();

    for (int i = 0; i < runs; i++) {
        hs_results results;
        hs_error error;
        double start = now_ms();

        hs_arena_reset(arena);
        if (hs_assess(task, mode, arena, &results, &error) != HS_OK)
            fprintf(stderr, "not assessed: %s\n", error.where);
        took[i] = now_ms() - start;
    }
    *ret_bytes = hs_arena_capacity(arena);
    hs_arena_free(arena);
    qsort(took, (size_t)runs, sizeof *took, by_size);
    return took[runs / 2];
}

int
main(int argc, char **argv)
{
    for (int i = 1; i < argc; i++) {
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        g_autoptr(hs_document) document = hs_document_load(argv[i], faults, NULL);
        g_autofree char *name = g_path_get_basename(argv[i]);
        size_t live_bytes, full_bytes;
        double live, full;

        if (document == NULL)
            continue;
        live = median_ms(hs_document_task(document), HS_ASSESS_LIVE, 21, &live_bytes);
        full = median_ms(hs_document_task(document), HS_ASSESS_FULL, 3, &full_bytes);
        printf("%-44s live %6.2f ms %5zu kB   full %7.1f ms %5zu kB\n", name, live,
               live_bytes / 1024, full, full_bytes / 1024);
    }
    return 0;
}
