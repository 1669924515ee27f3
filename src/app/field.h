/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what stands at a path of the open document?
 * Answer:    hs_field_*: number, text or list by the path that edits and faults use.
 * Not here:  changing it (model/edit.c). */
#ifndef HS_FIELD_H
#define HS_FIELD_H

#include "document.h"
#include "session.h"

/* NULL when nothing stands there. */
JsonNode *hs_field_node(const hs_document *document, const char *path);
double hs_field_number(const hs_document *document,
                       const char *path); /* HS_ABSENT when absent */
const char *hs_field_text(const hs_document *document, const char *path); /* NULL when absent */
int hs_field_flag(const hs_document *document, const char *path); /* 1, 0; -1 when absent */
int hs_field_length(const hs_document *document,
                    const char *path); /* of a list; 0 when absent */

/* The task that the shown results belong to, NULL while there are none: pictures and their handles are made from it. */
const hs_task *hs_field_task(HsSession *session);

#endif
