/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can the loss of power be survived at every place of the route?
 * Answer:    hs_check_suit_power_loss(): the worst place of the worst suited bearer, why, and what would mend it.
 * Not here:  what the wearer then holds (power_loss.c), getting out of the suit (rescue_check.c). */
#include "check.h"
#include "endurance_readers.h"
#include "grip_beside.h"
#include "loss_beside.h"
#include "outline.h"
#include "power_loss.h"
#include "solve.h"
#include "units.h"

#define BRAKE_FACTOR  1.5  /* HS_SRC_suit_brake_practice */
#define SAME_HEIGHT_m 1e-3 /* hands that move less than this stay where they are (numerics) */

typedef struct {
    const hs_asking *asking;
    const hs_suit *suit;
    int s, b;
    hs_power_lost lost;
    double to_set_down_s; /* absent: none follows */
} scene;

static const char *
missing_key(const scene *at)
{
    const hs_suit *suit = at->suit;
    const hs_effector *effector = at->asking->run->setup->bearers[at->b].effector;

    if (suit->on_power_loss == 0)
        return "on_power_loss";
    if (effector != NULL && effector->holds_without_power == HS_UNKNOWN)
        return "holds_without_power";
    if (suit->on_power_loss == HS_LOSS_DESCEND)
        return suit->sink_m_s > 0.0 ? NULL : "sink_m_s";
    if (suit->walks_without_power == HS_UNKNOWN)
        return "walks_without_power";
    if (suit->on_power_loss != HS_LOSS_LOCK)
        return NULL;
    if (!hs_has(suit->lock_s))
        return "lock_s";
    if (suit->walks_without_power == HS_NO && !hs_has(suit->release_helper_s))
        return "release_helper_s";
    return NULL;
}

/* How far ahead a load flies that is let go here: its speed over the time of the fall. */
static double
throw_m(const scene *at, double drop_m)
{
    return fabs(at->asking->run->stations[at->s].place.motion.vx_m_s) *
           sqrt(2.0 * drop_m / HS_GRAVITY_m_s2);
}

static void
write_drop(const scene *at, hs_finding *finding)
{
    const hs_run *run = at->asking->run;
    bool is_level;
    double drop_m = hs_power_loss_drop_m(run->setup, &run->stations[at->s].place, &is_level);
    double mass_kg = run->setup->load->mass_kg;

    HS_WORK(&finding->working, loss_energy, mass_kg * HS_GRAVITY_m_s2 * drop_m, "J",
            {"m", mass_kg, "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"}, {"h", drop_m, "m"});
    HS_WORK(&finding->working, loss_landing, sqrt(2.0 * HS_GRAVITY_m_s2 * drop_m), "m/s",
            {"g", HS_GRAVITY_m_s2, "m/s2"}, {"h", drop_m, "m"});
    HS_WORK(&finding->working, loss_throw, throw_m(at, drop_m), "m",
            {"v", fabs(run->stations[at->s].place.motion.vx_m_s), "m/s"}, {"h", drop_m, "m"},
            {"g", HS_GRAVITY_m_s2, "m/s2"});
}

/* The farthest over the whole way: whoever stands there is hit. */
static double
farthest_throw_m(const scene *at)
{
    double farthest_m = 0.0;

    for (int s = 0; s < at->asking->run->n_stations; s++) {
        scene there = *at;
        bool is_level;

        there.s = s;
        farthest_m =
            fmax(farthest_m,
                 throw_m(&there,
                         hs_power_loss_drop_m(at->asking->run->setup,
                                              &at->asking->run->stations[s].place, &is_level)));
    }
    return farthest_m;
}

/* Who stands nearer than this to the load's middle is hit: where it lands at the farthest, and half its diagonal in plan. */
static void
write_zone(const scene *at, hs_finding *finding)
{
    hs_vec3 size_m = hs_outline_size_m(at->asking->run->setup->load);
    double half_m = hypot(size_m.x, size_m.y) / 2.0, farthest_m = farthest_throw_m(at);

    HS_WORK(&finding->working, loss_zone, farthest_m + half_m, "m", {"x", farthest_m, "m"},
            {"l", half_m, "m"});
}

/* What the frame's brakes have to hold, and what sinking arms turn to heat. */
static void
write_brake(const scene *at, hs_finding *finding)
{
    double hand_N = at->asking->run->samples[at->s].bearers[at->b].hand_force_N;
    double reach_m = at->asking->run->stations[at->s].place.bearers[at->b].reach_m;

    if (!hs_has(hand_N) || !hs_has(reach_m))
        return;
    HS_WORK(&finding->working, loss_brake, BRAKE_FACTOR * hand_N * reach_m, "Nm",
            {"k", BRAKE_FACTOR, ""}, {"F", hand_N, "N"}, {"R", reach_m, "m"});
    if (at->suit->on_power_loss == HS_LOSS_DESCEND && at->suit->sink_m_s > 0.0)
        HS_WORK(&finding->working, loss_heat, hand_N * at->suit->sink_m_s, "W",
                {"F", hand_N, "N"}, {"v", at->suit->sink_m_s, "m/s"});
}

/* The effector opens: the load falls, whatever the arms do. */
static void
judge_clamp(const scene *at, hs_finding *finding)
{
    const hs_run *run = at->asking->run;
    bool is_level;
    double drop_m = hs_power_loss_drop_m(run->setup, &run->stations[at->s].place, &is_level);
    double mass_kg = run->setup->load->mass_kg;

    hs_finding_beyond(finding,
                      HS_SAY(loss_clamp_opens, mass_kg, drop_m,
                             mass_kg * HS_GRAVITY_m_s2 * drop_m, farthest_throw_m(at)));
    finding->remedy = HS_SAY(loss_remedy_clamp);
}

/* Locked arms stay at one height: does a leg on the way to the next set-down ask for another? */
static bool
height_changes(const scene *at)
{
    const hs_run *run = at->asking->run;
    const hs_place *here = &run->stations[at->s].place;
    double now_m = here->bearers[at->b].hands_m.z - here->bearers[at->b].floor_z_m;

    for (int s = at->s; s < run->n_stations; s++) {
        const hs_place *place = &run->stations[s].place;
        double then_m = place->bearers[at->b].hands_m.z - place->bearers[at->b].floor_z_m;

        if (place->t_s > here->t_s + at->to_set_down_s + 1e-9)
            return false;
        if (place->is_leg_end && fabs(then_m - now_m) > SAME_HEIGHT_m)
            return true;
    }
    return false;
}

static void
judge_locked(const scene *at, hs_finding *finding)
{
    const hs_power_lost *lost = &at->lost;
    double near_ratio = at->asking->near_ratio;

    if (!hs_has(at->to_set_down_s)) {
        hs_finding_beyond(finding, HS_SAY(loss_no_set_down));
        finding->remedy = HS_SAY(loss_remedy_set_down, near_ratio * lost->hold_s);
        return;
    }
    if (!(lost->hold_s > 0.0) && lost->needed_s > 0.0)
        hs_finding_beyond(finding, HS_SAY(loss_locked_short, lost->hold_s, lost->needed_s));
    else
        hs_finding_judge_ratio(finding, lost->needed_s, lost->hold_s,
                               lost->needed_s > 0.0 ? lost->needed_s / lost->hold_s : 0.0,
                               near_ratio);
    if (lost->hold_s > 0.0)
        HS_WORK(&finding->working, loss_time, lost->needed_s / lost->hold_s, "",
                {"needed", lost->needed_s, "s"}, {"hold", lost->hold_s, "s"});
    if (at->suit->walks_without_power == HS_NO) {
        finding->text = HS_SAY(loss_locked_stuck, lost->hold_s, lost->needed_s);
        finding->remedy = HS_SAY(loss_remedy_helper, lost->needed_s, near_ratio * lost->hold_s);
        hs_finding_at_best_near(finding);
    } else if (height_changes(at)) {
        finding->text = HS_SAY(loss_locked_height, lost->hold_s, lost->needed_s);
        finding->remedy = HS_SAY(loss_remedy_height);
        hs_finding_at_best_near(finding);
    } else {
        finding->text = HS_SAY(loss_locked, lost->hold_s, lost->needed_s);
        finding->remedy = HS_SAY(loss_remedy_set_down, near_ratio * lost->hold_s);
    }
}

static void
judge_descending(const scene *at, hs_finding *finding)
{
    const hs_run *run = at->asking->run;
    bool is_level;
    double drop_m = hs_power_loss_drop_m(run->setup, &run->stations[at->s].place, &is_level);
    double seconds = at->lost.needed_s;

    finding->why = HS_WHY_COMPUTED;
    finding->value = finding->limit = seconds;
    HS_WORK(&finding->working, loss_sink, seconds, "s", {"h", drop_m, "m"},
            {"v", at->suit->sink_m_s, "m/s"});
    if (at->to_set_down_s <= 0.0) {
        finding->status = HS_STATUS_WITHIN;
        finding->text = HS_SAY(loss_sinks_set_down, at->suit->sink_m_s, seconds);
    } else if (is_level) {
        finding->status = HS_STATUS_NEAR;
        finding->text = HS_SAY(loss_sinks_level, at->suit->sink_m_s, drop_m, seconds);
        finding->remedy = HS_SAY(loss_remedy_under, seconds);
    } else {
        hs_finding_beyond(finding,
                          HS_SAY(loss_sinks_onto, at->suit->sink_m_s, drop_m, seconds));
        finding->remedy = HS_SAY(loss_remedy_level);
    }
}

/* Peak of the jolt as a function of the mass on the hands, posture kept. */
typedef struct {
    const scene *at;
    double wanted;
} peak_question;

static double
peak_over_wanted(double hand_N, void *data)
{
    const peak_question *question = data;
    const hs_run *run = question->at->asking->run;
    const hs_station *station = &run->stations[question->at->s];
    const hs_bearer_state *state = &station->bearers[question->at->b];
    const hs_bearer_place *place = &station->place.bearers[question->at->b];
    hs_body_input on_power = state->input, lost;
    hs_body_state body = state->body;
    hs_felt felt = hs_suit_model_of(question->at->suit)
                       ->felt(question->at->suit, hand_N, place->reach_m,
                              place->hands_m.z - place->floor_z_m, NULL);

    on_power.felt_N = felt.felt_N;
    on_power.rest_N = hand_N - felt.felt_N;
    if (hs_body_at(&run->persons[question->at->b], &on_power, &body) != HS_OK ||
        !hs_power_loss_input(run->setup, &station->place, question->at->b, &on_power, hand_N,
                             &lost))
        return HS_ABSENT;
    body.is_found = true;
    return hs_power_loss_peak_utilisation(&run->persons[question->at->b], &body, &lost) -
           question->wanted;
}

static void
advise_limp(const scene *at, double peak, hs_finding *finding)
{
    double hand_N = at->lost.felt_force_N, most_N;
    peak_question question = {at, 0.999 * at->asking->near_ratio};

    if (!(peak > 1.0)) {
        finding->remedy =
            HS_SAY(loss_remedy_set_down, at->asking->near_ratio * at->lost.hold_s);
        return;
    }
    if (peak_over_wanted(0.0, &question) < 0.0 &&
        hs_root_find(peak_over_wanted, &question, 0.0, hand_N, 1e-6, &most_N, NULL) == HS_OK)
        finding->remedy = HS_SAY(loss_remedy_mass, most_N / HS_GRAVITY_m_s2);
    else
        finding->remedy = HS_SAY(loss_remedy_lock);
}

/* Hands alone on the grips: what they then hold, and for how long. */
static void
write_hands(const scene *at, hs_finding *finding)
{
    const hs_setup *setup = at->asking->run->setup;
    int n_hands = 0;

    for (int i = 0; i < setup->n_used; i++)
        if (setup->used_by[i] == at->b &&
            at->asking->task->load.grips[setup->used[i]].kind != HS_GRIP_PAD)
            n_hands += setup->used_hands[i];
    if (n_hands > 0 && setup->bearers[at->b].effector == NULL && at->lost.felt_force_N > 0.0)
        hs_loss_write_hands(at->lost.felt_force_N, n_hands,
                            hs_grip_gloved_N(at->asking->run->persons[at->b].grip_N,
                                             at->asking->task->policy.glove_loss_fraction),
                            at->lost.needed_s, &finding->working);
}

/* A curve for no joint in particular, halved too, at the share of strength of the joint that is asked for most. */
static void
write_second_reader(const hs_body_state *lost, hs_finding *finding)
{
    double seconds = hs_endurance_rohmert_s(lost->greatest) / 2.0;

    if (seconds > 0.0)
        HS_WORK(&finding->working, loss_rohmert, seconds, "s", {"f", lost->greatest, ""});
}

static void
judge_limp(const scene *at, hs_finding *finding)
{
    const hs_run *run = at->asking->run;
    const hs_bearer_state *state = &run->stations[at->s].bearers[at->b];
    const hs_power_lost *lost = &at->lost;
    double peak = state->lost_peak_utilisation, ratio;
    double suit_N = state->lost_input.suit.weight_N;

    if (!state->has_lost) {
        hs_finding_missing(finding, HS_SAY(loss_body_missing));
        return;
    }
    if (!state->lost.is_found || !hs_has(peak)) {
        hs_finding_beyond(finding, HS_SAY(loss_no_posture, lost->felt_force_N, suit_N));
        finding->remedy = HS_SAY(loss_remedy_lock);
        return;
    }
    if (!hs_has(lost->needed_s)) {
        hs_finding_beyond(finding, HS_SAY(loss_no_set_down));
        finding->remedy = HS_SAY(loss_remedy_set_down, at->asking->near_ratio * lost->hold_s);
        return;
    }
    ratio = fmax(lost->needed_s > 0.0 ? lost->needed_s / lost->hold_s : 0.0, peak);
    if (isfinite(ratio))
        hs_finding_judge_ratio(finding, lost->needed_s, lost->hold_s, ratio,
                               at->asking->near_ratio);
    else
        hs_finding_beyond(finding, finding->text);
    finding->text =
        HS_SAY(loss_limp, lost->felt_force_N, suit_N, lost->hold_s, lost->needed_s, peak);
    if (finding->status != HS_STATUS_WITHIN)
        advise_limp(at, peak, finding);
    HS_WORK(&finding->working, loss_suit_weight, suit_N, "N",
            {"c", hs_or(at->suit->self_carried_unpowered, 0.0), ""},
            {"m", hs_or(at->suit->mass_kg, 0.0), "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"},
            {"k", run->stations[at->s].place.bearers[at->b].walking_factor, ""});
    if (run->samples[at->s].bearers[at->b].felt_force_N > 0.0)
        HS_WORK(&finding->working, loss_jump,
                (lost->felt_force_N + suit_N) / run->samples[at->s].bearers[at->b].felt_force_N,
                "", {"F", lost->felt_force_N, "N"}, {"S", suit_N, "N"},
                {"felt", run->samples[at->s].bearers[at->b].felt_force_N, "N"});
    if (!at->asking->is_live) {
        write_hands(at, finding);
        write_second_reader(&state->lost, finding);
    }
    if (lost->hold_s > 0.0)
        HS_WORK(&finding->working, loss_limp_ratio, ratio, "", {"needed", lost->needed_s, "s"},
                {"hold", lost->hold_s, "s"}, {"peak", peak, ""});
}

static void
judge(const scene *at, hs_finding *finding)
{
    const hs_effector *effector = at->asking->run->setup->bearers[at->b].effector;
    const char *missing = missing_key(at);

    finding->source = HS_SRC_suit_loss_mechanics;
    if (effector != NULL && effector->holds_without_power == HS_NO &&
        !(at->to_set_down_s <= 0.0))
        judge_clamp(at, finding);
    else if (missing != NULL) {
        hs_finding_missing(finding, HS_SAY(loss_missing));
        finding->text.name[0] = missing;
    } else if (at->suit->on_power_loss == HS_LOSS_LIMP)
        judge_limp(at, finding);
    else if (at->suit->on_power_loss == HS_LOSS_LOCK)
        judge_locked(at, finding);
    else
        judge_descending(at, finding);
    write_drop(at, finding);
    if (!at->asking->is_live && finding->working.arena != NULL) {
        write_zone(at, finding);
        hs_loss_write_fall(at->suit, &finding->working);
    }
    if (at->suit->on_power_loss == HS_LOSS_LOCK || at->suit->on_power_loss == HS_LOSS_DESCEND)
        write_brake(at, finding);
}

static scene
scene_of(const hs_asking *asking, int s, int b)
{
    const hs_run *run = asking->run;

    return (scene){asking,
                   run->setup->bearers[b].suit,
                   s,
                   b,
                   run->samples[s].bearers[b].power_lost,
                   hs_place_to_set_down_s(run->setup, &run->stations[s].place)};
}

void
hs_check_suit_power_loss(const hs_asking *asking, hs_finding *finding)
{
    const hs_run *run = asking->run;
    hs_finding worst = *finding;
    int worst_s = 0, worst_b = -1;

    for (int s = 0; s < run->n_stations; s++)
        for (int b = 0; b < run->setup->n_bearers; b++) {
            hs_finding candidate = *finding;
            scene at = scene_of(asking, s, b);

            if (at.suit == NULL || !hs_suit_model_of(at.suit)->has_power ||
                !run->stations[s].has_shares)
                continue;
            candidate.working.arena = NULL;
            judge(&at, &candidate);
            if (worst_b >= 0 && !hs_finding_worse(&candidate, &worst))
                continue;
            worst = candidate;
            worst_s = s;
            worst_b = b;
        }
    if (worst_b < 0)
        return;
    scene at = scene_of(asking, worst_s, worst_b);

    judge(&at, finding);
    hs_finding_at(finding, run, worst_s, worst_b);
}
