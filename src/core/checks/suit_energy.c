/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does one work cycle ask of a suit's drives and battery, and does a charge last?
 * Answer:    lifts and holds summed over the run; hs_check_suit_energy() against the battery less its reserve.
 * Not here:  the sum over an hour and a shift (forces/energy.c). */
#include "suit_energy.h"

#include "check.h"

#define S_PER_min 60.0  /* definition of the minute */
#define ROOM      0.999 /* a remedy lands this side of its threshold (numerics) */

/* Locked arms hold without power: a suit that can lock does so where the load dwells. */
static bool
is_locked(const hs_suit *suit, const hs_place *place)
{
    return suit->lockable == HS_YES && (place->in_hold || place->move == HS_MOVE_HOLD);
}

static double
torque_Nm(const hs_run *run, int s, int b)
{
    double hand_N = run->samples[s].bearers[b].hand_force_N;

    return hs_has(hand_N) ? hand_N * run->stations[s].place.bearers[b].reach_m : 0.0;
}

static double
height_m(const hs_place *place)
{
    return hs_or(place->cg_m.z, place->origin_m.z);
}

/* Work of one leg against gravity, by what the bearer holds at rest; lowering counts nothing. */
static double
leg_lift_J(const hs_run *run, int from, int to, int b)
{
    double rise_m = height_m(&run->stations[to].place) - height_m(&run->stations[from].place);
    double held_N = (hs_or(run->stations[from].bearers[b].static_share_N, 0.0) +
                     hs_or(run->stations[to].bearers[b].static_share_N, 0.0)) /
                    2.0;

    return rise_m > 0.0 ? held_N * rise_m : 0.0;
}

static void
keep_worst(const hs_run *run, const hs_suit *suit, int s, int b, hs_energy_cycle *cycle)
{
    const hs_place *place = &run->stations[s].place;
    double hold_Nm = is_locked(suit, place) ? 0.0 : torque_Nm(run, s, b);
    double to_s = hs_place_to_set_down_s(run->setup, place);
    double w = hs_or(suit->hold_W_per_Nm, 0.0), idle_W = hs_or(suit->idle_W, 0.0);

    if (!hs_has(to_s))
        return;
    if ((w * hold_Nm + idle_W) * to_s >
        (w * cycle->worst_hold_Nm + idle_W) * cycle->worst_to_set_down_s) {
        cycle->worst_hold_Nm = hold_Nm;
        cycle->worst_to_set_down_s = to_s;
    }
}

void
hs_energy_cycle_of(const hs_run *run, int bearer, hs_energy_cycle *ret_cycle)
{
    const hs_suit *suit = run->setup->bearers[bearer].suit;
    int leg_start = 0;

    *ret_cycle = (hs_energy_cycle){.cycles_per_h = run->setup->task->work.cycles_per_hour,
                                   .hours = run->setup->task->work.hours};
    for (int s = 0; s < run->n_stations; s++) {
        const hs_place *place = &run->stations[s].place;

        keep_worst(run, suit, s, bearer, ret_cycle);
        if (s == 0 || run->stations[s - 1].place.leg != place->leg) {
            leg_start = s;
            continue;
        }
        if (!is_locked(suit, place))
            ret_cycle->hold_Nms += (torque_Nm(run, s - 1, bearer) + torque_Nm(run, s, bearer)) /
                                   2.0 * (place->t_s - run->stations[s - 1].place.t_s);
        if (s + 1 == run->n_stations || run->stations[s + 1].place.leg != place->leg)
            ret_cycle->lift_J += leg_lift_J(run, leg_start, s, bearer);
    }
}

double
hs_energy_Wh_per_h(const hs_asking *asking)
{
    const hs_run *run = asking->run;
    double sum_Wh = 0.0;

    for (int b = 0; b < run->setup->n_bearers; b++) {
        const hs_suit *suit = run->setup->bearers[b].suit;
        hs_energy_cycle cycle;
        hs_energy energy;

        if (suit == NULL || !hs_suit_model_of(suit)->has_power)
            continue;
        hs_energy_cycle_of(run, b, &cycle);
        if (hs_energy_sum(suit, &cycle, NULL, &energy, NULL) != HS_OK)
            return HS_ABSENT;
        sum_Wh += energy.hour_Wh;
    }
    return sum_Wh;
}

static bool
has_shares(const hs_run *run)
{
    for (int s = 0; s < run->n_stations; s++)
        if (!run->stations[s].has_shares)
            return false;
    return true;
}

static void
advise(const hs_asking *asking,
       const hs_suit *suit,
       const hs_energy *energy,
       hs_finding *finding)
{
    double hours = asking->task->work.hours, reserve = hs_or(suit->reserve, 0.0);
    double enough_Wh = energy->shift_Wh / (1.0 - reserve) / (ROOM * asking->near_ratio);

    if (finding->status == HS_STATUS_NEAR && energy->n_swaps > 0.0) {
        finding->text = HS_SAY(energy_swap, energy->shift_Wh, hours, energy->limit_Wh,
                               energy->n_swaps, suit->swap_min * S_PER_min);
        finding->remedy = HS_SAY(energy_remedy_swap, energy->n_swaps,
                                 suit->swap_min * S_PER_min, energy->hours_a_charge);
        return;
    }
    if (finding->status == HS_STATUS_BEYOND)
        finding->text = HS_SAY(energy_beyond, energy->shift_Wh, hours, energy->limit_Wh);
    else
        finding->text = HS_SAY(energy_within, energy->shift_Wh, hours, energy->limit_Wh,
                               energy->hours_a_charge, floor(energy->cycles_a_charge));
    if (finding->status != HS_STATUS_WITHIN && reserve < 1.0)
        finding->remedy = HS_SAY(energy_remedy_battery, enough_Wh);
}

/* A reserve that does not last to the next place to set down leaves the load hanging. */
static void
check_reserve(const hs_suit *suit, const hs_energy *energy, hs_finding *finding)
{
    if (!(energy->set_down_Wh > energy->reserve_Wh) || !(energy->reserve_Wh > 0.0))
        return;
    hs_finding_at_best_near(finding);
    finding->text = HS_SAY(energy_reserve, energy->set_down_Wh, energy->reserve_Wh);
    finding->remedy = HS_SAY(energy_remedy_reserve, energy->set_down_Wh / suit->battery_Wh);
}

/* Cycles from which the minutes that putting the suit on takes are earned back by those who no longer lift. */
static void
write_worth(const hs_asking *asking, const hs_suit *suit, hs_working *working)
{
    const hs_run *run = asking->run;
    double cycle_min = run->stations[run->n_stations - 1].place.t_s / S_PER_min;
    int here = run->setup->n_bearers,
        crew = asking->baseline != NULL ? asking->baseline->setup->n_bearers : here;

    if (crew <= here || !hs_has(suit->donning_min) || !(cycle_min > 0.0))
        return;
    HS_WORK(working, energy_worth, suit->donning_min / ((crew - here) * cycle_min), "",
            {"donning", suit->donning_min, "min"}, {"crew", crew, ""}, {"here", here, ""},
            {"cycle", cycle_min, "min"});
}

static void
judge(const hs_asking *asking, int b, hs_finding *finding)
{
    const hs_suit *suit = asking->run->setup->bearers[b].suit;
    hs_energy_cycle cycle;
    hs_energy energy;
    hs_error error;

    finding->bearer = b;
    finding->source = HS_SRC_suit_energy_sum;
    hs_energy_cycle_of(asking->run, b, &cycle);
    if (hs_energy_sum(suit, &cycle, &finding->working, &energy, &error) != HS_OK) {
        hs_finding_missing(finding, HS_SAY(energy_missing));
        finding->text.name[0] = hs_arena_strdup(asking->arena, error.where);
        return;
    }
    write_worth(asking, suit, &finding->working);
    hs_finding_judge(finding, energy.shift_Wh, energy.limit_Wh, asking->near_ratio);
    if (finding->status == HS_STATUS_BEYOND && hs_has(suit->swap_min))
        finding->status = HS_STATUS_NEAR;
    advise(asking, suit, &energy, finding);
    if (finding->status != HS_STATUS_BEYOND)
        check_reserve(suit, &energy, finding);
}

void
hs_check_suit_energy(const hs_asking *asking, hs_finding *finding)
{
    hs_finding worst = *finding;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_suit *suit = asking->run->setup->bearers[b].suit;
        hs_finding candidate = *finding;

        if (suit == NULL || !hs_suit_model_of(suit)->has_power || !has_shares(asking->run))
            continue;
        judge(asking, b, &candidate);
        if (worst.status == HS_STATUS_NONE || hs_finding_worse(&candidate, &worst))
            worst = candidate;
    }
    *finding = worst;
}
