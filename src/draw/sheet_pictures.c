/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the lift look like where it is worst?
 * Answer:    two side views, today and proposed, at one scale and on one floor line.
 * Not here:  the picture (scene.h, paint.h). */
#include "quantity.h"
#include "scene_internal.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#define FONT       9.7 /* small labels are 0.88 of it, 8.5 pt at least */
#define GAP        12.0
/* Room round people and load in heights of the type: by eye. */
#define TOP_em     1.2
#define BOTTOM_em  5.2 /* base of support, its margin, the scale bars */
#define SIDE_em    0.8
#define MOST_SCALE 130.0 /* pt for a metre */
#define ARROW_m    0.45  /* length of the greatest force in the picture */

static const guint layers = 1u << HS_LAYER_site | 1u << HS_LAYER_figure | 1u << HS_LAYER_suit |
                            1u << HS_LAYER_load | 1u << HS_LAYER_weight | 1u << HS_LAYER_force |
                            1u << HS_LAYER_felt | 1u << HS_LAYER_base;

typedef struct {
    hs_vec2 least_m, most_m;
} hs_frame;

/* The worst finding that has a moment; without one the moment of the greatest share. */
static int
worst_sample(const hs_results *results, int option_at)
{
    const hs_option_result *option = &results->options[option_at];
    const hs_finding *worst = NULL;
    int best = 0;

    for (int i = 0; i < option->n_findings; i++) {
        const hs_finding *finding = &option->findings[i];
        if (hs_has(finding->t_s) && finding->check != HS_CHECK_loss_bearer &&
            hs_sheet_closeness(finding) > hs_sheet_closeness(worst))
            worst = finding;
    }
    for (int i = 1; i < option->n_samples; i++) {
        double here = 0, there = 0;
        if (worst && hs_sheet_closeness(worst) >= 0) {
            here = -fabs(option->samples[i].t_s - worst->t_s);
            there = -fabs(option->samples[best].t_s - worst->t_s);
        } else if (option->asked) {
            for (int k = 0; k < option->asked->n_bearers; k++) {
                here = fmax(here, hs_or(option->samples[i].bearers[k].share_N, 0));
                there = fmax(there, hs_or(option->samples[best].bearers[k].share_N, 0));
            }
        }
        if (here > there)
            best = i;
    }
    return best;
}

static hs_scene *
build(hs_page *page, int option, int sample)
{
    hs_scene_request request = {.task = hs_document_task(page->request->document),
                                .results = page->request->results,
                                .option = option,
                                .sample = sample,
                                .layers = layers,
                                .chosen_point = -1,
                                .us_units = page->request->us_units,
                                .for_print = TRUE,
                                .few_labels = TRUE};

    hs_scene *scene = hs_scene_build(&request);

    scene->layer = HS_LAYER_paper; /* the bars of length and force without the squares */
    scene->depth = HS_DEPTH_MARK;
    hs_prim *scales = hs_scene_add(scene, HS_PRIM_SCALES);
    scales->stroke = HS_INK_INK;
    scales->size = page->request->us_units ? 1 : 0;
    return scene;
}

static void
paint_caption(hs_page *page,
              int option_at,
              int sample,
              const char *title,
              double x,
              double y,
              double wide)
{
    const hs_option_result *option = &page->request->results->options[option_at];
    g_autofree char *head = g_strdup_printf("%s: %s", title, hs_sheet_name(option));
    g_autofree char *place =
        option->n_samples > 0 ? hs_words_route(option->samples[sample].route) : g_strdup("");
    g_autofree char *time =
        option->n_samples > 0 ? hs_quantity_text(option->samples[sample].t_s, "s", page->units)
                              : g_strdup("");
    g_autofree char *where = g_strdup_printf(_("worst place: %s, %s"), place, time);

    y += hs_page_line_at(page, HS_TYPE_BOLD, head, x, y, wide);
    hs_page_line_at(page, HS_TYPE_TEXT, where, x, y, wide);
}

static void
paint_scene(hs_page *page, const hs_scene *scene, const hs_view *view, double x, double y)
{
    cairo_save(page->cr);
    cairo_translate(page->cr, x, y);
    cairo_rectangle(page->cr, 0, 0, view->width_px, view->height_px);
    cairo_clip(page->cr);
    hs_paint_scene(page->cr, scene, view, page->theme);
    cairo_restore(page->cr);
}

/* People, suits and load as they are drawn at this moment, and the floor under their feet. */
static hs_frame
frame_of(const hs_scene *scene)
{
    hs_frame frame = {{INFINITY, INFINITY}, {-INFINITY, -INFINITY}};
    const guint whole =
        1u << HS_LAYER_figure | 1u << HS_LAYER_suit | 1u << HS_LAYER_load | 1u << HS_LAYER_base;

    for (guint i = 0; i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);
        gboolean has_ends = prim->kind == HS_PRIM_BAR;
        if (!(whole >> prim->layer & 1u) || !(prim->n > 0 || has_ends))
            continue;
        for (int k = 0; k < (has_ends ? 2 : prim->n); k++) {
            hs_vec2 at_m =
                has_ends ? (k ? prim->to : prim->at)
                         : g_array_index(scene->points, hs_vec2, (guint)(prim->first + k));
            frame.least_m.x = fmin(frame.least_m.x, at_m.x);
            frame.least_m.y = fmin(frame.least_m.y, at_m.y);
            frame.most_m.x = fmax(frame.most_m.x, at_m.x);
            frame.most_m.y = fmax(frame.most_m.y, at_m.y);
        }
    }
    if (!(frame.least_m.x < frame.most_m.x) || !(frame.least_m.y < frame.most_m.y))
        hs_scene_extent(scene, &frame.least_m, &frame.most_m);
    return frame;
}

static double
scale_for(const hs_frame *frame, double width_pt, double height_pt)
{
    double wide_m = fmax(frame->most_m.x - frame->least_m.x, 0.5);
    double high_m = fmax(frame->most_m.y - frame->least_m.y, 0.5);

    return fmin(fmin((width_pt - 2 * SIDE_em * FONT) / wide_m,
                     (height_pt - (TOP_em + BOTTOM_em) * FONT) / high_m),
                MOST_SCALE);
}

static hs_view
view_of(const hs_frame *frame, double scale, double greatest_N, double wide, double high)
{
    return (hs_view){.scale_px_per_m = scale,
                     .width_px = wide,
                     .height_px = high,
                     .font_px = FONT,
                     .force_px_per_N = ARROW_m * scale / fmax(greatest_N, 1.0),
                     .x0_px = wide / 2 - (frame->least_m.x + frame->most_m.x) / 2 * scale,
                     .y0_px = high - BOTTOM_em * FONT + frame->least_m.y * scale};
}

void
hs_sheet_pictures(hs_page *page, double height_pt)
{
    const hs_results *results = page->request->results;
    int at[2] = {results->baseline, hs_sheet_proposed(results)};
    const char *const titles[] = {_("Today"), _("Proposed")};
    int n = at[0] == at[1] ? 1 : 2;
    double wide = (hs_page_width_pt(page) - GAP * (n - 1)) / n, caption = 26, y = page->y_pt;
    double high = height_pt - caption, scale = INFINITY, greatest_N = 0;
    int samples[2];
    hs_scene *scenes[2];
    hs_frame frames[2];

    for (int i = 0; i < n; i++) {
        samples[i] = worst_sample(results, at[i]);
        scenes[i] = build(page, at[i], samples[i]);
        frames[i] = frame_of(scenes[i]);
        scale = fmin(scale, scale_for(&frames[i], wide, high));
        greatest_N = fmax(greatest_N, scenes[i]->greatest_N);
    }
    for (int i = 0; i < n; i++) {
        hs_view view = view_of(&frames[i], scale, greatest_N, wide, high);
        double x = page->left_pt + i * (wide + GAP);
        paint_caption(page, at[i], samples[i], titles[i], x, y, wide);
        paint_scene(page, scenes[i], &view, x, y + caption);
        hs_scene_free(scenes[i]);
    }
    page->y_pt += height_pt;
}
