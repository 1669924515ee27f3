/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a spring across the hips change?
 * Answer:    nothing at the hands; its moment at hip flexion is taken off L5/S1 and the hip, its weight acts at L5/S1.
 * Not here:  where the moment is taken off (body/chain.c). */
#include "kinds.h"

const hs_suit_model hs_suit_back_spring = {
    .kind = HS_SUIT_BACK_SPRING,
    .id = "back_spring",
    .felt = hs_suit_hands_alone,
    .in_body = hs_suit_spring_in_body,
};
