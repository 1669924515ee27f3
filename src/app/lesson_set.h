/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which lessons are ready, with nothing to enter?
 * Answer:    hs_lesson_set_*: three worked scenarios, each with a moment and a question; about 20 minutes.
 * Not here:  the page (lesson.c). */
#ifndef HS_LESSON_SET_H
#define HS_LESSON_SET_H

#include "document.h"
#include "scene.h"
#include "session.h"

int hs_lesson_set_count(void);
const char *hs_lesson_set_title(int n); /* translated */
hs_layer hs_lesson_set_layer(int n);    /* the layer that its question is about */
/* The scenario, new; NULL when it is not there. */
hs_document *hs_lesson_set_document(int n);
/* Option, moment and power of the lesson, once its document is open. */
void hs_lesson_set_arrange(int n, HsSession *session);

#endif
