/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a force at the hands do to the person in a given posture?
 * Answer:    hs_body_at(): every joint, the disc, the ground; the residual closes it from the feet up.
 * Not here:  the moments' formulas (chain.c), finding the posture (posture.c). */
#include "chain.h"
#include "units.h"

typedef struct {
    hs_vec2 place[HS_N_SEGMENTS];
    hs_vec2 ankle;
} segment_places;

static hs_vec2
between(hs_vec2 a, hs_vec2 b, double t)
{
    return (hs_vec2){a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
}

static void
fill_points(const hs_chain *chain, const hs_chain_state *solved, hs_body_state *state)
{
    const hs_person *p = chain->person;
    hs_vec2 hip = {solved->x[HS_CHAIN_HIP].v[0], solved->z[HS_CHAIN_HIP].v[0]};
    hs_vec2 shoulder = {solved->x[HS_CHAIN_SHOULDER].v[0], solved->z[HS_CHAIN_SHOULDER].v[0]};

    state->at[HS_POSE_ANKLE] = (hs_vec2){0.0, p->ankle_height_m};
    state->at[HS_POSE_KNEE] =
        (hs_vec2){solved->x[HS_CHAIN_KNEE].v[0], solved->z[HS_CHAIN_KNEE].v[0]};
    state->at[HS_POSE_HIP] = hip;
    state->at[HS_POSE_L5S1] = between(hip, shoulder, p->l5s1_fraction);
    state->at[HS_POSE_SHOULDER] = shoulder;
    state->at[HS_POSE_ELBOW] =
        (hs_vec2){solved->x[HS_CHAIN_ELBOW].v[0], solved->z[HS_CHAIN_ELBOW].v[0]};
    state->at[HS_POSE_HAND] = (hs_vec2){chain->input->hand_x_m, chain->input->hand_z_m};
    state->at[HS_POSE_NECK] = between(hip, shoulder, p->neck_fraction);
}

static void
find_places(const hs_chain *chain, const hs_vec2 *at, segment_places *ret)
{
    const hs_person *p = chain->person;
    const double *f = p->segment_at;

    ret->ankle = at[HS_POSE_ANKLE];
    ret->place[HS_SEGMENT_FEET] =
        (hs_vec2){(f[HS_SEGMENT_FEET] - HS_FOOT_MASS_ANKLE) * p->foot_m,
                  HS_FOOT_CENTRE_HEIGHT * p->stature_m};
    if (chain->kneels)
        ret->place[HS_SEGMENT_FEET] = at[HS_POSE_ANKLE];
    ret->place[HS_SEGMENT_SHANKS] =
        between(at[HS_POSE_KNEE], at[HS_POSE_ANKLE], f[HS_SEGMENT_SHANKS]);
    ret->place[HS_SEGMENT_THIGHS] =
        between(at[HS_POSE_HIP], at[HS_POSE_KNEE], f[HS_SEGMENT_THIGHS]);
    for (int i = HS_SEGMENT_LOWER_TRUNK; i <= HS_SEGMENT_HEAD; i++)
        ret->place[i] = between(at[HS_POSE_HIP], at[HS_POSE_SHOULDER], f[i]);
    ret->place[HS_SEGMENT_UPPER_ARMS] =
        between(at[HS_POSE_SHOULDER], at[HS_POSE_ELBOW], f[HS_SEGMENT_UPPER_ARMS]);
    ret->place[HS_SEGMENT_FOREARMS] =
        between(at[HS_POSE_ELBOW], at[HS_POSE_HAND], f[HS_SEGMENT_FOREARMS]);
    ret->place[HS_SEGMENT_HANDS] = at[HS_POSE_HAND];
}

/* Moment about a joint that the ground and all below it hold up, from the feet. */
typedef struct {
    double
        floor_Nm; /* ground reaction's moment about the floor's origin, tipping back positive */
    double up_N, back_N;
} from_below;

static void
take_off(from_below *below, const hs_chain *chain, hs_vec2 place, double weight_N)
{
    below->floor_Nm -= weight_N * place.x - weight_N * chain->tilt * place.y;
    below->up_N -= weight_N;
    below->back_N += weight_N * chain->tilt;
}

static double
gap_Nm(const from_below *below, hs_vec2 joint, double moment_Nm)
{
    return fabs(below->floor_Nm - below->up_N * joint.x - below->back_N * joint.y - moment_Nm);
}

/* The wearer's own part of the ground: the whole less what the suit takes to its feet; then joint by joint upwards. */
static double
residual_of(const hs_chain *chain,
            const hs_chain_state *solved,
            const segment_places *places,
            const hs_body_state *state)
{
    static const int joint_point[HS_N_JOINTS] = {HS_POSE_ANKLE,    HS_POSE_KNEE,
                                                 HS_POSE_HIP,      HS_POSE_L5S1,
                                                 HS_POSE_SHOULDER, HS_POSE_ELBOW};
    const hs_body_input *in = chain->input;
    const hs_vec2 *at = state->at;
    const double *w = chain->weight_N;
    hs_vec2 frame = {in->suit.centre_x_m, in->suit.centre_z_m};
    double own_N = 0.0, worst_Nm = 0.0;
    from_below below;

    for (int i = 0; i < HS_N_SEGMENTS; i++)
        own_N += w[i];
    own_N += chain->hip_spring_N + chain->shoulder_spring_N + chain->frame_N;
    below.floor_Nm = chain->ground_N * state->zmp_m - in->rest_N * in->hand_x_m -
                     (chain->suit_total_N - chain->frame_N) * (frame.x - chain->tilt * frame.y);
    below.up_N = own_N + in->felt_N;
    below.back_N = in->push_N - own_N * chain->tilt;
    for (int joint = HS_JOINT_ANKLE; joint < HS_N_JOINTS; joint++) {
        if (joint == HS_JOINT_ANKLE)
            take_off(&below, chain, places->place[HS_SEGMENT_FEET], w[HS_SEGMENT_FEET]);
        if (joint == HS_JOINT_KNEE)
            take_off(&below, chain, places->place[HS_SEGMENT_SHANKS], w[HS_SEGMENT_SHANKS]);
        if (joint == HS_JOINT_HIP) {
            take_off(&below, chain, places->place[HS_SEGMENT_THIGHS], w[HS_SEGMENT_THIGHS]);
            take_off(&below, chain, frame, chain->frame_N);
        }
        if (joint == HS_JOINT_L5S1) {
            take_off(&below, chain, places->place[HS_SEGMENT_LOWER_TRUNK],
                     w[HS_SEGMENT_LOWER_TRUNK]);
            take_off(&below, chain, at[HS_POSE_L5S1], chain->hip_spring_N);
        }
        if (joint == HS_JOINT_SHOULDER) {
            take_off(&below, chain, places->place[HS_SEGMENT_UPPER_TRUNK],
                     w[HS_SEGMENT_UPPER_TRUNK]);
            take_off(&below, chain, places->place[HS_SEGMENT_HEAD], w[HS_SEGMENT_HEAD]);
            take_off(&below, chain, at[HS_POSE_SHOULDER], chain->shoulder_spring_N);
        }
        if (joint == HS_JOINT_ELBOW)
            take_off(&below, chain, places->place[HS_SEGMENT_UPPER_ARMS],
                     w[HS_SEGMENT_UPPER_ARMS]);
        worst_Nm = fmax(worst_Nm,
                        gap_Nm(&below, at[joint_point[joint]], solved->mechanical_Nm[joint]));
    }
    /* What is left is what the hands hold: felt force, push and couple. */
    take_off(&below, chain, places->place[HS_SEGMENT_FOREARMS], w[HS_SEGMENT_FOREARMS]);
    take_off(&below, chain, places->place[HS_SEGMENT_HANDS], w[HS_SEGMENT_HANDS]);
    worst_Nm = fmax(worst_Nm, gap_Nm(&below, at[HS_POSE_HAND], in->couple_Nm));
    worst_Nm = fmax(worst_Nm, fabs(below.up_N - in->felt_N) * chain->person->stature_m);
    worst_Nm = fmax(worst_Nm, fabs(below.back_N - in->push_N) * chain->person->stature_m);
    return worst_Nm / (chain->ground_N * chain->person->stature_m);
}

static void
fill_centre(const hs_chain *chain, const segment_places *places, hs_body_state *state)
{
    const hs_body_suit *suit = &chain->input->suit;
    hs_vec2 at = {suit->centre_x_m, suit->centre_z_m};
    double kg = 0.0, x = 0.0, z = 0.0;

    if (suit->kind == HS_SUIT_BACK_SPRING)
        at = state->at[HS_POSE_L5S1];
    if (suit->kind == HS_SUIT_ARM_SPRING)
        at = state->at[HS_POSE_SHOULDER];
    if (suit->kind != 0) {
        kg = suit->mass_kg;
        x = kg * at.x;
        z = kg * at.y;
    }
    for (int i = 0; i < HS_N_SEGMENTS; i++) {
        kg += chain->person->segment_kg[i];
        x += chain->person->segment_kg[i] * places->place[i].x;
        z += chain->person->segment_kg[i] * places->place[i].y;
    }
    state->cm_kg = kg;
    state->cm_x_m = x / kg;
    state->cm_z_m = z / kg;
}

static void
fill_joints(const hs_chain *chain,
            const hs_chain_state *solved,
            const double angle_rad[3],
            hs_body_state *state)
{
    const double angle[HS_N_JOINTS] = {
        angle_rad[0], solved->knee_rad.v[0],     solved->hip_rad.v[0],
        angle_rad[2], solved->shoulder_rad.v[0], 0.0};

    state->greatest = 0.0;
    for (int j = 0; j < HS_N_JOINTS; j++) {
        double moment_Nm = solved->moment_Nm[j].v[0];

        if (j == HS_JOINT_ANKLE && chain->kneels) {
            state->moment_Nm[j] = state->strength_Nm[j] = state->utilisation[j] = HS_ABSENT;
            continue;
        }
        state->moment_Nm[j] = moment_Nm;
        state->strength_Nm[j] =
            hs_chain_share(chain, j) *
            hs_strength_Nm(chain->person, j, angle[j], solved->knee_rad.v[0], moment_Nm);
        state->utilisation[j] = fabs(moment_Nm) / state->strength_Nm[j];
        state->greatest = fmax(state->greatest, state->utilisation[j]);
    }
}

static double
weight_above_N(const hs_chain *chain)
{
    const double *w = chain->weight_N;

    return w[HS_SEGMENT_UPPER_TRUNK] + w[HS_SEGMENT_HEAD] + w[HS_SEGMENT_UPPER_ARMS] +
           w[HS_SEGMENT_FOREARMS] + w[HS_SEGMENT_HANDS];
}

void
hs_chain_fill(const hs_chain *chain, const double angle_rad[3], hs_body_state *state)
{
    hs_chain_state solved;
    segment_places places;
    double own_N = weight_above_N(chain);
    double above_N = own_N + chain->input->felt_N + chain->frame_N + chain->hip_spring_N +
                     chain->shoulder_spring_N;
    double forward_N = chain->input->push_N - chain->tilt * (above_N - chain->input->felt_N);

    hs_chain_solve(chain, angle_rad, &solved);
    state->shank_rad = angle_rad[0];
    state->thigh_rad = angle_rad[1];
    state->trunk_rad = angle_rad[2];
    fill_points(chain, &solved, state);
    find_places(chain, state->at, &places);
    fill_joints(chain, &solved, angle_rad, state);
    hs_lowback_judge(solved.moment_Nm[HS_JOINT_L5S1].v[0], above_N, forward_N, angle_rad[2],
                     solved.knee_rad.v[0], state);
    state->zmp_m = solved.zmp_m.v[0];
    state->ground_N = chain->ground_N;
    fill_centre(chain, &places, state);
    hs_balance_fill(chain->person, chain->input, state);
    state->residual = residual_of(chain, &solved, &places, state);
}

hs_status
hs_body_at(const hs_person *person, const hs_body_input *input, hs_body_state *state)
{
    const double angle_rad[3] = {state->shank_rad, state->thigh_rad, state->trunk_rad};
    hs_chain chain;

    hs_chain_set(person, input, &chain);
    state->is_found = state->reaches = true;
    state->shortfall_m = 0.0;
    state->other_compression_N = HS_ABSENT;
    hs_chain_fill(&chain, angle_rad, state);
    return HS_OK;
}
