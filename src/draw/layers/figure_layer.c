/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the bearers look like?
 * Answer:    jointed figures to scale: trunk and head, legs with flat feet, the far arm behind the load, the near one over it.
 * Not here:  their joints (figure.c), the suit (suit_layer.c). */
#include "figure.h"
#include "translate.h"

/* Half widths along each limb, parts of stature; drawn by eye after an adult of ordinary build. */
static const hs_girth thigh[] = {
    {-0.13, 0.022, 0.024}, {-0.04, 0.047, 0.046}, {0.12, 0.056, 0.050}, {0.45, 0.045, 0.046},
    {0.82, 0.033, 0.036},  {1.0, 0.030, 0.034},   {1.07, 0.017, 0.020}};
static const hs_girth shank[] = {
    {-0.07, 0.018, 0.020}, {0.02, 0.031, 0.032}, {0.26, 0.040, 0.027}, {0.55, 0.031, 0.022},
    {0.85, 0.020, 0.018},  {1.0, 0.021, 0.018},  {1.05, 0.012, 0.012}};
static const hs_girth upper_arm[] = {{-0.12, 0.014, 0.014}, {-0.02, 0.030, 0.030},
                                     {0.22, 0.031, 0.030},  {0.6, 0.025, 0.026},
                                     {0.95, 0.021, 0.022},  {1.06, 0.011, 0.012}};
static const hs_girth forearm[] = {{-0.07, 0.011, 0.012}, {0.0, 0.021, 0.022},
                                   {0.28, 0.025, 0.023},  {0.62, 0.018, 0.017},
                                   {0.85, 0.014, 0.014},  {0.95, 0.012, 0.012}};
static const hs_girth trunk[] = {
    {-0.19, 0.026, 0.020}, {-0.10, 0.062, 0.044}, {0.06, 0.069, 0.055},
    {0.28, 0.056, 0.058},  {0.50, 0.055, 0.060},  {0.74, 0.068, 0.064},
    {0.93, 0.058, 0.052},  {1.05, 0.038, 0.036},  {1.11, 0.018, 0.020}};
static const hs_girth front_trunk[] = {
    {-0.16, 0.060, 0.060}, {0.0, 0.088, 0.088}, {0.3, 0.076, 0.076}, {0.62, 0.090, 0.090},
    {0.9, 0.108, 0.108},   {1.0, 0.094, 0.094}, {1.08, 0.040, 0.040}};

#define PALE 0.7 /* somebody who is not there yet */

static void
put(hs_scene *scene, const hs_outline *outline, hs_ink fill)
{
    hs_prim *prim = hs_scene_add_shape(scene, outline->at, outline->n, HS_INK_BODY_LINE, fill);

    prim->weight = 1.2;
}

static void
put_limb(hs_scene *scene,
         const hs_figure *figure,
         hs_vec2 a_m,
         hs_vec2 b_m,
         const hs_girth *girths,
         int n,
         gboolean is_up,
         hs_ink fill)
{
    hs_outline outline;

    hs_figure_limb(figure, &outline, a_m, b_m, girths, n, is_up);
    put(scene, &outline, fill);
}

static void
draw_arm(hs_scene *scene, const hs_figure *figure, double bow_m, int depth, hs_ink fill)
{
    hs_vec2 shoulder_m = figure->at[HS_POSE_SHOULDER], elbow_m = figure->at[HS_POSE_ELBOW],
            hand_m = figure->at[HS_POSE_HAND];
    hs_vec2 u = hs_vec2_unit(hs_vec2_sub(hand_m, elbow_m));
    hs_outline outline;

    elbow_m.x -= figure->side * bow_m;
    elbow_m.y += bow_m * 0.6;
    scene->depth = depth;
    hs_scene_begin_group(scene);
    put_limb(scene, figure, shoulder_m, elbow_m, upper_arm, (int)G_N_ELEMENTS(upper_arm), FALSE,
             fill);
    put_limb(scene, figure, elbow_m, hand_m, forearm, (int)G_N_ELEMENTS(forearm), FALSE, fill);
    hs_outline_ellipse(&outline,
                       hs_vec2_add(hand_m, hs_vec2_scale(u, -0.006 * figure->stature_m)),
                       0.029 * figure->stature_m, 0.019 * figure->stature_m, atan2(u.y, u.x));
    put(scene, &outline, fill);
    hs_scene_end_group(scene);
}

static void
draw_trunk(hs_scene *scene, const hs_figure *figure)
{
    hs_outline outline;
    hs_vec2 head_m, hip_m = figure->at[HS_POSE_HIP], shoulder_m = figure->at[HS_POSE_SHOULDER];
    hs_vec2 root_m = hs_vec2_mix(hip_m, shoulder_m, 0.95);

    scene->depth = HS_DEPTH_BODY;
    hs_scene_begin_group(scene);
    hs_figure_head(figure, &outline, &head_m);
    put(scene, &outline, HS_INK_BODY);
    hs_outline_capsule(&outline, root_m, 0.033 * figure->stature_m, head_m,
                       0.027 * figure->stature_m);
    put(scene, &outline, HS_INK_BODY);
    put_limb(scene, figure, hip_m, shoulder_m, trunk, (int)G_N_ELEMENTS(trunk), TRUE,
             HS_INK_BODY);
    hs_scene_end_group(scene);
}

static void
draw_leg(hs_scene *scene, const hs_figure *figure)
{
    hs_outline outline;

    scene->depth = HS_DEPTH_BODY + 2;
    hs_scene_begin_group(scene);
    hs_figure_foot(figure, &outline);
    put(scene, &outline, HS_INK_BODY);
    put_limb(scene, figure, figure->at[HS_POSE_KNEE], figure->at[HS_POSE_ANKLE], shank,
             (int)G_N_ELEMENTS(shank), FALSE, HS_INK_BODY);
    put_limb(scene, figure, figure->at[HS_POSE_HIP], figure->at[HS_POSE_KNEE], thigh,
             (int)G_N_ELEMENTS(thigh), FALSE, HS_INK_BODY);
    hs_scene_end_group(scene);
}

static void
draw_from_side(hs_scene *scene, const hs_figure *figure)
{
    draw_arm(scene, figure, 0.022, HS_DEPTH_BACK, HS_INK_BODY_FAR);
    draw_trunk(scene, figure);
    draw_leg(scene, figure);
    draw_arm(scene, figure, 0, HS_DEPTH_NEAR, HS_INK_BODY);
}

/* Left and right limbs mirrored about the figure's middle; the depth of a squat shows in the heights alone. */
static void
draw_from_front(hs_scene *scene, hs_figure *figure)
{
    double h_m = figure->stature_m;
    hs_outline outline;
    hs_vec2 head_m;

    scene->depth = figure->seen == HS_SEEN_FROM_FRONT ? HS_DEPTH_BACK : HS_DEPTH_FRONT;
    scene->alpha = figure->seen == HS_SEEN_FROM_FRONT ? 1.0 : 0.72;
    for (int k = -1; k <= 1; k += 2) {
        hs_vec2 hip_m = figure->at[HS_POSE_HIP], knee_m = figure->at[HS_POSE_KNEE],
                ankle_m = figure->at[HS_POSE_ANKLE];

        hip_m.x += k * 0.048 * h_m;
        knee_m.x += k * 0.058 * h_m;
        ankle_m.x += k * 0.052 * h_m;
        hs_scene_begin_group(scene);
        hs_outline_ellipse(
            &outline, (hs_vec2){ankle_m.x + k * 0.008 * h_m, figure->feet_m.y + 0.020 * h_m},
            0.028 * h_m, 0.020 * h_m, 0);
        put(scene, &outline, HS_INK_BODY);
        put_limb(scene, figure, knee_m, ankle_m, shank, (int)G_N_ELEMENTS(shank), FALSE,
                 HS_INK_BODY);
        put_limb(scene, figure, hip_m, knee_m, thigh, (int)G_N_ELEMENTS(thigh), FALSE,
                 HS_INK_BODY);
        hs_scene_end_group(scene);
    }
    hs_scene_begin_group(scene);
    hs_figure_head(figure, &outline, &head_m);
    put(scene, &outline, HS_INK_BODY);
    hs_outline_capsule(&outline, figure->at[HS_POSE_SHOULDER], 0.032 * h_m, head_m,
                       0.026 * h_m);
    put(scene, &outline, HS_INK_BODY);
    put_limb(scene, figure, figure->at[HS_POSE_HIP], figure->at[HS_POSE_SHOULDER], front_trunk,
             (int)G_N_ELEMENTS(front_trunk), TRUE, HS_INK_BODY);
    hs_scene_end_group(scene);
    for (int k = -1; k <= 1; k += 2) {
        hs_figure arm = *figure;

        arm.at[HS_POSE_SHOULDER].x += k * 0.100 * h_m;
        arm.at[HS_POSE_ELBOW].x += k * 0.128 * h_m;
        arm.at[HS_POSE_HAND].x += k * 0.100 * h_m;
        draw_arm(scene, &arm, 0, scene->depth, HS_INK_BODY);
    }
    scene->alpha = 1;
}

/* No posture: where the person would stand, dashed, and said in words. */
static void
draw_ghost(hs_scene *scene, int bearer, const hs_figure *figure)
{
    guint first = scene->prims->len;
    hs_vec2 at_m = hs_vec2_mix(figure->at[HS_POSE_HIP], figure->at[HS_POSE_SHOULDER], 0.6);
    double shortfall_m = scene->sample->bearers[bearer].shortfall_m;

    draw_trunk(scene, figure);
    draw_leg(scene, figure);
    draw_arm(scene, figure, 0, HS_DEPTH_NEAR, HS_INK_NONE);
    for (guint i = first; i < scene->prims->len; i++) {
        hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        prim->dash = HS_DASH_SHORT;
        prim->fill = HS_INK_PAPER;
    }
    scene->depth = HS_DEPTH_MARK;
    hs_prim *label = hs_scene_add_label(scene, at_m, HS_SIDE_ABOVE, HS_INK_INK,
                                        g_strdup(_("no posture found")));

    label->is_bold = TRUE;
    label->offset = (hs_vec2){0, -1};
    label->priority = 8;
    if (shortfall_m > 0 && !scene->request->few_labels) {
        g_autofree char *missing = hs_scene_text(scene, shortfall_m * 100, "cm");
        char *text = g_strdup_printf(_("%s missing"), missing);

        hs_scene_add_label(scene, at_m, HS_SIDE_BELOW, HS_INK_INK, text)->priority = 7;
    }
}

static void
make_pale(hs_scene *scene, guint first)
{
    for (guint i = first; i < scene->prims->len; i++) {
        hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        prim->dash = HS_DASH_SHORT;
        prim->fill = HS_INK_PAPER;
        prim->alpha *= PALE;
    }
}

void
hs_layer_figure_draw(hs_scene *scene)
{
    int n_here = scene->option->asked->n_bearers - scene->request->n_pale;

    for (int b = 0; b < scene->option->asked->n_bearers; b++) {
        guint first = scene->prims->len;
        hs_figure figure;

        hs_figure_make(scene, b, &figure);
        if (!figure.is_found)
            draw_ghost(scene, b, &figure);
        else if (figure.seen == HS_SEEN_FROM_SIDE)
            draw_from_side(scene, &figure);
        else
            draw_from_front(scene, &figure);
        if (b >= n_here)
            make_pale(scene, first);
    }
}
