/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does each option come out?
 * Answer:    hs_option_runs_all(): load once, baseline first, every option's run, findings, totals and verdict, then the
 *            added `unaided`; suit_only from a twin without suits.
 * Not here:  one run (runner.c), one verdict (decide.c). */
#ifndef HS_OPTION_RUNS_H
#define HS_OPTION_RUNS_H

#include "result.h"
#include "run.h"

/**
 * hs_option_runs_all - all options of a task
 *
 * What    fills load, options, baseline of *results; assumptions grow
 * In      task with defaults applied
 * Out     *results
 * Frame   world
 * Errors  HS_E_RANGE, HS_E_INTERNAL
 * Source  file format, section Status and verdict
 */
hs_status hs_option_runs_all(const hs_task *task,
                             hs_assess_mode mode,
                             hs_arena *arena,
                             hs_results *results,
                             hs_error *error);

/* Today's way worked out once: what other options are compared with. */
typedef struct {
    hs_run run;
    hs_finding *findings;
    hs_option_result result;
} hs_today;

hs_status hs_option_runs_today(const hs_task *task,
                               hs_arena *arena,
                               hs_today *ret_today,
                               hs_error *error);

/* One option of a (changed) task beside today's way as it is; nothing is recorded, no remedy is sought. For what-if questions. mode:
 * HS_ASSESS_LIVE for the places of a drag, HS_ASSESS_PLAIN for all of them. */
hs_status hs_option_runs_one(const hs_task *task,
                             int option,
                             const hs_today *today,
                             hs_assess_mode mode,
                             hs_arena *arena,
                             hs_option_result *ret_result,
                             hs_error *error);

/* Findings (HS_N_CHECKS, indexed by check) of one run. */
hs_finding *hs_findings_ask(const hs_asking *asking);

#endif
