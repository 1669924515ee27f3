/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one option worked through, place by place?
 * Answer:    hs_run_make(): setup, stations, shares, hands, felt load, bodies, power lost, samples.
 * Not here:  judging (the checks), the order of everything (assess.c). */
#ifndef HS_RUNNER_H
#define HS_RUNNER_H

#include "run.h"

/**
 * hs_run_make - everything of one option that the checks look at
 *
 * What    samples each leg and hold, computes forces and bodies at each
 * In      task with defaults applied; option_index -1 for an option that the program adds; is_live: fewer places, and least
 *         and most shares only where they are cheap
 * Out     *ret_run in the arena
 * Frame   world
 * Errors  HS_E_RANGE, HS_E_INTERNAL
 * Source  file format, section Results
 */
hs_status hs_run_make(const hs_task *task,
                      const hs_load_state *load,
                      const hs_option *option,
                      int option_index,
                      bool is_live,
                      hs_arena *arena,
                      hs_assumptions *assumptions,
                      hs_run *ret_run,
                      hs_error *error);

#endif
