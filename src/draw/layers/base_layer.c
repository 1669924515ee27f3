/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the sum of all forces meet the floor, and how far is it to the edge?
 * Answer:    a bar under the soles with its usable part thick, a peak under the resultant, the margin in words.
 * Not here:  the polygon in plan (plan.c). */
#include "scene_internal.h"
#include "translate.h"

/* The usable part of the base: results are judged at this scale about the centroid (file format, section balance). */
#define USABLE 0.8

static double
centroid_x_m(const hs_vec2 *corners_m, int n)
{
    double twice = 0, sum = 0;

    for (int i = 0; i < n; i++) {
        hs_vec2 a = corners_m[i], b = corners_m[(i + 1) % n];
        double cross = a.x * b.y - b.x * a.y;

        twice += cross;
        sum += (a.x + b.x) * cross;
    }
    return fabs(twice) > 1e-12 ? sum / (3 * twice) : corners_m[0].x;
}

static void
draw_bar(hs_scene *scene, hs_vec2 from_m, hs_vec2 to_m, double weight)
{
    hs_prim *bar = hs_scene_add(scene, HS_PRIM_BAR);

    bar->at = from_m;
    bar->to = to_m;
    bar->offset = (hs_vec2){0, 0.62};
    bar->weight = weight;
    bar->stroke = HS_INK_MARK;
}

static void
draw_label(hs_scene *scene, int b, hs_vec2 at_m, double margin_m)
{
    g_autofree char *length = hs_scene_text_mm(scene, fabs(margin_m));
    g_autofree char *text =
        g_strdup_printf(margin_m < 0 ? _("%s over the edge") : _("%s to the edge"), length);
    gboolean is_crew = scene->option->asked->n_bearers > 1;
    hs_prim *label = hs_scene_add_label(
        scene, at_m, HS_SIDE_BELOW, HS_INK_INK,
        is_crew ? g_strdup_printf("%s %s", hs_scene_bearer_id(scene, b), text)
                : g_strdup(text));

    label->offset = (hs_vec2){0, 1.62};
    label->is_small = is_crew;
    label->priority = 5;
}

void
hs_layer_base_draw(hs_scene *scene)
{
    for (int b = 0; b < scene->option->asked->n_bearers; b++) {
        const hs_bearer_sample *bearer = &scene->sample->bearers[b];
        double least_m = INFINITY, most_m = -INFINITY, floor_m = hs_or(bearer->floor_z_m, 0);

        if (bearer->n_base < 3)
            continue;
        for (int i = 0; i < bearer->n_base; i++) {
            least_m = fmin(least_m, bearer->base_m[i].x);
            most_m = fmax(most_m, bearer->base_m[i].x);
        }
        double middle_m = centroid_x_m(bearer->base_m, bearer->n_base);

        scene->depth = HS_DEPTH_MARK;
        draw_bar(scene, hs_scene_moving(scene, least_m, floor_m),
                 hs_scene_moving(scene, most_m, floor_m), 1);
        draw_bar(scene,
                 hs_scene_moving(scene, middle_m + (least_m - middle_m) * USABLE, floor_m),
                 hs_scene_moving(scene, middle_m + (most_m - middle_m) * USABLE, floor_m), 4.5);
        if (!hs_has(bearer->resultant_m.x))
            continue;
        hs_vec2 at_m = hs_scene_moving(scene, bearer->resultant_m.x, floor_m);
        hs_prim *peak = hs_scene_add(scene, HS_PRIM_PEAK);

        peak->at = at_m;
        peak->offset = (hs_vec2){0, 0.85};
        peak->fill = HS_INK_MARK;
        if (hs_has(bearer->balance_margin_m))
            draw_label(scene, b, at_m, bearer->balance_margin_m);
    }
}
