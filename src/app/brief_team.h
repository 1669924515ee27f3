/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would the other team rules say?
 * Answer:    a row that unfolds a small table, for each option with a crew.
 * Not here:  its figures (model/team_rules.c). */
#ifndef HS_BRIEF_TEAM_H
#define HS_BRIEF_TEAM_H

#include "session.h"

#include <gtk/gtk.h>

/* It follows the session's results by itself. */
GtkWidget *hs_brief_team_new(HsSession *session);

#endif
