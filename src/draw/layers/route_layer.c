/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which way does the load go?
 * Answer:    the line of the middle of its base with the numbered points; a chosen point has its two heights.
 * Not here:  the load at the points (ghost_layer.c), moving points by hand (app). */
#include "floor.h"
#include "scene_internal.h"
#include "shape.h"
#include "translate.h"

static void
draw_line(hs_scene *scene)
{
    g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(hs_vec2));
    const hs_route *route = &scene->request->task->route;

    for (int i = 0; i < scene->option->n_samples; i++) {
        const hs_sample *sample = &scene->option->samples[i];
        hs_vec2 at_m = hs_scene_fixed(scene, sample->x_m, sample->z_m);

        g_array_append_val(points, at_m);
    }
    if (points->len < 2) {
        g_array_set_size(points, 0);
        for (int i = 0; i < route->n_points; i++) {
            hs_vec2 at_m = hs_scene_fixed(scene, route->points[i].x_m, route->points[i].z_m);

            g_array_append_val(points, at_m);
        }
    }
    if (points->len >= 2)
        hs_scene_add_line(scene, (const hs_vec2 *)(void *)points->data, (int)points->len,
                          HS_INK_INK, 1.8, HS_DASH_DOT);
}

/* Middle of the bearers' grips over the middle of the base, at the level attitude: what the hands' height adds. */
static double
hands_over_base_m(const hs_scene *scene)
{
    const hs_option *option = scene->option->asked;
    double sum_m = 0;
    int n = 0;

    for (int b = 0; b < option->n_bearers; b++)
        for (int g = 0; g < option->bearers[b].n_grips; g++, n++)
            sum_m += scene->request->task->load.grips[option->bearers[b].grips[g]].at_m.z;
    return n > 0 ? sum_m / n : 0;
}

static void
draw_heights(hs_scene *scene, const hs_point *point)
{
    double floor_m = hs_floor_height_m(&scene->request->task->site, point->x_m);
    hs_vec2 base_m = hs_scene_fixed(scene, point->x_m, point->z_m);
    double hands_m = base_m.y + hands_over_base_m(scene);

    hs_prim *base =
        hs_scene_add_dimension(scene, (hs_vec2){base_m.x, floor_m}, base_m, TRUE, _("base %s"));

    base->offset = (hs_vec2){1.6, 0};
    base->height = HS_HEIGHT_BASE;
    if (hands_m - base_m.y > 0.005) {
        hs_prim *hands =
            hs_scene_add_dimension(scene, (hs_vec2){base_m.x, floor_m},
                                   (hs_vec2){base_m.x, hands_m}, TRUE, _("hands %s"));

        hands->offset = (hs_vec2){-1.6, 0};
        hands->height = HS_HEIGHT_HANDS;
    }
}

/* Heights of the first bearer's knuckles, elbows and shoulders, standing: parts of stature as in figure.c. */
static void
draw_ruler(hs_scene *scene)
{
    static const struct {
        double part;
        const char *name;
    } marks[] = {{0.470, N_("knuckle")}, {0.635, N_("elbow")}, {0.818, N_("shoulder")}};
    const hs_worker *worker;

    if (scene->option->asked->n_bearers < 1)
        return;
    worker = hs_scene_worker(scene, 0);
    for (guint i = 0; i < G_N_ELEMENTS(marks); i++) {
        double up_m = marks[i].part * worker->stature_m;
        g_autofree char *height = hs_scene_text(scene, up_m, "m");
        hs_prim *mark = hs_scene_add(scene, HS_PRIM_RULER);

        mark->at = (hs_vec2){0, up_m};
        mark->stroke = HS_INK_SOFT;
        mark->text = g_strdup_printf("%s %s", _(marks[i].name), height);
    }
}

void
hs_layer_route_draw(hs_scene *scene)
{
    const hs_route *route = &scene->request->task->route;
    int chosen = scene->request->chosen_point;

    scene->depth = HS_DEPTH_ROUTE;
    draw_line(scene);
    for (int i = 0; i < route->n_points; i++) {
        hs_vec2 at_m = hs_scene_fixed(scene, route->points[i].x_m, route->points[i].z_m);
        hs_prim *disc = hs_scene_add_disc(scene, at_m, i == chosen ? 0.42 : 0.32, HS_INK_INK,
                                          i == chosen ? HS_INK_INK : HS_INK_PAPER);

        disc->weight = 1.4;
        hs_prim *label = hs_scene_add_label(scene, at_m, HS_SIDE_RIGHT, HS_INK_SOFT,
                                            g_strdup_printf("%d", i + 1));

        label->offset = (hs_vec2){0.5, -0.5};
        label->is_small = TRUE;
        label->priority = 4;
    }
    if (chosen >= 0 && chosen < route->n_points) {
        draw_heights(scene, &route->points[chosen]);
        draw_ruler(scene);
    }
}
