/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is a scene made of, and how do the layers add to it?
 * Answer:    hs_prim, one thing to draw in metres, and hs_scene_add_*() for each kind.
 * Not here:  what the window may see of it (scene.h). */
#ifndef HS_SCENE_INTERNAL_H
#define HS_SCENE_INTERNAL_H

#include "scene.h"

/* What a thing is, not how it looks: theme.c gives each a colour. */
typedef enum {
    HS_INK_NONE = 0,
    HS_INK_PAPER,
    HS_INK_GRID,
    HS_INK_INK,
    HS_INK_SOFT,
    HS_INK_FLOOR,
    HS_INK_LOAD,
    HS_INK_LOAD_LINE,
    HS_INK_BODY,
    HS_INK_BODY_FAR,
    HS_INK_BODY_LINE,
    HS_INK_PERSON,
    HS_INK_SUIT,
    HS_INK_SUIT_FILL,
    HS_INK_WEIGHT,
    HS_INK_LIMIT,
    HS_INK_MARK,
    HS_N_INKS
} hs_ink;

typedef enum {
    HS_DASH_NONE = 0,
    HS_DASH_LONG,
    HS_DASH_SHORT,
    HS_DASH_DOT
} hs_dash;

typedef enum {
    HS_PRIM_LINE,      /* points: open line */
    HS_PRIM_SHAPE,     /* points: closed and filled; shapes of one group share one outline */
    HS_PRIM_DISC,      /* at: circle of `size` times the type's height */
    HS_PRIM_CG,        /* at: quartered circle */
    HS_PRIM_ARROW,     /* at: force_N from there, to the common scale */
    HS_PRIM_LABEL,     /* at, moved by force_N and offset: text that finds its own free place */
    HS_PRIM_DIMENSION, /* at .. to: measured along x or along z, text is the length */
    HS_PRIM_GRID,      /* the whole surface */
    HS_PRIM_GROUND, /* points: surface of the ground from left to right, goes on at both ends and below */
    HS_PRIM_BAND,   /* points: line whose thickness is `size` newtons to scale */
    HS_PRIM_PEAK,   /* at: triangle with its tip there, pointing up */
    HS_PRIM_BAR,    /* at .. to: thick bar, `offset` under it */
    HS_PRIM_BREAK,  /* at: break mark across the ground */
    HS_PRIM_SCALES, /* bars of length and force in the lower left corner */
    HS_PRIM_RULER,  /* height ruler at the left edge; points: marks */
    HS_N_PRIMS
} hs_prim_kind;

typedef enum {
    HS_ARROW_PERSON,
    HS_ARROW_SUIT,
    HS_ARROW_WEIGHT
} hs_arrow_style;

/* Where a label would like to be, seen from its anchor. */
typedef enum {
    HS_SIDE_RIGHT = 0,
    HS_SIDE_ABOVE,
    HS_SIDE_LEFT,
    HS_SIDE_BELOW,
    HS_SIDE_OVER /* centred on the anchor */
} hs_side;

typedef struct {
    hs_prim_kind kind;
    hs_layer layer;
    int depth; /* back to front, whatever the order of the layers */
    hs_ink stroke, fill;
    hs_dash dash;
    double weight;  /* line thickness, 1 = the theme's line */
    double alpha;   /* of the fill */
    int first, n;   /* points */
    int group;      /* 0: alone */
    hs_vec2 at, to; /* m */
    hs_vec2 force_N;
    hs_vec2 offset; /* in heights of the label type, x right, y down */
    double size;
    hs_arrow_style style;
    hs_side side;
    gboolean is_bold, is_small, is_upright, is_hidden; /* is_upright: a dimension along z */
    int priority;                                      /* labels: the greater is placed first */
    hs_height height;                                  /* dimensions: which height it is */
    char *text;
} hs_prim;

typedef struct {
    double from_m, to_m, removed_m; /* world x; what is left out between them */
} hs_fold;

/* The load's place on the surface (drawing x, floor under it), over the whole option and now, and how far load and people
 * reach from there: behind and below (positive), ahead and above. */
typedef struct {
    hs_vec2 least_m, most_m, now_m, below_m, above_m;
    double stature_m; /* of the shortest */
} hs_travel;

struct hs_scene {
    GArray *prims;  /* hs_prim */
    GArray *points; /* hs_vec2 */
    GArray *folds;  /* hs_fold, rising */
    GArray *spots;  /* hs_spot: what can be grabbed */
    hs_vec2 least_m, most_m;
    double greatest_N; /* of the whole option: sets the force scale */
    hs_travel travel;
    gboolean is_plan;

    /* while it is built */
    const hs_scene_request *request;
    const hs_option_result *option;
    const hs_sample *sample;
    hs_layer layer;
    int depth, group, n_groups;
    double alpha;
    double
        shift_m; /* drawing x less world x of the load: bodies and load are moved as one, so they stay to scale */
};

/* Depths, back to front. */
enum {
    HS_DEPTH_PAPER = 0,
    HS_DEPTH_GROUND = 10,
    HS_DEPTH_SITE = 15,
    HS_DEPTH_GHOST = 20,
    HS_DEPTH_ROUTE = 25,
    HS_DEPTH_BACK = 30, /* figures behind the load, far limbs */
    HS_DEPTH_SUIT_BACK = 34,
    HS_DEPTH_BODY = 36,
    HS_DEPTH_SUIT = 44,
    HS_DEPTH_LOAD = 50,
    HS_DEPTH_NEAR = 60, /* near arms */
    HS_DEPTH_SUIT_NEAR = 64,
    HS_DEPTH_FRONT = 66, /* figures before the load */
    HS_DEPTH_PATH = 70,
    HS_DEPTH_FORCE = 80,
    HS_DEPTH_MARK = 90
};

/* Each returns the new thing; valid until the next one is added. Points are copied, texts are taken over. */
hs_prim *hs_scene_add(hs_scene *scene, hs_prim_kind kind);
hs_prim *hs_scene_add_line(hs_scene *scene,
                           const hs_vec2 *points_m,
                           int n,
                           hs_ink stroke,
                           double weight,
                           hs_dash dash);
hs_prim *hs_scene_add_segment(
    hs_scene *scene, hs_vec2 a_m, hs_vec2 b_m, hs_ink stroke, double weight, hs_dash dash);
hs_prim *
hs_scene_add_shape(hs_scene *scene, const hs_vec2 *points_m, int n, hs_ink stroke, hs_ink fill);
hs_prim *
hs_scene_add_disc(hs_scene *scene, hs_vec2 at_m, double size, hs_ink stroke, hs_ink fill);
hs_prim *
hs_scene_add_arrow(hs_scene *scene, hs_vec2 at_m, hs_vec2 force_N, hs_arrow_style style);
hs_prim *
hs_scene_add_label(hs_scene *scene, hs_vec2 at_m, hs_side side, hs_ink ink, char *text_taken);
/* The text is made from the drawn length: they cannot differ. format_m NULL: the length alone; else "%s" takes it. */
hs_prim *hs_scene_add_dimension(
    hs_scene *scene, hs_vec2 at_m, hs_vec2 to_m, gboolean is_upright, const char *format_m);
void hs_scene_begin_group(hs_scene *scene);
void hs_scene_end_group(hs_scene *scene);

/* Figures as people read them; the one door to quantity.c. New strings. */
char *hs_scene_text(const hs_scene *scene, double value, const char *unit);
char *hs_scene_text_mm(const hs_scene *scene, double value_m);
/* A translated phrase with its one %s filled. */
char *hs_scene_phrase(const char *phrase, const char *figure);

/* World to drawing: things that stand on the way, and things that move with the load. */
hs_vec2 hs_scene_fixed(const hs_scene *scene, double x_m, double z_m);
hs_vec2 hs_scene_moving(const hs_scene *scene, double x_m, double z_m);
/* Load frame to drawing at a sample. */
hs_vec3 hs_scene_load_world(const hs_sample *sample, hs_vec3 load_m);
/* Middle of a bearer's grips. */
hs_vec2 hs_scene_hands(const hs_scene *scene, int bearer);
/* Outline of the load in its own frame; FALSE when nothing but points is known. */
gboolean hs_scene_load_box(const hs_task *task, hs_vec3 *ret_least_m, hs_vec3 *ret_most_m);
gboolean hs_scene_layer_moves(hs_layer layer);
const hs_worker *hs_scene_worker(const hs_scene *scene, int bearer);
const hs_suit *hs_scene_suit(const hs_scene *scene, int bearer);
const char *hs_scene_bearer_id(const hs_scene *scene, int bearer);

#define LAYER(id, name, on, has_switch) void hs_layer_##id##_draw(hs_scene *scene);
#include "layers.def"
#undef LAYER

#endif
