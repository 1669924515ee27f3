/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does a run need more places than its even ones?
 * Answer:    hs_run_put_between(): where a joint turns by more than 10 degrees from one place to the next.
 * Not here:  the even places (runner.c), the posture at a place between two (body/between.c). */
#ifndef HS_RUN_BETWEEN_H
#define HS_RUN_BETWEEN_H

#include "run.h"

/**
 * hs_run_put_between - put places between those from which a joint turns by more than 10 degrees
 *
 * What    halves the time between two neighbouring places of a leg in which the feet stay, again and again, until no joint of any
 *         bearer turns by more; where no posture lies between two, the jump stays and is counted
 * In      run with stations, forces and bodies
 * Out     run->stations, samples, bearers: new ones where places were put between; run->jumps
 * Frame   world
 * Errors  HS_E_RANGE, HS_E_INTERNAL of the shares
 * Source  none: the 10 degrees are chosen (docs/body.md)
 */
hs_status hs_run_put_between(hs_run *run, hs_arena *arena, hs_error *error);

/* Shares, hands and the input of each body at one station (runner.c). */
hs_status
hs_run_forces_at(hs_run *run, int s, bool with_ranges, hs_arena *arena, hs_error *error);

#endif
