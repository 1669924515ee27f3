/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do forces at the hands do to every joint of a given posture?
 * Answer:    hs_body_at(), from the hands down to the feet; the residual is recomputed from the feet up.
 * Not here:  which posture (posture.c), the disc (lowback.c).
 *
 * Moment about joint J of everything on the hands' side, tipping forward positive:
 *   M = sum w_i (u_i - u_J) + F (x_h - x_J) + P (z_h - z_J) + couple,   u = x - (a_x / (k g)) z. */
#include "chain.h"

#include "suit.h"
#include "units.h"

static void
set_suit(hs_chain *chain)
{
    const hs_body_suit *suit = &chain->input->suit;
    double k = hs_or(chain->input->weight_factor, 1.0) * HS_GRAVITY_m_s2;

    chain->suit_total_N = chain->suit_floor_Nm = 0.0;
    chain->hip_spring_N = suit->kind == HS_SUIT_BACK_SPRING ? suit->weight_N : 0.0;
    chain->shoulder_spring_N = suit->kind == HS_SUIT_ARM_SPRING ? suit->weight_N : 0.0;
    chain->frame_N = 0.0;
    if (suit->kind == HS_SUIT_POWERED) {
        chain->frame_N = suit->weight_N;
        chain->frame_u_m = suit->centre_x_m - chain->tilt * suit->centre_z_m;
        chain->suit_total_N = suit->mass_kg * k;
        chain->suit_floor_Nm = chain->suit_total_N * chain->frame_u_m;
    }
}

void
hs_chain_set(const hs_person *person, const hs_body_input *input, hs_chain *ret_chain)
{
    hs_chain chain = {
        .person = person, .input = input, .kneels = input->stance == HS_STANCE_KNEELING};
    double factor = input->weight_factor > 0.0 ? input->weight_factor : 1.0;
    double k = factor * HS_GRAVITY_m_s2, body_N = 0.0;

    for (int i = 0; i < HS_N_SEGMENTS; i++) {
        chain.weight_N[i] = person->segment_kg[i] * k;
        body_N += chain.weight_N[i];
    }
    chain.tilt = input->foot_acc_m_s2 / k;
    set_suit(&chain);
    chain.hands_N = input->felt_N + input->rest_N;
    chain.hands_floor_Nm =
        chain.hands_N * input->hand_x_m + input->push_N * input->hand_z_m + input->couple_Nm;
    chain.ground_N = body_N + chain.hip_spring_N + chain.shoulder_spring_N +
                     chain.suit_total_N + chain.hands_N;
    chain.feet_u_m =
        (person->segment_at[HS_SEGMENT_FEET] - HS_FOOT_MASS_ANKLE) * person->foot_m -
        chain.tilt * HS_FOOT_CENTRE_HEIGHT * person->stature_m;
    /* On the knees the feet lie behind the ankles with their toes under: their weight acts at the ankles. */
    if (chain.kneels)
        chain.feet_u_m = -chain.tilt * person->ankle_height_m;
    *ret_chain = chain;
}

double
hs_chain_share(const hs_chain *chain, int joint)
{
    if (chain->input->is_one_handed && (joint == HS_JOINT_ELBOW || joint == HS_JOINT_SHOULDER))
        return 0.5;
    /* Back strength on the knees is lower (Gallagher & Bobick 1988: 5 of 6 tests): 0.85 taken. */
    return chain->kneels && joint == HS_JOINT_L5S1 ? HS_KNEELING_BACK : 1.0;
}

/* Elbow behind and below the line from shoulder to grip. */
HS_INLINE void
solve_arm(const hs_chain *chain, hs_chain_state *state)
{
    double upper_m = chain->person->upper_arm_m, fore_m = chain->person->forearm_m;
    hs_dual xs = state->x[HS_CHAIN_SHOULDER], zs = state->z[HS_CHAIN_SHOULDER];
    hs_dual dx = dual_sub(dual_of(chain->input->hand_x_m), xs);
    hs_dual dz = dual_sub(dual_of(chain->input->hand_z_m), zs);
    hs_dual d2 = dual_add(dual_mul(dx, dx), dual_mul(dz, dz));
    hs_dual along, off;
    double square;

    state->reach2_m2 = d2;
    along = dual_shift(dual_div(dual_of(0.5 * (upper_m * upper_m - fore_m * fore_m)), d2), 0.5);
    off = dual_sub(dual_div(dual_of(upper_m * upper_m), d2), dual_mul(along, along));
    square = hs_more_of(off.v[0], 0.0);
    off = square > 0.0 ? dual_chain(off, sqrt(square), 0.5 / sqrt(square)) : dual_of(0.0);
    state->x[HS_CHAIN_ELBOW] = dual_add(xs, dual_add(dual_mul(along, dx), dual_mul(off, dz)));
    state->z[HS_CHAIN_ELBOW] = dual_add(zs, dual_sub(dual_mul(along, dz), dual_mul(off, dx)));
}

HS_INLINE void
solve_points(const hs_chain *chain,
             const double angle_rad[3],
             const hs_chain_turn turn[3],
             hs_chain_state *state)
{
    const hs_person *p = chain->person;
    double s1 = turn[0].y, c1 = turn[0].x, s2 = turn[1].y, c2 = turn[1].x;
    double s3 = turn[2].y, c3 = turn[2].x;
    double free1 = chain->kneels ? 0.0 : 1.0;
    hs_dual trunk = {{angle_rad[2], 0.0, 0.0, 1.0}};

    state->x[0] = (hs_dual){{p->shank_m * s1, free1 * p->shank_m * c1, 0.0, 0.0}};
    state->z[0] =
        (hs_dual){{p->ankle_height_m + p->shank_m * c1, -free1 * p->shank_m * s1, 0.0, 0.0}};
    state->x[1] =
        dual_add(state->x[0], (hs_dual){{-p->thigh_m * s2, 0.0, -p->thigh_m * c2, 0.0}});
    state->z[1] =
        dual_add(state->z[0], (hs_dual){{p->thigh_m * c2, 0.0, -p->thigh_m * s2, 0.0}});
    state->x[2] =
        dual_add(state->x[1], (hs_dual){{p->trunk_m * s3, 0.0, 0.0, p->trunk_m * c3}});
    state->z[2] =
        dual_add(state->z[1], (hs_dual){{p->trunk_m * c3, 0.0, 0.0, -p->trunk_m * s3}});
    state->knee_rad = (hs_dual){{angle_rad[0] + angle_rad[1], free1, 1.0, 0.0}};
    state->hip_rad = (hs_dual){{angle_rad[1] + angle_rad[2], 0.0, 1.0, 1.0}};
    solve_arm(chain, state);
    state->shoulder_rad = dual_add(
        trunk, dual_atan2(dual_sub(state->x[HS_CHAIN_ELBOW], state->x[HS_CHAIN_SHOULDER]),
                          dual_sub(state->z[HS_CHAIN_SHOULDER], state->z[HS_CHAIN_ELBOW])));
}

/* Felt force, push and couple about a joint. */
HS_INLINE hs_dual
hands_about(const hs_chain *chain, hs_dual x, hs_dual z)
{
    const hs_body_input *in = chain->input;
    hs_dual ret =
        dual_of(in->felt_N * in->hand_x_m + in->push_N * in->hand_z_m + in->couple_Nm);

    return dual_axpy(dual_axpy(ret, -in->felt_N, x), -in->push_N, z);
}

/* A powered suit at trunk and hip: the rest of the load and the suit's own moment, divided by the gain, and the residual. */
HS_INLINE hs_dual
suited_trunk(const hs_chain *chain, hs_dual own, hs_dual x, hs_dual u)
{
    const hs_body_suit *suit = &chain->input->suit;
    hs_dual rest, frame;

    if (suit->kind != HS_SUIT_POWERED)
        return own;
    rest = dual_axpy(dual_of(chain->input->rest_N * chain->input->hand_x_m),
                     -chain->input->rest_N, x);
    frame = dual_axpy(dual_of(chain->frame_N * chain->frame_u_m), -chain->frame_N, u);
    if (frame.v[0] > 0.0)
        rest = dual_add(rest, frame);
    return dual_shift(dual_add(own, dual_scale(rest, 1.0 / suit->gain_trunk)),
                      suit->residual_trunk_N * suit->harness_m);
}

/* A spring takes its moment off, not past 0. The slope over two degrees stands for that of its broken line. */
HS_INLINE hs_dual
sprung(const hs_chain *chain, hs_suit_kind kind, hs_dual moment, hs_dual angle_rad)
{
    const hs_body_suit *suit = &chain->input->suit;
    double angle_deg = angle_rad.v[0] * HS_DEG_PER_RAD;
    double slope;

    if (suit->kind != kind || suit->torque == NULL || !(moment.v[0] > 0.0))
        return moment;
    slope = (hs_suit_torque_Nm(suit->torque, angle_deg + 1.0) -
             hs_suit_torque_Nm(suit->torque, angle_deg - 1.0)) *
            0.5;
    moment = dual_sub(moment, dual_chain(angle_rad, hs_suit_torque_Nm(suit->torque, angle_deg),
                                         slope * HS_DEG_PER_RAD));
    return moment.v[0] > 0.0 ? moment : dual_of(0.0);
}

/* Inlined twice: where no derivative is read, the compiler leaves out what only derivatives need. */
HS_INLINE void
solve(const hs_chain *chain,
      const double angle_rad[3],
      const hs_chain_turn turn[3],
      hs_chain_state *state)
{
    const double *w = chain->weight_N, *at = chain->person->segment_at;
    hs_dual u[4], u_disc, x_disc, z_disc, sum, own;
    double u_hand = chain->input->hand_x_m - chain->tilt * chain->input->hand_z_m;
    double u_ankle = -chain->tilt * chain->person->ankle_height_m, weight_N;

    solve_points(chain, angle_rad, turn, state);
    for (int i = 0; i < 4; i++)
        u[i] = dual_axpy(state->x[i], -chain->tilt, state->z[i]);
    x_disc = dual_axpy(dual_scale(state->x[HS_CHAIN_HIP], 1.0 - chain->person->l5s1_fraction),
                       chain->person->l5s1_fraction, state->x[HS_CHAIN_SHOULDER]);
    z_disc = dual_axpy(dual_scale(state->z[HS_CHAIN_HIP], 1.0 - chain->person->l5s1_fraction),
                       chain->person->l5s1_fraction, state->z[HS_CHAIN_SHOULDER]);
    u_disc = dual_axpy(x_disc, -chain->tilt, z_disc);

    /* sum: weight times tilted place of all that is on the hands' side so far */
    weight_N = w[HS_SEGMENT_HANDS] + w[HS_SEGMENT_FOREARMS];
    sum = dual_axpy(
        dual_of((w[HS_SEGMENT_HANDS] + w[HS_SEGMENT_FOREARMS] * at[HS_SEGMENT_FOREARMS]) *
                u_hand),
        w[HS_SEGMENT_FOREARMS] * (1.0 - at[HS_SEGMENT_FOREARMS]), u[HS_CHAIN_ELBOW]);
    own = dual_add(dual_axpy(sum, -weight_N, u[HS_CHAIN_ELBOW]),
                   hands_about(chain, state->x[HS_CHAIN_ELBOW], state->z[HS_CHAIN_ELBOW]));
    state->mechanical_Nm[HS_JOINT_ELBOW] = own.v[0];
    state->moment_Nm[HS_JOINT_ELBOW] = own;

    weight_N += w[HS_SEGMENT_UPPER_ARMS];
    sum =
        dual_axpy(sum, w[HS_SEGMENT_UPPER_ARMS] * at[HS_SEGMENT_UPPER_ARMS], u[HS_CHAIN_ELBOW]);
    sum = dual_axpy(sum, w[HS_SEGMENT_UPPER_ARMS] * (1.0 - at[HS_SEGMENT_UPPER_ARMS]),
                    u[HS_CHAIN_SHOULDER]);
    own =
        dual_add(dual_axpy(sum, -weight_N, u[HS_CHAIN_SHOULDER]),
                 hands_about(chain, state->x[HS_CHAIN_SHOULDER], state->z[HS_CHAIN_SHOULDER]));
    state->mechanical_Nm[HS_JOINT_SHOULDER] = own.v[0];
    state->moment_Nm[HS_JOINT_SHOULDER] =
        sprung(chain, HS_SUIT_ARM_SPRING, own, state->shoulder_rad);

    weight_N += w[HS_SEGMENT_UPPER_TRUNK] + w[HS_SEGMENT_HEAD] + chain->shoulder_spring_N;
    sum = dual_axpy(sum,
                    chain->shoulder_spring_N +
                        w[HS_SEGMENT_UPPER_TRUNK] * at[HS_SEGMENT_UPPER_TRUNK] +
                        w[HS_SEGMENT_HEAD] * at[HS_SEGMENT_HEAD],
                    u[HS_CHAIN_SHOULDER]);
    sum = dual_axpy(sum,
                    w[HS_SEGMENT_UPPER_TRUNK] * (1.0 - at[HS_SEGMENT_UPPER_TRUNK]) +
                        w[HS_SEGMENT_HEAD] * (1.0 - at[HS_SEGMENT_HEAD]),
                    u[HS_CHAIN_HIP]);
    own = dual_add(dual_axpy(sum, -weight_N, u_disc), hands_about(chain, x_disc, z_disc));
    state->mechanical_Nm[HS_JOINT_L5S1] = own.v[0];
    state->moment_Nm[HS_JOINT_L5S1] = sprung(
        chain, HS_SUIT_BACK_SPRING, suited_trunk(chain, own, x_disc, u_disc), state->hip_rad);

    weight_N += w[HS_SEGMENT_LOWER_TRUNK] + chain->hip_spring_N;
    sum = dual_axpy(sum, chain->hip_spring_N, u_disc);
    sum = dual_axpy(sum, w[HS_SEGMENT_LOWER_TRUNK] * at[HS_SEGMENT_LOWER_TRUNK],
                    u[HS_CHAIN_SHOULDER]);
    sum = dual_axpy(sum, w[HS_SEGMENT_LOWER_TRUNK] * (1.0 - at[HS_SEGMENT_LOWER_TRUNK]),
                    u[HS_CHAIN_HIP]);
    own = dual_add(dual_axpy(sum, -weight_N, u[HS_CHAIN_HIP]),
                   hands_about(chain, state->x[HS_CHAIN_HIP], state->z[HS_CHAIN_HIP]));
    state->mechanical_Nm[HS_JOINT_HIP] = own.v[0];
    state->moment_Nm[HS_JOINT_HIP] = sprung(
        chain, HS_SUIT_BACK_SPRING,
        suited_trunk(chain, own, state->x[HS_CHAIN_HIP], u[HS_CHAIN_HIP]), state->hip_rad);

    /* From here down the wearer carries what the suit's own feet do not. */
    weight_N += w[HS_SEGMENT_THIGHS] + chain->frame_N;
    sum = dual_shift(sum, chain->frame_N * chain->frame_u_m);
    sum = dual_axpy(sum, w[HS_SEGMENT_THIGHS] * at[HS_SEGMENT_THIGHS], u[HS_CHAIN_KNEE]);
    sum = dual_axpy(sum, w[HS_SEGMENT_THIGHS] * (1.0 - at[HS_SEGMENT_THIGHS]), u[HS_CHAIN_HIP]);
    own = dual_add(dual_axpy(sum, -weight_N, u[HS_CHAIN_KNEE]),
                   hands_about(chain, state->x[HS_CHAIN_KNEE], state->z[HS_CHAIN_KNEE]));
    state->mechanical_Nm[HS_JOINT_KNEE] = own.v[0];
    state->moment_Nm[HS_JOINT_KNEE] = own;

    weight_N += w[HS_SEGMENT_SHANKS];
    sum =
        dual_axpy(sum, w[HS_SEGMENT_SHANKS] * (1.0 - at[HS_SEGMENT_SHANKS]), u[HS_CHAIN_KNEE]);
    sum = dual_shift(sum, w[HS_SEGMENT_SHANKS] * at[HS_SEGMENT_SHANKS] * u_ankle);
    own = dual_add(dual_shift(sum, -weight_N * u_ankle),
                   hands_about(chain, dual_of(0.0), dual_of(chain->person->ankle_height_m)));
    state->mechanical_Nm[HS_JOINT_ANKLE] = own.v[0];
    state->moment_Nm[HS_JOINT_ANKLE] = own;

    /* Balance takes the whole suit and the whole load. */
    sum = dual_shift(sum, w[HS_SEGMENT_FEET] * chain->feet_u_m -
                              chain->frame_N * chain->frame_u_m + chain->suit_floor_Nm +
                              chain->hands_floor_Nm);
    state->zmp_m = dual_scale(sum, 1.0 / chain->ground_N);
}

void
hs_chain_solve(const hs_chain *chain, const double angle_rad[3], hs_chain_state *state)
{
    hs_chain_turn turn[3] = {hs_chain_turn_of(angle_rad[0]), hs_chain_turn_of(angle_rad[1]),
                             hs_chain_turn_of(angle_rad[2])};
    hs_chain_state solved;

    solve(chain, angle_rad, turn, &solved);
    *state = solved;
}

void
hs_chain_values(const hs_chain *chain,
                const double angle_rad[3],
                const hs_chain_turn turn[3],
                hs_chain_state *state)
{
    hs_chain_state solved;

    solve(chain, angle_rad, turn, &solved);
    for (int i = 0; i < 4; i++) {
        state->x[i].v[0] = solved.x[i].v[0];
        state->z[i].v[0] = solved.z[i].v[0];
    }
    for (int j = 0; j < HS_N_JOINTS; j++) {
        state->moment_Nm[j].v[0] = solved.moment_Nm[j].v[0];
        state->mechanical_Nm[j] = solved.mechanical_Nm[j];
    }
    state->knee_rad.v[0] = solved.knee_rad.v[0];
    state->hip_rad.v[0] = solved.hip_rad.v[0];
    state->shoulder_rad.v[0] = solved.shoulder_rad.v[0];
    state->reach2_m2.v[0] = solved.reach2_m2.v[0];
    state->zmp_m.v[0] = solved.zmp_m.v[0];
}
