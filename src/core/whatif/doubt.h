/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how sure is each finding, given the tolerances entered?
 * Answer:    hs_doubt_run(): quasi-random draws, chance of staying within, spread, drivers.
 * Not here:  a chance of injury: nothing here says that. */
#ifndef HS_DOUBT_H
#define HS_DOUBT_H

#include "result.h"

/**
 * hs_doubt_run - chances over the tolerances
 *
 * What    Sobol draws of mass, friction, gain and reach within their tolerances (normal, cut at 3 sigma; tolerance = 2 sigma);
 *         each draw is a whole assessment; drivers by share of explained variance of the deciding ratio
 * In      task with defaults applied; task->doubt draws (256), seed (1)
 * Out     results->doubt, in the arena
 * Frame   none
 * Errors  those of an assessment
 * Source  Sobol 1967, USSR Comput. Math. Math. Phys. 7(4) 86-112 (sequence, by GSL)
 */
hs_status
hs_doubt_run(const hs_task *task, hs_results *results, hs_arena *arena, hs_error *error);

#endif
