/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where are a bearer's joints in the picture, and which outline has the body round them?
 * Answer:    hs_figure_make() from the computed posture, or of a person standing where none was found.
 * Not here:  the suit over it (layers/suit_layer.c). */
#include "figure.h"

/* Heights of a standing person's joints and length of the foot as parts of stature: drawing only, no figure rests on them.
 * MEMORY: Drillis and Contini, Body segment parameters (1966), as often reprinted. */
static const struct {
    double forward, up;
} standing[HS_N_POSE] = {
    [HS_POSE_ANKLE] = {0, 0.039},         [HS_POSE_KNEE] = {0.006, 0.285},
    [HS_POSE_HIP] = {-0.002, 0.530},      [HS_POSE_L5S1] = {-0.008, 0.585},
    [HS_POSE_SHOULDER] = {-0.004, 0.818}, [HS_POSE_ELBOW] = {0.000, 0.635},
    [HS_POSE_HAND] = {0.035, 0.470},      [HS_POSE_NECK] = {-0.002, 0.858},
};
#define FOOT_PART 0.152

static void
stand(hs_figure *figure, const hs_bearer_sample *sample)
{
    for (int i = 0; i < HS_N_POSE; i++) {
        double forward_m = standing[i].forward * figure->stature_m,
               up_m = standing[i].up * figure->stature_m;

        figure->at[i] =
            (hs_vec2){figure->feet_m.x + figure->side * forward_m, figure->feet_m.y + up_m};
    }
    (void)sample;
}

void
hs_figure_make(const hs_scene *scene, int bearer, hs_figure *ret_figure)
{
    const hs_bearer_sample *sample = &scene->sample->bearers[bearer];
    double along = cos(hs_or(sample->facing_rad, 0)),
           across = sin(hs_or(sample->facing_rad, 0));

    *ret_figure = (hs_figure){
        .is_found = sample->has_pose,
        .kneels = sample->kneels,
        .side = along < -0.5 ? -1 : 1,
        .stature_m = hs_or(hs_scene_worker(scene, bearer)->stature_m, 1.756),
        .feet_m = hs_scene_moving(scene, sample->feet_x_m, hs_or(sample->floor_z_m, 0))};
    ret_figure->foot_m = FOOT_PART * ret_figure->stature_m;
    /* The viewer stands on the right of the way: who faces the viewer is seen from the front. */
    if (fabs(along) <= 0.5)
        ret_figure->seen = across < 0 ? HS_SEEN_FROM_FRONT : HS_SEEN_FROM_BEHIND;
    if (!sample->has_pose) {
        stand(ret_figure, sample);
        return;
    }
    for (int i = 0; i < HS_N_POSE; i++) {
        double forward_m =
            ret_figure->seen == HS_SEEN_FROM_SIDE ? sample->pose[i].x * ret_figure->side : 0;

        ret_figure->at[i] = (hs_vec2){ret_figure->feet_m.x + forward_m,
                                      ret_figure->feet_m.y + sample->pose[i].y};
    }
}

void
hs_figure_limb(const hs_figure *figure,
               hs_outline *ret,
               hs_vec2 a_m,
               hs_vec2 b_m,
               const hs_girth *girths,
               int n,
               gboolean is_up)
{
    hs_vec2 along = hs_vec2_sub(b_m, a_m), u = hs_vec2_unit(along);
    double side = figure->side * (is_up ? 1 : -1);
    hs_vec2 front = {u.y * side, -u.x * side}; /* u turned towards the way the figure faces */
    hs_vec2 points_m[20];

    n = MIN(n, 10);
    for (int i = 0; i < n; i++) {
        hs_vec2 middle_m = hs_vec2_add(a_m, hs_vec2_scale(along, girths[i].along));

        points_m[i] =
            hs_vec2_add(middle_m, hs_vec2_scale(front, girths[i].front * figure->stature_m));
        points_m[2 * n - 1 - i] =
            hs_vec2_add(middle_m, hs_vec2_scale(front, -girths[i].back * figure->stature_m));
    }
    hs_outline_smooth(ret, points_m, 2 * n);
}

void
hs_figure_foot(const hs_figure *figure, hs_outline *ret)
{
    /* x in foot lengths from the ankle, z in ankle heights: the sole is flat, the instep rises to the shank */
    static const hs_vec2 flat[] = {{-0.235, 0.16}, {-0.19, 0},   {0.0, 0},      {0.25, 0},
                                   {0.5, 0},       {0.7, 0},     {0.755, 0.14}, {0.735, 0.42},
                                   {0.58, 0.68},   {0.36, 0.92}, {0.16, 1.32},  {-0.03, 1.55},
                                   {-0.17, 1.3},   {-0.225, 0.7}};
    hs_vec2 points_m[G_N_ELEMENTS(flat)];
    hs_vec2 ankle_m = figure->at[HS_POSE_ANKLE];
    double height_m = 0.039 * figure->stature_m;

    if (figure->kneels) { /* on the toes, heel up */
        hs_vec2 toe_m = {ankle_m.x + figure->side * 0.03,
                         figure->feet_m.y + 0.016 * figure->stature_m};

        hs_outline_capsule(ret, ankle_m, 0.024 * figure->stature_m, toe_m,
                           0.016 * figure->stature_m);
        return;
    }
    for (guint i = 0; i < G_N_ELEMENTS(flat); i++)
        points_m[i] = (hs_vec2){ankle_m.x + figure->side * flat[i].x * figure->foot_m,
                                figure->feet_m.y + flat[i].y * height_m};
    hs_outline_smooth(ret, points_m, (int)G_N_ELEMENTS(flat));
}

/* The head follows the trunk only half way: people look where they go. */
static hs_vec2
head_up(const hs_figure *figure)
{
    hs_vec2 trunk =
        hs_vec2_unit(hs_vec2_sub(figure->at[HS_POSE_NECK], figure->at[HS_POSE_HIP]));

    return hs_vec2_unit(hs_vec2_mix(trunk, (hs_vec2){figure->side * 0.08, 1}, 0.45));
}

void
hs_figure_head(const hs_figure *figure, hs_outline *ret, hs_vec2 *ret_centre_m)
{
    /* forward and up from the head's middle, parts of stature: crown, brow, chin, jaw, nape */
    static const hs_vec2 profile[] = {{0.000, 0.068},   {0.036, 0.056},   {0.053, 0.022},
                                      {0.052, -0.010},  {0.045, -0.044},  {0.026, -0.066},
                                      {-0.004, -0.060}, {-0.034, -0.042}, {-0.053, -0.006},
                                      {-0.050, 0.032},  {-0.032, 0.058}};
    hs_vec2 up = head_up(figure), ahead = {up.y * figure->side, -up.x * figure->side};
    hs_vec2 points_m[G_N_ELEMENTS(profile)];
    hs_vec2 centre_m =
        hs_vec2_add(figure->at[HS_POSE_NECK], hs_vec2_scale(up, 0.082 * figure->stature_m));

    centre_m = hs_vec2_add(centre_m, hs_vec2_scale(ahead, 0.012 * figure->stature_m));
    if (figure->seen == HS_SEEN_FROM_SIDE) {
        for (guint i = 0; i < G_N_ELEMENTS(profile); i++)
            points_m[i] = hs_vec2_add(
                centre_m, hs_vec2_add(hs_vec2_scale(ahead, profile[i].x * figure->stature_m),
                                      hs_vec2_scale(up, profile[i].y * figure->stature_m)));
        hs_outline_smooth(ret, points_m, (int)G_N_ELEMENTS(profile));
    } else {
        centre_m.x = figure->feet_m.x;
        hs_outline_ellipse(ret, centre_m, 0.046 * figure->stature_m, 0.066 * figure->stature_m,
                           0);
    }
    *ret_centre_m = centre_m;
}
