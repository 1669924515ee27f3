/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a document changed?
 * Answer:    hs_edit: set, insert, remove, move by JSON path; hs_document_apply() makes the next version, the untouched
 *            parts shared. The only way to change.
 * Not here:  undo (history.c), the open document (session.c). */
#ifndef HS_EDIT_H
#define HS_EDIT_H

#include "document.h"

/* Several changes that are one step for the person. */
typedef struct hs_edit hs_edit;

/* label: what the person did, translated, shown by undo ("Move point 3"). */
hs_edit *hs_edit_new(const char *label);
void hs_edit_free(hs_edit *edit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(hs_edit, hs_edit_free)
const char *hs_edit_label(const hs_edit *edit);

/* Paths as in faults: "route.points[3].x_m"; a missing object on the way is made. Values are taken over. */
void hs_edit_set(hs_edit *edit, const char *path, JsonNode *value);
void hs_edit_set_number(hs_edit *edit, const char *path, double value);
void hs_edit_set_string(hs_edit *edit, const char *path, const char *value);
void hs_edit_set_bool(hs_edit *edit, const char *path, gboolean value);
void hs_edit_unset(hs_edit *edit,
                   const char *path); /* member away; no fault when it is not there */
void hs_edit_insert(hs_edit *edit,
                    const char *path,
                    JsonNode *value); /* "route.points[2]": before; index n: at the end */
void hs_edit_remove(hs_edit *edit, const char *path);       /* list item away */
void hs_edit_move(hs_edit *edit, const char *path, int to); /* list item to another index */

/* A route point to a place, rounded to 1 mm (the gesture's own rounding comes first). */
void hs_edit_move_point(hs_edit *edit, int point, double x_m, double z_m);

/* The next version; NULL with *fault when a path does not exist. Values out of range give a version with faults (task NULL)
 * when keep_faulty, else NULL. */
hs_document *hs_document_apply(hs_document *document,
                               const hs_edit *edit,
                               gboolean keep_faulty,
                               hs_fault **ret_fault);

/* An id that is free in a list of objects: "bearer-3". */
char *hs_free_id(const hs_document *document, const char *list_path, const char *stem);

#endif
