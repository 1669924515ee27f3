/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  for whom and what is a figure of a set said?
 * Answer:    the object "when" of a figure, read and written by one table of its keys.
 * Not here:  the rest of the set (site_limits.c), whether it fits a worker (core, checks/limits/site.c). */
#ifndef HS_SITE_WHEN_H
#define HS_SITE_WHEN_H

#include "figures.h"
#include "json_text.h"
#include "task.h"

#include <json-glib/json-glib.h>

/* Says a fault at a key of the object: text is taken over. */
typedef void (*hs_site_when_fault)(const char *key,
                                   char *text,
                                   gboolean is_warning,
                                   gpointer data);

/* Keys that the check does not take by leg or person are faults. */
void hs_site_when_read(JsonObject *object,
                       hs_own_by by,
                       hs_site_when *ret_when,
                       hs_site_when_fault say,
                       gpointer data);
gboolean hs_site_when_asks(const hs_site_when *when);
/* "when": {...}, nothing where it asks nothing. */
void hs_site_when_write(const hs_site_when *when, hs_json_text *json);

#endif
