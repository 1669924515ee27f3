/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where do the suit's links and joints lie on a figure?
 * Answer:    hs_suit_frame_make(): beside the wearer's joints, behind the back.
 * Not here:  their look (layers/suit_layer.c), the path of the weight through them (layers/path_layer.c). */
#include "suit_frame.h"

/* Soles of a suit whose data do not give them, and the thickness of the back unit (m): for the picture only. */
#define HEEL_m 0.08
#define TOE_m  0.24
#define BACK_m 0.075

static hs_vec2
off(hs_vec2 at_m, hs_vec2 along, double along_m, hs_vec2 front, double front_m)
{
    return (hs_vec2){at_m.x + along.x * along_m + front.x * front_m,
                     at_m.y + along.y * along_m + front.y * front_m};
}

static void
find_skin(const hs_figure *figure, hs_vec2 up, hs_vec2 front, hs_suit_frame *frame)
{
    double h_m = figure->stature_m;
    hs_vec2 hip_m = figure->at[HS_POSE_HIP], shoulder_m = figure->at[HS_POSE_SHOULDER];
    hs_vec2 thigh = hs_vec2_unit(hs_vec2_sub(figure->at[HS_POSE_KNEE], hip_m));

    frame->thigh_front = (hs_vec2){-thigh.y * figure->side, thigh.x * figure->side};
    frame->nape_m = off(hs_vec2_mix(hip_m, shoulder_m, 0.86), up, 0, front, -0.066 * h_m);
    frame->waist_m = off(hs_vec2_mix(hip_m, shoulder_m, 0.36), up, 0, front, -0.056 * h_m);
    frame->seat_m = off(hs_vec2_mix(hip_m, shoulder_m, -0.02), up, 0, front, -0.060 * h_m);
    frame->chest_m = off(hs_vec2_mix(hip_m, shoulder_m, 0.78), up, 0, front, 0.062 * h_m);
    frame->belly_m = off(hs_vec2_mix(hip_m, shoulder_m, 0.30), up, 0, front, 0.056 * h_m);
}

void
hs_suit_frame_make(const hs_figure *figure, const hs_suit *suit, hs_suit_frame *ret_frame)
{
    double h_m = figure->stature_m, side = figure->side;
    hs_vec2 up =
        hs_vec2_unit(hs_vec2_sub(figure->at[HS_POSE_SHOULDER], figure->at[HS_POSE_HIP]));
    hs_vec2 front = {up.y * side, -up.x * side};
    hs_vec2 hand_m = figure->at[HS_POSE_HAND], elbow_m = figure->at[HS_POSE_ELBOW];
    double heel_m = suit ? hs_or(suit->foot_heel_m, HEEL_m) : HEEL_m,
           toe_m = suit ? hs_or(suit->foot_toe_m, TOE_m) : TOE_m;

    *ret_frame = (hs_suit_frame){
        .heel_m = {figure->feet_m.x - side * heel_m, figure->feet_m.y + 0.013},
        .toe_m = {figure->feet_m.x + side * toe_m, figure->feet_m.y + 0.013},
        .ankle_m = {figure->at[HS_POSE_ANKLE].x - side * 0.012,
                    figure->at[HS_POSE_ANKLE].y + 0.012},
        .knee_m = figure->at[HS_POSE_KNEE],
        .hip_m = off(figure->at[HS_POSE_HIP], up, 0.02, front, -0.052 * h_m),
        .shoulder_m = off(figure->at[HS_POSE_SHOULDER], up, 0.035 * h_m, front, -0.075 * h_m),
        .elbow_m = {elbow_m.x + side * 0.012, elbow_m.y + 0.022},
        .hand_m = {hand_m.x - side * 0.012, hand_m.y + 0.006},
        .back_half_m = BACK_m,
    };
    ret_frame->back_low_m =
        off(hs_vec2_mix(figure->at[HS_POSE_HIP], figure->at[HS_POSE_SHOULDER], 0.22), up, 0,
            front, -0.066 * h_m - BACK_m);
    ret_frame->back_high_m =
        off(figure->at[HS_POSE_SHOULDER], up, 0.05 * h_m, front, -0.066 * h_m - BACK_m);
    find_skin(figure, up, front, ret_frame);
}
