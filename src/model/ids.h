/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which entry of a list does an id mean?
 * Answer:    hs_ids_of() names a list of the task, hs_ids_find() looks an id up in it.
 * Not here:  what a wrong id makes of a document (reader.c), ids that stand twice (rules.c). */
#ifndef HS_IDS_H
#define HS_IDS_H

#include "task.h"

#include <glib.h>

typedef struct {
    const char *path; /* of the list, for people */
    int n;
    const void *items;
    gsize size, at; /* of an entry; of the id in it */
} hs_ids;

/* list: "workers", "suits", "grips", or "effectors" of the suit (NULL: none). */
hs_ids hs_ids_of(const hs_task *task, const hs_suit *suit, const char *list);
/* Index, or -1. */
int hs_ids_find(const hs_ids *ids, const char *id);
/* "w1, w2", cut when it is long; "" when there is none. */
char *hs_ids_text(const hs_ids *ids);

#endif
