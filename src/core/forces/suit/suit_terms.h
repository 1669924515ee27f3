/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a suit put into the wearer's body?
 * Answer:    hs_body_suit: weights, gains, springs and soles, filled by a suit's model and used by body/.
 * Not here:  how each kind fills it (suit.h). */
#ifndef HS_SUIT_TERMS_H
#define HS_SUIT_TERMS_H

#include "task.h"

/* Extra terms that a suit or the work puts into the body. All zero = none. */
typedef struct {
    hs_suit_kind kind; /* 0: no suit */
    double
        weight_N; /* the suit's own weight that the wearer carries, (1 - self_carried) m g k; springs: whole */
    double centre_x_m,
        centre_z_m;    /* where it acts (powered); springs act at L5/S1 or shoulder */
    double gain_trunk; /* 1 when none */
    double residual_trunk_N, harness_m;
    const hs_suit *torque; /* spring with its torque curve, or NULL */
    /* balance: the suit's whole mass and place, its own soles */
    double mass_kg;
    bool has_foot;
    double foot_heel_m, foot_toe_m, foot_width_m;
} hs_body_suit;

#endif
