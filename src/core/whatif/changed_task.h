/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would the task be with one input changed?
 * Answer:    hs_change_*: a copy of the task in the arena, all else shared.
 * Not here:  which change to try (breakeven.c, doubt.c). */
#ifndef HS_CHANGED_TASK_H
#define HS_CHANGED_TASK_H

#include "arena.h"
#include "task.h"

/* every mass of the load times k (parts, liquids, readings) */
hs_task *hs_change_mass(const hs_task *task, double k, hs_arena *arena);
/* friction of every grip and effector that gives one times k; pads without one get otherwise * k */
hs_task *hs_change_friction(const hs_task *task, double k, double otherwise, hs_arena *arena);
/* both gains of every suit times k, never below 1 */
hs_task *hs_change_gain(const hs_task *task, double k, hs_arena *arena);
/* reach of every option at every point plus d, never below 0.05 m; reach_m as resolved for each point */
hs_task *hs_change_reach(
    const hs_task *task, int option, const double *reach_m, double d_m, hs_arena *arena);
/* height of every point that was sketched plus d */
hs_task *hs_change_sketched(const hs_task *task, double d_m, hs_arena *arena);

#endif
