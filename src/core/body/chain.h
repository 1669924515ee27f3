/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do forces at the hands do to every joint of a given posture?
 * Answer:    hs_chain_set() once for a place; hs_chain_solve() for three angles, with derivatives.
 * Not here:  which posture (posture.c), the disc (lowback.c), the plan view of balance (balance.c). */
#ifndef HS_CHAIN_H
#define HS_CHAIN_H

#include "body.h"
#include "dual.h"
#include "person.h"

/* Constants of one place: weights with the walking factor and the like. */
typedef struct {
    const hs_person *person;
    const hs_body_input *input;
    double weight_N[HS_N_SEGMENTS];
    double
        tilt; /* forward acceleration / (walking factor x g): a point at height z counts as x - tilt z */
    double hip_spring_N,
        shoulder_spring_N; /* weight of a spring that acts at L5/S1, at the shoulder */
    double frame_N;        /* weight of a powered suit that the wearer carries */
    double frame_u_m;      /* its tilted place */
    double hands_N,
        hands_floor_Nm; /* felt + rest; moment of all at the hands about the floor's origin */
    double suit_total_N, suit_floor_Nm; /* a powered suit's whole weight for balance */
    double ground_N;
    double feet_u_m;
    bool kneels;
} hs_chain;

typedef struct {
    hs_dual x[4], z[4];                      /* knee, hip, shoulder, elbow */
    hs_dual knee_rad, hip_rad, shoulder_rad; /* flexion */
    hs_dual reach2_m2;                       /* shoulder to grip, squared */
    hs_dual moment_Nm[HS_N_JOINTS];          /* as the joint has to bear it, suit considered */
    double mechanical_Nm
        [HS_N_JOINTS]; /* of segments, felt force and carried weights alone: what the residual closes */
    hs_dual zmp_m;
} hs_chain_state;

enum {
    HS_CHAIN_KNEE,
    HS_CHAIN_HIP,
    HS_CHAIN_SHOULDER,
    HS_CHAIN_ELBOW
};

void hs_chain_set(const hs_person *person, const hs_body_input *input, hs_chain *ret_chain);
void
hs_chain_solve(const hs_chain *chain, const double angle_rad[3], hs_chain_state *ret_state);

typedef struct {
    double x, y; /* cosine, sine */
} hs_chain_turn;

HS_INLINE hs_chain_turn
hs_chain_turn_of(double angle_rad)
{
    return (hs_chain_turn){cos(angle_rad), sin(angle_rad)};
}

/* The same figures without their derivatives, at a fraction of the cost; the derivatives in *ret_state are not set. turn: sine and
 * cosine of each angle, so that a grid of angles needs each only once. */
void hs_chain_values(const hs_chain *chain,
                     const double angle_rad[3],
                     const hs_chain_turn turn[3],
                     hs_chain_state *ret_state);

/* Share of a joint's strength that this work may use: one arm of two, a kneeling back. */
double hs_chain_share(const hs_chain *chain, int joint);

/* Everything of a hs_body_state but is_found, reaches, shortfall, family, other_compression; angles given. */
void hs_chain_fill(const hs_chain *chain, const double angle_rad[3], hs_body_state *state);

/* Where people stand gladly: ahead of the middle of the soles (half length of their usable part), in the easy part of the base (half
 * length of its usable part; longer than the soles while walking). */
typedef struct {
    double middle_m, feet_half_m;
    double rear_m, front_m, half_m;
} hs_balance_ease;

void hs_balance_ease_set(const hs_person *person,
                         const hs_body_input *input,
                         hs_balance_ease *ret_ease);

/* Compression and shear of the disc (lowback.c). forward_N: horizontal resultant on the part above, positive forward. */
void hs_lowback_judge(double moment_Nm,
                      double above_N,
                      double forward_N,
                      double trunk_rad,
                      double knee_flexion_rad,
                      hs_body_state *state);

/* Front and rear of the line in which the zero-moment point has to stay (0.8 hull and rear cut), sagittal (balance.c). */
void hs_balance_line(const hs_person *person,
                     const hs_body_input *input,
                     double *ret_rear_m,
                     double *ret_front_m);
void hs_balance_fill(const hs_person *person, const hs_body_input *input, hs_body_state *state);

#endif
