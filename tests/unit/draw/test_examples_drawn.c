/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the worked examples legible, whatever the moment, the size of the view and the language?
 * Answer:    no label lies over another, none over a body or the load where there is room beside them, people are large,
 *            load and people of the moment are whole in the picture.
 * Not here:  the look (the pictures were looked at), the sheet's text (tests/cli/test_sheet.py). */
#include "assess.h"
#include "document.h"
#include "paint_internal.h"
#include "translate.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

enum {
    MOMENTS = 5, /* places of the way that are looked at, both ends included */
    SIZES = 3
};

/* A side view at 1366x768, a wide one, a picture of the sheet in points; the last is the type's height. */
static const double sizes[SIZES][3] = {{480, 500, 13}, {700, 560, 13}, {247, 230, 8.5}};

typedef void (*look)(const hs_scene *scene,
                     const hs_view *view,
                     const char *where,
                     gpointer data);

static void
see_option(const hs_scene_request *request, const char *file, look see, gpointer data)
{
    const hs_option_result *option = &request->results->options[request->option];
    hs_scene_request at = *request;

    for (int m = 0; m < MOMENTS && option->n_samples > 0; m++) {
        at.sample = m * (option->n_samples - 1) / (MOMENTS - 1);
        g_autoptr(hs_scene) scene = hs_scene_build(&at);

        for (int k = 0; k < SIZES; k++) {
            hs_view view = hs_view_fit(scene, sizes[k][0], sizes[k][1], sizes[k][2]);
            g_autofree char *where = g_strdup_printf("%s, option %d, moment %d, size %d, %s",
                                                     file, at.option, m, k, _("reach"));

            see(scene, &view, where, data);
        }
    }
}

static void
see_file(const char *folder, const char *file, look see, gpointer data)
{
    g_autofree char *path = g_build_filename(HS_SOURCE_ROOT, folder, file, NULL);
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(GError) error = NULL;
    g_autoptr(hs_document) document = hs_document_load(path, faults, &error);
    hs_arena *arena = hs_arena_new();
    hs_results results = {0};
    hs_error refused = {0};

    g_assert_no_error(error);
    g_assert_cmpint(
        hs_assess(hs_document_task(document), HS_ASSESS_PLAIN, arena, &results, &refused), ==,
        HS_OK);
    for (int o = 0; o < results.n_options; o++) {
        hs_scene_request request = {.task = hs_document_task(document),
                                    .results = &results,
                                    .option = o,
                                    .layers = hs_layers_default(),
                                    .chosen_point = -1,
                                    .folds = TRUE};

        if (results.options[o].asked)
            see_option(&request, file, see, data);
    }
    hs_arena_free(arena);
}

static void
see_all(look see, gpointer data)
{
    g_autoptr(GDir) folder = g_dir_open(HS_SOURCE_ROOT "/data/examples", 0, NULL);
    const char *file;
    int n = 0;

    while ((file = g_dir_read_name(folder)) != NULL)
        if (g_str_has_suffix(file, ".handspike.json")) {
            see_file("data/examples", file, see, data);
            n++;
        }
    g_assert_cmpint(n, >=, 14);
}

/* ---- labels -------------------------------------------------------------------------------- */

typedef struct {
    int n, n_left_out, n_over, n_avoidable;
} tally;

/* Does the point lie in the outline? */
static gboolean
is_in(const hs_painter *painter, const hs_prim *prim, hs_vec2 at)
{
    const hs_vec2 *points = hs_painter_points(painter, prim);
    gboolean inside = FALSE;

    for (int i = 0, j = prim->n - 1; i < prim->n; j = i++) {
        hs_vec2 a = hs_view_to_surface(painter->view, points[i]),
                b = hs_view_to_surface(painter->view, points[j]);

        if ((a.y > at.y) != (b.y > at.y) &&
            at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x)
            inside = !inside;
    }
    return inside;
}

/* Cheap, and true for whatever lies inside. */
static gboolean
is_near(const hs_painter *painter, const hs_prim *prim, hs_vec2 at)
{
    hs_box box = hs_paint_prim_box(painter, prim);

    return at.x >= box.x && at.x <= box.x + box.width && at.y >= box.y &&
           at.y <= box.y + box.height;
}

static gboolean
is_on_body(const hs_painter *painter, hs_vec2 at)
{
    for (guint i = 0; i < painter->scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(painter->scene->prims, hs_prim, i);

        if (prim->kind == HS_PRIM_SHAPE &&
            (prim->layer == HS_LAYER_figure || prim->layer == HS_LAYER_load) &&
            is_near(painter, prim, at) && is_in(painter, prim, at))
            return TRUE;
    }
    return FALSE;
}

/* Part of a box that lies on bodies or load, by 10 x 2 points. */
static double
part_on_body(const hs_painter *painter, const hs_box *box)
{
    int n = 0;

    for (int i = 0; i < 10; i++)
        for (int k = 0; k < 2; k++)
            n += is_on_body(painter, (hs_vec2){box->x + (i + 0.5) / 10 * box->width,
                                               box->y + (k + 0.5) / 2 * box->height});
    return n / 20.0;
}

static gboolean
is_free(const GArray *placed, guint own, const hs_box *box, const hs_view *view)
{
    if (box->x < 4 || box->y < 4 || box->x + box->width > view->width_px - 4 ||
        box->y + box->height > view->height_px - 4)
        return FALSE;
    for (guint i = 0; i < placed->len; i++) {
        const hs_label_wish *other = &g_array_index(placed, hs_placed, i).wish;

        if (i != own && other->is_placed && hs_boxes_overlap(box, &other->box))
            return FALSE;
    }
    return TRUE;
}

/* Is there a place as near to its anchor as this one, or within five lines, that covers nothing and no one? */
static gboolean
has_better(const hs_painter *painter, const GArray *placed, guint own)
{
    const hs_label_wish *wish = &g_array_index(placed, hs_placed, own).wish;
    double em = wish->height_px;

    for (double dy = -3 * em; dy <= 3 * em; dy += em)
        for (double dx = -3 * em; dx <= 3 * em; dx += em) {
            hs_box box = {wish->anchor_px.x + dx - (dx < 0 ? wish->width_px : 0),
                          wish->anchor_px.y + dy - em / 2, wish->width_px, em};

            if (is_free(placed, own, &box, painter->view) && part_on_body(painter, &box) <= 0)
                return TRUE;
        }
    return FALSE;
}

static gboolean
is_seen(const hs_vec2 *at_px, const hs_view *view)
{
    return at_px->x > 4 && at_px->x < view->width_px - 4 && at_px->y > 4 &&
           at_px->y < view->height_px - 4;
}

static void
count_labels(const hs_scene *scene, const hs_view *view, const char *where, gpointer data)
{
    tally *counted = data;
    hs_painter painter = {NULL, scene, view, hs_theme_get(HS_THEME_LIGHT),
                          hs_paint_pango_new()};
    g_autoptr(GArray) placed = hs_paint_place_labels(&painter);

    for (guint i = 0; i < placed->len; i++) {
        const hs_placed *label = &g_array_index(placed, hs_placed, i);
        const hs_label_wish *wish = &label->wish;

        if (!wish->is_placed) {
            counted->n_left_out += is_seen(&wish->anchor_px, view);
            continue;
        }
        counted->n++;
        for (guint k = 0; k < i; k++) {
            const hs_placed *other = &g_array_index(placed, hs_placed, k);

            if (other->wish.is_placed && hs_boxes_overlap(&wish->box, &other->wish.box))
                g_error("%s: \"%s\" over \"%s\"", where, label->prim->text, other->prim->text);
        }
        /* what stands still is placed once for all moments and cannot make way for who comes by */
        if (!label->moves || part_on_body(&painter, &wish->box) <= 0.1)
            continue;
        counted->n_over++;
        if (has_better(&painter, placed, i)) {
            counted->n_avoidable++;
            g_test_message("%s: \"%s\" lies on a body", where, label->prim->text);
        }
    }
    g_object_unref(painter.pango);
}

static void
check_labels(void)
{
    tally counted = {0};

    see_all(count_labels, &counted);
    see_file("tests/documents/good", "crew_of_four.json", count_labels, &counted);
    g_test_message("%d labels, %d left out, %d over bodies or load, %d of these avoidable",
                   counted.n, counted.n_left_out, counted.n_over, counted.n_avoidable);
    g_assert_cmpint(counted.n, >, 5000);
    g_assert_cmpint(counted.n_avoidable * 200, <=, counted.n);
}

static void
drawn__labels_keep_apart_in_english(void)
{
    check_labels();
}

static void
drawn__labels_keep_apart_in_german(void)
{
    g_setenv("LANGUAGE", "de", TRUE);
    textdomain(GETTEXT_PACKAGE); /* a changed domain makes gettext look again */
    bindtextdomain(GETTEXT_PACKAGE, HS_BUILD_ROOT "/po");
    if (g_str_equal(_("shoulder"), "shoulder"))
        g_test_skip("no German catalogue in the build");
    else
        check_labels();
    g_setenv("LANGUAGE", "en", TRUE);
}

/* ---- shares -------------------------------------------------------------------------------- */

/* Of two, and of three in no line, statics says who holds how much; of four only between what. By hand, of 72 kg: A alone with
 * B at most half; least where B holds nothing, 0.10 / 0.95 of it; C and D hold the same, at most half of 0.85 / 0.95. */
static void
see_range(const hs_scene *scene, const hs_view *view, const char *where, gpointer data)
{
    static const double least[] = {74.3, 0, 0, 0}, most[] = {353.0, 353.0, 315.9, 315.9};
    int n = 0, *n_seen = data, option, moment;

    (void)view;
    g_assert_cmpint(sscanf(where, "%*[^,], option %d, moment %d", &option, &moment), ==, 2);
    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);
        double share_N, least_N, most_N;
        char id;

        if (prim->kind != HS_PRIM_LABEL || prim->layer != HS_LAYER_force ||
            strchr(prim->text, '(') == NULL)
            continue;
        g_assert_cmpint(
            sscanf(prim->text, "%c %lf%*[^(](%lf–%lf)", &id, &share_N, &least_N, &most_N), ==,
            4);
        g_assert_cmpfloat(least_N, <=, share_N);
        g_assert_cmpfloat(share_N, <=, most_N);
        if (moment == 0) {
            g_assert_cmpfloat_with_epsilon(least_N, least[id - 'A'], 0.51);
            g_assert_cmpfloat_with_epsilon(most_N, most[id - 'A'], 0.51);
        }
        n++;
    }
    if (n != (option == 2 ? 4 : 0))
        g_error("%s: %d shares have a range", where, n);
    *n_seen += n;
}

static void
drawn__shares_of_four_show_least_and_most(void)
{
    int n_seen = 0;

    see_file("tests/documents/good", "crew_of_four.json", see_range, &n_seen);
    g_assert_cmpint(n_seen, ==, 4 * MOMENTS * SIZES);
}

/* ---- people and load ----------------------------------------------------------------------- */

/* A standing person takes 45 % of the height, but where load and people of one moment fill the view. */
static void
see_people(const hs_scene *scene, const hs_view *view, const char *where, gpointer data)
{
    const hs_travel *travel = &scene->travel;
    double part = travel->stature_m * view->scale_px_per_m / view->height_px;
    double wide_px = (travel->below_m.x + travel->above_m.x) * view->scale_px_per_m,
           high_px = (travel->below_m.y + travel->above_m.y) * view->scale_px_per_m;
    int *n_small = data;

    if (view->font_px >= 13 && part < 0.45) {
        g_test_message("%s: people take %.0f %% of the height", where, 100 * part);
        (*n_small)++;
        g_assert_cmpfloat(part, >=, 0.3);
        g_assert_true(wide_px > view->width_px - 4 * view->font_px ||
                      high_px > view->height_px - 13 * view->font_px);
    }
    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        if (prim->kind != HS_PRIM_SHAPE ||
            (prim->layer != HS_LAYER_figure && prim->layer != HS_LAYER_load))
            continue;
        hs_painter painter = {NULL, scene, view, NULL, NULL};

        for (int k = 0; k < prim->n; k++) {
            hs_vec2 at_px = hs_view_to_surface(view, hs_painter_points(&painter, prim)[k]);

            g_assert_cmpfloat(at_px.x, >=, 0);
            g_assert_cmpfloat(at_px.x, <=, view->width_px);
            g_assert_cmpfloat(at_px.y, >=, 0);
            g_assert_cmpfloat(at_px.y, <=, view->height_px);
        }
    }
}

static void
drawn__people_are_large_and_whole(void)
{
    int n_small = 0;

    see_all(see_people, &n_small);
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "");
    bind_textdomain_codeset(GETTEXT_PACKAGE, "UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/drawn/labels_keep_apart_in_english", drawn__labels_keep_apart_in_english);
    g_test_add_func("/drawn/labels_keep_apart_in_german", drawn__labels_keep_apart_in_german);
    g_test_add_func("/drawn/shares_of_four_show_least_and_most",
                    drawn__shares_of_four_show_least_and_most);
    g_test_add_func("/drawn/people_are_large_and_whole", drawn__people_are_large_and_whole);
    return g_test_run();
}
