/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who stands where, seen from above?
 * Answer:    hs_plan_build(): load, grips with what each carries, the hull of the grips, soles, shoulders and heads, the
 *            resultant of each bearer in its base; it travels with the load.
 * Not here:  the side view (scene.c). */
#include "prims.h"
#include "shape.h"
#include "translate.h"
#include "units.h"

#include <stdlib.h>

/* Sizes from above as parts of stature: by eye, drawing only. */
#define SHOULDERS_PART 0.115 /* half the breadth */
#define CHEST_PART     0.060 /* half the depth */
#define HEAD_PART      0.052
#define STANCE_m       0.10 /* half the distance of the feet */

static hs_vec2
at_of(const hs_scene *scene, hs_vec3 world_m)
{
    return hs_scene_moving(scene, world_m.x, world_m.y);
}

/* From the bearer's own frame, forward and left, to the plan. */
static hs_vec2
own(const hs_scene *scene, const hs_bearer_sample *bearer, double forward_m, double left_m)
{
    double c = cos(hs_or(bearer->facing_rad, 0)), s = sin(hs_or(bearer->facing_rad, 0));

    return hs_scene_moving(scene, bearer->feet_x_m + c * forward_m - s * left_m,
                           hs_or(bearer->feet_y_m, 0) + s * forward_m + c * left_m);
}

static void
include(hs_scene *scene, hs_vec2 at_m, double room_m)
{
    scene->least_m = (hs_vec2){fmin(scene->least_m.x, at_m.x - room_m),
                               fmin(scene->least_m.y, at_m.y - room_m)};
    scene->most_m = (hs_vec2){fmax(scene->most_m.x, at_m.x + room_m),
                              fmax(scene->most_m.y, at_m.y + room_m)};
}

/* The same extent about the load at every instant, so that the plan stands still while it plays. */
static void
find_extent(hs_scene *scene)
{
    const hs_sample *now = scene->sample;
    hs_vec3 box[2] = {{-0.2, -0.2, 0}, {0.2, 0.2, 0}};

    scene->least_m = (hs_vec2){HUGE_VAL, HUGE_VAL};
    scene->most_m = (hs_vec2){-HUGE_VAL, -HUGE_VAL};
    hs_scene_load_box(scene->request->task, &box[0], &box[1]);
    for (int i = 0; i < 4; i++) {
        hs_vec3 corner_m = {box[i & 1].x, box[i >> 1].y, 0};

        include(scene, at_of(scene, hs_scene_load_world(now, corner_m)), 0.1);
    }
    for (int i = 0; i < scene->option->n_samples; i++)
        for (int b = 0; b < scene->option->asked->n_bearers; b++) {
            const hs_sample *sample = &scene->option->samples[i];
            double x_m = sample->bearers[b].feet_x_m - sample->x_m + now->x_m,
                   y_m = hs_or(sample->bearers[b].feet_y_m, 0);

            if (hs_has(x_m))
                include(scene,
                        hs_scene_moving(scene, x_m,
                                        y_m - hs_or(sample->y_m, 0) + hs_or(now->y_m, 0)),
                        0.3);
        }
    scene->greatest_N = fmax(scene->request->results->load.mass_kg * HS_GRAVITY_m_s2, 1);
}

static void
draw_way(hs_scene *scene)
{
    const hs_site *site = &scene->request->task->site;
    double left_m = scene->least_m.x - 20, right_m = scene->most_m.x + 20;

    scene->layer = HS_LAYER_site;
    scene->depth = HS_DEPTH_SITE;
    hs_scene_add_segment(scene, (hs_vec2){left_m, 0}, (hs_vec2){right_m, 0}, HS_INK_SOFT, 0.8,
                         HS_DASH_LONG);
    for (int k = -1; k <= 1 && hs_has(site->width_m); k += 2)
        hs_scene_add_segment(scene, (hs_vec2){left_m, k * site->width_m / 2},
                             (hs_vec2){right_m, k * site->width_m / 2}, HS_INK_INK, 1.6,
                             HS_DASH_NONE);
}

static void
draw_soles(hs_scene *scene, int b)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];
    double foot_m = 0.152 * hs_or(hs_scene_worker(scene, b)->stature_m, 1.756);
    hs_vec2 corners_m[HS_MAX_BASE];
    hs_outline outline;

    scene->layer = HS_LAYER_base;
    scene->depth = HS_DEPTH_GHOST;
    for (int i = 0; i < bearer->n_base; i++)
        corners_m[i] = hs_scene_moving(scene, bearer->base_m[i].x, bearer->base_m[i].y);
    if (bearer->n_base >= 3)
        hs_scene_add_shape(scene, corners_m, bearer->n_base, HS_INK_SOFT, HS_INK_FLOOR)->dash =
            HS_DASH_SHORT;
    scene->layer = HS_LAYER_figure;
    for (int k = -1; k <= 1; k += 2) {
        hs_outline_capsule(
            &outline, own(scene, bearer, -0.12 * foot_m, k * STANCE_m), 0.17 * foot_m,
            own(scene, bearer, 0.60 * foot_m, k * (STANCE_m + 0.015)), 0.20 * foot_m);
        hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_BODY_LINE, HS_INK_BODY);
    }
}

/* The trunk's turn at the point that the leg leads to. */
static double
asymmetry_rad(const hs_scene *scene)
{
    const hs_route *route = &scene->request->task->route;
    int point = scene->sample->leg;

    return point >= 0 && point < route->n_points
               ? hs_or(route->points[point].turn_deg, 0) * HS_RAD_PER_DEG
               : 0;
}

static void
draw_body(hs_scene *scene, int b)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];
    double h_m = hs_or(hs_scene_worker(scene, b)->stature_m, 1.756),
           turn_rad = asymmetry_rad(scene);
    double facing_rad = hs_or(bearer->facing_rad, 0) + turn_rad;
    double shoulder_m = bearer->has_pose ? bearer->pose[HS_POSE_SHOULDER].x : 0;
    double head_m = bearer->has_pose ? bearer->pose[HS_POSE_NECK].x + 0.03 * h_m : 0.02;
    hs_vec2 middle_m = own(scene, bearer, shoulder_m, 0), hands_m = hs_scene_hands(scene, b);
    hs_outline outline;

    scene->layer = HS_LAYER_figure;
    scene->depth = HS_DEPTH_NEAR;
    scene->alpha = 0.85;
    for (int k = -1; k <= 1; k += 2) {
        double out_m = k * (SHOULDERS_PART - 0.02) * h_m;
        hs_vec2 from_m = {middle_m.x - sin(facing_rad) * out_m,
                          middle_m.y + cos(facing_rad) * out_m};
        hs_vec2 to_m = {hands_m.x - sin(facing_rad) * k * 0.05,
                        hands_m.y + cos(facing_rad) * k * 0.05};

        hs_outline_capsule(&outline, from_m, 0.028 * h_m, to_m, 0.018 * h_m);
        hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_BODY_LINE, HS_INK_BODY);
    }
    hs_outline_ellipse(&outline, middle_m, CHEST_PART * h_m, SHOULDERS_PART * h_m, facing_rad);
    hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_BODY_LINE, HS_INK_BODY);
    scene->alpha = 1;
    hs_outline_ellipse(&outline, own(scene, bearer, head_m, 0), HEAD_PART * 1.15 * h_m,
                       HEAD_PART * h_m * 0.86, facing_rad);
    hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_BODY_LINE, HS_INK_BODY);
    scene->depth = HS_DEPTH_MARK;
    hs_prim *name = hs_scene_add_label(scene, own(scene, bearer, -0.05, 0),
                                       cos(facing_rad) < -0.5 ? HS_SIDE_RIGHT : HS_SIDE_LEFT,
                                       HS_INK_INK, g_strdup(hs_scene_bearer_id(scene, b)));

    name->is_bold = TRUE;
    name->offset = (hs_vec2){cos(facing_rad) < -0.5 ? 1.6 : -1.6, 0};
    name->priority = 6;
}

static void
draw_resultant(hs_scene *scene, int b)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];

    if (!hs_has(bearer->resultant_m.x) || !hs_has(bearer->resultant_m.y))
        return;
    hs_vec2 at_m = hs_scene_moving(scene, bearer->resultant_m.x, bearer->resultant_m.y);

    scene->layer = HS_LAYER_base;
    scene->depth = HS_DEPTH_MARK;
    hs_scene_add_disc(scene, at_m, 0.24, HS_INK_MARK, HS_INK_MARK);
    if (!hs_has(bearer->balance_margin_m))
        return;
    g_autofree char *length = hs_scene_text_mm(scene, fabs(bearer->balance_margin_m));
    hs_prim *label =
        hs_scene_add_label(scene, at_m, HS_SIDE_BELOW, HS_INK_INK,
                           hs_scene_phrase(bearer->balance_margin_m < 0 ? _("%s over the edge")
                                                                        : _("%s to the edge"),
                                           length));

    label->is_small = TRUE;
    label->priority = 4;
}

/* Where the load may be carried from: its CG must lie within the hull of the grips. */
static void
draw_hull(hs_scene *scene)
{
    hs_vec2 grips_m[16];
    hs_outline outline;
    int n = MIN(scene->sample->n_grips, 16);

    for (int i = 0; i < n; i++)
        grips_m[i] = at_of(
            scene, hs_scene_load_world(
                       scene->sample,
                       scene->request->task->load.grips[scene->sample->grips[i].grip].at_m));
    scene->layer = HS_LAYER_lever;
    scene->depth = HS_DEPTH_LOAD + 4;
    if (n == 2)
        hs_scene_add_segment(scene, grips_m[0], grips_m[1], HS_INK_PERSON, 1.4, HS_DASH_SHORT);
    if (n < 3)
        return;
    hs_outline_hull(&outline, grips_m, n);
    hs_prim *hull =
        hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_PERSON, HS_INK_NONE);

    hull->dash = HS_DASH_SHORT;
    hull->weight = 1.4;
}

static void
draw_grips(hs_scene *scene)
{
    scene->layer = HS_LAYER_force;
    scene->depth = HS_DEPTH_FORCE;
    for (int i = 0; i < scene->sample->n_grips; i++) {
        const hs_grip_sample *grip = &scene->sample->grips[i];
        hs_vec2 at_m =
            at_of(scene, hs_scene_load_world(
                             scene->sample, scene->request->task->load.grips[grip->grip].at_m));

        hs_scene_add_disc(scene, at_m, 0.30, HS_INK_PERSON, HS_INK_PAPER)->weight = 2;
        if (!hs_has(grip->up_N))
            continue;
        hs_prim *label = hs_scene_add_label(scene, at_m, HS_SIDE_ABOVE, HS_INK_PERSON,
                                            hs_scene_text(scene, grip->up_N, "N"));

        label->offset = (hs_vec2){0, -0.5};
        label->is_bold = TRUE;
        label->priority = 8;
    }
}

static void
draw_marks(hs_scene *scene)
{
    hs_vec3 cg_m = scene->sample->cg_m, all_m = scene->sample->combined_m;

    scene->layer = HS_LAYER_weight;
    scene->depth = HS_DEPTH_MARK;
    if (hs_has(cg_m.x) && hs_has(cg_m.y))
        hs_scene_add(scene, HS_PRIM_CG)->at = at_of(scene, cg_m);
    scene->layer = HS_LAYER_combined;
    if (hs_has(all_m.x) && hs_has(all_m.y) &&
        (scene->request->layers >> HS_LAYER_combined & 1u))
        hs_scene_add(scene, HS_PRIM_CG)->at = at_of(scene, all_m);
}

hs_scene *
hs_plan_build(const hs_scene_request *request)
{
    hs_scene *scene = hs_scene_new(request);

    scene->is_plan = TRUE;
    scene->least_m = (hs_vec2){-1, -1};
    scene->most_m = (hs_vec2){1, 1};
    scene->layer = HS_LAYER_paper;
    hs_scene_add(scene, HS_PRIM_GRID)->stroke = HS_INK_GRID;
    if (scene->sample) {
        find_extent(scene);
        draw_way(scene);
        for (int b = 0; b < scene->option->asked->n_bearers; b++)
            draw_soles(scene, b);
        scene->layer = HS_LAYER_load;
        hs_layer_load_draw(scene);
        draw_hull(scene);
        for (int b = 0; b < scene->option->asked->n_bearers; b++)
            draw_body(scene, b);
        draw_grips(scene);
        for (int b = 0; b < scene->option->asked->n_bearers; b++)
            draw_resultant(scene, b);
        draw_marks(scene);
        hs_scene_find_spots(scene);
    }
    hs_scene_finish(scene);
    return scene;
}
