/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a spring under the upper arms change?
 * Answer:    nothing at the hands; its moment at shoulder flexion is taken off the shoulder, its weight acts there.
 * Not here:  where the moment is taken off (body/chain.c). */
#include "kinds.h"

const hs_suit_model hs_suit_arm_spring = {
    .kind = HS_SUIT_ARM_SPRING,
    .id = "arm_spring",
    .felt = hs_suit_hands_alone,
    .in_body = hs_suit_spring_in_body,
};
