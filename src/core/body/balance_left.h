/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much disturbance does a standing person still take?
 * Answer:    hs_balance_left_find(): the hardest slowing, the push at the hands, and how far a walk carries the weight on.
 * Not here:  the margin of a state (balance.c), the finding (checks/standing_checks.c). */
#ifndef HS_BALANCE_LEFT_H
#define HS_BALANCE_LEFT_H

#include "body.h"

/* What the figures are made of stands beside them, for the working. */
typedef struct {
    double front_m, rear_m;           /* edges of the usable base, from the ankles */
    double load_kg;                   /* of the load in these hands */
    double lever_m;                   /* of the push: the hands' height, never below 5 cm */
    double slow_m_s2;                 /* tips ahead from there: the whole is slowed */
    double push_ahead_N, push_back_N; /* horizontal force at the hands that tips */
    double flat_N;                    /* horizontal force that the floor gives already */
    double slip_N,
        slip_m_s2; /* the same two where the feet slip; HS_ABSENT without a friction */
} hs_balance_left;

/**
 * hs_balance_left_find - what can still be taken before the feet tip or slip
 *
 * What    slowing a: the point under the weight moves ahead by a (m z + l h) / N; push P: by P h / N; slipping: mu N
 *         h is taken as 0.05 m at least: a push along the floor slides the feet and tips nobody
 * In      state with a posture; friction HS_ABSENT when the floor's is not known
 * Out     *ret; negative where the point is outside already
 * Frame   the bearer's sagittal plane, x ahead
 * Errors  none
 * Source  equilibrium of moments about a point of the floor
 */
void hs_balance_left_find(const hs_person *person,
                          const hs_body_input *input,
                          const hs_body_state *state,
                          double friction,
                          hs_balance_left *ret);

/**
 * hs_balance_extrapolated_m - where a moving weight comes to rest over the feet
 *
 * What    X = x + v sqrt(z / g); the centre's height stands for the pendulum's length
 * In      centre of body, suit and load from the ankles; speed ahead
 * Out     X from the ankles' midpoint
 * Frame   the bearer's sagittal plane, x ahead
 * Errors  none
 * Source  Hof, Gazendam & Sinke, J. Biomech. 38:1-8 (2005)
 */
double hs_balance_extrapolated_m(double centre_x_m, double centre_z_m, double v_m_s);

/* Centre of body, suit and the load in the hands. */
void hs_balance_centre(const hs_body_input *input,
                       const hs_body_state *state,
                       double *ret_x_m,
                       double *ret_z_m);

#endif
