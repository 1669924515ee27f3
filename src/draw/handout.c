/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a lesson printed?
 * Answer:    four blocks a page: picture, question, working with blanks, answer; the twin keeps the room of the answer.
 * Not here:  which lessons (handout_lessons.c). */
#include "handout.h"
#include "sheet_parts.h"

#include "translate.h"

#define FONT       10.0
#define ANSWER_PT  96.0
#define PICTURE_PT 330.0

typedef struct {
    GPtrArray *lessons;
    gboolean has_answers;
} hs_handout;

static void
paint_picture(hs_page *page, const hs_lesson *lesson)
{
    hs_scene_request request = {.task = hs_document_task(page->request->document),
                                .results = page->request->results,
                                .option = lesson->option,
                                .sample = lesson->sample,
                                .layers = lesson->layers,
                                .chosen_point = -1,
                                .power_off = lesson->power_off,
                                .folds = TRUE,
                                .us_units = page->request->us_units,
                                .for_print = TRUE};
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    double wide = hs_page_width_pt(page);
    hs_view view = hs_view_fit(scene, wide, PICTURE_PT, FONT);

    const hs_option_result *option = &page->request->results->options[lesson->option];

    if (option->n_samples > 0)
        hs_page_closer(&view, scene, &option->samples[lesson->sample]);
    cairo_save(page->cr);
    cairo_translate(page->cr, page->left_pt, page->y_pt);
    cairo_rectangle(page->cr, 0, 0, wide, PICTURE_PT);
    cairo_clip(page->cr);
    hs_paint_scene(page->cr, scene, &view, page->theme);
    cairo_restore(page->cr);
    page->y_pt += PICTURE_PT + 4;
}

static void
paint_lesson(hs_page *page, const hs_lesson *lesson, int number, gboolean has_answers)
{
    g_autofree char *title = g_strdup_printf(_("Figure %d: %s"), number, lesson->title);

    hs_page_text(page, HS_TYPE_TITLE, title);
    paint_picture(page, lesson);
    hs_page_rule(page, 1);
    hs_page_heading(page, _("Question"));
    hs_page_text(page, HS_TYPE_TEXT, lesson->question);
    hs_page_heading(page, _("Working"));
    for (int i = 0; i < 3; i++) {
        g_autofree char *line = g_strdup_printf("%d   %s", i + 1, lesson->work[i]);
        hs_page_text(page, HS_TYPE_TEXT, line);
        hs_page_space(page, 5);
    }
    hs_page_heading(page, _("Answer"));
    hs_page_box(page, page->left_pt, page->y_pt, hs_page_width_pt(page), ANSWER_PT, 1);
    if (has_answers)
        hs_page_text_at(page, HS_TYPE_TEXT, lesson->answer, page->left_pt + 6, page->y_pt + 5,
                        hs_page_width_pt(page) - 12);
    page->y_pt += ANSWER_PT;
}

static void
body(hs_page *page)
{
    const hs_handout *handout = page->data;

    if (handout->lessons->len == 0)
        hs_page_text(page, HS_TYPE_TEXT, _("This document has no figure to learn from yet."));
    for (guint i = 0; i < handout->lessons->len; i++) {
        if (i > 0)
            hs_page_break(page);
        else
            hs_sheet_limits_line(page);
        paint_lesson(page, handout->lessons->pdata[i], (int)i + 1, handout->has_answers);
    }
}

gboolean
hs_handout_write_pdf(const hs_sheet_request *request,
                     gboolean answers,
                     const char *path,
                     GError **error)
{
    g_autoptr(GPtrArray) lessons = hs_handout_lessons(request);
    hs_handout handout = {lessons, answers};
    hs_page start = hs_page_start(request, FALSE, &handout);

    return hs_page_write_pdf(&start, body, path, error);
}
