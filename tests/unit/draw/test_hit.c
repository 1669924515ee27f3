/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the right thing under the pointer, and does a drag come to rest where it should?
 * Answer:    points before bodies, nothing far off; floor, obstacle tops and other points pull, Alt frees.
 * Not here:  gestures. */
#include "hit.h"
#include "scene_fixture.h"

static hs_scene *
stage(hs_view *ret_view)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 2);
    hs_scene *scene = hs_scene_build(&request);

    *ret_view = hs_view_fit(scene, 800, 600, 13);
    return scene;
}

static void
hit__every_spot_is_under_its_own_place(void)
{
    hs_view view;
    g_autoptr(hs_scene) scene = stage(&view);
    int n, n_points = 0;
    const hs_spot *spots = hs_scene_spots(scene, &n);

    g_assert_cmpint(n, ==, 5 + 4 + 2 + 2);
    for (int i = 0; i < n; i++) {
        hs_spot found;

        g_assert_true(
            hs_hit_at(scene, &view, hs_view_to_surface(&view, spots[i].at_m), 16, &found));
        if (spots[i].kind == HS_SPOT_POINT) {
            g_assert_cmpint(found.kind, ==, HS_SPOT_POINT);
            g_assert_cmpint(found.index, ==, spots[i].index);
            n_points++;
        }
    }
    g_assert_cmpint(n_points, ==, 5);
}

static void
hit__empty_paper_is_nothing(void)
{
    hs_view view;
    g_autoptr(hs_scene) scene = stage(&view);
    hs_spot found;

    g_assert_false(hs_hit_at(scene, &view, (hs_vec2){790, 10}, 16, &found));
}

static void
hit__floor_obstacle_and_heights_pull(void)
{
    hs_view view;
    g_autoptr(hs_scene) scene = stage(&view);
    double near_m = 4 / view.scale_px_per_m;
    hs_vec2 over_frame_m = {hs_scene_x_of_world(scene, 6.5), 0.55 + near_m};
    hs_snap snap =
        hs_snap_point(hs_fixture_task(), scene, &view, (hs_vec2){0.5, near_m}, 0, 0.001, FALSE);

    g_assert_cmpint(snap.to_z, ==, HS_SNAP_FLOOR);
    g_assert_cmpfloat(snap.world_m.y, ==, 0);
    snap = hs_snap_point(hs_fixture_task(), scene, &view, over_frame_m, 4, 0.001, FALSE);
    g_assert_cmpint(snap.to_z, ==, HS_SNAP_OBSTACLE);
    g_assert_cmpfloat(snap.world_m.y, ==, 0.55);
    snap = hs_snap_point(hs_fixture_task(), scene, &view, (hs_vec2){0.5, 0.62 - near_m}, 4,
                         0.001, FALSE);
    g_assert_cmpint(snap.to_z, ==, HS_SNAP_POINT_HEIGHT);
    g_assert_cmpfloat(snap.world_m.y, ==, 0.62);
}

static void
hit__alt_only_rounds(void)
{
    hs_view view;
    g_autoptr(hs_scene) scene = stage(&view);
    hs_snap snap = hs_snap_point(hs_fixture_task(), scene, &view, (hs_vec2){0.30361, 0.00449},
                                 0, 0.01, TRUE);

    g_assert_cmpint(snap.to_z, ==, HS_SNAP_NONE);
    g_assert_cmpfloat_with_epsilon(snap.world_m.x, 0.30, 1e-12);
    g_assert_cmpfloat_with_epsilon(snap.world_m.y, 0.0, 1e-12);
}

static void
hit__reach_is_pulled_to_the_rating(void)
{
    const hs_rating_point rating[] = {{0.25, 60}, {0.403, 50}};
    hs_suit suit = {.n_rating = 2, .rating = rating};
    hs_view view = {.scale_px_per_m = 200};

    g_assert_cmpfloat(hs_snap_reach_m(&suit, &view, 0.42, FALSE), ==, 0.403);
    g_assert_cmpfloat_with_epsilon(hs_snap_reach_m(&suit, &view, 0.334, FALSE), 0.33, 1e-12);
    g_assert_cmpfloat_with_epsilon(hs_snap_reach_m(NULL, &view, 0.4216, TRUE), 0.422, 1e-12);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/hit/every_spot_is_under_its_own_place",
                    hit__every_spot_is_under_its_own_place);
    g_test_add_func("/hit/empty_paper_is_nothing", hit__empty_paper_is_nothing);
    g_test_add_func("/hit/floor_obstacle_and_heights_pull",
                    hit__floor_obstacle_and_heights_pull);
    g_test_add_func("/hit/alt_only_rounds", hit__alt_only_rounds);
    g_test_add_func("/hit/reach_is_pulled_to_the_rating", hit__reach_is_pulled_to_the_rating);
    return g_test_run();
}
