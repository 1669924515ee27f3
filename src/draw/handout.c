/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a lesson printed?
 * Answer:    four blocks a page: picture, question, working with blanks, answer; the twin keeps the room of the answer.
 * Not here:  which lessons (handout_lessons.c). */
#include "handout.h"
#include "sheet_parts.h"

#include "translate.h"

#define FONT          12.0
#define ANSWER_PT     104.0
#define WRITE_PT      11.0 /* between the steps, to write on */
#define LEAST_PICTURE 240.0
#define MOST_PICTURE  400.0
#define ROUNDING_PT   6.0

typedef struct {
    GPtrArray *lessons;
    gboolean has_answers;
    guint at; /* the lesson of this page */
} hs_handout;

static const hs_lesson *
lesson_of(const hs_page *page)
{
    const hs_handout *handout = page->data;

    return handout->lessons->pdata[handout->at];
}

static void
paint_picture(hs_page *page, double high)
{
    const hs_lesson *lesson = lesson_of(page);
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
    hs_view view = hs_view_fit(scene, wide, high, FONT);

    cairo_save(page->cr);
    cairo_translate(page->cr, page->left_pt, page->y_pt);
    cairo_rectangle(page->cr, 0, 0, wide, high);
    cairo_clip(page->cr);
    hs_paint_scene(page->cr, scene, &view, page->theme);
    cairo_restore(page->cr);
    page->y_pt += high + 4;
}

/* Question, steps and the box of the answer, which the twin leaves empty. */
static void
paint_words(hs_page *page)
{
    const hs_handout *handout = page->data;
    const hs_lesson *lesson = lesson_of(page);

    hs_page_rule(page, 1);
    hs_page_heading(page, _("Question"));
    hs_page_text(page, HS_TYPE_LARGE, lesson->question);
    hs_page_heading(page, _("Working"));
    for (int i = 0; i < 3; i++) {
        g_autofree char *line = g_strdup_printf("%d   %s", i + 1, lesson->work[i]);
        hs_page_text(page, HS_TYPE_LARGE, line);
        hs_page_space(page, WRITE_PT);
    }
    hs_page_heading(page, _("Answer"));
    hs_page_box(page, page->left_pt, page->y_pt, hs_page_width_pt(page), ANSWER_PT, 1);
    if (handout->has_answers)
        hs_page_text_at(page, HS_TYPE_LARGE, lesson->answer, page->left_pt + 6, page->y_pt + 5,
                        hs_page_width_pt(page) - 12);
    page->y_pt += ANSWER_PT;
}

static void
paint_lesson(hs_page *page, int number)
{
    g_autofree char *title =
        g_strdup_printf(_("Figure %d: %s"), number, lesson_of(page)->title);

    hs_page_text(page, HS_TYPE_TITLE, title);
    double room = hs_page_left_pt(page) - hs_page_measure(page, paint_words) - ROUNDING_PT;

    paint_picture(page, CLAMP(room, LEAST_PICTURE, MOST_PICTURE));
    paint_words(page);
}

static void
body(hs_page *page)
{
    const hs_handout *handout = page->data;

    if (handout->lessons->len == 0)
        hs_page_text(page, HS_TYPE_TEXT, _("This document has no figure to learn from yet."));
    for (guint i = 0; i < handout->lessons->len; i++) {
        hs_handout at = {handout->lessons, handout->has_answers, i};

        if (i > 0)
            hs_page_break(page);
        else
            hs_sheet_limits_line(page);
        page->data = &at;
        paint_lesson(page, (int)i + 1);
        page->data = handout;
    }
}

gboolean
hs_handout_write_pdf(const hs_sheet_request *request,
                     gboolean answers,
                     const char *path,
                     GError **error)
{
    g_autoptr(GPtrArray) lessons = hs_handout_lessons(request);
    hs_handout handout = {lessons, answers, 0};
    hs_page start = hs_page_start(request, FALSE, &handout);

    return hs_page_write_pdf(&start, body, path, error);
}
