/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can this lift be done, and under which conditions?
 * Answer:    hs_assess(): the whole core in order. Read assess.c first.
 * Not here:  reading documents (model/). */
#ifndef HS_ASSESS_H
#define HS_ASSESS_H

#include "memo.h"
#include "result.h"

/**
 * hs_assess - assess a task
 *
 * What    load, route, shares, suit, body, checks, verdict for every option, then the added `unaided`
 * In      task: validated; it and its strings must outlive the results
 * Out     *ret_results in the arena (all its memory; reset the arena to release)
 * Frame   world, as in the file format
 * Errors  HS_E_RANGE naming the JSON path; HS_E_INTERNAL for our own mistakes
 * Source  none of its own
 */
hs_status hs_assess(const hs_task *task,
                    hs_assess_mode mode,
                    hs_arena *arena,
                    hs_results *ret_results,
                    hs_error *error);

/* The same to the last bit, with what earlier assessments left in the memo: for one that is asked again and again with little
 * changed. The results do not need the memo afterwards; NULL: nothing is kept. */
hs_status hs_assess_again(const hs_task *task,
                          hs_assess_mode mode,
                          hs_memo *memo,
                          hs_arena *arena,
                          hs_results *ret_results,
                          hs_error *error);

#endif
