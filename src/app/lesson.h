/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the trainer show?
 * Answer:    HsLesson: the stage alone, large, layers one by one, a question before each answer.
 * Not here:  the picture (draw). */
#ifndef HS_LESSON_H
#define HS_LESSON_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_TYPE_LESSON (hs_lesson_get_type())
G_DECLARE_FINAL_TYPE(HsLesson, hs_lesson, HS, LESSON, GtkWidget)
GtkWidget *hs_lesson_new(HsSession *session);
void hs_lesson_set_running(HsLesson *lesson, gboolean running);
/* Everything covered again, for the next class. */
void hs_lesson_reset(HsLesson *lesson);
/* A running lesson becomes lesson n of the ready set: its question is asked. */
void hs_lesson_begin(HsLesson *lesson, int n);

#endif
