/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the lift look like where it is worst?
 * Answer:    two side views, today and proposed, at one scale and on one floor line.
 * Not here:  the picture (scene.h, paint.h). */
#include "quantity.h"
#include "sheet_parts.h"
#include "translate.h"
#include "words.h"

#define FONT 8.5
#define GAP  12.0

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
                                .layers = hs_layers_default(),
                                .chosen_point = -1,
                                .folds = TRUE,
                                .us_units = page->request->us_units,
                                .for_print = TRUE};

    return hs_scene_build(&request);
}

static void
paint_caption(hs_page *page, int option_at, int sample, const char *title, double x, double y)
{
    const hs_option_result *option = &page->request->results->options[option_at];
    double wide = (hs_page_width_pt(page) - GAP) / 2;
    g_autofree char *head = g_strdup_printf("%s: %s", title, hs_sheet_name(option));
    g_autofree char *place =
        option->n_samples > 0 ? hs_words_route(option->samples[sample].route) : g_strdup("");
    g_autofree char *time =
        option->n_samples > 0 ? hs_quantity_text(option->samples[sample].t_s, "s", page->units)
                              : g_strdup("");
    g_autofree char *where = g_strdup_printf(_("worst place: %s, %s"), place, time);

    y += hs_page_text_at(page, HS_TYPE_BOLD, head, x, y, wide);
    hs_page_text_at(page, HS_TYPE_TEXT, where, x, y, wide);
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

void
hs_sheet_pictures(hs_page *page, double height_pt)
{
    const hs_results *results = page->request->results;
    int left = results->baseline, right = hs_sheet_proposed(results);
    int at_left = worst_sample(results, left), at_right = worst_sample(results, right);
    double wide = (hs_page_width_pt(page) - GAP) / 2, caption = 38, y = page->y_pt;
    double right_x = page->left_pt + wide + GAP;
    g_autoptr(hs_scene) a = build(page, left, at_left);
    g_autoptr(hs_scene) b = build(page, right, at_right);
    hs_view view = hs_view_fit_two(a, b, wide, height_pt - caption, FONT);

    hs_view view_b = view;

    if (results->options[left].n_samples > 0)
        hs_page_closer(&view, a, &results->options[left].samples[at_left]);
    if (results->options[right].n_samples > 0)
        hs_page_closer(&view_b, b, &results->options[right].samples[at_right]);
    paint_caption(page, left, at_left, _("Today"), page->left_pt, y);
    paint_scene(page, a, &view, page->left_pt, y + caption);
    if (right != left) {
        paint_caption(page, right, at_right, _("Proposed"), right_x, y);
        paint_scene(page, b, &view_b, right_x, y + caption);
    }
    page->y_pt += height_pt;
}
