/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the strip read time and values rightly?
 * Answer:    x and time there and back, the worst bearer's value, absent where there is none.
 * Not here:  its look. */
#include "plot.h"
#include "plot_name.h"
#include "scene_fixture.h"

static hs_plot_request
request_of(hs_plot_kind kind)
{
    return (hs_plot_request){.results = hs_fixture_results(),
                             .task = hs_fixture_task(),
                             .left = HS_FIXTURE_CREW,
                             .right = HS_FIXTURE_SUITED,
                             .kind = kind,
                             .width_px = 640,
                             .height_px = 110,
                             .axis_px = 60,
                             .font_px = 13};
}

static void
plot__time_goes_there_and_back(void)
{
    hs_plot_request request = request_of(HS_PLOT_HANDS);

    for (double t_s = 0; t_s <= 8; t_s += 0.05)
        g_assert_cmpfloat_with_epsilon(
            hs_plot_time_of_x(&request, hs_plot_x_of_time(&request, t_s)), t_s, 1e-9);
    g_assert_cmpfloat_with_epsilon(hs_plot_x_of_time(&request, 0), 60, 1e-9);
    g_assert_cmpfloat(hs_plot_time_of_x(&request, -100), ==, 0);
    g_assert_cmpfloat_with_epsilon(hs_plot_time_of_x(&request, 5000), 8, 1e-9);
}

static void
plot__shows_the_worst_bearer(void)
{
    const hs_results *results = hs_fixture_results();
    const hs_bearer_sample *bearers = results->options[HS_FIXTURE_CREW].samples[5].bearers;

    g_assert_cmpfloat(hs_plot_value(results, HS_FIXTURE_CREW, 5, HS_PLOT_HANDS), ==,
                      fmax(bearers[0].felt_force_N, bearers[1].felt_force_N));
    g_assert_cmpfloat(hs_plot_value(results, HS_FIXTURE_CREW, 5, HS_PLOT_BALANCE), ==,
                      1000 * fmin(bearers[0].balance_margin_m, bearers[1].balance_margin_m));
    g_assert_cmpfloat(hs_plot_value(results, HS_FIXTURE_SUITED, 5, HS_PLOT_POWER_OFF), ==, 9);
}

static void
plot__absent_is_absent(void)
{
    g_assert_true(
        isnan(hs_plot_value(hs_fixture_results(), HS_FIXTURE_CREW, 5, HS_PLOT_POWER_OFF)));
    g_assert_true(isnan(hs_plot_value(hs_fixture_results(), -1, 5, HS_PLOT_HANDS)));
    g_assert_true(isnan(hs_plot_value(hs_fixture_results(), 0, 4000, HS_PLOT_HANDS)));
}

static guint
dark_pixels(cairo_surface_t *surface, int width, int height)
{
    const unsigned char *data = cairo_image_surface_get_data(surface);
    int stride = cairo_image_surface_get_stride(surface);
    guint n = 0;

    for (int y = 0; y < height; y++)
        for (int x = 0; x < width; x++)
            n += data[y * stride + 4 * x] < 128;
    return n;
}

static void
plot__every_kind_paints_something(void)
{
    for (int k = 0; k <= HS_N_PLOTS; k++) {
        hs_plot_request request = request_of((hs_plot_kind)(k % HS_N_PLOTS));
        cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 640, 110);
        cairo_t *cr = cairo_create(surface);

        cairo_set_source_rgb(cr, 1, 1, 1);
        cairo_paint(cr);
        if (k == HS_N_PLOTS)
            hs_plot_axis_paint(cr, &request, hs_theme_get(HS_THEME_LIGHT));
        else
            hs_plot_paint(cr, &request, hs_theme_get(HS_THEME_LIGHT));
        cairo_surface_flush(surface);
        g_assert_cmpint(cairo_status(cr), ==, CAIRO_STATUS_SUCCESS);
        g_assert_cmpuint(dark_pixels(surface, 640, 110), >, 60);
        cairo_destroy(cr);
        cairo_surface_destroy(surface);
    }
}

static gboolean
is_clear(const hs_vec2 *line, int n, const hs_box *box)
{
    double least, most;

    return !hs_line_range(line, n, box->x, box->x + box->width, &least, &most) ||
           most <= box->y || least >= box->y + box->height;
}

static double
away_px(const hs_vec2 *line, int n, const hs_box *box)
{
    double least, most;

    g_assert_true(hs_line_range(line, n, box->x, box->x + box->width, &least, &most));
    return fmax(fmax(least - box->y - box->height, box->y - most), 0);
}

/* Two lines that come close at their end: both names stand clear of both lines, each nearer to its own. */
static void
plot__names_stand_beside_their_own_line(void)
{
    static const hs_vec2 upper[] = {{0, 20}, {300, 40}, {400, 60}},
                         lower[] = {{0, 80}, {300, 80}, {400, 62}};
    hs_name_room room = {.own = upper,
                         .other = lower,
                         .n_own = 3,
                         .n_other = 3,
                         .surface = {0, 0, 400, 100},
                         .gap_px = 2};
    hs_box box, second;

    g_assert_true(hs_plot_name_place(&room, 90, 12, &box));
    g_assert_true(is_clear(upper, 3, &box) && is_clear(lower, 3, &box));
    g_assert_cmpfloat(away_px(upper, 3, &box), <, away_px(lower, 3, &box));
    room.own = lower;
    room.other = upper;
    room.kept = &box;
    room.n_kept = 1;
    g_assert_true(hs_plot_name_place(&room, 90, 12, &second));
    g_assert_true(is_clear(upper, 3, &second) && is_clear(lower, 3, &second));
    g_assert_cmpfloat(away_px(lower, 3, &second), <, away_px(upper, 3, &second));
    g_assert_false(hs_boxes_overlap(&box, &second));
}

/* What is in the way at the end sends the name along the line; what is too small for it gets none. */
static void
plot__names_give_way(void)
{
    static const hs_vec2 line[] = {{0, 50}, {400, 50}};
    static const hs_box figure = {300, 20, 100, 60};
    hs_name_room room = {.own = line,
                         .n_own = 2,
                         .kept = &figure,
                         .n_kept = 1,
                         .surface = {0, 0, 400, 100},
                         .gap_px = 2};
    hs_box box;

    g_assert_true(hs_plot_name_place(&room, 90, 12, &box));
    g_assert_cmpfloat(box.x + box.width, <=, 300);
    g_assert_cmpfloat_with_epsilon(box.y + box.height, 48, 1e-9);
    g_assert_false(hs_plot_name_place(&room, 401, 12, &box));
    room.n_own = 1;
    g_assert_false(hs_plot_name_place(&room, 90, 12, &box));
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/plot/time_goes_there_and_back", plot__time_goes_there_and_back);
    g_test_add_func("/plot/shows_the_worst_bearer", plot__shows_the_worst_bearer);
    g_test_add_func("/plot/absent_is_absent", plot__absent_is_absent);
    g_test_add_func("/plot/every_kind_paints_something", plot__every_kind_paints_something);
    g_test_add_func("/plot/names_stand_beside_their_own_line",
                    plot__names_stand_beside_their_own_line);
    g_test_add_func("/plot/names_give_way", plot__names_give_way);
    return g_test_run();
}
