/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long does a picture take?
 * Answer:    median ms of building a scene, and of painting all of it, and only what moves, on 1600x1000.
 * Not here:  pass or fail: figures depend on the machine. */
#include "paint.h"
#include "scene_fixture.h"

#include <stdlib.h>

enum {
    ROUNDS = 101,
    WIDTH = 1600,
    HEIGHT = 1000
};

static int
by_size(const void *a, const void *b)
{
    const double *p = a, *q = b;

    return *p < *q ? -1 : *p > *q;
}

static double
median_ms(double *values)
{
    qsort(values, ROUNDS, sizeof *values, by_size);
    return values[ROUNDS / 2];
}

int
main(void)
{
    double build_ms[ROUNDS], whole_ms[ROUNDS], moving_ms[ROUNDS];
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
    cairo_t *cr = cairo_create(surface);
    const hs_theme *theme = hs_theme_get(HS_THEME_LIGHT);

    for (int i = 0; i < ROUNDS; i++) {
        hs_scene_request request =
            hs_fixture_request(i % 2 ? HS_FIXTURE_CREW : HS_FIXTURE_SUITED, 2 + (i % 10) * 0.1);
        gint64 start_us = g_get_monotonic_time();
        g_autoptr(hs_scene) scene = hs_scene_build(&request);
        gint64 built_us = g_get_monotonic_time();
        hs_view view = hs_view_fit(scene, WIDTH, HEIGHT, 15);

        hs_paint_scene(cr, scene, &view, theme);
        gint64 painted_us = g_get_monotonic_time();

        hs_paint_part_of(cr, scene, &view, theme, HS_PAINT_MOVING);
        moving_ms[i] = (double)(g_get_monotonic_time() - painted_us) / 1000;
        whole_ms[i] = (double)(painted_us - built_us) / 1000;
        build_ms[i] = (double)(built_us - start_us) / 1000;
    }
    g_print(
        "scene build %.3f ms, paint all %.2f ms, paint moving %.2f ms (median of %d, %dx%d)\n",
        median_ms(build_ms), median_ms(whole_ms), median_ms(moving_ms), ROUNDS, WIDTH, HEIGHT);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    return 0;
}
