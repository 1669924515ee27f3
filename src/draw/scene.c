/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the picture consist of?
 * Answer:    a scene: the layers of layers.def are asked in order; what they add is sorted from back to front.
 * Not here:  what a layer adds (layers/), what is folded (fold.c), pixels (view.c). */
#include "scene.h"

#include "floor.h"
#include "fold.h"
#include "prims.h"
#include "translate.h"

#include <string.h>

/* Head above the neck, and where no posture is known a whole standing figure (m): only the extent uses these. */
#define HEAD_ROOM_m 0.34
#define SIDE_ROOM_m 0.30
/* A picture that travels along follows the mean floor over this much of the way on both sides: chosen by eye. */
#define STEADY_m    0.8
#define STEADY_N    8

static const struct {
    const char *name;
    gboolean is_on, has_switch;
    void (*draw)(hs_scene *scene);
} layers[HS_N_LAYERS] = {
#define LAYER(id, name, on, has_switch) {name, on, has_switch, hs_layer_##id##_draw},
#include "layers.def"
#undef LAYER
};

const char *
hs_layer_name(hs_layer layer)
{
    return _(layers[layer].name);
}

gboolean
hs_layer_has_switch(hs_layer layer)
{
    return layers[layer].has_switch;
}

guint
hs_layers_default(void)
{
    guint bits = 0;

    for (int i = 0; i < HS_N_LAYERS; i++)
        if (layers[i].is_on)
            bits |= 1u << i;
    return bits;
}

gboolean
hs_scene_layer_moves(hs_layer layer)
{
    return layer != HS_LAYER_paper && layer != HS_LAYER_site && layer != HS_LAYER_route &&
           layer != HS_LAYER_ghost;
}

static void
include(hs_scene *scene, double x_m, double z_m)
{
    if (!hs_has(x_m) || !hs_has(z_m))
        return;
    scene->least_m.x = fmin(scene->least_m.x, x_m);
    scene->least_m.y = fmin(scene->least_m.y, z_m);
    scene->most_m.x = fmax(scene->most_m.x, x_m);
    scene->most_m.y = fmax(scene->most_m.y, z_m);
}

static void
include_load(hs_scene *scene, const hs_sample *sample)
{
    hs_vec3 box[2] = {{-0.1, 0, 0}, {0.1, 0, 0.2}};
    double shift_m = hs_scene_x_of_world(scene, sample->x_m) - sample->x_m;

    hs_scene_load_box(scene->request->task, &box[0], &box[1]);
    for (int i = 0; i < 8; i++) {
        hs_vec3 at_m = {box[i & 1].x, box[i >> 1 & 1].y, box[i >> 2 & 1].z};
        hs_vec3 world_m = hs_scene_load_world(sample, at_m);

        include(scene, world_m.x + shift_m, world_m.z);
    }
}

static void
include_bearers(hs_scene *scene, const hs_sample *sample)
{
    double shift_m = hs_scene_x_of_world(scene, sample->x_m) - sample->x_m;

    for (int b = 0; b < scene->option->asked->n_bearers; b++) {
        const hs_bearer_sample *bearer = &sample->bearers[b];
        const hs_worker *worker = hs_scene_worker(scene, b);
        double x_m = bearer->feet_x_m + shift_m, floor_m = hs_or(bearer->floor_z_m, 0);
        double top_m = worker->stature_m;

        if (bearer->has_pose)
            top_m = fmax(bearer->pose[HS_POSE_NECK].y, bearer->pose[HS_POSE_SHOULDER].y) +
                    HEAD_ROOM_m;
        include(scene, x_m - SIDE_ROOM_m, floor_m);
        include(scene, x_m + SIDE_ROOM_m, floor_m + top_m);
        if (bearer->has_pose)
            for (int i = 0; i < HS_N_POSE; i++)
                include(scene,
                        x_m + cos(bearer->facing_rad) *
                                  (bearer->pose[i].x + (i == HS_POSE_NECK ? 0.2 : 0.0)),
                        floor_m);
        if (hs_has(bearer->share_N))
            scene->greatest_N = fmax(scene->greatest_N, bearer->share_N);
    }
}

/* Floor and obstacles count only as far as the way goes: a mark a mile off must not shrink the picture. */
static void
include_site(hs_scene *scene)
{
    const hs_site *site = &scene->request->task->site;
    double from_m = hs_scene_world_of_x(scene, scene->least_m.x),
           to_m = hs_scene_world_of_x(scene, scene->most_m.x);

    for (int i = 0; i < site->n_floor; i++)
        if (site->floor[i].x >= from_m && site->floor[i].x <= to_m)
            include(scene, hs_scene_x_of_world(scene, site->floor[i].x), site->floor[i].y);
    for (int i = 0; i < site->n_obstacles; i++) {
        const hs_obstacle *obstacle = &site->obstacles[i];

        if (obstacle->x_m[1] < from_m || obstacle->x_m[0] > to_m)
            continue;
        include(scene, hs_scene_x_of_world(scene, fmax(obstacle->x_m[0], from_m)),
                obstacle->z_m[0]);
        include(scene, hs_scene_x_of_world(scene, fmin(obstacle->x_m[1], to_m + 0.3)),
                fmin(obstacle->z_m[1], scene->most_m.y));
    }
}

/* The floor under the load, without the jumps of risers: what a picture that travels along follows. */
static hs_vec2
place_of(const hs_scene *scene, const hs_sample *sample)
{
    const hs_site *site = &scene->request->task->site;
    double sum_m = 0;

    for (int i = -STEADY_N; i <= STEADY_N; i++)
        sum_m += hs_floor_height_m(site, sample->x_m + i * STEADY_m / STEADY_N);
    return (hs_vec2){hs_scene_x_of_world(scene, sample->x_m), sum_m / (2 * STEADY_N + 1)};
}

static hs_vec2
least_of(hs_vec2 a, hs_vec2 b)
{
    return (hs_vec2){fmin(a.x, b.x), fmin(a.y, b.y)};
}

static hs_vec2
most_of(hs_vec2 a, hs_vec2 b)
{
    return (hs_vec2){fmax(a.x, b.x), fmax(a.y, b.y)};
}

/* The extent is that of one sample when this is called. */
static void
include_travel(hs_scene *scene, const hs_sample *sample)
{
    hs_travel *travel = &scene->travel;
    hs_vec2 at_m = place_of(scene, sample);

    travel->least_m = least_of(travel->least_m, at_m);
    travel->most_m = most_of(travel->most_m, at_m);
    travel->below_m = most_of(travel->below_m,
                              (hs_vec2){at_m.x - scene->least_m.x, at_m.y - scene->least_m.y});
    travel->above_m =
        most_of(travel->above_m, (hs_vec2){scene->most_m.x - at_m.x, scene->most_m.y - at_m.y});
    if (sample == scene->sample)
        travel->now_m = at_m;
}

static void
find_extent(hs_scene *scene)
{
    const hs_route *route = &scene->request->task->route;
    const hs_vec2 none = {INFINITY, INFINITY}, all = {-INFINITY, -INFINITY};
    hs_vec2 least_m = none, most_m = all;

    scene->travel = (hs_travel){none, all, {0, 0}, all, all, INFINITY};
    for (int b = 0; b < scene->option->asked->n_bearers; b++)
        scene->travel.stature_m =
            fmin(scene->travel.stature_m, hs_scene_worker(scene, b)->stature_m);
    for (int i = 0; i < scene->option->n_samples; i++) {
        scene->least_m = none;
        scene->most_m = all;
        include_load(scene, &scene->option->samples[i]);
        include_bearers(scene, &scene->option->samples[i]);
        include_travel(scene, &scene->option->samples[i]);
        least_m = least_of(least_m, scene->least_m);
        most_m = most_of(most_m, scene->most_m);
    }
    scene->least_m = least_m;
    scene->most_m = most_m;
    for (int i = 0; i < route->n_points; i++)
        include(scene, hs_scene_x_of_world(scene, route->points[i].x_m), route->points[i].z_m);
    include(scene, scene->least_m.x, 0);
    include_site(scene);
    scene->greatest_N =
        fmax(scene->greatest_N, scene->request->results->load.mass_kg * 9.80665);
}

static void
free_prim(gpointer data)
{
    g_free(((hs_prim *)data)->text);
}

hs_scene *
hs_scene_new(const hs_scene_request *request)
{
    hs_scene *scene = g_new0(hs_scene, 1);

    scene->prims = g_array_sized_new(FALSE, TRUE, sizeof(hs_prim), 256);
    g_array_set_clear_func(scene->prims, free_prim);
    scene->points = g_array_sized_new(FALSE, FALSE, sizeof(hs_vec2), 4096);
    scene->folds = g_array_new(FALSE, FALSE, sizeof(hs_fold));
    scene->spots = g_array_new(FALSE, FALSE, sizeof(hs_spot));
    scene->request = request;
    scene->option = &request->results->options[request->option];
    if (scene->option->n_samples > 0)
        scene->sample =
            &scene->option->samples[CLAMP(request->sample, 0, scene->option->n_samples - 1)];
    scene->alpha = 1;
    return scene;
}

/* Stable: what was added first stays behind what was added later at the same depth. */
void
hs_scene_finish(hs_scene *scene)
{
    guint n = scene->prims->len;
    hs_prim *prims = (hs_prim *)(void *)scene->prims->data;

    for (guint i = 1; i < n; i++) {
        hs_prim prim = prims[i];
        guint j = i;

        while (j > 0 && prims[j - 1].depth > prim.depth) {
            prims[j] = prims[j - 1];
            j--;
        }
        prims[j] = prim;
    }
    scene->request = NULL;
    scene->option = NULL;
    scene->sample = NULL;
}

hs_scene *
hs_scene_build(const hs_scene_request *request)
{
    hs_scene *scene = hs_scene_new(request);

    if (request->folds)
        hs_folds_find(scene);
    find_extent(scene);
    if (scene->sample)
        scene->shift_m = hs_scene_x_of_world(scene, scene->sample->x_m) - scene->sample->x_m;
    for (int i = 0; i < HS_N_LAYERS; i++) {
        scene->layer = (hs_layer)i;
        scene->depth = HS_DEPTH_PAPER;
        if ((request->layers >> i & 1u) &&
            (scene->sample || !hs_scene_layer_moves((hs_layer)i)))
            layers[i].draw(scene);
    }
    hs_scene_find_spots(scene);
    hs_scene_finish(scene);
    return scene;
}

void
hs_scene_free(hs_scene *scene)
{
    if (!scene)
        return;
    g_array_unref(scene->prims);
    g_array_unref(scene->points);
    g_array_unref(scene->folds);
    g_array_unref(scene->spots);
    g_free(scene);
}

void
hs_scene_extent(const hs_scene *scene, hs_vec2 *ret_least_m, hs_vec2 *ret_most_m)
{
    *ret_least_m = scene->least_m;
    *ret_most_m = scene->most_m;
}

static const hs_prim *
find_height(const hs_scene *scene, hs_height height)
{
    for (guint i = 0; height != HS_HEIGHT_NONE && i < scene->prims->len; i++) {
        const hs_prim *prim = &g_array_index(scene->prims, hs_prim, i);

        if (prim->height == height)
            return prim;
    }
    return NULL;
}

double
hs_scene_height_m(const hs_scene *scene, hs_height height)
{
    const hs_prim *prim = find_height(scene, height);

    return prim ? prim->to.y - prim->at.y : HS_ABSENT;
}

char *
hs_scene_height_text(const hs_scene *scene, hs_height height)
{
    const hs_prim *prim = find_height(scene, height);

    return prim ? g_strdup(prim->text) : NULL;
}

double
hs_scene_x_of_world(const hs_scene *scene, double x_m)
{
    return hs_fold_x_of_world(scene->folds, x_m);
}

double
hs_scene_world_of_x(const hs_scene *scene, double x_m)
{
    return hs_fold_world_of_x(scene->folds, x_m);
}
