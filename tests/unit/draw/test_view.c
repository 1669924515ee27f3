/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do places and pixels agree, and is everything in the picture?
 * Answer:    round trips, fits at several sizes, one scale for two.
 * Not here:  painting. */
#include "scene_fixture.h"
#include "scene_internal.h"
#include "view.h"

static void
view__goes_there_and_back(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2);
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    hs_view view = hs_view_fit(scene, 800, 600, 13);

    hs_view_zoom(&view, 1.7, (hs_vec2){200, 300});
    hs_view_pan(&view, -31, 12);
    for (int i = 0; i < 100; i++) {
        hs_vec2 at_m = {i * 0.13 - 4, i * 0.07 - 2},
                back_m = hs_view_to_world(&view, hs_view_to_surface(&view, at_m));

        g_assert_cmpfloat_with_epsilon(back_m.x, at_m.x, 1e-9);
        g_assert_cmpfloat_with_epsilon(back_m.y, at_m.y, 1e-9);
    }
}

static void
view__zoom_keeps_the_place_under_the_pointer(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2);
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    hs_view view = hs_view_fit(scene, 800, 600, 13);
    hs_vec2 pointer_px = {123, 456}, before_m = hs_view_to_world(&view, pointer_px);

    hs_view_zoom(&view, 2.5, pointer_px);
    hs_vec2 after_m = hs_view_to_world(&view, pointer_px);

    g_assert_cmpfloat_with_epsilon(after_m.x, before_m.x, 1e-9);
    g_assert_cmpfloat_with_epsilon(after_m.y, before_m.y, 1e-9);
}

/* Load and figures at every sample lie on the surface, whatever its size. */
static void
view__fit_contains_load_and_people_everywhere(void)
{
    static const double sizes[][2] = {{480, 500}, {800, 600}, {1200, 400}, {300, 700}};

    for (int o = 0; o < HS_FIXTURE_N_OPTIONS; o++)
        for (int i = 0; i < hs_fixture_results()->options[o].n_samples; i++) {
            hs_scene_request request = hs_fixture_request(o, 2);

            request.sample = i;
            request.layers = 1u << HS_LAYER_load | 1u << HS_LAYER_figure;
            g_autoptr(hs_scene) scene = hs_scene_build(&request);

            for (guint k = 0; k < G_N_ELEMENTS(sizes); k++) {
                hs_view view = hs_view_fit(scene, sizes[k][0], sizes[k][1], 13);

                for (guint p = 0; p < scene->points->len; p++) {
                    hs_vec2 at_px =
                        hs_view_to_surface(&view, g_array_index(scene->points, hs_vec2, p));

                    g_assert_cmpfloat(at_px.x, >=, 0);
                    g_assert_cmpfloat(at_px.x, <=, sizes[k][0]);
                    g_assert_cmpfloat(at_px.y, >=, 0);
                    g_assert_cmpfloat(at_px.y, <=, sizes[k][1]);
                }
            }
        }
}

static void
view__two_scenes_share_scale_and_floor(void)
{
    hs_scene_request a = hs_fixture_request(HS_FIXTURE_CREW, 2),
                     b = hs_fixture_request(HS_FIXTURE_SUITED, 2);
    g_autoptr(hs_scene) left = hs_scene_build(&a);
    g_autoptr(hs_scene) right = hs_scene_build(&b);
    hs_view both = hs_view_fit_two(left, right, 480, 500, 13),
            other = hs_view_fit_two(right, left, 480, 500, 13);

    g_assert_cmpfloat_with_epsilon(both.scale_px_per_m, other.scale_px_per_m, 1e-12);
    g_assert_cmpfloat_with_epsilon(both.y0_px, other.y0_px, 1e-12);
    g_assert_cmpfloat_with_epsilon(both.force_px_per_N, other.force_px_per_N, 1e-12);
    g_assert_cmpfloat(both.scale_px_per_m, <=, hs_view_fit(left, 480, 500, 13).scale_px_per_m);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/view/goes_there_and_back", view__goes_there_and_back);
    g_test_add_func("/view/zoom_keeps_the_place_under_the_pointer",
                    view__zoom_keeps_the_place_under_the_pointer);
    g_test_add_func("/view/fit_contains_load_and_people_everywhere",
                    view__fit_contains_load_and_people_everywhere);
    g_test_add_func("/view/two_scenes_share_scale_and_floor",
                    view__two_scenes_share_scale_and_floor);
    return g_test_run();
}
