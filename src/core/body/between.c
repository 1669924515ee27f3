/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a person get from one posture to the next along a leg?
 * Answer:    hs_posture_between(): the posture at a place between two; hs_posture_turn_rad(): the joint that turns most.
 * Not here:  which postures are taken at the places themselves (families.c), where a place is put between (checks/run_between.c). */
#include "posture.h"

#include "units.h"

#include <string.h>

/* A place between two is near enough to both when no joint of legs and trunk has more than half of their difference, this share of
 * it, and a little, left: each halving then brings them closer (a straight arm folds by 20 degrees while the legs turn by one). Where
 * that is closed, a wider way (numerics). */
#define HALF_SHARE       0.25
#define HALF_SLACK_deg   0.02
#define LOOSER_SLACK_deg 0.2
#define WIDE_SHARE       0.5
#define WIDE_SLACK_deg   1.5
/* How strongly a change is held to its middle, per rad^2: chosen, as for a change of family (families.c). */
#define MIDDLE_WEIGHT    20.0

/* Ankle, knee, hip, trunk, shoulder and elbow as they are seen from outside, from the points alone. */
static void
joint_angles(const hs_body_state *state, double ret_rad[HS_N_JOINTS])
{
    const hs_vec2 *at = state->at;
    double upper_rad = atan2(at[HS_POSE_ELBOW].x - at[HS_POSE_SHOULDER].x,
                             at[HS_POSE_SHOULDER].y - at[HS_POSE_ELBOW].y);
    double fore_rad = atan2(at[HS_POSE_HAND].x - at[HS_POSE_ELBOW].x,
                            at[HS_POSE_ELBOW].y - at[HS_POSE_HAND].y);

    ret_rad[HS_JOINT_ANKLE] = state->shank_rad;
    ret_rad[HS_JOINT_KNEE] = state->shank_rad + state->thigh_rad;
    ret_rad[HS_JOINT_HIP] = state->thigh_rad + state->trunk_rad;
    ret_rad[HS_JOINT_L5S1] = state->trunk_rad;
    ret_rad[HS_JOINT_SHOULDER] = upper_rad + state->trunk_rad;
    ret_rad[HS_JOINT_ELBOW] = fore_rad - upper_rad;
}

double
hs_posture_turn_rad(const hs_body_state *a, const hs_body_state *b)
{
    double from_rad[HS_N_JOINTS], to_rad[HS_N_JOINTS], most_rad = 0.0;

    joint_angles(a, from_rad);
    joint_angles(b, to_rad);
    for (int j = 0; j < HS_N_JOINTS; j++)
        most_rad = fmax(most_rad, fabs(remainder(to_rad[j] - from_rad[j], 2.0 * HS_PI)));
    return most_rad;
}

static void
angles_of(const hs_body_state *state, double ret_rad[3])
{
    ret_rad[0] = state->shank_rad;
    ret_rad[1] = state->thigh_rad;
    ret_rad[2] = state->trunk_rad;
}

static bool
find_held(const hs_chain *chain, hs_posture_tie *tie, double slack_rad, double ret_rad[3])
{
    double cost;

    tie->most_rad = slack_rad;
    memcpy(ret_rad, tie->near_rad, sizeof tie->near_rad);
    return hs_posture_polish(chain, tie, ret_rad, &cost);
}

/* In the middle of both: freely where that is near enough to both, else held to the middle. */
static bool
find_middle(const hs_chain *chain, const double a[3], const double b[3], double ret_rad[3])
{
    double turn_rad = hs_posture_leg_turn_rad(a, b), cost;
    double slack_rad = HALF_SHARE * turn_rad + HALF_SLACK_deg * HS_RAD_PER_DEG;
    double looser_rad = HALF_SHARE * turn_rad + LOOSER_SLACK_deg * HS_RAD_PER_DEG;
    double wide_rad = WIDE_SHARE * turn_rad + WIDE_SLACK_deg * HS_RAD_PER_DEG;
    hs_posture_tie tie = {.pull = MIDDLE_WEIGHT};

    for (int k = 0; k < 3; k++)
        tie.near_rad[k] = tie.toward_rad[k] = ret_rad[k] = 0.5 * (a[k] + b[k]);
    return (hs_posture_polish(chain, NULL, ret_rad, &cost) &&
            hs_posture_leg_turn_rad(ret_rad, tie.near_rad) <= slack_rad) ||
           find_held(chain, &tie, slack_rad, ret_rad) ||
           find_held(chain, &tie, looser_rad, ret_rad) ||
           find_held(chain, &tie, wide_rad, ret_rad);
}

/* Where both ends are no help: what is found from one of them, else afresh. */
static int
find_alone(const hs_chain *chain,
           const hs_body_state *const ends[2],
           hs_posture list[HS_POSTURE_MAX],
           hs_posture_lack *lack)
{
    int n = 0;

    for (int e = 0; e < 2; e++) {
        hs_posture from = {.family = ends[e]->family};

        if (!ends[e]->is_found)
            continue;
        angles_of(ends[e], from.angle_rad);
        n = hs_posture_follow(chain, &from, 1, list, n);
    }
    return n > 0 ? n : hs_posture_candidates(chain, list, lack);
}

/**
 * hs_posture_between - the posture at a place between two neighbouring places of a leg
 *
 * What    the least effort that lies between both postures; where none does, the least effort at the place alone
 * In      before, after: the postures at the two places, found or not
 * Out     *ret_state
 * Frame   as hs_body_input
 * Errors  none; false when no posture between the two was found, so that the change from one to the other stays a jump
 * Source  none
 */
bool
hs_posture_between(const hs_person *person,
                   const hs_body_input *input,
                   const hs_body_state *before,
                   const hs_body_state *after,
                   hs_body_state *ret_state)
{
    const hs_body_state *const ends[2] = {before, after};
    hs_chain chain;
    hs_posture list[HS_POSTURE_MAX];
    hs_posture_lack lack;
    double a[3], b[3], at[3];
    bool is_joined;

    *ret_state = (hs_body_state){.other_compression_N = HS_ABSENT};
    hs_chain_set(person, input, &chain);
    if (!hs_posture_is_askable(&chain)) {
        hs_posture_fill_lack(&chain, NULL, ret_state);
        return false;
    }
    angles_of(before, a);
    angles_of(after, b);
    is_joined = before->is_found && after->is_found && find_middle(&chain, a, b, at);
    if (!is_joined) {
        if (find_alone(&chain, ends, list, &lack) == 0) {
            hs_posture_fill_lack(&chain, &lack, ret_state);
            return false;
        }
        memcpy(at, list[0].angle_rad, sizeof at);
    }
    ret_state->is_found = ret_state->reaches = true;
    hs_chain_fill(&chain, at, ret_state);
    ret_state->family = hs_posture_family(at);
    return is_joined;
}
