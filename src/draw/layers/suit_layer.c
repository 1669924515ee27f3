/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the suit look like on its wearer?
 * Answer:    a schematic of links and joints by kind: powered with soles, legs, back and arms; springs as bands. No maker's outline.
 * Not here:  its force (force_layer.c). */
#include "figure.h"
#include "suit_frame.h"

#define LINK_m  0.013 /* half width of a link: by eye */
#define JOINT_m 0.021

static void
style(hs_scene *scene, hs_prim *prim, double weight)
{
    prim->weight = weight;
    if (scene->request->power_off)
        prim->dash = HS_DASH_SHORT;
}

static void
put_link(hs_scene *scene, hs_vec2 a_m, hs_vec2 b_m, double half_m)
{
    hs_outline outline;

    hs_outline_capsule(&outline, a_m, half_m, b_m, half_m);
    style(scene,
          hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_SUIT, HS_INK_SUIT_FILL), 1.5);
}

static void
put_joint(hs_scene *scene, hs_vec2 at_m, double radius_m)
{
    hs_outline outline;

    hs_outline_ellipse(&outline, at_m, radius_m, radius_m, 0);
    hs_prim *ring = hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_SUIT, HS_INK_PAPER);

    ring->weight = 1.7;
}

static void
draw_effector(hs_scene *scene, int b, const hs_figure *figure, hs_vec2 at_m)
{
    int effector = scene->option->asked->bearers[b].effector;
    const hs_suit *suit = hs_scene_suit(scene, b);
    hs_outline outline;

    if (effector < 0)
        return;
    if (suit->effectors[effector].kind == HS_EFFECTOR_PAD) {
        hs_outline_strip(&outline, (hs_vec2){at_m.x, at_m.y - 0.045},
                         (hs_vec2){at_m.x, at_m.y + 0.045}, 0.014, 0.006);
        style(scene,
              hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_SUIT, HS_INK_SUIT_FILL),
              1.5);
        return;
    }
    double reach_m = suit->effectors[effector].kind == HS_EFFECTOR_CRADLE ? 0.11 : 0.04;
    hs_vec2 fork_m[3] = {{at_m.x, at_m.y},
                         {at_m.x + figure->side * 0.006, at_m.y - 0.035},
                         {at_m.x + figure->side * reach_m, at_m.y - 0.035}};

    style(scene, hs_scene_add_line(scene, fork_m, 3, HS_INK_SUIT, 3.2, HS_DASH_NONE), 3.2);
}

static void
draw_powered(hs_scene *scene, int b, const hs_figure *figure)
{
    hs_suit_frame frame;
    hs_outline outline;

    hs_suit_frame_make(figure, hs_scene_suit(scene, b), &frame);
    scene->depth = HS_DEPTH_SUIT_BACK;
    hs_outline_strip(&outline, frame.back_low_m, frame.back_high_m, frame.back_half_m, 0.035);
    style(scene,
          hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_SUIT, HS_INK_SUIT_FILL), 1.5);
    scene->depth = HS_DEPTH_SUIT;
    hs_outline_strip(&outline, frame.heel_m, frame.toe_m, 0.013, 0.008);
    style(scene,
          hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_SUIT, HS_INK_SUIT_FILL), 1.5);
    put_link(scene, frame.ankle_m, frame.knee_m, LINK_m);
    put_link(scene, frame.knee_m, frame.hip_m, LINK_m * 1.15);
    put_link(scene, frame.hip_m, frame.shoulder_m, LINK_m * 1.15);
    put_joint(scene, frame.ankle_m, JOINT_m * 0.8);
    put_joint(scene, frame.knee_m, JOINT_m);
    put_joint(scene, frame.hip_m, JOINT_m * 1.1);
    scene->depth = HS_DEPTH_SUIT_NEAR;
    put_link(scene, frame.shoulder_m, frame.elbow_m, LINK_m * 1.05);
    put_link(scene, frame.elbow_m, frame.hand_m, LINK_m * 0.85);
    draw_effector(scene, b, figure, frame.hand_m);
    put_joint(scene, frame.shoulder_m, JOINT_m * 1.1);
    put_joint(scene, frame.elbow_m, JOINT_m * 0.9);
    put_joint(scene, frame.hand_m, JOINT_m * 0.7);
}

/* Seen from the front or behind: the legs' and the back's frame on both sides. */
static void
draw_powered_from_front(hs_scene *scene, const hs_figure *figure)
{
    double h_m = figure->stature_m;

    scene->depth = figure->seen == HS_SEEN_FROM_FRONT ? HS_DEPTH_BACK : HS_DEPTH_FRONT;
    for (int k = -1; k <= 1; k += 2) {
        hs_vec2 ankle_m = {figure->feet_m.x + k * 0.085 * h_m, figure->at[HS_POSE_ANKLE].y};
        hs_vec2 knee_m = {figure->feet_m.x + k * 0.100 * h_m, figure->at[HS_POSE_KNEE].y};
        hs_vec2 hip_m = {figure->feet_m.x + k * 0.115 * h_m, figure->at[HS_POSE_HIP].y};
        hs_vec2 shoulder_m = {figure->feet_m.x + k * 0.125 * h_m,
                              figure->at[HS_POSE_SHOULDER].y};

        put_link(scene, ankle_m, knee_m, LINK_m);
        put_link(scene, knee_m, hip_m, LINK_m);
        put_link(scene, hip_m, shoulder_m, LINK_m);
        put_joint(scene, knee_m, JOINT_m);
        put_joint(scene, hip_m, JOINT_m);
        put_joint(scene, shoulder_m, JOINT_m);
    }
}

static void
put_band(hs_scene *scene, const hs_vec2 *points_m, int n, double half_m)
{
    hs_scene_begin_group(scene);
    for (int i = 0; i + 1 < n; i++)
        put_link(scene, points_m[i], points_m[i + 1], half_m);
    hs_scene_end_group(scene);
}

static void
draw_back_spring(hs_scene *scene, const hs_figure *figure)
{
    hs_suit_frame frame;
    hs_vec2 middle_m = hs_vec2_mix(figure->at[HS_POSE_HIP], figure->at[HS_POSE_KNEE], 0.62);

    hs_suit_frame_make(figure, NULL, &frame);
    scene->depth = HS_DEPTH_SUIT;
    hs_vec2 band_m[] = {frame.nape_m, frame.waist_m, frame.seat_m, middle_m};

    put_band(scene, band_m, (int)G_N_ELEMENTS(band_m), 0.017);
    put_link(scene, hs_vec2_add(middle_m, hs_vec2_scale(frame.thigh_front, 0.07)),
             hs_vec2_add(middle_m, hs_vec2_scale(frame.thigh_front, -0.07)), 0.014);
    put_link(scene, frame.nape_m, frame.chest_m, 0.014);
    put_joint(scene, frame.seat_m, JOINT_m);
}

static void
draw_arm_spring(hs_scene *scene, const hs_figure *figure)
{
    hs_suit_frame frame;
    hs_vec2 shoulder_m = figure->at[HS_POSE_SHOULDER], elbow_m = figure->at[HS_POSE_ELBOW];
    hs_vec2 cuff_m = hs_vec2_mix(shoulder_m, elbow_m, 0.62);

    hs_suit_frame_make(figure, NULL, &frame);
    scene->depth = HS_DEPTH_SUIT;
    hs_vec2 back_m[] = {frame.waist_m, frame.nape_m};

    put_band(scene, back_m, 2, 0.017);
    put_link(scene, frame.waist_m, frame.belly_m, 0.014);
    scene->depth = HS_DEPTH_SUIT_NEAR;
    hs_vec2 arm_m[] = {frame.nape_m, shoulder_m, cuff_m};
    hs_vec2 across = hs_vec2_unit(hs_vec2_sub(elbow_m, shoulder_m));

    put_band(scene, arm_m, 3, 0.015);
    put_link(scene, hs_vec2_add(cuff_m, (hs_vec2){across.y * 0.045, -across.x * 0.045}),
             hs_vec2_add(cuff_m, (hs_vec2){-across.y * 0.045, across.x * 0.045}), 0.013);
    put_joint(scene, shoulder_m, JOINT_m * 1.1);
}

void
hs_layer_suit_draw(hs_scene *scene)
{
    for (int b = 0; b < scene->option->asked->n_bearers; b++) {
        const hs_suit *suit = hs_scene_suit(scene, b);
        hs_figure figure;

        if (!suit)
            continue;
        hs_figure_make(scene, b, &figure);
        if (figure.seen != HS_SEEN_FROM_SIDE)
            draw_powered_from_front(scene, &figure);
        else if (suit->kind == HS_SUIT_BACK_SPRING)
            draw_back_spring(scene, &figure);
        else if (suit->kind == HS_SUIT_ARM_SPRING)
            draw_arm_spring(scene, &figure);
        else
            draw_powered(scene, b, &figure);
    }
}
