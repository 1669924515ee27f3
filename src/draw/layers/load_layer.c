/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the load look like?
 * Answer:    each part to scale as it is turned; voids and hidden bores dashed; the liquid's level; the grips.
 * Not here:  its weight (weight_layer.c), where it will be (ghost_layer.c). */
#include "figure.h"
#include "grip_mark.h"
#include "solid.h"

/* A load that hides a body is drawn so that the body shows through (chosen by eye). */
#define HIDING_ALPHA 0.72

static void
draw_bore(hs_scene *scene, const hs_projection *projection, const hs_part *part)
{
    hs_outline outline;
    gboolean is_seen = hs_solid_is_end_on(projection, part);

    if (!hs_solid_outline(projection, part, part->inner_radius_m, &outline))
        return;
    hs_prim *prim = hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_LOAD_LINE,
                                       is_seen ? HS_INK_PAPER : HS_INK_NONE);

    prim->weight = is_seen ? 1.2 : 0.8;
    prim->dash = is_seen ? HS_DASH_NONE : HS_DASH_SHORT;
}

/* The surface is level whatever the pitch: a horizontal line through the middle of the surface at rest, inside the outline. */
static void
draw_liquid(hs_scene *scene,
            const hs_projection *projection,
            const hs_part *part,
            const hs_outline *outline)
{
    double half_m = part->shape == HS_SHAPE_BOX ? part->size_m.z / 2
                    : part->axis == HS_AXIS_Z   ? part->length_m / 2
                                                : part->radius_m;
    hs_vec2 level_m =
        hs_project(projection, hs_solid_world(projection, part,
                                              (hs_vec3){0, 0, part->liquid_depth_m - half_m}));
    double left_m = INFINITY, right_m = -INFINITY;

    for (int i = 0; i < outline->n; i++) {
        hs_vec2 a = outline->at[i], b = outline->at[(i + 1) % outline->n];

        if ((a.y - level_m.y) * (b.y - level_m.y) > 0 || fabs(a.y - b.y) < 1e-9)
            continue;
        double x_m = a.x + (b.x - a.x) * (level_m.y - a.y) / (b.y - a.y);

        left_m = fmin(left_m, x_m);
        right_m = fmax(right_m, x_m);
    }
    if (!(right_m > left_m))
        return;
    hs_vec2 mark_m[3] = {{level_m.x - 0.018, level_m.y + 0.032},
                         {level_m.x + 0.018, level_m.y + 0.032},
                         {level_m.x, level_m.y}};

    hs_scene_add_segment(scene, (hs_vec2){left_m, level_m.y}, (hs_vec2){right_m, level_m.y},
                         HS_INK_LOAD_LINE, 1.4, HS_DASH_NONE);
    for (int k = 1; k <= 3; k++) {
        double half = (right_m - left_m) * (0.30 - 0.08 * k), y_m = level_m.y - 0.014 * k;

        hs_scene_add_segment(scene, (hs_vec2){level_m.x - half, y_m},
                             (hs_vec2){level_m.x + half, y_m}, HS_INK_LOAD_LINE, 0.8,
                             HS_DASH_NONE);
    }
    hs_scene_add_shape(scene, mark_m, 3, HS_INK_LOAD_LINE, HS_INK_PAPER)->weight = 0.9;
}

static gboolean
is_inside(const hs_outline *outline, hs_vec2 at_m)
{
    gboolean is_in = FALSE;

    for (int i = 0, j = outline->n - 1; i < outline->n; j = i++) {
        hs_vec2 a = outline->at[i], b = outline->at[j];

        if ((a.y > at_m.y) != (b.y > at_m.y) &&
            at_m.x < a.x + (b.x - a.x) * (at_m.y - a.y) / (b.y - a.y))
            is_in = !is_in;
    }
    return is_in;
}

/* Hip and shoulder of one bearer behind the part: no more than arms and legs would be seen. */
static gboolean
hides_somebody(const hs_scene *scene, const hs_outline *outline)
{
    for (int b = 0; !scene->is_plan && b < scene->option->asked->n_bearers; b++) {
        hs_figure figure;

        hs_figure_make(scene, b, &figure);
        if (is_inside(outline, figure.at[HS_POSE_HIP]) &&
            is_inside(outline, figure.at[HS_POSE_SHOULDER]))
            return TRUE;
    }
    return FALSE;
}

static void
draw_part(hs_scene *scene, const hs_projection *projection, const hs_part *part)
{
    hs_outline outline, faces[3];

    if (!hs_solid_outline(projection, part, 0, &outline)) {
        hs_scene_add_disc(
            scene,
            hs_project(projection, hs_scene_load_world(projection->sample, part->centre_m)),
            0.22, HS_INK_LOAD_LINE, HS_INK_LOAD_LINE);
        return;
    }
    hs_prim *shape = hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_LOAD_LINE,
                                        part->is_void ? HS_INK_NONE : HS_INK_LOAD);

    shape->weight = part->is_void ? 1.0 : 1.6;
    shape->dash = part->is_void ? HS_DASH_SHORT : HS_DASH_NONE;
    if (part->is_void)
        return;
    if (hides_somebody(scene, &outline))
        shape->alpha *= HIDING_ALPHA;
    int n_faces = hs_solid_faces(projection, part, faces);

    for (int i = 0; n_faces > 1 && i < n_faces; i++)
        hs_scene_add_shape(scene, faces[i].at, faces[i].n, HS_INK_LOAD_LINE, HS_INK_NONE)
            ->weight = 0.8;
    if (part->shape == HS_SHAPE_TUBE && part->inner_radius_m > 0)
        draw_bore(scene, projection, part);
    if (part->has_liquid)
        draw_liquid(scene, projection, part, &outline);
}

typedef struct {
    int part;
    double away_m;
} order;

static int
farthest_first(const void *a, const void *b)
{
    const order *p = a, *q = b;

    if (fabs(p->away_m - q->away_m) > 1e-9)
        return p->away_m > q->away_m ? -1 : 1;
    return p->part - q->part;
}

void
hs_layer_load_draw(hs_scene *scene)
{
    const hs_load *load = &scene->request->task->load;
    hs_projection projection = {scene->is_plan ? HS_LOOK_DOWN : HS_LOOK_ALONG_Y, scene->sample,
                                scene->shift_m};
    g_autofree order *orders = g_new0(order, (gsize)load->n_parts + 1);

    for (int i = 0; i < load->n_parts; i++) {
        hs_vec3 world_m = hs_scene_load_world(scene->sample, load->parts[i].centre_m);

        orders[i] = (order){i, scene->is_plan ? -world_m.z : world_m.y};
        if (load->parts[i].is_void) /* over everything: it is inside */
            orders[i].away_m = -INFINITY;
    }
    qsort(orders, (size_t)load->n_parts, sizeof *orders, farthest_first);
    scene->depth = HS_DEPTH_LOAD;
    for (int i = 0; i < load->n_parts; i++)
        draw_part(scene, &projection, &load->parts[orders[i].part]);
    for (int i = 0; i < load->n_grips; i++)
        hs_grip_mark_draw(scene, &projection, &load->grips[i]);
}
