/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the picture arrive on surfaces?
 * Answer:    pixels in every theme, kept and moving part together as the whole, moving bounds, SVG that parses, paper in black
 *            and white, the status glyph and bar.
 * Not here:  files (export needs a document). */
#include "paint.h"
#include "scene_fixture.h"

#include <cairo-svg.h>
#include <string.h>

enum {
    WIDTH = 480,
    HEIGHT = 500
};

static cairo_surface_t *
canvas(const hs_theme *theme, cairo_t **ret_cr, int width, int height)
{
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);

    *ret_cr = cairo_create(surface);
    cairo_set_source_rgb(*ret_cr, theme->paper.r, theme->paper.g, theme->paper.b);
    cairo_paint(*ret_cr);
    return surface;
}

static hs_scene *
scene_of(int option, hs_view *ret_view)
{
    hs_scene_request request = hs_fixture_request(option, 2.4);
    hs_scene *scene;

    request.layers = (1u << HS_N_LAYERS) - 1u;
    scene = hs_scene_build(&request);
    *ret_view = hs_view_fit(scene, WIDTH, HEIGHT, 13);
    return scene;
}

static guint32
pixel(cairo_surface_t *surface, int x, int y)
{
    const unsigned char *row =
        cairo_image_surface_get_data(surface) + y * cairo_image_surface_get_stride(surface);
    guint32 value;

    memcpy(&value, row + 4 * x, 4);
    return value & 0xffffffu;
}

static guint
n_other_than(cairo_surface_t *surface, guint32 colour, int width, int height)
{
    guint n = 0;

    cairo_surface_flush(surface);
    for (int y = 0; y < height; y++)
        for (int x = 0; x < width; x++)
            n += pixel(surface, x, y) != colour;
    return n;
}

static void
paint__is_not_blank_in_any_theme(void)
{
    for (int k = 0; k < 3; k++)
        for (int o = 0; o < HS_FIXTURE_N_OPTIONS; o++) {
            const hs_theme *theme = hs_theme_get((hs_theme_kind)k);
            hs_view view;
            g_autoptr(hs_scene) scene = scene_of(o, &view);
            cairo_t *cr;
            cairo_surface_t *surface = canvas(theme, &cr, WIDTH, HEIGHT);
            guint32 ground = pixel(surface, 0, 0);

            hs_paint_scene(cr, scene, &view, theme);
            g_assert_cmpint(cairo_status(cr), ==, CAIRO_STATUS_SUCCESS);
            g_assert_cmpuint(n_other_than(surface, ground, WIDTH, HEIGHT), >,
                             WIDTH * HEIGHT / 40);
            cairo_destroy(cr);
            cairo_surface_destroy(surface);
        }
}

/* A copier sees no colour: on paper every pixel is a grey, and nearly all are black or white. */
static void
paint__paper_is_black_and_white(void)
{
    const hs_theme *theme = hs_theme_get(HS_THEME_PAPER);
    hs_view view;
    g_autoptr(hs_scene) scene = scene_of(HS_FIXTURE_SUITED, &view);
    cairo_t *cr;
    cairo_surface_t *surface = canvas(theme, &cr, WIDTH, HEIGHT);

    hs_paint_scene(cr, scene, &view, theme);
    cairo_surface_flush(surface);
    for (int y = 0; y < HEIGHT; y++)
        for (int x = 0; x < WIDTH; x++) {
            guint32 p = pixel(surface, x, y);
            int r = (int)(p >> 16 & 0xff), g = (int)(p >> 8 & 0xff), b = (int)(p & 0xff);

            g_assert_cmpint(MAX(r, MAX(g, b)) - MIN(r, MIN(g, b)), <=, 12);
        }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
}

static void
paint__moving_part_stays_in_its_bounds(void)
{
    const hs_theme *theme = hs_theme_get(HS_THEME_LIGHT);
    hs_view view;
    g_autoptr(hs_scene) scene = scene_of(HS_FIXTURE_SUITED, &view);
    double x, y, width, height;
    cairo_t *cr;
    cairo_surface_t *surface = canvas(theme, &cr, WIDTH, HEIGHT);
    guint32 ground = pixel(surface, 0, 0);

    hs_picture *picture = hs_picture_new(scene, &view, theme);

    hs_picture_moving_bounds(picture, &x, &y, &width, &height);
    hs_picture_paint(picture, cr, HS_PAINT_MOVING);
    hs_picture_free(picture);
    cairo_surface_flush(surface);
    g_assert_cmpfloat(width * height, <, 0.8 * WIDTH * HEIGHT);
    for (int j = 0; j < HEIGHT; j++)
        for (int i = 0; i < WIDTH; i++)
            if (pixel(surface, i, j) != ground) {
                g_assert_cmpfloat(i, >=, floor(x));
                g_assert_cmpfloat(i, <=, ceil(x + width));
                g_assert_cmpfloat(j, >=, floor(y));
                g_assert_cmpfloat(j, <=, ceil(y + height));
            }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
}

static void
paint__the_parts_make_the_same_each_time(void)
{
    const hs_theme *theme = hs_theme_get(HS_THEME_LIGHT);
    hs_view view;
    g_autoptr(hs_scene) scene = scene_of(HS_FIXTURE_CREW, &view);
    cairo_t *cr[2];
    cairo_surface_t *surface[2];

    for (int k = 0; k < 2; k++) {
        surface[k] = canvas(theme, &cr[k], WIDTH, HEIGHT);
        hs_paint_part_of(cr[k], scene, &view, theme, HS_PAINT_SQUARES);
        hs_paint_part_of(cr[k], scene, &view, theme, HS_PAINT_KEPT);
        hs_paint_part_of(cr[k], scene, &view, theme, HS_PAINT_MOVING);
        cairo_surface_flush(surface[k]);
    }
    g_assert_cmpmem(cairo_image_surface_get_data(surface[0]),
                    (gsize)(HEIGHT * cairo_image_surface_get_stride(surface[0])),
                    cairo_image_surface_get_data(surface[1]),
                    (gsize)(HEIGHT * cairo_image_surface_get_stride(surface[1])));
    for (int k = 0; k < 2; k++) {
        cairo_destroy(cr[k]);
        cairo_surface_destroy(surface[k]);
    }
}

/* Nothing twice, nothing left out: a stroke that both parts painted would be darker at its edges. Only where a kept label or mark
 * has something that moves over it may the order differ. */
static void
paint__the_parts_make_the_whole(void)
{
    const hs_theme *theme = hs_theme_get(HS_THEME_LIGHT);
    hs_view view;
    g_autoptr(hs_scene) scene = scene_of(HS_FIXTURE_SUITED, &view);
    hs_picture *picture = hs_picture_new(scene, &view, theme);
    cairo_t *cr[2];
    cairo_surface_t *surface[2];
    int n_other = 0;

    for (int k = 0; k < 2; k++)
        surface[k] = canvas(theme, &cr[k], WIDTH, HEIGHT);
    hs_paint_scene(cr[0], scene, &view, theme);
    hs_picture_paint(picture, cr[1], HS_PAINT_SQUARES);
    hs_picture_paint(picture, cr[1], HS_PAINT_KEPT);
    hs_picture_paint(picture, cr[1], HS_PAINT_MOVING);
    hs_picture_free(picture);
    for (int k = 0; k < 2; k++)
        cairo_surface_flush(surface[k]);
    for (int j = 0; j < HEIGHT; j++)
        for (int i = 0; i < WIDTH; i++)
            n_other += pixel(surface[0], i, j) != pixel(surface[1], i, j);
    g_test_message("%d pixels of %d differ", n_other, WIDTH * HEIGHT);
    g_assert_cmpint(n_other, <, WIDTH * HEIGHT / 100);
    for (int k = 0; k < 2; k++) {
        cairo_destroy(cr[k]);
        cairo_surface_destroy(surface[k]);
    }
}

static cairo_status_t
append(void *data, const unsigned char *bytes, unsigned int length)
{
    g_string_append_len(data, (const char *)bytes, (gssize)length);
    return CAIRO_STATUS_SUCCESS;
}

static void
paint__svg_is_well_formed(void)
{
    const GMarkupParser silent = {NULL, NULL, NULL, NULL, NULL};
    hs_view view;
    g_autoptr(hs_scene) scene = scene_of(HS_FIXTURE_SUITED, &view);
    g_autoptr(GString) svg = g_string_new(NULL);
    cairo_surface_t *surface = cairo_svg_surface_create_for_stream(append, svg, WIDTH, HEIGHT);
    cairo_t *cr = cairo_create(surface);
    GMarkupParseContext *parser = g_markup_parse_context_new(&silent, 0, NULL, NULL);

    hs_paint_scene(cr, scene, &view, hs_theme_get(HS_THEME_LIGHT));
    cairo_destroy(cr);
    cairo_surface_finish(surface);
    g_assert_cmpint(cairo_surface_status(surface), ==, CAIRO_STATUS_SUCCESS);
    g_assert_cmpuint(svg->len, >, 20000);
    g_assert_true(g_markup_parse_context_parse(parser, svg->str, (gssize)svg->len, NULL));
    g_assert_true(g_markup_parse_context_end_parse(parser, NULL));
    g_assert_null(strstr(svg->str, "data:image")); /* lines, no picture of them */
    g_markup_parse_context_free(parser);
    cairo_surface_destroy(surface);
}

/* Ink to the right of the wall: none when within, none beyond its own thickness when near, some when beyond. */
static guint
ink_right_of(double from, hs_finding_status status, gboolean is_bar, double ratio)
{
    const hs_theme *theme = hs_theme_get(HS_THEME_PAPER);
    cairo_t *cr;
    cairo_surface_t *surface = canvas(theme, &cr, 200, 40);
    guint n = 0;

    if (is_bar)
        hs_paint_ratio_bar(cr, status, ratio, 0, 0, 200, 40, theme);
    else
        hs_paint_status_glyph(cr, status, 0, 0, 40, theme);
    cairo_surface_flush(surface);
    for (int y = 0; y < 40; y++)
        for (int x = (int)from; x < 200; x++)
            n += (pixel(surface, x, y) & 0xff) < 100;
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    return n;
}

static void
paint__glyph_says_the_status_by_its_place(void)
{
    g_assert_cmpuint(ink_right_of(31, HS_STATUS_WITHIN, FALSE, 0), ==, 0);
    g_assert_cmpuint(ink_right_of(31, HS_STATUS_NEAR, FALSE, 0), ==, 0);
    g_assert_cmpuint(ink_right_of(31, HS_STATUS_BEYOND, FALSE, 0), >, 30);
    g_assert_cmpuint(ink_right_of(0, HS_STATUS_WITHIN, FALSE, 0), <,
                     ink_right_of(0, HS_STATUS_NEAR, FALSE, 0));
    g_assert_cmpuint(ink_right_of(0, HS_STATUS_NOT_JUDGED, FALSE, 0), >, 20);
    g_assert_cmpuint(ink_right_of(0, HS_STATUS_NONE, FALSE, 0), ==, 0);
}

static void
paint__bar_is_as_long_as_its_ratio(void)
{
    guint half = ink_right_of(0, HS_STATUS_WITHIN, TRUE, 0.5),
          most = ink_right_of(0, HS_STATUS_WITHIN, TRUE, 0.9);

    g_assert_cmpuint(half, <, most);
    g_assert_cmpuint(ink_right_of(170, HS_STATUS_BEYOND, TRUE, 1.2), >,
                     ink_right_of(170, HS_STATUS_WITHIN, TRUE, 0.9));
    g_assert_cmpuint(ink_right_of(0, HS_STATUS_NOT_JUDGED, TRUE, HS_ABSENT), <, half);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/paint/is_not_blank_in_any_theme", paint__is_not_blank_in_any_theme);
    g_test_add_func("/paint/paper_is_black_and_white", paint__paper_is_black_and_white);
    g_test_add_func("/paint/moving_part_stays_in_its_bounds",
                    paint__moving_part_stays_in_its_bounds);
    g_test_add_func("/paint/the_parts_make_the_same_each_time",
                    paint__the_parts_make_the_same_each_time);
    g_test_add_func("/paint/the_parts_make_the_whole", paint__the_parts_make_the_whole);
    g_test_add_func("/paint/svg_is_well_formed", paint__svg_is_well_formed);
    g_test_add_func("/paint/glyph_says_the_status_by_its_place",
                    paint__glyph_says_the_status_by_its_place);
    g_test_add_func("/paint/bar_is_as_long_as_its_ratio", paint__bar_is_as_long_as_its_ratio);
    return g_test_run();
}
