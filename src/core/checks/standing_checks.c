/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the joints strong enough, does the person stand, and can the load be held that long?
 * Answer:    hs_check_strength(), hs_check_balance(), hs_check_hold_endurance().
 * Not here:  the disc (body_checks.c). */
#include "body_remedy.h"
#include "units.h"

#define BALANCE_NEAR_RATIO 0.75 /* file format, section balance: near from 0.75 */
#define USABLE_SCALE       0.8  /* the same section */

static double
strength_ratio(const hs_asking *asking, const hs_body_state *body)
{
    (void)asking;
    return body->greatest;
}

static double
balance_ratio(const hs_asking *asking, const hs_body_state *body)
{
    (void)asking;
    return body->balance_ratio;
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
            hs_body_remedy_solve(asking, b, strength_ratio, asking->near_ratio, finding);
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
    if (finding->ratio >= asking->near_ratio)
        hs_body_remedy_solve(asking, b, strength_ratio, asking->near_ratio, finding);
}

void
hs_check_strength(const hs_asking *asking, hs_finding *finding)
{
    hs_body_worst(asking, judge_strength, finding);
}

static void
judge_balance(const hs_asking *asking, int s, int b, bool in_full, hs_finding *finding)
{
    const hs_bearer_state *state = &asking->run->stations[s].bearers[b];
    const hs_body_state *body = &state->body;
    double ratio = body->balance_ratio;

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
            hs_body_remedy_solve(asking, b, balance_ratio, BALANCE_NEAR_RATIO, finding);
        return;
    }
    if (body->behind_cut)
        ratio = fmax(ratio, 1.0 + fabs(body->margin_m));
    hs_finding_judge_ratio(finding, body->margin_m, 0.0, ratio, BALANCE_NEAR_RATIO);
    finding->text = HS_SAY(none, body->margin_m, body->zmp_m, ratio * USABLE_SCALE);
    finding->text.reason = body->behind_cut    ? HS_REASON_balance_behind
                           : body->zmp_m > 0.0 ? HS_REASON_balance_forward
                                               : HS_REASON_balance_backward;
    if (!in_full)
        return;
    HS_WORK(&finding->working, body_balance, body->balance_ratio, "",
            {"scale", body->balance_ratio * USABLE_SCALE, ""});
    if (finding->ratio >= BALANCE_NEAR_RATIO)
        hs_body_remedy_solve(asking, b, balance_ratio, BALANCE_NEAR_RATIO, finding);
}

void
hs_check_balance(const hs_asking *asking, hs_finding *finding)
{
    hs_body_worst(asking, judge_balance, finding);
}
