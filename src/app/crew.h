/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who joins when a crew grows, and where do they take hold?
 * Answer:    hs_crew_*: the free grip that makes the greatest share smallest; one fewer takes the last one off.
 * Not here:  shares themselves (core). */
#ifndef HS_CREW_H
#define HS_CREW_H

#include "session.h"

#include <gtk/gtk.h>

#define HS_CREW_MOST 8

int hs_crew_count(HsSession *session);
void hs_crew_set_count(GtkWidget *from, HsSession *session, int count);
/* Where + would put the next bearer, in a sentence, new; NULL when there is no free grip. */
char *hs_crew_next(HsSession *session);
/* That bearer stands pale on the stage, with everybody's shares, or no longer. */
void hs_crew_show_next(HsSession *session, gboolean show);

#endif
