/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which models of suits are there?
 * Answer:    one constant for each line of lists/suit_kinds.def, and the one for no suit.
 * Not here:  what a model answers (suit.h). */
#ifndef HS_SUIT_KINDS_H
#define HS_SUIT_KINDS_H

#include "suit.h"

extern const hs_suit_model hs_suit_none;
#define SUIT_KIND(kind, id, model) extern const hs_suit_model model;
#include "lists/suit_kinds.def"
#undef SUIT_KIND

/* What every kind that leaves the hands alone answers: felt is the hand force. */
hs_felt hs_suit_hands_alone(const hs_suit *suit,
                            double hand_N,
                            double reach_m,
                            double hand_height_m,
                            hs_working *working);

/* Body terms of a worn spring: its whole weight, its curve, gain 1. */
void hs_suit_spring_in_body(const hs_suit *suit, double weight_factor, hs_body_suit *ret_terms);

#endif
