/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do hands and body feel without a suit?
 * Answer:    the hand force, and no terms of a suit.
 * Not here:  kinds that change either (powered.c, back_spring.c, arm_spring.c). */
#include "kinds.h"

hs_felt
hs_suit_hands_alone(const hs_suit *suit,
                    double hand_N,
                    double reach_m,
                    double hand_height_m,
                    hs_working *working)
{
    (void)suit;
    (void)reach_m;
    (void)hand_height_m;
    (void)working;
    return (hs_felt){.felt_N = hand_N, .payload_kg = HS_ABSENT};
}

static void
no_terms(const hs_suit *suit, double weight_factor, hs_body_suit *ret_terms)
{
    (void)suit;
    (void)weight_factor;
    *ret_terms = (hs_body_suit){.gain_trunk = 1.0};
}

const hs_suit_model hs_suit_none = {
    .id = "none",
    .felt = hs_suit_hands_alone,
    .in_body = no_terms,
};
