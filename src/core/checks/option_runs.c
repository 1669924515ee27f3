/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does each option come out?
 * Answer:    hs_option_runs_all(): load once, baseline first, then the others, then the added `unaided`.
 * Not here:  one run (runner.c), one verdict (decide.c). */
#include "option_runs.h"

#include "check.h"
#include "decide.h"
#include "pack.h"
#include "runner.h"
#include "suit_energy.h"
#include "team.h"
#include "totals.h"

#include <string.h>

typedef struct {
    const hs_task *task;
    const hs_load_state *load;
    hs_assess_mode mode;
    hs_arena *arena;
    hs_assumptions *assumptions;
    const hs_run *baseline;
    const hs_finding *baseline_findings;
    const hs_option *bare_of; /* the option that the added one was made from */
    bool is_what_if;
} context;

hs_finding *
hs_findings_ask(const hs_asking *asking)
{
    hs_finding *findings = HS_NEW(asking->arena, hs_finding, HS_N_CHECKS);
    hs_asking with_list = *asking;

    for (int i = 0; i < HS_N_CHECKS; i++)
        findings[i] = hs_finding_start(asking, (hs_check_id)i);
    with_list.findings = findings;
    for (int i = 0; i < HS_N_CHECKS; i++) {
        hs_check_get((hs_check_id)i)->ask(&with_list, &findings[i]);
        hs_pack_finding(&findings[i]);
    }
    return findings;
}

static hs_asking
asking_of(const context *on, const hs_run *run, bool is_baseline)
{
    return (hs_asking){.task = on->task,
                       .load = on->load,
                       .run = run,
                       .baseline = is_baseline ? run : on->baseline,
                       .baseline_findings = is_baseline ? NULL : on->baseline_findings,
                       .arena = on->arena,
                       .assumptions = on->assumptions,
                       .near_ratio = on->task->policy.near_ratio,
                       .is_live = on->mode == HS_ASSESS_LIVE,
                       .is_what_if = on->is_what_if};
}

/* The findings that are there, in the order of the checks. */
static void
keep_findings(const context *on, const hs_finding *all, hs_option_result *result)
{
    hs_finding *kept = HS_NEW(on->arena, hs_finding, HS_N_CHECKS);
    int n = 0;

    for (int i = 0; i < HS_N_CHECKS; i++)
        if (all[i].status != HS_STATUS_NONE)
            kept[n++] = all[i];
    result->findings = kept;
    result->n_findings = n;
}

/* For those who ask how far the rules are apart; not in a drag, a survey or a what-if. */
static void
add_team_rules(const context *on, const hs_asking *asking, hs_option_result *result)
{
    hs_finding *by_rule;

    if (on->mode == HS_ASSESS_LIVE || on->mode == HS_ASSESS_PLAIN || on->is_what_if ||
        result->asked->n_bearers < 2)
        return;
    by_rule = HS_NEW(on->arena, hs_finding, HS_N_TEAM_RULES);
    hs_team_rules_of(asking, by_rule);
    result->n_team_rules = HS_N_TEAM_RULES;
    result->team_rules = by_rule;
}

static hs_status
assess_one(const context *on,
           const hs_option *option,
           int index,
           bool is_baseline,
           hs_run *run,
           hs_finding **ret_findings,
           hs_option_result *result,
           hs_error *error)
{
    hs_asking asking;
    hs_finding *findings;

    HS_TRY(hs_run_make(on->task, on->load, option, index, on->mode == HS_ASSESS_LIVE, on->arena,
                       on->assumptions, run, error));
    asking = asking_of(on, run, is_baseline);
    findings = hs_findings_ask(&asking);
    asking.findings = findings;
    *result = (hs_option_result){.id = option->id,
                                 .name = option->name,
                                 .is_baseline = is_baseline,
                                 .asked = option,
                                 .n_samples = run->n_stations,
                                 .samples = run->samples,
                                 .jumps = run->jumps};
    keep_findings(on, findings, result);
    hs_decide(&asking, findings, &result->verdict);
    result->totals = (hs_totals){.energy_Wh_per_h = hs_energy_Wh_per_h(&asking),
                                 .metabolic_W = hs_day_metabolic_W(&asking),
                                 .mass_moved_kg_per_h = hs_day_mass_kg_per_h(&asking),
                                 .worker_minutes_per_h = hs_day_worker_minutes_per_h(&asking)};
    add_team_rules(on, &asking, result);
    if (ret_findings != NULL)
        *ret_findings = findings;
    return HS_OK;
}

static bool
has_suit(const hs_option *option)
{
    for (int b = 0; b < option->n_bearers; b++)
        if (option->bearers[b].suit >= 0)
            return true;
    return false;
}

/* The same people at the same grips without suits and effectors. */
static hs_option *
without_suits(const hs_option *option, hs_arena *arena)
{
    hs_option *twin = HS_NEW(arena, hs_option, 1);
    hs_bearer *bearers = HS_NEW(arena, hs_bearer, option->n_bearers);

    *twin = *option;
    memcpy(bearers, option->bearers, (size_t)option->n_bearers * sizeof *bearers);
    for (int b = 0; b < option->n_bearers; b++)
        bearers[b].suit = bearers[b].effector = -1;
    twin->bearers = bearers;
    return twin;
}

/* `bare` is the added option, NULL where there is none: it is the twin already where it was made from this option's only
 * bearer. */
static hs_status
find_suit_only(const context *on,
               hs_option_result *result,
               const hs_option_result *bare,
               hs_error *error)
{
    hs_verdict_status status = result->verdict.status;
    context quiet = *on;
    hs_option_result twin;
    hs_run run;

    if (!has_suit(result->asked) ||
        (status != HS_VERDICT_SUPPORTED && status != HS_VERDICT_WITH_CONDITIONS))
        return HS_OK;
    if (bare != NULL && result->asked == on->bare_of && result->asked->n_bearers == 1) {
        result->verdict.suit_only = bare->verdict.status == HS_VERDICT_NOT_SUPPORTED;
        return HS_OK;
    }
    quiet.assumptions = NULL;
    quiet.mode = on->mode == HS_ASSESS_LIVE ? HS_ASSESS_LIVE : HS_ASSESS_PLAIN;
    HS_TRY(assess_one(&quiet, without_suits(result->asked, on->arena), -1, false, &run, NULL,
                      &twin, error));
    result->verdict.suit_only = twin.verdict.status == HS_VERDICT_NOT_SUPPORTED;
    return HS_OK;
}

/* The first suited bearer alone, bare; NULL when some option is one bare bearer already, or nobody wears a suit. */
static hs_option *
unaided_of(const hs_task *task, hs_arena *arena, const hs_option **ret_from)
{
    const hs_option *from = NULL;
    int which = -1;
    hs_option *made;
    hs_bearer *bearer;

    for (int i = 0; i < task->n_options; i++) {
        const hs_option *option = &task->options[i];

        if (option->n_bearers == 1 && option->bearers[0].suit < 0)
            return NULL;
        for (int b = 0; b < option->n_bearers && from == NULL; b++)
            if (option->bearers[b].suit >= 0) {
                from = option;
                which = b;
            }
    }
    if (from == NULL)
        return NULL;
    made = HS_NEW(arena, hs_option, 1);
    bearer = HS_NEW(arena, hs_bearer, 1);
    *ret_from = from;
    *made = *from;
    *bearer = from->bearers[which];
    bearer->suit = bearer->effector = -1;
    made->id = "unaided";
    made->name = NULL;
    made->baseline = HS_NO;
    made->n_bearers = 1;
    made->bearers = bearer;
    return made;
}

static int
baseline_of(const hs_task *task)
{
    for (int i = 0; i < task->n_options; i++)
        if (task->options[i].baseline == HS_YES)
            return i;
    return 0;
}

hs_status
hs_option_runs_all(const hs_task *task,
                   hs_assess_mode mode,
                   hs_arena *arena,
                   hs_results *results,
                   hs_error *error)
{
    hs_load_state *load = HS_NEW(arena, hs_load_state, 1);
    hs_option_result *options = HS_NEW(arena, hs_option_result, task->n_options + 1);
    hs_run *runs = HS_NEW(arena, hs_run, task->n_options + 1);
    int baseline = baseline_of(task);
    context on = {task, load, mode, arena, &results->assumptions, &runs[baseline], NULL};
    hs_finding *findings;
    hs_option *unaided;

    HS_TRY(hs_load_solve(&task->load, arena, &results->assumptions, NULL, load, error));
    results->load = (hs_load_result){load->mass_kg, load->mass_tol_kg, load->cg_m,
                                     load->has_inertia, load->inertia_kg_m2};
    HS_TRY(assess_one(&on, &task->options[baseline], baseline, true, &runs[baseline], &findings,
                      &options[baseline], error));
    on.baseline_findings = findings;
    for (int i = 0; i < task->n_options; i++)
        if (i != baseline)
            HS_TRY(assess_one(&on, &task->options[i], i, false, &runs[i], NULL, &options[i],
                              error));
    results->n_options = task->n_options;
    unaided = unaided_of(task, arena, &on.bare_of);
    if (unaided != NULL) {
        hs_option_result *added = &options[results->n_options];

        HS_TRY(
            assess_one(&on, unaided, -1, false, &runs[results->n_options], NULL, added, error));
        added->is_added = true;
        results->n_options++;
    }
    for (int i = 0; i < task->n_options; i++)
        HS_TRY(find_suit_only(&on, &options[i],
                              unaided != NULL ? &options[task->n_options] : NULL, error));
    results->options = options;
    results->baseline = baseline;
    return HS_OK;
}

hs_status
hs_option_runs_today(const hs_task *task, hs_arena *arena, hs_today *ret_today, hs_error *error)
{
    hs_load_state *load = HS_NEW(arena, hs_load_state, 1);
    int baseline = baseline_of(task);
    context on = {task, load, HS_ASSESS_LIVE, arena, NULL, &ret_today->run, NULL};

    HS_TRY(hs_load_solve(&task->load, arena, NULL, NULL, load, error));
    return assess_one(&on, &task->options[baseline], baseline, true, &ret_today->run,
                      &ret_today->findings, &ret_today->result, error);
}

hs_status
hs_option_runs_one(const hs_task *task,
                   int option,
                   const hs_today *today,
                   hs_assess_mode mode,
                   hs_arena *arena,
                   hs_option_result *ret_result,
                   hs_error *error)
{
    hs_load_state *load = HS_NEW(arena, hs_load_state, 1);
    bool is_baseline = option == baseline_of(task);
    context on = {.task = task,
                  .load = load,
                  .mode = mode,
                  .arena = arena,
                  .baseline = &today->run,
                  .baseline_findings = today->findings,
                  .is_what_if = true};
    hs_run *run = HS_NEW(arena, hs_run, 1);

    HS_TRY(hs_load_solve(&task->load, arena, NULL, NULL, load, error));
    return assess_one(&on, &task->options[option], option, is_baseline, run, NULL, ret_result,
                      error);
}
