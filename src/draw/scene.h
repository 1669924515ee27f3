/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the picture consist of?
 * Answer:    a scene: primitives in metres with a role and a layer, no colours yet; made by the layers in order.
 * Not here:  pixels (view.h), colours (theme.h), strokes (paint.h). */
#ifndef HS_SCENE_H
#define HS_SCENE_H

#include "result.h"

#include <glib.h>

typedef enum {
#define LAYER(id, name, on, has_switch) HS_LAYER_##id,
#include "layers.def"
#undef LAYER
    HS_N_LAYERS
} hs_layer;

const char *hs_layer_name(hs_layer layer); /* translated */
gboolean hs_layer_has_switch(hs_layer layer);
guint hs_layers_default(void); /* bits of the layers that are on at first */

typedef struct hs_scene hs_scene;

/* What a scene is made from. Strings and arrays are only read while it is built. */
typedef struct {
    const hs_task *task;
    const hs_results *results;
    int option;         /* index into results->options */
    int sample;         /* index into that option's samples */
    guint layers;       /* bit i: layer i is on */
    int chosen_point;   /* -1 none: the point with its two dimensions */
    int n_pale;         /* the last bearers, who would join, are pale */
    gboolean power_off; /* show this instant with the suit's power lost */
    gboolean folds;     /* fold level carry legs over 2 m with a break mark */
    gboolean us_units;
    gboolean for_print; /* labels as on paper */
    gboolean
        few_labels; /* a small picture: not what the floor carries, not how far hands fall short */
} hs_scene_request;

hs_scene *hs_scene_build(const hs_scene_request *request);
void hs_scene_free(hs_scene *scene);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(hs_scene, hs_scene_free)

/* What must be seen (m, drawing coordinates after folding: x along, y up): load, people, floor over the whole route. */
void hs_scene_extent(const hs_scene *scene, hs_vec2 *ret_least_m, hs_vec2 *ret_most_m);
/* Drawing coordinate of a world x and back (they differ only where a long way is folded). */
double hs_scene_x_of_world(const hs_scene *scene, double x_m);
double hs_scene_world_of_x(const hs_scene *scene, double x_m);

/* The heights that are drawn for the chosen point, over the floor under it. */
typedef enum {
    HS_HEIGHT_NONE,
    HS_HEIGHT_BASE, /* of the load's base */
    HS_HEIGHT_HANDS,
    HS_N_HEIGHTS
} hs_height;
/* HS_ABSENT where it is not drawn. */
double hs_scene_height_m(const hs_scene *scene, hs_height height);
char *hs_scene_height_text(const hs_scene *scene, hs_height height); /* as drawn, new; NULL */

/* The plan view (who stands where, grips, CG, polygon, turning) of the same instant. */
hs_scene *hs_plan_build(const hs_scene_request *request);

/* The scene as text, rounded to 1 mm and 1 N: goldens and speech. */
char *hs_scene_dump(const hs_scene *scene);

typedef enum {
    HS_SPOT_POINT,
    HS_SPOT_GRIP,
    HS_SPOT_FEET,
    HS_SPOT_BEARER
} hs_spot_kind;

/* Something that can be grabbed; index: of the route's point, the load's grip, the option's bearer. */
typedef struct {
    hs_spot_kind kind;
    int index;
    hs_vec2 at_m;            /* drawing coordinates */
    hs_vec2 least_m, most_m; /* bearers: the body's box; else at_m */
} hs_spot;

/* In order of precedence: points lie above grips, grips above feet, feet above bodies. */
const hs_spot *hs_scene_spots(const hs_scene *scene, int *ret_n);

#endif
