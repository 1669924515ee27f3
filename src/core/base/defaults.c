/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what holds where the document is silent?
 * Answer:    the defaults of policy, work and workers, each recorded as an assumption.
 * Not here:  defaults that need geometry (motion/setup.c), the load's (load/load.c). */
#include "defaults.h"

#include <string.h>

/* The worker nobody described: medians of the US Army survey 2012 (men). Source: Gordon et al. 2014, 2012 Anthropometric Survey
 * of U.S. Army Personnel, NATICK/TR-15/007; the age is a choice (common practice, no source). */
#define WORKER_STATURE_m 1.756
#define WORKER_MASS_kg   85.5
#define WORKER_AGE_years 40.0

static double
or_assume(
    hs_assumptions *list, double value, double otherwise, hs_reason reason, const char *path)
{
    hs_message text = {.reason = reason, .number = {otherwise}};

    if (hs_has(value))
        return value;
    hs_assume(list, otherwise, NULL, text, "%s", path);
    return otherwise;
}

static double
worker_number(hs_assumptions *list,
              double value,
              double otherwise,
              hs_reason reason,
              int i,
              const char *key)
{
    hs_message text = {.reason = reason, .number = {otherwise}};

    if (hs_has(value))
        return value;
    hs_assume(list, otherwise, NULL, text, "workers[%d].%s", i, key);
    return otherwise;
}

static const hs_worker *
complete_workers(const hs_task *task, hs_arena *arena, hs_assumptions *list)
{
    hs_worker *workers = HS_NEW(arena, hs_worker, task->n_workers);

    for (int i = 0; i < task->n_workers; i++) {
        workers[i] = task->workers[i];
        if (workers[i].sex == 0) {
            workers[i].sex = HS_SEX_MALE;
            hs_assume(list, HS_ABSENT, "male", HS_SAY(assume_worker_sex), "workers[%d].sex", i);
        }
        workers[i].stature_m = worker_number(list, workers[i].stature_m, WORKER_STATURE_m,
                                             HS_REASON_assume_worker_stature, i, "stature_m");
        workers[i].mass_kg = worker_number(list, workers[i].mass_kg, WORKER_MASS_kg,
                                           HS_REASON_assume_worker_mass, i, "mass_kg");
        workers[i].age_years = worker_number(list, workers[i].age_years, WORKER_AGE_years,
                                             HS_REASON_assume_worker_age, i, "age_years");
    }
    return workers;
}

static void
complete_policy(hs_policy *policy, hs_assumptions *list)
{
    if (policy->team_rule == 0) {
        policy->team_rule = HS_TEAM_NONE;
        hs_assume(list, HS_ABSENT, "none", HS_SAY(assume_team_rule), "policy.team_rule");
    }
    if (policy->segments == 0) {
        policy->segments = HS_SEGMENTS_DE_LEVA;
        hs_assume(list, HS_ABSENT, "de_leva", HS_SAY(assume_segments), "policy.segments");
    }
    policy->strength_percentile =
        or_assume(list, policy->strength_percentile, 25.0, HS_REASON_assume_percentile,
                  "policy.strength_percentile");
    policy->slip_factor = or_assume(list, policy->slip_factor, 1.5,
                                    HS_REASON_assume_slip_factor, "policy.slip_factor");
    policy->near_ratio = or_assume(list, policy->near_ratio, 0.9, HS_REASON_assume_near_ratio,
                                   "policy.near_ratio");
    policy->couple_Nm =
        or_assume(list, policy->couple_Nm, 10.0, HS_REASON_assume_couple, "policy.couple_Nm");
    policy->step_Hz =
        or_assume(list, policy->step_Hz, 1.9, HS_REASON_assume_step_rate, "policy.step_Hz");
    policy->step_m =
        or_assume(list, policy->step_m, 0.65, HS_REASON_assume_step_length, "policy.step_m");
}

static bool
has_carry(const hs_task *task)
{
    for (int i = 1; i < task->route.n_points; i++)
        if (task->route.points[i].move == HS_MOVE_CARRY)
            return true;
    return false;
}

const hs_task *
hs_defaults_apply(const hs_task *task, hs_arena *arena, hs_assumptions *assumptions)
{
    hs_task *made = HS_NEW(arena, hs_task, 1);

    *made = *task;
    made->workers = complete_workers(task, arena, assumptions);
    complete_policy(&made->policy, assumptions);
    if (!hs_has(task->policy.walking_factor) && has_carry(task))
        hs_assume(assumptions, HS_ABSENT, "1 + 0.2 (v / 1.5)^2", HS_SAY(assume_walking),
                  "policy.walking_factor");
    if (!task->has_criteria)
        hs_assume(assumptions, HS_ABSENT, "all", HS_SAY(assume_criteria), "criteria");
    made->work.cycles_per_hour = or_assume(assumptions, task->work.cycles_per_hour, 1.0,
                                           HS_REASON_assume_cycles, "work.cycles_per_hour");
    made->work.hours =
        or_assume(assumptions, task->work.hours, 1.0, HS_REASON_assume_hours, "work.hours");
    made->work.recovery_h = or_assume(assumptions, task->work.recovery_h, 0.0,
                                      HS_REASON_assume_recovery, "work.recovery_h");
    made->work.one_way_empty_walk_m = hs_or(task->work.one_way_empty_walk_m, 0.0);
    return made;
}
