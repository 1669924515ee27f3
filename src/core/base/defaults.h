/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what holds where the document is silent?
 * Answer:    hs_defaults_apply(): a task in which policy, work, workers and doubt are complete, each default recorded.
 * Not here:  defaults that need geometry (motion/setup.c), the load's (load/load.c), a pad's friction (forces/grip.c), and
 *            what has no default on purpose (checks/data_check.c). */
#ifndef HS_DEFAULTS_H
#define HS_DEFAULTS_H

#include "assume.h"
#include "task.h"

/**
 * hs_defaults_apply - a task without gaps in policy, work, workers
 *
 * What    copies what changes into the arena; the rest is shared with the task asked
 * In      task as read
 * Out     the completed task; assumptions (may be NULL) gets one entry for each default used
 * Frame   none
 * Errors  none
 * Source  file format, section Defaults
 */
const hs_task *
hs_defaults_apply(const hs_task *task, hs_arena *arena, hs_assumptions *assumptions);

#endif
