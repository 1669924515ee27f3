/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can this lift be done, and under which conditions?
 * Answer:    hs_assess(): load -> options (route, shares, suit, body) -> checks -> verdict -> what would turn it -> doubt.
 * Not here:  each step's own question: the folders, in the order of the computation. */
#include "assess.h"

#include "breakeven.h"
#include "defaults.h"
#include "doubt.h"
#include "memo.h"
#include "option_runs.h"
#include "pack.h"

static const hs_reason cautions_always[] = {
    HS_REASON_caution_competent, HS_REASON_caution_law,  HS_REASON_caution_first,
    HS_REASON_caution_scope,     HS_REASON_caution_fall, HS_REASON_caution_moment,
};

static const hs_reason cautions_suit[] = {
    HS_REASON_caution_suit,
    HS_REASON_caution_limits,
    HS_REASON_caution_trips,
};

static bool
uses_suit(const hs_task *task)
{
    for (int i = 0; i < task->n_options; i++)
        for (int b = 0; b < task->options[i].n_bearers; b++)
            if (task->options[i].bearers[b].suit >= 0)
                return true;
    return false;
}

static bool
rests_on_memory(const hs_results *results)
{
    for (int i = 0; i < results->n_options; i++)
        for (int k = 0; k < results->options[i].n_findings; k++)
            if (results->options[i].findings[k].confidence == HS_CONF_MEMORY)
                return true;
    return false;
}

/* Every jump that is left is told: samples beside it hold, the way from one to the other does not. */
static int
add_jumps(const hs_results *results, hs_message *list, int n)
{
    for (int i = 0; i < results->n_options; i++) {
        const hs_option_result *option = &results->options[i];

        if (option->jumps.n == 0)
            continue;
        list[n] =
            HS_SAY(caution_jumps, option->jumps.n, option->jumps.turn_rad, option->jumps.route);
        list[n++].name[0] = option->name != NULL ? option->name : option->id;
    }
    return n;
}

static void
add_cautions(const hs_task *task, hs_arena *arena, hs_results *results)
{
    enum {
        ALWAYS = sizeof cautions_always / sizeof *cautions_always,
        SUIT = sizeof cautions_suit / sizeof *cautions_suit
    };
    hs_message *list = HS_NEW(arena, hs_message, ALWAYS + SUIT + 2 + results->n_options);
    int n = 0;

    for (int i = 0; i < ALWAYS; i++)
        list[n++].reason = cautions_always[i];
    for (int i = 0; i < SUIT && uses_suit(task); i++)
        list[n++].reason = cautions_suit[i];
    if (rests_on_memory(results))
        list[n++].reason = HS_REASON_caution_memory;
    if (task->policy.segments == HS_SEGMENTS_WINTER)
        list[n++].reason = HS_REASON_caution_segments;
    n = add_jumps(results, list, n);
    results->cautions = list;
    results->n_cautions = n;
}

hs_status
hs_assess_again(const hs_task *task,
                hs_assess_mode mode,
                hs_memo *memo,
                hs_arena *arena,
                hs_results *ret_results,
                hs_error *error)
{
    hs_results results = {.assumptions = {.arena = arena},
                          .is_complete = mode != HS_ASSESS_LIVE};
    hs_task known = *task;
    const hs_task *full;

    known.memo = memo;
    hs_memo_turn(memo);
    full = hs_defaults_apply(&known, arena, &results.assumptions);
    HS_TRY(hs_option_runs_all(full, mode, arena, &results, error));
    if (mode == HS_ASSESS_FULL || mode == HS_ASSESS_DOUBT)
        HS_TRY(hs_breakeven_find(full, &results, arena, error));
    if (mode == HS_ASSESS_DOUBT)
        HS_TRY(hs_doubt_run(full, &results, arena, error));
    hs_assume(&results.assumptions, HS_ABSENT, "vertical hand forces", HS_SAY(assume_hands_up),
              "load.grips");
    add_cautions(full, arena, &results);
    HS_TRY(hs_pack_results(&results, error));
    *ret_results = results;
    return HS_OK;
}

hs_status
hs_assess(const hs_task *task,
          hs_assess_mode mode,
          hs_arena *arena,
          hs_results *ret_results,
          hs_error *error)
{
    /* One pass asks little twice; what-if questions ask the same bodies over and over. */
    bool asks_on = mode == HS_ASSESS_FULL || mode == HS_ASSESS_DOUBT;
    hs_memo *memo = asks_on ? hs_memo_new() : NULL;
    hs_status status = hs_assess_again(task, mode, memo, arena, ret_results, error);

    hs_memo_free(memo);
    return status;
}
