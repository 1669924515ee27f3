/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what presses on the disc L5/S1, and what shears it?
 * Answer:    one equivalent muscle: C = |M| / d + G cos s - P sin s, S = G sin s + P cos s, with two rules for the slope s.
 * Not here:  the moment (chain.c), limits (checks/body_checks.c). It is a model's figure, not a measurement. */
#include "lowback.h"
#include "chain.h"
#include "units.h"

double
hs_lowback_disc_rad(double trunk_rad, double knee_flexion_rad)
{
    double t = trunk_rad * HS_DEG_PER_RAD, k = 180.0 - knee_flexion_rad * HS_DEG_PER_RAD;
    double turn_deg = HS_SACRUM_0_deg + HS_SACRUM_T * t + HS_SACRUM_K * k +
                      HS_SACRUM_TK * t * k + HS_SACRUM_T2 * t * t + HS_SACRUM_K2 * k * k;

    return (HS_SACRUM_STANDING_deg + fmax(turn_deg, 0.0)) * HS_RAD_PER_DEG;
}

void
hs_lowback_press(double muscle_N,
                 double above_N,
                 double forward_N,
                 double slope_rad,
                 double *ret_compression_N,
                 double *ret_shear_N)
{
    *ret_compression_N = muscle_N + above_N * cos(slope_rad) - forward_N * sin(slope_rad);
    *ret_shear_N = above_N * sin(slope_rad) + forward_N * cos(slope_rad);
}

void
hs_lowback_judge(double moment_Nm,
                 double above_N,
                 double forward_N,
                 double trunk_rad,
                 double knee_flexion_rad,
                 hs_body_state *state)
{
    double s = hs_lowback_disc_rad(trunk_rad, knee_flexion_rad);

    state->l5s1_moment_Nm = moment_Nm;
    state->arm_m = moment_Nm >= 0.0 ? HS_BACK_MUSCLE_ARM_m : HS_ABDOMINAL_ARM_m;
    state->muscle_N = fabs(moment_Nm) / state->arm_m;
    state->weight_above_N = above_N;
    state->disc_rad = s;
    hs_lowback_press(state->muscle_N, above_N, forward_N, s, &state->compression_N,
                     &state->shear_N);
    state->shear_other_N = above_N * sin(trunk_rad) + forward_N * cos(trunk_rad);
}

double
hs_lowback_hand_estimate_N(double body_N, double load_N, double trunk_rad, double hands_ahead_m)
{
    return 3.0 * body_N * sin(trunk_rad) + load_N * hands_ahead_m / HS_HAND_ESTIMATE_ARM_m +
           0.8 * (0.5 * body_N + load_N);
}
