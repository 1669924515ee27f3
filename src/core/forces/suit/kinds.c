/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which model answers for a suit?
 * Answer:    hs_suit_model_of() by lists/suit_kinds.def; what springs of either kind have in common.
 * Not here:  the curves (suit.c). */
#include "kinds.h"

#include "units.h"

const hs_suit_model *
hs_suit_model_of(const hs_suit *suit)
{
    if (suit == NULL)
        return &hs_suit_none;
    switch (suit->kind) {
#define SUIT_KIND(kind, id, model)                                                             \
    case HS_SUIT_##kind:                                                                       \
        return &model;
#include "lists/suit_kinds.def"
#undef SUIT_KIND
    default:
        return &hs_suit_none;
    }
}

void
hs_suit_spring_in_body(const hs_suit *suit, double weight_factor, hs_body_suit *ret_terms)
{
    double mass_kg = hs_or(suit->mass_kg, 0.0);

    *ret_terms = (hs_body_suit){
        .kind = suit->kind,
        .weight_N = mass_kg * HS_GRAVITY_m_s2 * weight_factor,
        .gain_trunk = 1.0,
        .torque = suit->n_torque > 0 ? suit : NULL,
        .mass_kg = mass_kg,
    };
}
