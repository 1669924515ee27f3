/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the verdict turn?
 * Answer:    hs_breakeven_find(): for each option and quantity the value at which an option that is supported stops being so,
 *            or one that is not begins to be.
 * Not here:  chances (doubt.c). */
#ifndef HS_BREAKEVEN_H
#define HS_BREAKEVEN_H

#include "result.h"

/**
 * hs_breakeven_find - break-even values of mass, reach, lift height, gain and friction
 *
 * What    one input at a time, the others as entered: steps outwards from the entered value at the places of a drag, then between
 *         the last two at every place, led by the ratios of the checks that stop the option; the value printed is proved
 * In      task with defaults applied; results with the options' verdicts
 * Out     results->break_even, in the arena
 * Frame   none
 * Errors  those of an assessment
 * Source  regula falsi with bisection as its fallback
 */
hs_status
hs_breakeven_find(const hs_task *task, hs_results *results, hs_arena *arena, hs_error *error);

#endif
