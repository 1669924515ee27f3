/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the lifts and lowerings of the way stand against the revised NIOSH lifting equation?
 * Answer:    hs_check_lift_niosh_1994(), each leg a task of its own; hs_check_lift_niosh_composite(), all of them together.
 * Not here:  the equation (limits/niosh.c). */
#include "legs.h"
#include "niosh.h"

/* Remembered bounds of the manual's section 1.2, unconfirmed: they are said and decide nothing. */
#define FAST_m_s       0.762
#define SLIPPERY       0.4
#define PEAK_OVER_MEAN 1.875 /* minimum-jerk law, Flash & Hogan 1985 */

typedef struct {
    const hs_asking *asking;
    const hs_limit_leg *leg;
    int end; /* 0 origin, 1 destination */
    hs_niosh_input input;
    hs_niosh_answer answer;
    double index, limit; /* HS_ABSENT: nothing is recommended */
} place_index;

static hs_niosh_input
input_of(const hs_asking *asking, const hs_limit_leg *leg, int end)
{
    return (hs_niosh_input){
        .reach_m = leg->reach_m[end],
        .hand_height_m = leg->height_m[end],
        .distance_m = leg->height_m[1] - leg->height_m[0],
        .turn_deg = leg->turn_deg[end],
        .lifts_per_min = hs_limit_cycles_per_h(asking) / 60.0,
        .duration = hs_niosh_duration_of(hs_limit_hours(asking), hs_limit_recovery_h(asking)),
        .coupling = leg->coupling};
}

static void
record_multipliers(const place_index *at, hs_working *working)
{
    const hs_niosh_input *in = &at->input;
    const hs_niosh_answer *a = &at->answer;

    if (a->hm_factor > 0.0 && in->reach_m > 0.0)
        HS_WORK(working, niosh_hm, a->hm_factor, "", {"H", 100.0 * in->reach_m, "cm"});
    if (a->vm_factor > 0.0)
        HS_WORK(working, niosh_vm, a->vm_factor, "", {"V", 100.0 * in->hand_height_m, "cm"});
    if (a->dm_factor > 0.0)
        HS_WORK(working, niosh_dm, a->dm_factor, "", {"D", fabs(100.0 * in->distance_m), "cm"});
    if (a->am_factor > 0.0)
        HS_WORK(working, niosh_am, a->am_factor, "", {"A", in->turn_deg, "deg"});
    HS_WORK(working, niosh_rwl, a->rwl_kg, "kg", {"HM", a->hm_factor, ""},
            {"VM", a->vm_factor, ""}, {"DM", a->dm_factor, ""}, {"AM", a->am_factor, ""},
            {"FM", a->fm_factor, ""}, {"CM", a->cm_factor, ""});
    if (hs_has(at->index))
        HS_WORK(working, niosh_li, at->index, "", {"L", at->leg->share_kg, "kg"},
                {"RWL", a->rwl_kg, "kg"});
    /* for comparison: what the wearer feels of it */
    if (at->leg->has_suit && a->rwl_kg > 0.0 && hs_has(at->leg->held_kg))
        HS_WORK(working, niosh_li, at->leg->held_kg / a->rwl_kg, "",
                {"L", at->leg->held_kg, "kg"}, {"RWL", a->rwl_kg, "kg"});
}

static hs_message
zero_words(const place_index *at)
{
    const hs_niosh_input *in = &at->input;

    if (!(at->answer.hm_factor > 0.0))
        return HS_SAY(niosh_zero_reach, in->reach_m);
    if (!(at->answer.vm_factor > 0.0))
        return HS_SAY(niosh_zero_height, in->hand_height_m);
    if (!(at->answer.dm_factor > 0.0))
        return HS_SAY(niosh_zero_travel, fabs(in->distance_m));
    if (!(at->answer.am_factor > 0.0))
        return HS_SAY(niosh_zero_turn, fabs(in->turn_deg));
    return HS_SAY(niosh_zero_rate, in->lifts_per_min);
}

/* The row of ten a minute bounds the rows above it: beyond there is beyond with every figure read in a source. */
static bool
rests_on_memory(const place_index *at)
{
    hs_niosh_input at_ten = at->input;
    hs_niosh_answer answer;

    if (!(at->input.lifts_per_min > HS_NIOSH_SEEN_TO_per_min))
        return false;
    at_ten.lifts_per_min = HS_NIOSH_SEEN_TO_per_min;
    hs_niosh_rwl(&at_ten, &answer);
    return !(at->leg->share_kg > at->limit * answer.rwl_kg);
}

static hs_reason
index_reason(const place_index *at, double seconds)
{
    double peak_m_s = PEAK_OVER_MEAN * fabs(at->input.distance_m) / seconds;

    if (peak_m_s > FAST_m_s)
        return HS_REASON_niosh_is_fast;
    if (at->asking->task->site.friction < SLIPPERY)
        return HS_REASON_niosh_is_slippery;
    return HS_REASON_niosh_is;
}

static bool
within_with(
    const hs_asking *asking, const hs_limit_leg *leg, int end, double reach_m, double limit)
{
    hs_niosh_input input = input_of(asking, leg, end);
    hs_niosh_answer answer;

    input.reach_m = reach_m;
    hs_niosh_rwl(&input, &answer);
    return leg->share_kg < asking->near_ratio * limit * answer.rwl_kg;
}

/* A smaller reach here is a remedy of its own only where every other place of this bearer is within already. */
static double
remedy_reach_m(const place_index *at)
{
    const hs_limit_leg *legs;
    int n = hs_limit_legs(at->asking, at->leg->bearer, &legs);
    double near = at->asking->near_ratio * at->limit;
    double reach_m = 0.25 * near * at->answer.firwl_kg / at->answer.hm_factor *
                     at->answer.fm_factor / at->leg->share_kg;

    for (int i = 0; i < n; i++)
        for (int end = 0; end < (legs[i].is_precise ? 2 : 1); end++)
            if (hs_limit_leg_lifts(&legs[i]) &&
                !(legs[i].from == at->leg->from && end == at->end) &&
                !within_with(at->asking, &legs[i], end, legs[i].reach_m[end], at->limit))
                return HS_ABSENT;
    reach_m = floor(100.0 * reach_m) / 100.0;
    return reach_m >= 0.25 && within_with(at->asking, at->leg, at->end, reach_m, at->limit)
               ? reach_m
               : HS_ABSENT;
}

static void
say_remedy(const place_index *at, hs_finding *candidate)
{
    double load_kg = at->asking->load->mass_kg;
    double most_kg = hs_limit_round_down(load_kg * at->asking->near_ratio * at->limit /
                                         at->index * (1.0 - 1e-9));
    double reach_m = remedy_reach_m(at);

    if (candidate->status != HS_STATUS_NEAR && candidate->status != HS_STATUS_BEYOND)
        return;
    if (hs_has(reach_m))
        candidate->remedy = HS_SAY(limits_remedy_mass_reach, most_kg, load_kg, reach_m,
                                   at->leg->reach_m[at->end]);
    else
        candidate->remedy = HS_SAY(limits_remedy_mass, most_kg, load_kg);
}

static void
judge_place(place_index *at, hs_finding *candidate)
{
    const hs_limit_leg *leg = at->leg;
    hs_message scope = hs_limit_scope_words(at->asking, leg, true);
    double seconds = at->asking->run->stations[leg->to].place.t_s -
                     at->asking->run->stations[leg->from].place.t_s;

    if (scope.reason == HS_REASON_none && leg->is_one_handed)
        scope = HS_SAY(limits_one_hand);
    at->limit = 1.0;
    at->index = at->answer.rwl_kg > 0.0 ? leg->share_kg / at->answer.rwl_kg : HS_ABSENT;
    candidate->source = HS_SRC_niosh_1994;
    candidate->confidence = HS_CONF_SEEN;
    hs_limit_site(at->asking, leg->bearer, leg, candidate, &at->limit, NULL);
    if (hs_has(leg->share_kg))
        record_multipliers(at, &candidate->working);
    if (scope.reason != HS_REASON_none) {
        candidate->limit = at->limit;
        hs_finding_scope(candidate, at->index,
                         leg->has_suit ? (hs_message){.reason = HS_REASON_niosh_suit} : scope);
        return;
    }
    if (!hs_has(leg->share_kg)) {
        hs_finding_missing(candidate, HS_SAY(limits_unknown_mass));
        return;
    }
    if (!hs_has(at->index)) {
        candidate->limit = at->limit;
        hs_finding_beyond(candidate, zero_words(at));
        candidate->remedy = HS_SAY(niosh_remedy_zero);
        return;
    }
    candidate->text =
        HS_SAY(niosh_is, at->index, leg->share_kg, at->answer.rwl_kg, at->input.reach_m,
               at->input.hand_height_m, at->input.lifts_per_min);
    candidate->text.reason = index_reason(at, seconds);
    if (rests_on_memory(at)) {
        candidate->confidence = HS_CONF_MEMORY;
        candidate->source = HS_SRC_niosh_fm_high;
        candidate->text.reason = HS_REASON_niosh_is_memory;
    }
    hs_finding_judge(candidate, at->index, at->limit, at->asking->near_ratio);
    say_remedy(at, candidate);
}

void
hs_check_lift_niosh_1994(const hs_asking *asking, hs_finding *finding)
{
    if (!hs_criterion_on(asking->task, "niosh-1994"))
        return;
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_limit_leg *legs;
        int n = hs_limit_legs(asking, b, &legs);

        for (int i = 0; i < n; i++)
            for (int end = 0; end < (legs[i].is_precise ? 2 : 1); end++) {
                hs_finding candidate = hs_finding_start(asking, HS_CHECK_lift_niosh_1994);
                place_index at = {.asking = asking, .leg = &legs[i], .end = end};

                if (!hs_limit_leg_lifts(&legs[i]))
                    continue;
                at.input = input_of(asking, &legs[i], end);
                hs_niosh_rwl(&at.input, &at.answer);
                judge_place(&at, &candidate);
                hs_limit_keep(asking, finding, &candidate, &legs[i], end);
            }
    }
}

/* One leg as a task: the place with the lower limit gives FIRWL; hands low at any place that counts asks for the low column. */
static hs_niosh_task
task_of(const hs_asking *asking, const hs_limit_leg *leg)
{
    hs_niosh_task task = {.mass_mean_kg = leg->share_kg,
                          .mass_most_kg = leg->share_kg,
                          .firwl_kg = INFINITY,
                          .lifts_per_min = hs_limit_cycles_per_h(asking) / 60.0};

    for (int end = 0; end < (leg->is_precise ? 2 : 1); end++) {
        hs_niosh_input input = input_of(asking, leg, end);
        hs_niosh_answer answer;

        hs_niosh_rwl(&input, &answer);
        if (answer.firwl_kg < task.firwl_kg) {
            task.firwl_kg = answer.firwl_kg;
            task.multipliers = answer;
            task.is_low = input.hand_height_m < 0.75 - 1e-9;
        }
    }
    return task;
}

/* Each task's own limit and what it adds, in the order of the steps. */
static void
record_steps(const hs_niosh_task *tasks, int n, const hs_niosh_sum *sum, hs_working *working)
{
    for (int i = 0; i < n; i++) {
        const hs_niosh_task *task = &tasks[sum->order[i]];
        const hs_niosh_answer *m = &task->multipliers;

        HS_WORK(working, niosh_firwl, task->firwl_kg, "kg", {"HM", m->hm_factor, ""},
                {"VM", m->vm_factor, ""}, {"DM", m->dm_factor, ""}, {"AM", m->am_factor, ""},
                {"CM", m->cm_factor, ""});
        if (i == 0)
            HS_WORK(working, niosh_stli, sum->after_index[i], "",
                    {"L", task->mass_mean_kg, "kg"}, {"FIRWL", task->firwl_kg, "kg"},
                    {"FM", sum->fm_factor[i], ""});
        else
            HS_WORK(working, niosh_cli, sum->after_index[i], "",
                    {"before", sum->after_index[i - 1], ""}, {"L", task->mass_most_kg, "kg"},
                    {"FIRWL", task->firwl_kg, "kg"}, {"FM", sum->fm_factor[i], ""},
                    {"FM_before", sum->fm_factor[i - 1], ""});
    }
}

static void
judge_composite(const hs_asking *asking,
                const hs_niosh_task *tasks,
                int n,
                const hs_limit_leg *leg,
                hs_finding *candidate)
{
    hs_niosh_sum sum;
    hs_message scope = hs_limit_scope_words(asking, leg, true);
    double limit = 1.0, load_kg = asking->load->mass_kg;

    hs_niosh_composite(
        tasks, n, hs_niosh_duration_of(hs_limit_hours(asking), hs_limit_recovery_h(asking)),
        &sum);
    candidate->source = HS_SRC_niosh_composite;
    candidate->confidence = HS_CONF_MEMORY;
    hs_limit_site(asking, leg->bearer, leg, candidate, &limit, NULL);
    if (hs_has(sum.index))
        record_steps(tasks, n, &sum, &candidate->working);
    if (scope.reason == HS_REASON_none && leg->is_one_handed)
        scope = HS_SAY(limits_one_hand);
    if (scope.reason != HS_REASON_none) {
        candidate->limit = limit;
        hs_finding_scope(candidate, sum.index,
                         leg->has_suit ? (hs_message){.reason = HS_REASON_niosh_suit} : scope);
    } else if (!hs_has(leg->share_kg)) {
        hs_finding_missing(candidate, HS_SAY(limits_unknown_mass));
    } else if (!hs_has(sum.index)) {
        candidate->limit = limit;
        hs_finding_beyond(candidate, HS_SAY(composite_zero, sum.sum_per_min));
        candidate->remedy = HS_SAY(composite_remedy_rate);
    } else {
        candidate->text = HS_SAY(composite_is, sum.index, n, sum.first_index, sum.sum_per_min);
        hs_finding_judge(candidate, sum.index, limit, asking->near_ratio);
        if (candidate->status != HS_STATUS_WITHIN)
            candidate->remedy = HS_SAY(limits_remedy_mass,
                                       hs_limit_round_down(load_kg * asking->near_ratio *
                                                           limit / sum.index * (1.0 - 1e-9)),
                                       load_kg);
    }
}

void
hs_check_lift_niosh_composite(const hs_asking *asking, hs_finding *finding)
{
    if (!hs_criterion_on(asking->task, "niosh-1994"))
        return;
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        hs_niosh_task tasks[HS_NIOSH_TASKS];
        const hs_limit_leg *legs, *first = NULL;
        hs_finding candidate = hs_finding_start(asking, HS_CHECK_lift_niosh_composite);
        hs_limit_leg all;
        int n = hs_limit_legs(asking, b, &legs), n_tasks = 0;

        for (int i = 0; i < n && n_tasks < HS_NIOSH_TASKS; i++) {
            if (!hs_limit_leg_lifts(&legs[i]))
                continue;
            if (first == NULL)
                all = *(first = &legs[i]);
            all.kneels = all.kneels || legs[i].kneels;
            if (!hs_has(legs[i].share_kg))
                all.share_kg = HS_ABSENT;
            tasks[n_tasks++] = task_of(asking, &legs[i]);
        }
        if (n_tasks < 2)
            continue;
        judge_composite(asking, tasks, n_tasks, &all, &candidate);
        hs_limit_keep(asking, finding, &candidate, &all, 0);
    }
}
