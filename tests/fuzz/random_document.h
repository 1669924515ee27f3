/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what could anybody enter?
 * Answer:    hs_random_document(): a valid document of any size, from a number.
 * Not here:  invalid ones (mutate.h). */
#ifndef HS_RANDOM_DOCUMENT_H
#define HS_RANDOM_DOCUMENT_H

#include <glib.h>

/* The same number gives the same document (JSON, new). */
char *hs_random_document(guint32 number);

#endif
