/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the tests of the body ask of it most?
 * Answer:    hold(): a load held still in both hands, standing on level floor, no suit.
 * Not here:  any judgement. */
#ifndef HS_TEST_HOLD_H
#define HS_TEST_HOLD_H

#include "body.h"
#include "units.h"

static inline hs_body_input
hold(double x_m, double z_m, double load_kg)
{
    return (hs_body_input){.hand_x_m = x_m,
                           .hand_z_m = z_m,
                           .felt_N = load_kg * HS_GRAVITY_m_s2,
                           .weight_factor = 1.0,
                           .suit.gain_trunk = 1.0,
                           .stance = HS_STANCE_STANDING,
                           .style = HS_STYLE_FREE};
}

#endif
