/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can the load be held and carried as long as the work asks?
 * Answer:    hs_check_hold_endurance(): over each stretch of holds and carries, time used up joint by joint.
 * Not here:  the power laws (body/endurance.c), strength (standing_checks.c). */
#include "body_remedy.h"
#include "endurance_readers.h"
#include "units.h"

/* The fit's 95 % prediction band is 29-47 % of the mean (Frey Law & Avin 2010): its far side is taken off. */
#define CAUTIOUS_PART 0.53

typedef struct {
    double used[HS_N_JOINTS]; /* shares of the endurance times used up so far: 1 is all */
    double first_s, greatest;
    int station; /* of the largest utilisation */
    int joint_there;
    bool is_missing, is_too_weak;
} stretch;

static bool
is_held(const hs_asking *asking, const hs_place *place)
{
    const hs_route *route = &asking->task->route;

    if (place->in_hold)
        return place->point >= 0 && place->point < route->n_points &&
               route->points[place->point].set_down != HS_YES;
    return place->move == HS_MOVE_CARRY || place->move == HS_MOVE_HOLD;
}

static double
rate_per_s(double utilisation, int joint)
{
    if (!hs_has(utilisation))
        return 0.0;
    return 1.0 / (CAUTIOUS_PART * hs_endurance_s(joint, fmin(utilisation, 1.0), NULL));
}

static void
look_at(stretch *st, const hs_bearer_state *state, int station)
{
    st->is_missing = st->is_missing || hs_body_is_missing(state);
    for (int j = 0; state->body.is_found && j < HS_N_JOINTS; j++)
        if (state->body.utilisation[j] > st->greatest) {
            st->greatest = state->body.utilisation[j];
            st->station = station;
            st->joint_there = j;
            st->is_too_weak = st->greatest > 1.0;
        }
}

static void
use_up(stretch *st, const hs_body_state *from, const hs_body_state *to, double dt_s)
{
    for (int j = 0; j < HS_N_JOINTS; j++)
        if (from->is_found && to->is_found)
            st->used[j] +=
                0.5 * dt_s *
                (rate_per_s(from->utilisation[j], j) + rate_per_s(to->utilisation[j], j));
}

static hs_reason
reason_of(int joint)
{
    static const hs_reason reasons[HS_N_JOINTS] = {
        [HS_JOINT_ANKLE] = HS_REASON_hold_ankle,       [HS_JOINT_KNEE] = HS_REASON_hold_knee,
        [HS_JOINT_HIP] = HS_REASON_hold_hip,           [HS_JOINT_L5S1] = HS_REASON_hold_trunk,
        [HS_JOINT_SHOULDER] = HS_REASON_hold_shoulder, [HS_JOINT_ELBOW] = HS_REASON_hold_elbow,
    };

    return reasons[joint];
}

/* The law at the greatest share of strength that is asked for. */
static void
work_law(hs_working *working, const stretch *st)
{
    double f, b0_s, exponent;

    hs_endurance_law(st->joint_there, st->greatest, &f, &b0_s, &exponent);
    HS_WORK(working, body_endurance, b0_s * pow(f, exponent), "s", {"b0", b0_s, "s"},
            {"f", f, ""}, {"b1", exponent, ""});
}

/* Other published readers at the same share: they stand beside it and decide nothing. */
static void
work_second_readers(hs_working *working, const stretch *st)
{
    double f = st->greatest;

    if (!(f > 0.0))
        return;
    HS_WORK(working, hold_any, hs_endurance_any_s(f), "s", {"b0", HS_ENDURANCE_ANY_b0_s, "s"},
            {"f", f, ""}, {"b1", HS_ENDURANCE_ANY_b1, ""});
    HS_WORK(working, hold_rohmert, hs_endurance_rohmert_s(f), "s", {"f", f, ""});
    if (st->joint_there == HS_JOINT_SHOULDER)
        HS_WORK(working, hold_shoulder, hs_endurance_shoulder_s(f), "s", {"f", f, ""});
    HS_WORK(working, hold_hour, f / HS_ENDURANCE_HOUR_SHARE, "", {"f", f, ""},
            {"hour", HS_ENDURANCE_HOUR_SHARE, ""});
}

/* The same posture with the arms of a suit that can lock them: nothing is felt, the frame hangs on trunk and legs. */
static void
work_locked(const hs_asking *asking, const stretch *st, int bearer, hs_working *working)
{
    const hs_run *run = asking->run;
    const hs_suit *suit = run->setup->bearers[bearer].suit;
    const hs_bearer_state *state = &run->stations[st->station].bearers[bearer];
    hs_body_input locked = state->input;
    hs_body_state body = state->body;
    double f, b0_s, exponent, least_s = INFINITY;
    int joint = -1;

    if (suit == NULL || suit->lockable != HS_YES)
        return;
    locked.rest_N += locked.felt_N;
    locked.felt_N = 0.0;
    if (hs_body_at(&run->persons[bearer], &locked, &body) != HS_OK || !(body.greatest <= 1.0))
        return;
    for (int j = 0; j < HS_N_JOINTS; j++)
        if (hs_has(body.utilisation[j]) &&
            hs_endurance_s(j, body.utilisation[j], NULL) < least_s) {
            least_s = hs_endurance_s(j, body.utilisation[j], NULL);
            joint = j;
        }
    if (joint < 0)
        return;
    hs_endurance_law(joint, body.utilisation[joint], &f, &b0_s, &exponent);
    HS_WORK(working, hold_locked, CAUTIOUS_PART * b0_s * pow(f, exponent), "s",
            {"c", CAUTIOUS_PART, ""}, {"b0", b0_s, "s"}, {"f", f, ""}, {"b1", exponent, ""});
}

static void
judge_stretch(
    const hs_asking *asking, const stretch *st, double last_s, int bearer, hs_finding *finding)
{
    double time_s = last_s - st->first_s, ratio = 0.0;
    int joint = HS_JOINT_L5S1;

    finding->source = HS_SRC_frey_law_2010;
    finding->confidence = HS_CONF_SEEN;
    if (st->is_missing) {
        hs_finding_missing(finding, HS_SAY(body_missing));
    } else if (st->station < 0 || !(time_s > 0.0)) {
        return;
    } else if (st->is_too_weak) {
        hs_finding_beyond(finding, HS_SAY(hold_not_at_all, time_s, st->greatest));
        finding->remedy = HS_SAY(hold_remedy_strength);
    } else {
        for (int j = 0; j < HS_N_JOINTS; j++)
            if (st->used[j] > ratio) {
                ratio = st->used[j];
                joint = j;
            }
        if (!(ratio > 0.0))
            return;
        hs_finding_judge_ratio(finding, time_s, time_s / ratio, ratio, asking->near_ratio);
        finding->text = HS_SAY(none, time_s, time_s / ratio, st->greatest);
        finding->text.reason = reason_of(joint);
        work_law(&finding->working, st);
        if (!asking->is_live) {
            work_second_readers(&finding->working, st);
            work_locked(asking, st, bearer, &finding->working);
        }
        HS_WORK(&finding->working, body_hold, time_s / ratio, "s", {"T", time_s, "s"},
                {"sum", ratio, ""});
        if (ratio >= asking->near_ratio)
            finding->remedy =
                HS_SAY(hold_remedy_time,
                       floor(asking->near_ratio * 0.999 * time_s / ratio * 10.0) / 10.0);
    }
    hs_finding_at(finding, asking->run, st->station >= 0 ? st->station : 0, bearer);
}

static void
judge_bearer(const hs_asking *asking, int b, hs_finding *worst)
{
    const hs_run *run = asking->run;
    stretch st = {.station = -1};
    bool inside = false;

    for (int s = 0; s <= run->n_stations; s++) {
        const hs_station *now = s < run->n_stations ? &run->stations[s] : NULL;
        bool held = now != NULL && is_held(asking, &now->place);

        if (inside && !held) {
            hs_finding candidate = hs_finding_start(asking, HS_CHECK_hold_endurance);

            judge_stretch(asking, &st, run->stations[s - 1].place.t_s, b, &candidate);
            if (candidate.status != HS_STATUS_NONE &&
                (worst->status == HS_STATUS_NONE || hs_finding_worse(&candidate, worst)))
                *worst = candidate;
        }
        if (held && !inside)
            st = (stretch){.station = -1, .first_s = now->place.t_s};
        if (held && inside)
            use_up(&st, &run->stations[s - 1].bearers[b].body, &now->bearers[b].body,
                   now->place.t_s - run->stations[s - 1].place.t_s);
        if (held)
            look_at(&st, &now->bearers[b], s);
        inside = held;
    }
}

void
hs_check_hold_endurance(const hs_asking *asking, hs_finding *finding)
{
    for (int b = 0; b < asking->run->setup->n_bearers; b++)
        judge_bearer(asking, b, finding);
}
