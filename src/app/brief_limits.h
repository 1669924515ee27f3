/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which set of the site's own limits counts?
 * Answer:    rows in the section Checks: the set by name, edition and wording, its figures, a button that chooses a file.
 * Not here:  reading it (model/site_limits.c), the section around it (brief_simple.c). */
#ifndef HS_BRIEF_LIMITS_H
#define HS_BRIEF_LIMITS_H

#include "session.h"

#include <gtk/gtk.h>

/* The section's one line with the set's name behind it; new. */
char *hs_brief_limits_summary(HsSession *session, const char *published);
/* What the rows depend on. */
void hs_brief_limits_shape(HsSession *session, GString *shape);
void hs_brief_limits_build(HsSession *session, GtkBox *content);

#endif
