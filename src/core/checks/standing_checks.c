/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the joints strong enough, does the person stand, and can the load be held that long?
 * Answer:    hs_check_strength(), hs_check_balance(), hs_check_hold_endurance().
 * Not here:  the disc (body_checks.c). */
#include "balance_left.h"
#include "body_remedy.h"
#include "chain.h"
#include "geometry.h"
#include "units.h"

#define BALANCE_NEAR_RATIO 0.75 /* file format, section balance: near from 0.75 */
#define LEAST_SIDE_m       1e-3 /* a load less off the middle asks for no lean (numerics) */
#define USABLE_SCALE       0.8  /* the same section */

static double
strength_ratio(const hs_asking *asking, int b, const hs_body_state *body)
{
    (void)asking, (void)b;
    return body->greatest;
}

/* Behind the line that people can use is beyond for that alone. */
static double
balance_ratio(const hs_asking *asking, int b, const hs_body_state *body)
{
    (void)asking, (void)b;
    return body->behind_cut ? fmax(body->balance_ratio, 1.0 + fabs(body->margin_m))
                            : body->balance_ratio;
}

static int
worst_joint(const hs_body_state *body)
{
    int worst = HS_JOINT_L5S1;

    for (int j = 0; j < HS_N_JOINTS; j++)
        if (hs_has(body->utilisation[j]) && !(body->utilisation[worst] >= body->utilisation[j]))
            worst = j;
    return worst;
}

/* Where the joint's strength is published; trunk flexion and elbow extension are only remembered. */
static void
name_source(const hs_body_state *body, int joint, hs_finding *finding)
{
    bool tips_forward = body->moment_Nm[joint] >= 0.0;

    finding->source = HS_SRC_anderson_2007;
    finding->confidence = HS_CONF_SEEN;
    if (joint == HS_JOINT_L5S1)
        finding->source = HS_SRC_chaffin_trunk_1999;
    else if (joint == HS_JOINT_SHOULDER)
        finding->source = HS_SRC_shoulder_flexion_abstract;
    else if (joint == HS_JOINT_ELBOW) {
        finding->source = HS_SRC_elbow_flexion_2009;
        finding->confidence = HS_CONF_DERIVED;
    }
    if (!tips_forward && joint >= HS_JOINT_L5S1) {
        finding->source = HS_SRC_stobbe_1982;
        finding->confidence = HS_CONF_MEMORY;
    }
}

static hs_reason
reason_of(int joint)
{
    static const hs_reason reasons[HS_N_JOINTS] = {
        [HS_JOINT_ANKLE] = HS_REASON_strength_ankle,
        [HS_JOINT_KNEE] = HS_REASON_strength_knee,
        [HS_JOINT_HIP] = HS_REASON_strength_hip,
        [HS_JOINT_L5S1] = HS_REASON_strength_trunk,
        [HS_JOINT_SHOULDER] = HS_REASON_strength_shoulder,
        [HS_JOINT_ELBOW] = HS_REASON_strength_elbow,
    };

    return reasons[joint];
}

static void
judge_strength(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding);

static void
remedy_strength(const hs_asking *asking, hs_finding *finding)
{
    hs_body_asked asked = {strength_ratio, asking->near_ratio, judge_strength, true, false};

    hs_body_remedy_solve(asking, &asked, finding);
}

static void
judge_strength(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding)
{
    const hs_bearer_state *state = &asking->run->stations[s].bearers[b];
    const hs_body_state *body = &state->body;
    int joint;

    finding->source = HS_SRC_posture_search;
    if (hs_body_is_missing(state)) {
        hs_finding_missing(finding, HS_SAY(body_missing));
        return;
    }
    if (!body->is_found && body->reaches)
        return;
    if (!body->is_found) {
        hs_finding_beyond(finding, HS_SAY(strength_out_of_reach, body->shortfall_m,
                                          state->input.hand_x_m, state->input.hand_z_m));
        if (in_full)
            remedy_strength(asking, finding);
        return;
    }
    joint = worst_joint(body);
    name_source(body, joint, finding);
    hs_finding_judge(finding, body->greatest, 1.0, asking->near_ratio);
    if (state->input.stance == HS_STANCE_KNEELING)
        hs_finding_at_best_near(finding);
    finding->text = HS_SAY(none, body->greatest, fabs(body->moment_Nm[joint]),
                           body->strength_Nm[joint], asking->run->persons[b].percentile);
    finding->text.reason = reason_of(joint);
    if (!in_full)
        return;
    HS_WORK(&finding->working, body_utilisation, body->utilisation[joint], "",
            {"M", body->moment_Nm[joint], "Nm"}, {"S", body->strength_Nm[joint], "Nm"});
    if (finding->status != HS_STATUS_WITHIN)
        remedy_strength(asking, finding);
}

void
hs_check_strength(const hs_asking *asking, hs_finding *finding)
{
    hs_body_worst(asking, judge_strength, finding);
}

/* What still can be taken: shown beside the margin, judged by nothing. */
static void
work_left(const hs_body_state *body,
          const hs_body_input *in,
          const hs_balance_left *left,
          double friction,
          hs_finding *finding)
{
    HS_WORK(&finding->working, body_slowing, left->slow_m_s2, "m/s2",
            {"front", left->front_m, "m"}, {"x", body->zmp_m, "m"}, {"N", body->ground_N, "N"},
            {"m", body->cm_kg, "kg"}, {"z", body->cm_z_m, "m"}, {"l", left->load_kg, "kg"},
            {"h", in->hand_z_m, "m"});
    HS_WORK(&finding->working, body_push_ahead, left->push_ahead_N, "N",
            {"front", left->front_m, "m"}, {"x", body->zmp_m, "m"}, {"N", body->ground_N, "N"},
            {"h", left->lever_m, "m"});
    HS_WORK(&finding->working, body_push_back, left->push_back_N, "N",
            {"rear", left->rear_m, "m"}, {"x", body->zmp_m, "m"}, {"N", body->ground_N, "N"},
            {"h", left->lever_m, "m"});
    if (!hs_has(left->slip_N))
        return;
    HS_WORK(&finding->working, body_slip, left->slip_N, "N", {"mu", friction, ""},
            {"N", body->ground_N, "N"}, {"H", left->flat_N, "N"});
    HS_WORK(&finding->working, body_slip_slowing, left->slip_m_s2, "m/s2", {"mu", friction, ""},
            {"N", body->ground_N, "N"}, {"H", left->flat_N, "N"}, {"m", body->cm_kg, "kg"},
            {"l", left->load_kg, "kg"});
}

/* Into the sentence goes the lesser of tipping and slipping; nothing is left where the margin is gone. */
static void
say_left(const hs_balance_left *left, hs_message *text)
{
    double slow_m_s2 = left->slow_m_s2, push_N = fmin(left->push_ahead_N, left->push_back_N);

    if (hs_has(left->slip_N)) {
        slow_m_s2 = fmin(slow_m_s2, left->slip_m_s2);
        push_N = fmin(push_N, left->slip_N);
    }
    text->number[3] = fmax(slow_m_s2, 0.0);
    text->number[4] = fmax(push_N, 0.0);
}

typedef struct {
    double x_m, z_m, v_m_s, at_m, front_m, rear_m, left_m;
} moving_centre;

static bool
centre_at(const hs_asking *asking, int s, int b, moving_centre *ret)
{
    const hs_station *station = &asking->run->stations[s];
    const hs_bearer_state *state = &station->bearers[b];
    double ahead = cos(asking->run->setup->bearers[b].facing_rad);

    ret->v_m_s = station->place.bearers[b].v_m_s * ahead;
    if (station->place.move != HS_MOVE_CARRY || station->place.in_hold || !state->has_body ||
        !state->body.is_found || !(fabs(ret->v_m_s) > 0.0))
        return false;
    hs_balance_line(&asking->run->persons[b], &state->input, &ret->rear_m, &ret->front_m);
    hs_balance_centre(&state->input, &state->body, &ret->x_m, &ret->z_m);
    ret->at_m = hs_balance_extrapolated_m(ret->x_m, ret->z_m, ret->v_m_s);
    ret->left_m = fmin(ret->front_m - ret->at_m, ret->at_m - ret->rear_m);
    return true;
}

/* The walk's moving centre where it comes nearest to the edge of the step that stops it. */
static void
work_walk(const hs_asking *asking, int b, hs_finding *finding)
{
    moving_centre least = {.left_m = INFINITY}, here;

    for (int s = 0; s < asking->run->n_stations; s++)
        if (centre_at(asking, s, b, &here) && here.left_m < least.left_m)
            least = here;
    if (!isfinite(least.left_m))
        return;
    HS_WORK(&finding->working, body_walk_centre, least.at_m, "m", {"x", least.x_m, "m"},
            {"v", least.v_m_s, "m/s"}, {"z", least.z_m, "m"}, {"g", HS_GRAVITY_m_s2, "m/s2"});
    HS_WORK(&finding->working, body_walk_left, least.left_m, "m", {"front", least.front_m, "m"},
            {"X", least.at_m, "m"}, {"rear", least.rear_m, "m"});
}

/* Lean sideways of body and suit that brings a load off the middle, or two unequal ones, over the feet again. */
static void
work_lean(const hs_body_state *body,
          const hs_body_input *in,
          double hand_N,
          hs_finding *finding)
{
    double lean_rad =
        hs_lean_rad(hand_N * in->side_m, body->cm_kg * HS_GRAVITY_m_s2, body->cm_z_m);

    if (fabs(in->side_m) > LEAST_SIDE_m)
        HS_WORK(&finding->working, balance_lean, lean_rad * HS_DEG_PER_RAD, "deg",
                {"F", hand_N, "N"}, {"y", in->side_m, "m"}, {"m", body->cm_kg, "kg"},
                {"g", HS_GRAVITY_m_s2, "m/s2"}, {"h", body->cm_z_m, "m"});
}

static void
judge_balance(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding);

static void
remedy_balance(const hs_asking *asking, hs_finding *finding)
{
    hs_body_asked asked = {balance_ratio, BALANCE_NEAR_RATIO, judge_balance, false, false};

    hs_body_remedy_solve(asking, &asked, finding);
}

static void
judge_balance(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding)
{
    const hs_bearer_state *state = &asking->run->stations[s].bearers[b];
    const hs_body_state *body = &state->body;
    double ratio = balance_ratio(asking, b, body);
    hs_balance_left left;

    finding->source = HS_SRC_king_1994;
    finding->confidence = HS_CONF_SEEN;
    if (hs_body_is_missing(state)) {
        hs_finding_missing(finding, HS_SAY(body_missing));
        return;
    }
    if (!body->is_found && !body->reaches)
        return;
    if (!body->is_found) {
        hs_finding_beyond(finding, HS_SAY(balance_none, body->shortfall_m));
        if (in_full)
            remedy_balance(asking, finding);
        return;
    }
    hs_finding_judge_ratio(finding, body->margin_m, 0.0, ratio, BALANCE_NEAR_RATIO);
    finding->text = HS_SAY(none, body->margin_m, body->zmp_m, ratio * USABLE_SCALE);
    finding->text.reason = body->behind_cut    ? HS_REASON_balance_behind
                           : body->zmp_m > 0.0 ? HS_REASON_balance_forward
                                               : HS_REASON_balance_backward;
    if (!in_full)
        return;
    hs_balance_left_find(&asking->run->persons[b], &state->input, body,
                         asking->task->site.friction, &left);
    say_left(&left, &finding->text);
    HS_WORK(&finding->working, body_balance, body->balance_ratio, "",
            {"scale", body->balance_ratio * USABLE_SCALE, ""});
    work_left(body, &state->input, &left, asking->task->site.friction, finding);
    work_walk(asking, b, finding);
    if (!asking->is_live)
        work_lean(body, &state->input, asking->run->samples[s].bearers[b].hand_force_N,
                  finding);
    if (finding->status != HS_STATUS_WITHIN)
        remedy_balance(asking, finding);
}

void
hs_check_balance(const hs_asking *asking, hs_finding *finding)
{
    hs_body_worst(asking, judge_balance, finding);
}
