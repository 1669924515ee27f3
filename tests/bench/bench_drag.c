/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does one step of a drag cost, part by part?
 * Answer:    median ms of processor time of the edit, the live assessment, both scenes and both pictures, for each document given.
 * Not here:  the full pass (bench_assess.c), the window around it. Never passes or fails. */
#include "assess.h"
#include "edit.h"
#include "paint.h"
#include "view.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum {
    STEPS = 41,
    WIDTH = 700,
    HEIGHT = 560,
    FONT = 13
};

enum {
    EDIT,
    ASSESS,
    SCENES,
    PAINT,
    ALL,
    N_PARTS
};

static int
by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;

    return (x > y) - (x < y);
}

/* Time of this process alone, so that what else the machine does counts little. */
static double
now_ms(void)
{
    struct timespec at;

    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec * 1e3 + (double)at.tv_nsec * 1e-6;
}

static double
since_ms(double *start_ms)
{
    double now = now_ms(), took = now - *start_ms;

    *start_ms = now;
    return took;
}

/* Today's way and the last option, side by side as on the stage. */
static void
draw(cairo_t *cr,
     const hs_task *task,
     const hs_results *results,
     double took_ms[N_PARTS],
     double *start_ms)
{
    const hs_theme *theme = hs_theme_get(HS_THEME_LIGHT);
    int shown[2] = {results->baseline, results->n_options - 1};
    hs_scene *scenes[2];
    hs_view view;

    for (int k = 0; k < 2; k++) {
        hs_scene_request request = {.task = task,
                                    .results = results,
                                    .option = shown[k],
                                    .sample = results->options[shown[k]].n_samples / 2,
                                    .layers = hs_layers_default(),
                                    .chosen_point = 1};

        scenes[k] = hs_scene_build(&request);
    }
    took_ms[SCENES] = since_ms(start_ms);
    view = hs_view_fit_two(scenes[0], scenes[1], WIDTH, HEIGHT, FONT);
    for (int k = 0; k < 2; k++) {
        hs_paint_scene(cr, scenes[k], &view, theme);
        hs_scene_free(scenes[k]);
    }
    took_ms[PAINT] = since_ms(start_ms);
}

/* The second point of the route goes up and down by up to 5 cm. */
static gboolean
step(hs_document *document,
     int i,
     hs_memo *memo,
     hs_arena *arena,
     cairo_t *cr,
     double took_ms[N_PARTS])
{
    const hs_point *point = &hs_document_task(document)->route.points[1];
    g_autoptr(hs_edit) edit = hs_edit_new("drag");
    g_autoptr(hs_document) next = NULL;
    hs_fault *fault = NULL;
    hs_results results;
    hs_error error;
    double start_ms = now_ms();

    hs_edit_move_point(edit, 1, point->x_m, point->z_m + 0.01 * (i % 6));
    next = hs_document_apply(document, edit, FALSE, &fault);
    if (next == NULL)
        return FALSE;
    took_ms[EDIT] = since_ms(&start_ms);
    hs_arena_reset(arena);
    if (hs_assess_again(hs_document_task(next), HS_ASSESS_LIVE, memo, arena, &results,
                        &error) != HS_OK)
        return FALSE;
    took_ms[ASSESS] = since_ms(&start_ms);
    draw(cr, hs_document_task(next), &results, took_ms, &start_ms);
    took_ms[ALL] = took_ms[EDIT] + took_ms[ASSESS] + took_ms[SCENES] + took_ms[PAINT];
    return TRUE;
}

static void
drag(const char *path, int steps, hs_document *document, cairo_t *cr)
{
    double took_ms[N_PARTS][STEPS], one_ms[N_PARTS];
    g_autofree char *name = g_path_get_basename(path);
    hs_arena *arena = hs_arena_new();
    hs_memo *memo = hs_memo_new();
    gboolean works = TRUE;

    for (int i = 0; i < steps && works; i++) {
        works = step(document, i, memo, arena, cr, one_ms);
        for (int k = 0; k < N_PARTS; k++)
            took_ms[k][i] = one_ms[k];
    }
    for (int k = 0; k < N_PARTS && works; k++)
        qsort(took_ms[k], (size_t)steps, sizeof(double), by_size);
    if (works)
        printf("%-44s edit %5.2f  assess %6.2f  scenes %5.2f  paint %6.2f  all %6.2f ms\n",
               name, took_ms[EDIT][steps / 2], took_ms[ASSESS][steps / 2],
               took_ms[SCENES][steps / 2], took_ms[PAINT][steps / 2], took_ms[ALL][steps / 2]);
    else
        printf("%-44s could not be dragged\n", name);
    hs_memo_free(memo);
    hs_arena_free(arena);
}

/* --once: a single step of each document, for counting instructions. */
int
main(int argc, char **argv)
{
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
    cairo_t *cr = cairo_create(surface);
    gboolean once = argc > 1 && g_str_equal(argv[1], "--once");

    for (int i = once ? 2 : 1; i < argc; i++) {
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        g_autoptr(hs_document) document = hs_document_load(argv[i], faults, NULL);

        if (document != NULL && hs_document_task(document)->route.n_points > 1)
            drag(argv[i], once ? 1 : STEPS, document, cr);
    }
    if (cairo_status(cr) != CAIRO_STATUS_SUCCESS)
        fprintf(stderr, "painting failed: %s\n", cairo_status_to_string(cairo_status(cr)));
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    return 0;
}
