/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the strip read time and values rightly?
 * Answer:    x and time there and back, the worst bearer's value, absent where there is none.
 * Not here:  its look. */
#include "plot.h"
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

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/plot/time_goes_there_and_back", plot__time_goes_there_and_back);
    g_test_add_func("/plot/shows_the_worst_bearer", plot__shows_the_worst_bearer);
    g_test_add_func("/plot/absent_is_absent", plot__absent_is_absent);
    g_test_add_func("/plot/every_kind_paints_something", plot__every_kind_paints_something);
    return g_test_run();
}
