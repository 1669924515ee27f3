/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the wearer hold when the power fails, here and now?
 * Answer:    hs_power_loss_at() for a sample, hs_power_loss_input() for the body, hs_power_loss_peak_utilisation() for the jolt.
 * Not here:  getting the wearer out (rescue_check.c), the battery (forces/energy.c). */
#ifndef HS_POWER_LOSS_H
#define HS_POWER_LOSS_H

#include "run.h"

/**
 * hs_power_loss_input - what the body has to take without power
 *
 * What    limp: the whole load in the hands and the suit's weight at its centre; locked and descending: empty hands, the
 *         frame keeps load and residual
 * In      on_power: the input with power at the same place; hand_N the force of the load on the hands
 * Out     *ret_input; false and nothing written where the suit's behaviour is not given
 * Frame   the bearer's sagittal plane
 * Errors  none
 * Source  file format, section Power lost
 */
bool hs_power_loss_input(const hs_setup *setup,
                         const hs_place *place,
                         int bearer,
                         const hs_body_input *on_power,
                         double hand_N,
                         hs_body_input *ret_input);

/**
 * hs_power_loss_at - state, felt force, seconds that hold and seconds that are needed
 *
 * What    fills one block of a sample; writes lost_peak_utilisation of that bearer's state
 * In      a run with bodies and lost bodies at this station
 * Out     *ret_lost; is_known false without a powered suit or where its behaviour is not given
 * Frame   none
 * Errors  none
 * Source  file format, section Power lost
 */
void hs_power_loss_at(const hs_run *run, int station, int bearer, hs_power_lost *ret_lost);

/**
 * hs_power_loss_peak_utilisation - the greatest share of a joint's strength in the jolt
 *
 * What    each joint's old + 2 (new - old), in the posture that the wearer had
 * In      person; body and input with power; lost: the input without
 * Out     the greatest peak over strength; HS_ABSENT when the body cannot be worked out
 * Frame   none
 * Errors  none
 * Source  HS_SRC_suit_loss_mechanics
 */
double hs_power_loss_peak_utilisation(const hs_person *person,
                                      const hs_body_state *body,
                                      const hs_body_input *lost);

/* Height of the load's lowest point above what is under it (floor, and obstacles that it could sink onto). onto_m may be
 * NULL; *ret_is_level false where a riser or an obstacle lies under the load. */
double hs_power_loss_drop_m(const hs_setup *setup, const hs_place *place, bool *ret_is_level);

#endif
