/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do folded ways keep everything in its place and to scale?
 * Answer:    the mapping goes there and back, rises, and bodies keep their width.
 * Not here:  the break mark's look. */
#include "fold.h"
#include "scene_fixture.h"

static void
fold__goes_there_and_back(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2.5);
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    double before = -10;

    g_assert_cmpuint(scene->folds->len, ==, 1);
    for (double x_m = -2; x_m < 10; x_m += 0.01) {
        double drawn_m = hs_scene_x_of_world(scene, x_m);

        g_assert_cmpfloat(drawn_m, >, before);
        g_assert_cmpfloat_with_epsilon(hs_scene_world_of_x(scene, drawn_m), x_m, 1e-9);
        before = drawn_m;
    }
}

static void
fold__keeps_the_start_and_shortens_the_way(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2.5);
    g_autoptr(hs_scene) folded = hs_scene_build(&request);

    request.folds = FALSE;
    g_autoptr(hs_scene) whole = hs_scene_build(&request);

    g_assert_cmpfloat_with_epsilon(hs_scene_x_of_world(folded, 0), 0, 1e-12);
    g_assert_cmpfloat_with_epsilon(hs_scene_x_of_world(whole, 6), 6, 1e-12);
    g_assert_cmpfloat(hs_scene_x_of_world(folded, 6), <, 3);
    /* beyond the fold distances are again as they are */
    g_assert_cmpfloat_with_epsilon(
        hs_scene_x_of_world(folded, 6.6) - hs_scene_x_of_world(folded, 6), 0.6, 1e-12);
}

/* The widest limb and the load are as wide in the middle of the fold as at the start. */
static double
width_of_layer_m(int sample, hs_layer layer)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2.5);
    double least_m = HUGE_VAL, most_m = -HUGE_VAL;

    request.sample = sample;
    g_autoptr(hs_scene) scene = hs_scene_build(&request);

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        for (int k = 0; prim->layer == layer && k < prim->n; k++) {
            double x_m = g_array_index(scene->points, hs_vec2, prim->first + k).x;

            least_m = fmin(least_m, x_m);
            most_m = fmax(most_m, x_m);
        }
    }
    return most_m - least_m;
}

static void
fold__leaves_the_load_to_scale(void)
{
    hs_scene_request start = hs_fixture_request(HS_FIXTURE_CREW, 2.0),
                     middle = hs_fixture_request(HS_FIXTURE_CREW, 2.5);

    g_assert_cmpfloat_with_epsilon(width_of_layer_m(start.sample, HS_LAYER_load),
                                   width_of_layer_m(middle.sample, HS_LAYER_load), 1e-9);
}

/* Where the load rests, nobody stands on a break mark and no load hangs over it. */
static double
room_at_break_m(int option, double route)
{
    hs_scene_request request = hs_fixture_request(option, route);
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    double least_m = HUGE_VAL;

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *mark = &g_array_index(scene->prims, hs_prim, i);

        for (guint j = 0; mark->kind == HS_PRIM_BREAK && j < scene->prims->len; j++) {
            const hs_prim *prim = &g_array_index(scene->prims, hs_prim, j);

            if (prim->layer != HS_LAYER_figure && prim->layer != HS_LAYER_load)
                continue;
            for (int k = 0; k < prim->n; k++)
                least_m = fmin(least_m,
                               fabs(g_array_index(scene->points, hs_vec2, prim->first + k).x -
                                    mark->at.x));
        }
    }
    g_assert_cmpfloat(least_m, <, HUGE_VAL);
    return least_m;
}

static void
fold__marks_the_break_clear_of_feet_and_load_at_rest(void)
{
    static const double rest[] = {1, 2, 3, 4};

    for (guint i = 0; i < G_N_ELEMENTS(rest); i++) {
        g_assert_cmpfloat(room_at_break_m(HS_FIXTURE_CREW, rest[i]), >, 0.1);
        g_assert_cmpfloat(room_at_break_m(HS_FIXTURE_SUITED, rest[i]), >, 0.1);
    }
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/fold/goes_there_and_back", fold__goes_there_and_back);
    g_test_add_func("/fold/keeps_the_start_and_shortens_the_way",
                    fold__keeps_the_start_and_shortens_the_way);
    g_test_add_func("/fold/leaves_the_load_to_scale", fold__leaves_the_load_to_scale);
    g_test_add_func("/fold/marks_the_break_clear_of_feet_and_load_at_rest",
                    fold__marks_the_break_clear_of_feet_and_load_at_rest);
    return g_test_run();
}
