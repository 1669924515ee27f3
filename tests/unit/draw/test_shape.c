/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the outlines what geometry says?
 * Answer:    areas of capsules, ellipses and hulls against their formulas (plane geometry).
 * Not here:  what they stand for. */
#include "shape.h"

#include <glib.h>

static void
shape__capsule_has_its_area(void)
{
    hs_outline outline;

    /* equal radii: rectangle 2 r L and a circle; arcs of 12 steps lie a little inside */
    hs_outline_capsule(&outline, (hs_vec2){0.1, 0.2}, 0.05, (hs_vec2){0.4, 0.6}, 0.05);
    g_assert_cmpfloat_with_epsilon(hs_outline_area_m2(&outline), 2 * 0.05 * 0.5 + G_PI * 0.0025,
                                   1e-4);
    hs_outline_capsule(&outline, (hs_vec2){0, 0}, 0.3, (hs_vec2){0.1, 0},
                       0.05); /* one end inside the other */
    g_assert_cmpfloat_with_epsilon(hs_outline_area_m2(&outline), G_PI * 0.09, 1e-3);
}

static void
shape__ellipse_has_its_area(void)
{
    hs_outline outline;

    hs_outline_ellipse(&outline, (hs_vec2){1, 1}, 0.4, 0.2, 0.7);
    g_assert_cmpfloat_with_epsilon(hs_outline_area_m2(&outline), G_PI * 0.08, 1e-3);
}

static void
shape__hull_drops_what_lies_inside(void)
{
    hs_vec2 points_m[] = {{0, 0}, {1, 0}, {1, 1}, {0, 1}, {0.5, 0.5}, {0.5, 0}};
    hs_outline outline;

    hs_outline_hull(&outline, points_m, 6);
    g_assert_cmpint(outline.n, ==, 4);
    g_assert_cmpfloat_with_epsilon(hs_outline_area_m2(&outline), 1, 1e-12);
}

static void
shape__strip_has_its_length_and_breadth(void)
{
    hs_outline outline;
    double most = -1;

    hs_outline_strip(&outline, (hs_vec2){0, 0}, (hs_vec2){0.5, 0}, 0.1, 0.02);
    g_assert_cmpfloat_with_epsilon(hs_outline_area_m2(&outline), 0.1 - (4 - G_PI) * 0.0004,
                                   1e-4);
    for (int i = 0; i < outline.n; i++)
        most = fmax(most, outline.at[i].x);
    g_assert_cmpfloat_with_epsilon(most, 0.5, 1e-9);
}

static void
shape__smooth_curve_passes_its_points(void)
{
    hs_vec2 points_m[] = {{0, 0}, {1, 0.2}, {1.2, 1}, {0.1, 0.8}};
    hs_outline outline;

    hs_outline_smooth(&outline, points_m, 4);
    for (int i = 0; i < 4; i++) {
        double nearest = 1;

        for (int k = 0; k < outline.n; k++)
            nearest = fmin(nearest, hypot(outline.at[k].x - points_m[i].x,
                                          outline.at[k].y - points_m[i].y));
        g_assert_cmpfloat(nearest, <, 1e-9);
    }
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/shape/capsule_has_its_area", shape__capsule_has_its_area);
    g_test_add_func("/shape/ellipse_has_its_area", shape__ellipse_has_its_area);
    g_test_add_func("/shape/hull_drops_what_lies_inside", shape__hull_drops_what_lies_inside);
    g_test_add_func("/shape/strip_has_its_length_and_breadth",
                    shape__strip_has_its_length_and_breadth);
    g_test_add_func("/shape/smooth_curve_passes_its_points",
                    shape__smooth_curve_passes_its_points);
    return g_test_run();
}
