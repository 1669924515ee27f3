/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a JSON tree become a task?
 * Answer:    hs_reader_task(): by the tables of fields.c, every fault in one go.
 * Not here:  rules across fields (rules.c), strict JSON (strict.c). */
#ifndef HS_READER_H
#define HS_READER_H

#include "arena.h"
#include "faults.h"
#include "task.h"

/**
 * hs_reader_task - a task from a tree
 *
 * What    types, ranges, words, required keys, references; unknown keys are warnings
 * In      root: any JSON node
 * Out     the task in the arena; it is complete enough to look at even when faults were added
 * Frame   none
 * Errors  faults grows
 * Source  file format
 */
hs_task *hs_reader_task(JsonNode *root, hs_arena *arena, GPtrArray *faults);

/* Rules across fields; the task may be half read: what has a fault already is passed over. */
void hs_rules_check(const hs_task *task, GPtrArray *faults);

#endif
