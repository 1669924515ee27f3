/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a force at the hands do to the person, in one instant?
 * Answer:    hs_person_make() once for a worker; hs_body_at() for a given posture, hs_posture_leg() finds the postures
 *            along a leg, hs_posture_find() one alone.
 * Not here:  who carries how much (forces/), limits (checks/).
 *
 * Frame: the bearer's own sagittal plane, x forward from the ankles' midpoint, z up from the floor under the feet. Angles in
 * rad from the vertical: shank forward +, thigh backward + (K = A + Ls (sin a1, cos a1), H = K + Lt (-sin a2, cos a2)),
 * trunk forward +. Moments are of both limbs together, of everything on the hands' side, tipping forward positive. */
#ifndef HS_BODY_H
#define HS_BODY_H

#include "arena.h"
#include "result.h"
#include "suit_terms.h"
#include "task.h"

#define HS_N_SEGMENTS                                                                          \
    9 /* lumped, both limbs: feet, shanks, thighs, lower trunk (below L5/S1), upper trunk (above it),
                           head, upper arms, forearms, hands */

enum {
    HS_LEG_HIP_EXTENSION,
    HS_LEG_HIP_FLEXION,
    HS_LEG_KNEE_EXTENSION,
    HS_LEG_KNEE_FLEXION,
    HS_LEG_ANKLE_EXTENSION,
    HS_LEG_ANKLE_FLEXION,
    HS_N_LEG_STRENGTHS
};

/* Both legs, at the percentile: peak cos(c2 (angle - c3)). */
typedef struct {
    double peak_Nm, c2, c3_rad;
} hs_leg_strength;

typedef struct {
    hs_sex sex;
    double stature_m, mass_kg, age_years, percentile;
    hs_segment_table table;
    double ankle_height_m, shank_m, thigh_m, trunk_m, upper_arm_m,
        forearm_m /* elbow to grip */, foot_m;
    double l5s1_fraction, neck_fraction, head_fraction,
        top_fraction; /* of hip-shoulder, from the hip */
    double segment_kg[HS_N_SEGMENTS];
    double segment_at[HS_N_SEGMENTS]; /* body/segments.c says of what */
    /* sole for the base of support: from the ankle */
    double heel_m, toe_joint_m, toe_m, sole_width_m, stance_width_m, rear_cut_m;
    double grip_N;        /* one hand, at the percentile */
    double eye_height_m;  /* over the floor, standing */
    double belly_m;       /* least horizontal distance hands to hip line */
    double standing_cm_m; /* height of the CM standing */
    hs_leg_strength leg[HS_N_LEG_STRENGTHS];
    double trunk_share,
        shoulder_share; /* of one man's mean trunk, of one man's mean shoulder; both sides */
    double elbow_Nm;    /* both arms */
    struct hs_memo
        *memo; /* postures that were found before (base/memo.h); NULL: none is kept */
} hs_person;

typedef struct {
    double hand_x_m, hand_z_m;
    double felt_N; /* downward force of the load on the hands that the arms hold */
    double
        push_N; /* forward horizontal force of the load on the hands (reaction of hand_push, facing frame) */
    double
        rest_N; /* downward force of the load that the suit takes instead (hand force - felt) */
    double
        couple_Nm; /* tips forward: couple of a load whose CG lies outside the grips (single bearer) */
    double weight_factor; /* walking factor on the body's weight, 1 at rest */
    double foot_acc_m_s2; /* forward acceleration of body and suit (carry legs), facing frame */
    double slope_rad;     /* floor rises forward: only used in text */
    hs_body_suit suit;
    hs_stance_kind stance;
    hs_style style;
    bool is_one_handed;
    bool belly_free; /* the belly limit does not hold (a container each side) */
    double base_ahead_m, base_behind_m; /* extension of the base while walking (step), else 0 */
    double
        side_m; /* lateral offset of the resultant of the load from the ankles' midpoint, for the plan balance */
} hs_body_input;

typedef struct {
    bool is_found; /* a pose reaches and balances */
    bool reaches;  /* some pose reaches; else shortfall_m says by how much not */
    double shortfall_m;
    double shank_rad, thigh_rad, trunk_rad;
    hs_vec2 at[HS_N_POSE];
    double moment_Nm[HS_N_JOINTS], strength_Nm[HS_N_JOINTS], utilisation[HS_N_JOINTS];
    double greatest; /* the largest utilisation */
    double l5s1_moment_Nm, compression_N, shear_N,
        shear_other_N;                                /* sacral rule; the other slope rule */
    double muscle_N, weight_above_N, disc_rad, arm_m; /* what compression is made of */
    double zmp_m;                                     /* forward of the ankles' midpoint */
    double margin_m;      /* to the 0.8 hull or the rear cut, whichever is nearer; sign */
    double balance_ratio; /* scale at which the resultant leaves the base / 0.8 */
    bool behind_cut;      /* beyond for that alone */
    double
        ground_N; /* body + what the wearer's soles and the suit's take: weights of body, suit, hands */
    double cm_x_m, cm_z_m; /* of body and suit together (no load) */
    double cm_kg;
    double residual; /* largest relative closure error, recomputed from the feet up */
    int family;      /* 0 bent legs, 1 bent back */
    double other_compression_N; /* of the other family where it exists, else HS_ABSENT */
} hs_body_state;

hs_status hs_person_make(const hs_worker *worker,
                         double percentile,
                         hs_segment_table table,
                         hs_person *ret_person,
                         hs_error *error);

/* Everything for a given posture (angles in *state are the input). */
hs_status hs_body_at(const hs_person *person, const hs_body_input *input, hs_body_state *state);

/* The posture for one place alone. hint (may be NULL): an earlier posture near by, for a warm start. */
hs_status hs_posture_find(const hs_person *person,
                          const hs_body_input *input,
                          const hs_body_state *hint,
                          hs_body_state *ret_state);

/* Postures along n consecutive places of one leg: dynamic programme over both families, joints move at most 10 degrees
 * between neighbours unless the feet move. states has room for n. */
hs_status hs_posture_leg(const hs_person *person,
                         const hs_body_input *inputs,
                         int n,
                         hs_arena *arena,
                         hs_body_state *states);

/* The posture at a place between two neighbouring places of a leg (between.c); false: none lies between the two, the change from one
 * to the other stays a jump. */
bool hs_posture_between(const hs_person *person,
                        const hs_body_input *input,
                        const hs_body_state *before,
                        const hs_body_state *after,
                        hs_body_state *ret_state);

/* The most that one of the six joints turns from a to b, arms too. */
double hs_posture_turn_rad(const hs_body_state *a, const hs_body_state *b);

/* The base of support of one bearer, feet at the origin facing +x, both soles (or the suit's), counter-clockwise; the whole
 * hull, before the 0.8. */
int hs_base_hull(const hs_person *person,
                 const hs_body_suit *suit,
                 hs_stance_kind stance,
                 double ahead_m,
                 double behind_m,
                 hs_vec2 *ret_corners /* HS_MAX_BASE */);

/* Plan balance: resultant against the base. point_m from the ankles' midpoint, facing +x. */
void hs_balance_judge(const hs_person *person,
                      const hs_vec2 *hull,
                      int n,
                      hs_vec2 point_m,
                      double *ret_margin_m,
                      double *ret_ratio,
                      bool *ret_behind_cut);

/* The same with the rear cut given: while walking it lies a step behind (hs_balance_cut_m). */
void hs_balance_judge_step(const hs_person *person,
                           const hs_vec2 *hull,
                           int n,
                           double cut_m,
                           hs_vec2 point_m,
                           double *ret_margin_m,
                           double *ret_ratio,
                           bool *ret_behind_cut);
/* Rear cut from the ankles' midpoint; on the knees the toes. */
double hs_balance_cut_m(const hs_person *person, hs_stance_kind stance, double behind_m);

/* Strength of a joint at an angle (both sides), of the side that the sign of the moment asks for. */
double hs_strength_Nm(const hs_person *person,
                      int joint,
                      double angle_rad,
                      double other_angle_rad,
                      double moment_Nm);

/* Men's means that the shares of a person refer to: trunk extension, shoulder flexion of one arm. */
double hs_strength_trunk_men_Nm(double flexion_deg);
double hs_strength_shoulder_men_Nm(double flexion_deg);

/* Seconds that a joint holds a share f of its strength (published power law, not halved). */
double hs_endurance_s(int joint, double f, bool *ret_is_outside_fit);
/* The law behind it: f as the law takes it, b0 in s, b1. */
void hs_endurance_law(
    int joint, double f, double *ret_fraction, double *ret_b0_s, double *ret_exponent);

#endif
