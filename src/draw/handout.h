/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is a lesson on paper?
 * Answer:    hs_lesson: a moment of the document with layers, a question, three lines of working, the answer.
 * Not here:  the page (handout.c), the lesson on the screen (app/lesson.c). */
#ifndef HS_HANDOUT_H
#define HS_HANDOUT_H

#include "page.h"

typedef struct {
    int option, sample;
    guint layers;
    gboolean power_off;
    const char *title, *question; /* translated constants */
    char *work[3];                /* new; with blanks to fill in */
    char *answer;                 /* new */
} hs_lesson;

/* Lessons that apply to this document, hs_lesson*; the array frees them. */
GPtrArray *hs_handout_lessons(const hs_sheet_request *request);

#endif
