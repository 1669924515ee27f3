/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where do the suit's links and joints lie on a figure?
 * Answer:    hs_suit_frame_make(): beside the wearer's joints, behind the back.
 * Not here:  their look (layers/suit_layer.c), the path of the weight through them (layers/path_layer.c). */
#ifndef HS_SUIT_FRAME_H
#define HS_SUIT_FRAME_H

#include "figure.h"

typedef struct {
    hs_vec2 heel_m, toe_m, ankle_m, knee_m, hip_m, shoulder_m, elbow_m, hand_m;
    hs_vec2 back_low_m, back_high_m;
    double back_half_m;
    hs_vec2 nape_m, waist_m, seat_m, chest_m, belly_m, thigh_front; /* on the skin, for bands */
} hs_suit_frame;

/* suit NULL: only the places on the skin and usual soles. */
void hs_suit_frame_make(const hs_figure *figure, const hs_suit *suit, hs_suit_frame *ret_frame);

#endif
