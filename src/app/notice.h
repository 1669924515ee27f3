/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the window say that something happened, without stopping the work?
 * Answer:    one bar under the header: a sentence, up to two buttons, a close button.
 * Not here:  the sentences. */
#ifndef HS_NOTICE_H
#define HS_NOTICE_H

#include <gtk/gtk.h>

#define HS_TYPE_NOTICE (hs_notice_get_type())
G_DECLARE_FINAL_TYPE(HsNotice, hs_notice, HS, NOTICE, GtkWidget)

typedef void (*hs_notice_answer)(GtkWidget *from, gpointer data);

GtkWidget *hs_notice_new(void);

/* From any widget of the window. The texts are copied; `data` is released with `release` (may be NULL). A second notice
 * takes the place of the first. */
void hs_notice_say(GtkWidget *from, const char *text);
void hs_notice_ask(GtkWidget *from,
                   const char *text,
                   const char *answer,
                   hs_notice_answer on_answer,
                   const char *other_answer,
                   hs_notice_answer on_other,
                   gpointer data,
                   GDestroyNotify release);
void hs_notice_hide(GtkWidget *from);

#endif
