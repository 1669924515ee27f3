/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much does a shift load the low back beside today's way?
 * Answer:    hs_check_day_spine(): compression summed over the time held. No published limit belongs to such a sum, so it is
 *            never judged: today's figure is given beside it. The working adds the dose model of Mainz and Dortmund, which
 *            goes by handling instead of posture, as a second comparison.
 * Not here:  the largest compression (body_checks.c), mass and energy of the day (limits). */
#include "body_remedy.h"
#include "dose.h"
#include "legs.h"
#include "units.h"

/* Newton seconds of one cycle for one bearer; HS_ABSENT when a posture or a figure is missing on the way. */
static double
cycle_Ns(const hs_run *run, int b)
{
    double sum = 0.0;

    for (int s = 1; s < run->n_stations; s++) {
        const hs_station *from = &run->stations[s - 1], *to = &run->stations[s];
        double dt_s = to->place.t_s - from->place.t_s;

        if (dt_s > 0.0)
            sum += 0.5 * dt_s *
                   (from->bearers[b].body.compression_N + to->bearers[b].body.compression_N);
    }
    return sum;
}

static double
worst_cycle_Ns(const hs_run *run, int *ret_bearer)
{
    double worst = HS_ABSENT;

    *ret_bearer = -1;
    for (int b = 0; b < run->setup->n_bearers; b++) {
        double here = cycle_Ns(run, b);

        if (!hs_has(here))
            return HS_ABSENT;
        if (!(worst >= here)) {
            worst = here;
            *ret_bearer = b;
        }
    }
    return worst;
}

static hs_dose_action
action_of(const hs_limit_leg *leg)
{
    if (leg->move == HS_MOVE_CARRY)
        return HS_DOSE_CARRY;
    if (leg->move == HS_MOVE_SLIDE)
        return leg->is_one_handed ? HS_DOSE_SHIFT_ONE : HS_DOSE_SHIFT;
    return leg->is_one_handed ? HS_DOSE_LIFT_ONE : HS_DOSE_LIFT;
}

/* Seconds that the model counts for one leg: by kind, not by the clock. */
static double
counted_s(const hs_asking *asking, const hs_limit_leg *leg)
{
    if (leg->move == HS_MOVE_CARRY)
        return leg->way_m * HS_DOSE_CARRY_s_m;
    if (leg->is_precise)
        return HS_DOSE_CAREFUL_s;
    return asking->task->route.points[leg->point].hold_s > 0.0 ? HS_DOSE_LIFT_FAR_s
                                                               : HS_DOSE_LIFT_s;
}

/* N2 h of one bearer's shift: legs whose force is above the threshold; HS_ABSENT where what is held is not known. working may
 * be NULL. */
static double
dose_sum_N2h(const hs_asking *asking, int bearer, hs_working *working)
{
    double a_day = hs_limit_cycles_per_h(asking) * hs_limit_hours(asking), sum_N2h = 0.0;
    double threshold_N = hs_dose_threshold_N(asking->run->persons[bearer].sex, HS_DOSE_1999);
    const hs_limit_leg *legs;
    int n = hs_limit_legs(asking, bearer, &legs);

    for (int i = 0; i < n; i++) {
        double base_N, each_N_kg, force_N, t_s = counted_s(asking, &legs[i]), before = sum_N2h;

        hs_dose_terms(action_of(&legs[i]), &base_N, &each_N_kg);
        force_N = hs_dose_force_N(action_of(&legs[i]), legs[i].held_kg);
        if (!hs_has(force_N))
            return HS_ABSENT;
        if (!(force_N > threshold_N) || !(t_s > 0.0))
            continue;
        sum_N2h += a_day * force_N * force_N * t_s / HS_J_PER_Wh;
        HS_WORK(working, dose_force, force_N, "N", {"base", base_N, "N"},
                {"each", each_N_kg, "N/kg"}, {"L", legs[i].held_kg, "kg"});
        HS_WORK(working, dose_add, sum_N2h, "N2h", {"S_before", before, "N2h"},
                {"n", a_day, ""}, {"F", force_N, "N"}, {"t", t_s, "s"});
    }
    return sum_N2h;
}

/* The greatest of an option's bearers. */
static double
worst_dose_N2h(const hs_asking *asking, int *ret_bearer)
{
    double worst = HS_ABSENT;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        double here = dose_sum_N2h(asking, b, NULL);

        if (!hs_has(here))
            return HS_ABSENT;
        if (!(worst >= here)) {
            worst = here;
            *ret_bearer = b;
        }
    }
    return worst;
}

/* The dose model as lines of working: the option's, beside the guide value of 1999 and beside today's way. */
static void
work_dose(const hs_asking *asking, hs_working *working)
{
    hs_asking today = *asking;
    int bearer = 0, other = 0;
    double sum_N2h = worst_dose_N2h(asking, &bearer), dose_Nh, shift_Nh, before_N2h;

    if (!hs_has(sum_N2h))
        return;
    dose_sum_N2h(asking, bearer, working);
    dose_Nh = hs_dose_of_Nh(sum_N2h);
    shift_Nh = hs_dose_shift_Nh(asking->run->persons[bearer].sex, HS_DOSE_1999);
    HS_WORK(working, dose_root, dose_Nh, "Nh", {"S", sum_N2h, "N2h"});
    HS_WORK(working, dose_guide, dose_Nh / shift_Nh, "", {"D", dose_Nh, "Nh"},
            {"D_shift", shift_Nh, "Nh"});
    if (asking->baseline == NULL || asking->baseline == asking->run)
        return;
    today.run = asking->baseline;
    before_N2h = worst_dose_N2h(&today, &other);
    if (before_N2h > 0.0)
        HS_WORK(working, dose_beside, dose_Nh / hs_dose_of_Nh(before_N2h), "",
                {"D", dose_Nh, "Nh"}, {"D_today", hs_dose_of_Nh(before_N2h), "Nh"});
}

void
hs_check_day_spine(const hs_asking *asking, hs_finding *finding)
{
    const hs_work *work = &asking->task->work;
    double per_hour = hs_or(work->cycles_per_hour, 1.0), hours = hs_or(work->hours, 1.0);
    int bearer, other;
    double cycle = worst_cycle_Ns(asking->run, &bearer), today = HS_ABSENT, value_Nh;

    finding->source = HS_SRC_spine_dose;
    finding->confidence = HS_CONF_DERIVED;
    if (!hs_has(cycle)) {
        hs_finding_scope(finding, HS_ABSENT, HS_SAY(dose_none));
        work_dose(asking, &finding->working);
        return;
    }
    value_Nh = cycle * per_hour * hours / HS_J_PER_Wh;
    HS_WORK(&finding->working, body_dose, value_Nh, "Nh", {"E", cycle, "Ns"},
            {"n", per_hour, "/h"}, {"h", hours, "h"});
    if (asking->baseline != NULL && asking->baseline != asking->run)
        today = worst_cycle_Ns(asking->baseline, &other) * per_hour * hours / HS_J_PER_Wh;
    if (!(today > 0.0)) { /* not known, or nothing to be compared with */
        hs_finding_scope(finding, value_Nh, HS_SAY(dose_is, value_Nh));
    } else {
        hs_finding_scope(finding, value_Nh,
                         HS_SAY(dose_more, value_Nh, today, value_Nh / today));
        if (value_Nh <= today)
            finding->text.reason = HS_REASON_dose_less;
        finding->limit = today;
    }
    finding->bearer = bearer;
    work_dose(asking, &finding->working);
}
