/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does any label lie over another?
 * Answer:    never: in crowds of labels made by chance, and in every scene of the fixture at every size and place.
 * Not here:  their type. */
#include "label.h"
#include "paint_internal.h"
#include "scene_fixture.h"

enum {
    MOST = 60
};

static void
assert_apart(const hs_label_wish *wishes, int n)
{
    for (int i = 0; i < n; i++)
        for (int k = 0; k < i; k++)
            if (wishes[i].is_placed && wishes[k].is_placed)
                g_assert_false(hs_boxes_overlap(&wishes[i].box, &wishes[k].box));
}

static void
label__crowd_never_overlaps(void)
{
    hs_box surface = {0, 0, 480, 500};
    hs_box taken[] = {{200, 200, 60, 80}, {300, 100, 12, 200}};

    for (int round = 0; round < 40; round++) {
        g_autoptr(GRand) dice = g_rand_new_with_seed((guint32)round);
        hs_label_wish wishes[MOST] = {0};

        for (int i = 0; i < MOST; i++)
            wishes[i] = (hs_label_wish){.anchor_px = {g_rand_double_range(dice, 0, 480),
                                                      g_rand_double_range(dice, 0, 500)},
                                        .side = (hs_side)g_rand_int_range(dice, 0, 5),
                                        .width_px = g_rand_double_range(dice, 12, 120),
                                        .height_px = 15,
                                        .gap_px = 2,
                                        .priority = g_rand_int_range(dice, 0, 10)};
        hs_labels_place(wishes, MOST, taken, 2, NULL, 0, &surface);
        assert_apart(wishes, MOST);
        for (int i = 0; i < MOST; i++)
            for (int t = 0; t < 2 && wishes[i].is_placed; t++)
                g_assert_false(hs_boxes_overlap(&wishes[i].box, &taken[t]));
    }
}

static void
label__lonely_one_stays_where_it_wishes(void)
{
    hs_box surface = {0, 0, 400, 400};
    hs_label_wish wish = {.anchor_px = {100, 100},
                          .side = HS_SIDE_RIGHT,
                          .width_px = 60,
                          .height_px = 14,
                          .gap_px = 3};

    hs_labels_place(&wish, 1, NULL, 0, NULL, 0, &surface);
    g_assert_true(wish.is_placed);
    g_assert_false(wish.has_leader);
    g_assert_cmpfloat_with_epsilon(wish.box.x, 103, 1e-9);
    g_assert_cmpfloat_with_epsilon(wish.box.y, 93, 1e-9);
}

/* Two at one place: the more important keeps it, the other moves and gets a leader. */
static void
label__less_important_one_moves_by_leader(void)
{
    hs_box surface = {0, 0, 400, 400}, wall = {104, 60, 90, 80};
    hs_label_wish wishes[2] = {{.anchor_px = {100, 100},
                                .side = HS_SIDE_LEFT,
                                .width_px = 60,
                                .height_px = 14,
                                .gap_px = 3,
                                .priority = 1},
                               {.anchor_px = {100, 100},
                                .side = HS_SIDE_LEFT,
                                .width_px = 60,
                                .height_px = 14,
                                .gap_px = 3,
                                .priority = 5}};

    hs_labels_place(wishes, 2, &wall, 1, NULL, 0, &surface);
    g_assert_true(wishes[0].is_placed && wishes[1].is_placed);
    g_assert_cmpfloat_with_epsilon(wishes[1].box.x, 37, 1e-9);
    g_assert_false(hs_boxes_overlap(&wishes[0].box, &wishes[1].box));
    g_assert_false(hs_boxes_overlap(&wishes[0].box, &wall));
}

static void
label__without_room_is_left_out(void)
{
    hs_box surface = {0, 0, 50, 20};
    hs_label_wish wish = {
        .anchor_px = {25, 10}, .side = HS_SIDE_OVER, .width_px = 80, .height_px = 14};

    hs_labels_place(&wish, 1, NULL, 0, NULL, 0, &surface);
    g_assert_false(wish.is_placed);
}

static int
check_scene(const hs_scene *scene, double width_px, double height_px, double font_px)
{
    hs_view view = hs_view_fit(scene, width_px, height_px, font_px);
    hs_painter painter = {NULL, scene, &view, hs_theme_get(HS_THEME_LIGHT),
                          hs_paint_pango_new()};
    g_autoptr(GArray) placed = hs_paint_place_labels(&painter);
    g_autofree hs_label_wish *wishes = g_new0(hs_label_wish, placed->len + 1);
    int n_placed = 0;

    for (guint i = 0; i < placed->len; i++) {
        wishes[i] = g_array_index(placed, hs_placed, i).wish;
        n_placed += wishes[i].is_placed;
    }
    assert_apart(wishes, (int)placed->len);
    g_object_unref(painter.pango);
    return n_placed;
}

static void
label__scenes_never_overlap(void)
{
    static const double sizes[][3] = {
        {480, 500, 13}, {800, 600, 13}, {480, 500, 20}, {640, 480, 10}, {300, 200, 13}};

    for (int o = 0; o < HS_FIXTURE_N_OPTIONS; o++)
        for (int i = 0; i < hs_fixture_results()->options[o].n_samples; i += 3) {
            hs_scene_request request = hs_fixture_request(o, 2);

            request.sample = i;
            request.layers = (1u << HS_N_LAYERS) - 1u;
            request.chosen_point = i % 4;
            g_autoptr(hs_scene) scene = hs_scene_build(&request);
            g_autoptr(hs_scene) plan = hs_plan_build(&request);

            for (guint k = 0; k < G_N_ELEMENTS(sizes); k++) {
                g_assert_cmpint(check_scene(scene, sizes[k][0], sizes[k][1], sizes[k][2]), >=,
                                5);
                check_scene(plan, sizes[k][0], sizes[k][1] / 2, sizes[k][2]);
            }
        }
}

/* Its marks belong to the route, which stands still and is painted first: its words must not go under a body. */
static void
label__words_of_the_ruler_are_painted_over_bodies(void)
{
    hs_scene_request request = hs_fixture_request(HS_FIXTURE_CREW, 0);
    int n = 0;

    request.chosen_point = 1;
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    hs_view view = hs_view_fit(scene, 480, 500, 13);
    hs_painter painter = {NULL, scene, &view, hs_theme_get(HS_THEME_LIGHT),
                          hs_paint_pango_new()};
    g_autoptr(GArray) placed = hs_paint_place_labels(&painter);

    for (guint i = 0; i < placed->len; i++) {
        const hs_placed *label = &g_array_index(placed, hs_placed, i);

        if (label->prim->kind != HS_PRIM_RULER)
            continue;
        g_assert_true(label->wish.is_placed);
        g_assert_true(hs_placed_is_above(label));
        g_assert_cmpfloat_with_epsilon(label->wish.box.y + label->wish.box.height / 2,
                                       hs_view_to_surface(&view, label->prim->at).y, 0.01);
        n++;
    }
    g_assert_cmpint(n, ==, 3);
    g_object_unref(painter.pango);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/label/crowd_never_overlaps", label__crowd_never_overlaps);
    g_test_add_func("/label/lonely_one_stays_where_it_wishes",
                    label__lonely_one_stays_where_it_wishes);
    g_test_add_func("/label/less_important_one_moves_by_leader",
                    label__less_important_one_moves_by_leader);
    g_test_add_func("/label/without_room_is_left_out", label__without_room_is_left_out);
    g_test_add_func("/label/scenes_never_overlap", label__scenes_never_overlap);
    g_test_add_func("/label/words_of_the_ruler_are_painted_over_bodies",
                    label__words_of_the_ruler_are_painted_over_bodies);
    return g_test_run();
}
