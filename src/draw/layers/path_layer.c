/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the weight reach the floor?
 * Answer:    lines as thick as the force: through the wearer's body in the people's colour, through the suit's links in its
 *            own, down to the two pairs of soles, whose sums are the force on the floor.
 * Not here:  the felt force itself (core/forces). */
#include "body.h"
#include "suit_frame.h"
#include "translate.h"
#include "units.h"

#define BESIDE_m 0.035 /* by eye */

typedef struct {
    double felt_N, suit_N; /* at the hands */
    double wearer_soles_N, suit_soles_N;
    double trunk_N, hip_N; /* carried through the low back and through the hips */
} hs_path;

/* The suit's soles take what its arms take and its own part of its weight; the wearer's the rest of the force on the floor. */
static gboolean
find_path(const hs_scene *scene, int b, hs_path *ret)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];
    const hs_suit *suit = hs_scene_suit(scene, b);
    gboolean is_powered = suit && suit->kind == HS_SUIT_POWERED;
    hs_person person;

    if (!hs_has(bearer->ground_force_N) || !hs_has(bearer->felt_force_N) ||
        !hs_has(bearer->suit_force_N) ||
        hs_person_make(hs_scene_worker(scene, b), 25, HS_SEGMENTS_DE_LEVA, &person, NULL) !=
            HS_OK)
        return FALSE;
    double own_suit_N = is_powered ? suit->mass_kg * suit->self_carried * HS_GRAVITY_m_s2 : 0;

    if (!hs_has(own_suit_N))
        return FALSE;
    double legs_kg = person.segment_kg[0] + person.segment_kg[1] + person.segment_kg[2];

    ret->felt_N = bearer->felt_force_N;
    ret->suit_N = is_powered ? bearer->suit_force_N : 0;
    ret->suit_soles_N = is_powered ? fmax(ret->suit_N + own_suit_N, 0) : 0;
    ret->wearer_soles_N = bearer->ground_force_N - ret->suit_soles_N;
    ret->hip_N = ret->wearer_soles_N - legs_kg * HS_GRAVITY_m_s2;
    ret->trunk_N = ret->hip_N - person.segment_kg[3] * HS_GRAVITY_m_s2;
    return TRUE;
}

static void
put_band(hs_scene *scene, const hs_vec2 *points_m, int n, double force_N, hs_ink ink)
{
    hs_prim *band = hs_scene_add(scene, HS_PRIM_BAND);

    g_array_append_vals(scene->points, points_m, (guint)n);
    band->n = n;
    band->size = force_N;
    band->stroke = ink;
    band->alpha = 0.62;
}

/* Beside the shanks: what goes down through each pair of soles. */
static void
put_soles(hs_scene *scene, hs_vec2 at_m, double force_N, hs_ink ink, double side)
{
    hs_prim *label = hs_scene_add_label(scene, at_m, side < 0 ? HS_SIDE_LEFT : HS_SIDE_RIGHT,
                                        ink, hs_scene_text(scene, force_N, "N"));

    label->offset = (hs_vec2){side * 1.4, 0};
    label->is_bold = TRUE;
    label->priority = 5;
}

static void
draw_wearer(hs_scene *scene, const hs_figure *figure, const hs_path *path)
{
    hs_vec2 arm_m[] = {figure->at[HS_POSE_HAND], figure->at[HS_POSE_ELBOW],
                       figure->at[HS_POSE_SHOULDER]};
    hs_vec2 trunk_m[] = {figure->at[HS_POSE_SHOULDER], figure->at[HS_POSE_L5S1]};
    hs_vec2 pelvis_m[] = {figure->at[HS_POSE_L5S1], figure->at[HS_POSE_HIP]};
    hs_vec2 leg_m[] = {figure->at[HS_POSE_HIP], figure->at[HS_POSE_KNEE],
                       figure->at[HS_POSE_ANKLE], figure->feet_m};

    hs_scene_begin_group(scene);
    put_band(scene, arm_m, 3, path->felt_N, HS_INK_PERSON);
    put_band(scene, trunk_m, 2, path->trunk_N, HS_INK_PERSON);
    put_band(scene, pelvis_m, 2, path->hip_N, HS_INK_PERSON);
    put_band(scene, leg_m, 4, path->wearer_soles_N, HS_INK_PERSON);
    hs_scene_end_group(scene);
}

static void
draw_suit(hs_scene *scene, int b, const hs_figure *figure, const hs_path *path)
{
    hs_suit_frame frame;

    hs_suit_frame_make(figure, hs_scene_suit(scene, b), &frame);
    hs_vec2 arm_m[] = {frame.hand_m, frame.elbow_m, frame.shoulder_m, frame.hip_m};
    hs_vec2 leg_m[] = {
        frame.hip_m, frame.knee_m, frame.ankle_m, {frame.ankle_m.x, figure->feet_m.y}};

    hs_scene_begin_group(scene);
    put_band(scene, arm_m, 4, path->suit_N, HS_INK_SUIT);
    put_band(scene, leg_m, 4, path->suit_soles_N, HS_INK_SUIT);
    hs_scene_end_group(scene);
    put_soles(scene, hs_vec2_mix(frame.knee_m, frame.ankle_m, 0.6), path->suit_soles_N,
              HS_INK_SUIT, -figure->side);
}

void
hs_layer_path_draw(hs_scene *scene)
{
    for (int b = 0; b < scene->option->asked->n_bearers; b++) {
        hs_figure figure;
        hs_path path;

        hs_figure_make(scene, b, &figure);
        if (!figure.is_found || figure.seen != HS_SEEN_FROM_SIDE || !find_path(scene, b, &path))
            continue;
        scene->depth = HS_DEPTH_PATH;
        if (path.suit_soles_N > 0)
            draw_suit(scene, b, &figure, &path);
        draw_wearer(scene, &figure, &path);
        if (path.suit_soles_N > 0)
            put_soles(scene,
                      hs_vec2_mix(figure.at[HS_POSE_KNEE], figure.at[HS_POSE_ANKLE], 0.6),
                      path.wearer_soles_N, HS_INK_PERSON, figure.side);
    }
}
