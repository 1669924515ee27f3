/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much disturbance does a standing person still take?
 * Answer:    moments about the edges of the usable base, friction under the feet, Hof's moving centre.
 * Not here:  the base and the margin (balance.c). */
#include "balance_left.h"

#include "chain.h"
#include "units.h"

#define LEAST_LEVER_m                                                                          \
    0.05 /* keeps the push finite where the hands are on the floor (numerics) */

static double
load_kg(const hs_body_input *input)
{
    return (input->felt_N + input->rest_N) / (HS_GRAVITY_m_s2 * input->weight_factor);
}

void
hs_balance_left_find(const hs_person *person,
                     const hs_body_input *input,
                     const hs_body_state *state,
                     double friction,
                     hs_balance_left *ret)
{
    double held_Nm, free_N;

    hs_balance_line(person, input, &ret->rear_m, &ret->front_m);
    ret->load_kg = load_kg(input);
    held_Nm = (ret->front_m - state->zmp_m) * state->ground_N;
    ret->lever_m = fmax(input->hand_z_m, LEAST_LEVER_m);
    ret->slow_m_s2 = held_Nm / (state->cm_kg * state->cm_z_m + ret->load_kg * input->hand_z_m);
    ret->push_ahead_N = held_Nm / ret->lever_m;
    ret->push_back_N = (state->zmp_m - ret->rear_m) * state->ground_N / ret->lever_m;
    ret->flat_N = state->cm_kg * input->foot_acc_m_s2 - input->push_N;
    ret->slip_N = ret->slip_m_s2 = HS_ABSENT;
    if (!(friction > 0.0))
        return;
    free_N = friction * state->ground_N - fabs(ret->flat_N);
    ret->slip_N = free_N;
    ret->slip_m_s2 = free_N / (state->cm_kg + ret->load_kg);
}

double
hs_balance_extrapolated_m(double centre_x_m, double centre_z_m, double v_m_s)
{
    return centre_x_m + v_m_s * sqrt(centre_z_m / HS_GRAVITY_m_s2);
}

void
hs_balance_centre(const hs_body_input *input,
                  const hs_body_state *state,
                  double *ret_x_m,
                  double *ret_z_m)
{
    double kg = load_kg(input), all_kg = state->cm_kg + kg;

    *ret_x_m = (state->cm_kg * state->cm_x_m + kg * input->hand_x_m) / all_kg;
    *ret_z_m = (state->cm_kg * state->cm_z_m + kg * input->hand_z_m) / all_kg;
}
