/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does every reader of a field need?
 * Answer:    hs_walk: where the walk stands, and what it says there.
 * Not here:  the fields (reader.c), how a fault is kept (faults.h). */
#ifndef HS_WALK_H
#define HS_WALK_H

#include "arena.h"
#include "document.h"
#include "fields.h"

typedef struct {
    hs_arena *arena;
    GPtrArray *faults;
    GString *path;
    hs_task *task;
    const hs_suit *suit; /* of the bearer being read, for its effector */
    gboolean
        is_suit_unknown; /* it names a suit that is not there: its effector cannot be looked up */
} hs_walk;

/* Faults and warnings at the place where the walk stands; text of a fault is taken over. refuse: what stands there and
 * what may. enter and enter_item return what leave takes to step back. */
void hs_walk_fault(hs_walk *r, char *text);
void hs_walk_refuse(hs_walk *r, JsonNode *node, const hs_field *field);
void hs_walk_missing(hs_walk *r, const hs_field *field);
gsize hs_walk_enter(hs_walk *r, const char *key);
gsize hs_walk_enter_item(hs_walk *r, guint index);
void hs_walk_leave(hs_walk *r, gsize before);
void hs_walk_warn(hs_walk *r, const char *text);
gboolean hs_walk_is_number(JsonNode *node);
gboolean hs_walk_is_type(JsonNode *node, GType type);

#endif
