/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the site look like?
 * Answer:    the walking surface with its risers and slopes, obstacles and openings with their names, break marks of folds.
 * Not here:  what is folded (fold.c). */
#include "floor.h"
#include "scene_internal.h"
#include "shape.h"
#include "translate.h"

/* How high above people an opening's name still stands: what a view leaves above them. */
#define LINTEL_m 0.2

static void
draw_ground(hs_scene *scene)
{
    const hs_site *site = &scene->request->task->site;
    g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(hs_vec2));
    hs_vec2 first_m = hs_scene_fixed(scene, scene->least_m.x - 1, 0);

    if (site->n_floor == 0) {
        hs_vec2 last_m = {scene->most_m.x + 1, 0};

        g_array_append_val(points, first_m);
        g_array_append_val(points, last_m);
    }
    for (int i = 0; i < site->n_floor; i++) {
        hs_vec2 at_m = hs_scene_fixed(scene, site->floor[i].x, site->floor[i].y);

        g_array_append_val(points, at_m);
    }
    scene->depth = HS_DEPTH_GROUND;
    hs_prim *prim = hs_scene_add(scene, HS_PRIM_GROUND);

    g_array_append_vals(scene->points, points->data, points->len);
    prim->n = (int)points->len;
    prim->stroke = HS_INK_INK;
    prim->fill = HS_INK_FLOOR;
    prim->weight = 1.6;
}

static void
draw_obstacle(hs_scene *scene, const hs_obstacle *obstacle)
{
    hs_vec2 a = hs_scene_fixed(scene, obstacle->x_m[0], obstacle->z_m[0]),
            b = hs_scene_fixed(scene, obstacle->x_m[1], obstacle->z_m[1]);
    hs_vec2 corners_m[4] = {a, {b.x, a.y}, b, {a.x, b.y}};

    scene->depth = HS_DEPTH_SITE;
    hs_prim *shape = hs_scene_add_shape(scene, corners_m, 4, HS_INK_SOFT, HS_INK_FLOOR);

    shape->weight = 1.2;
    if (obstacle->name && *obstacle->name) {
        /* inside at its middle where there is room; the label finds another place where not */
        hs_vec2 at_m = {(fmax(a.x, scene->least_m.x) + fmin(b.x, scene->most_m.x)) / 2,
                        a.y + (b.y - a.y) * 0.5};
        hs_prim *label = hs_scene_add_label(scene, at_m, HS_SIDE_OVER, HS_INK_SOFT,
                                            g_strdup(obstacle->name));

        label->is_small = TRUE;
        label->priority = 2;
    }
}

static void
draw_opening(hs_scene *scene, const hs_opening *opening)
{
    double floor_m = hs_floor_height_m(&scene->request->task->site, opening->x_m);
    hs_vec2 foot_m = hs_scene_fixed(scene, opening->x_m, floor_m);
    double head_m =
        hs_has(opening->height_m) ? floor_m + opening->height_m : scene->most_m.y + 0.1;
    hs_vec2 top_m = {foot_m.x, head_m};

    scene->depth = HS_DEPTH_SITE;
    hs_scene_add_segment(scene, foot_m, top_m, HS_INK_SOFT, 1.2, HS_DASH_LONG);
    if (hs_has(opening->height_m)) {
        hs_vec2 wall_m[4] = {{top_m.x - 0.04, head_m},
                             {top_m.x + 0.04, head_m},
                             {top_m.x + 0.04, head_m + 0.35},
                             {top_m.x - 0.04, head_m + 0.35}};

        hs_scene_add_shape(scene, wall_m, 4, HS_INK_SOFT, HS_INK_FLOOR)->weight = 1.2;
    }
    GString *text = g_string_new(opening->name ? opening->name : _("opening"));

    if (hs_has(opening->width_m)) {
        g_autofree char *width = hs_scene_text(scene, opening->width_m, "m");

        g_string_append(text, ", ");
        g_string_append_printf(text, _("%s wide"), width);
    }
    hs_prim *label =
        hs_scene_add_label(scene, (hs_vec2){top_m.x, fmin(head_m, scene->most_m.y + LINTEL_m)},
                           HS_SIDE_RIGHT, HS_INK_SOFT, g_string_free(text, FALSE));

    label->is_small = TRUE;
    label->priority = 1;
}

static void
draw_fold(hs_scene *scene, const hs_fold *fold)
{
    double middle_m = (fold->from_m + fold->to_m) / 2,
           z_m = hs_floor_height_m(&scene->request->task->site, middle_m);
    hs_vec2 at_m = hs_scene_fixed(scene, middle_m, z_m);
    g_autofree char *length = hs_scene_text(scene, fold->removed_m, "m");

    scene->depth = HS_DEPTH_SITE;
    hs_prim *mark = hs_scene_add(scene, HS_PRIM_BREAK);

    mark->at = at_m;
    mark->stroke = HS_INK_INK;
    mark->fill = HS_INK_PAPER;
    hs_prim *label = hs_scene_add_label(scene, at_m, HS_SIDE_BELOW, HS_INK_SOFT,
                                        g_strdup_printf(_("%s of level way left out"), length));

    label->offset = (hs_vec2){0, 2.6};
    label->is_small = TRUE;
    label->priority = 3;
}

static void
draw_headroom(hs_scene *scene)
{
    const hs_site *site = &scene->request->task->site;
    double z_m = hs_floor_height_m(site, 0) + site->headroom_m;

    if (!hs_has(site->headroom_m) || z_m > scene->most_m.y + 0.6)
        return;
    scene->depth = HS_DEPTH_SITE;
    hs_scene_add_segment(scene, (hs_vec2){scene->least_m.x - 5, z_m},
                         (hs_vec2){scene->most_m.x + 5, z_m}, HS_INK_LIMIT, 1.2, HS_DASH_LONG);
    g_autofree char *height = hs_scene_text(scene, site->headroom_m, "m");
    hs_prim *label = hs_scene_add_label(scene, (hs_vec2){scene->most_m.x, z_m}, HS_SIDE_ABOVE,
                                        HS_INK_SOFT, g_strdup_printf(_("headroom %s"), height));

    label->is_small = TRUE;
}

void
hs_layer_site_draw(hs_scene *scene)
{
    const hs_site *site = &scene->request->task->site;

    draw_ground(scene);
    for (int i = 0; i < site->n_obstacles; i++)
        draw_obstacle(scene, &site->obstacles[i]);
    for (int i = 0; i < site->n_openings; i++)
        draw_opening(scene, &site->openings[i]);
    draw_headroom(scene);
    for (guint i = 0; i < scene->folds->len; i++)
        draw_fold(scene, &g_array_index(scene->folds, hs_fold, i));
}
