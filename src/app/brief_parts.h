/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields make up a load, part by part and grip by grip?
 * Answer:    hs_brief_parts(), hs_brief_grips(): rows of each, one more, one fewer.
 * Not here:  the section that they stand in (brief_load.c). */
#ifndef HS_BRIEF_PARTS_H
#define HS_BRIEF_PARTS_H

#include "session.h"

#include <gtk/gtk.h>

/* A row for a number of one thing of a list: "load.parts[1]", "mass_kg", "mass", "Part motor". */
void hs_brief_number(HsSession *session,
                     GtkBox *content,
                     const char *stem,
                     const char *key,
                     const char *label,
                     const char *who,
                     const char *unit,
                     double step);
void hs_brief_parts(HsSession *session, GtkBox *content);
void hs_brief_grips(HsSession *session, GtkBox *content);

#endif
