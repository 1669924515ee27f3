/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the layers add to a scene?
 * Answer:    hs_scene_add_*(), and the ways from world and load to drawing coordinates.
 * Not here:  what is added (layers/). */
#include "prims.h"

#include "load.h"
#include "quantity.h"
#include "shape.h"

hs_prim *
hs_scene_add(hs_scene *scene, hs_prim_kind kind)
{
    hs_prim prim = {.kind = kind,
                    .layer = scene->layer,
                    .depth = scene->depth,
                    .weight = 1,
                    .alpha = scene->alpha,
                    .group = scene->group,
                    .first = (int)scene->points->len};

    g_array_append_val(scene->prims, prim);
    return &g_array_index(scene->prims, hs_prim, scene->prims->len - 1);
}

static hs_prim *
add_points(hs_scene *scene, hs_prim_kind kind, const hs_vec2 *points_m, int n)
{
    hs_prim *prim = hs_scene_add(scene, kind);

    g_array_append_vals(scene->points, points_m, (guint)n);
    prim->n = n;
    return prim;
}

hs_prim *
hs_scene_add_line(
    hs_scene *scene, const hs_vec2 *points_m, int n, hs_ink stroke, double weight, hs_dash dash)
{
    hs_prim *prim = add_points(scene, HS_PRIM_LINE, points_m, n);

    prim->stroke = stroke;
    prim->weight = weight;
    prim->dash = dash;
    return prim;
}

hs_prim *
hs_scene_add_segment(
    hs_scene *scene, hs_vec2 a_m, hs_vec2 b_m, hs_ink stroke, double weight, hs_dash dash)
{
    hs_vec2 points_m[2] = {a_m, b_m};

    return hs_scene_add_line(scene, points_m, 2, stroke, weight, dash);
}

hs_prim *
hs_scene_add_shape(hs_scene *scene, const hs_vec2 *points_m, int n, hs_ink stroke, hs_ink fill)
{
    hs_prim *prim = add_points(scene, HS_PRIM_SHAPE, points_m, n);

    prim->stroke = stroke;
    prim->fill = fill;
    return prim;
}

hs_prim *
hs_scene_add_disc(hs_scene *scene, hs_vec2 at_m, double size, hs_ink stroke, hs_ink fill)
{
    hs_prim *prim = hs_scene_add(scene, HS_PRIM_DISC);

    prim->at = at_m;
    prim->size = size;
    prim->stroke = stroke;
    prim->fill = fill;
    return prim;
}

hs_prim *
hs_scene_add_arrow(hs_scene *scene, hs_vec2 at_m, hs_vec2 force_N, hs_arrow_style style)
{
    static const hs_ink inks[] = {HS_INK_PERSON, HS_INK_SUIT, HS_INK_WEIGHT};
    hs_prim *prim = hs_scene_add(scene, HS_PRIM_ARROW);

    prim->at = at_m;
    prim->force_N = force_N;
    prim->style = style;
    prim->stroke = inks[style];
    return prim;
}

hs_prim *
hs_scene_add_label(hs_scene *scene, hs_vec2 at_m, hs_side side, hs_ink ink, char *text_taken)
{
    hs_prim *prim = hs_scene_add(scene, HS_PRIM_LABEL);

    prim->at = at_m;
    prim->side = side;
    prim->stroke = ink;
    prim->text = text_taken;
    return prim;
}

hs_prim *
hs_scene_add_dimension(
    hs_scene *scene, hs_vec2 at_m, hs_vec2 to_m, gboolean is_upright, const char *format_m)
{
    double length_m = is_upright ? fabs(to_m.y - at_m.y) : fabs(to_m.x - at_m.x);
    g_autofree char *length = hs_scene_text(scene, length_m, "m");
    hs_prim *prim = hs_scene_add(scene, HS_PRIM_DIMENSION);

    prim->at = at_m;
    prim->to = to_m;
    prim->is_upright = is_upright;
    prim->stroke = HS_INK_SOFT;
    prim->text = format_m ? hs_scene_phrase(format_m, length) : g_steal_pointer(&length);
    return prim;
}

void
hs_scene_begin_group(hs_scene *scene)
{
    scene->group = ++scene->n_groups;
}

void
hs_scene_end_group(hs_scene *scene)
{
    scene->group = 0;
}

char *
hs_scene_text(const hs_scene *scene, double value, const char *unit)
{
    return hs_quantity_text(value, unit, scene->request->us_units ? HS_UNITS_US : HS_UNITS_SI);
}

char *
hs_scene_phrase(const char *phrase, const char *figure)
{
    GString *text = g_string_new(phrase);

    g_string_replace(text, "%s", figure, 1);
    return g_string_free(text, FALSE);
}

char *
hs_scene_text_mm(const hs_scene *scene, double value_m)
{
    return hs_scene_text(scene, value_m * 1000.0, "mm");
}

hs_vec2
hs_scene_fixed(const hs_scene *scene, double x_m, double z_m)
{
    return (hs_vec2){hs_scene_x_of_world(scene, x_m), z_m};
}

hs_vec2
hs_scene_moving(const hs_scene *scene, double x_m, double z_m)
{
    return (hs_vec2){x_m + scene->shift_m, z_m};
}

hs_vec3
hs_scene_load_world(const hs_sample *sample, hs_vec3 load_m)
{
    hs_mat3 turn = hs_mat3_load_to_world(sample->pitch_deg * G_PI / 180,
                                         hs_or(sample->heading_deg, 0) * G_PI / 180);
    hs_vec3 origin_m = {sample->x_m, hs_or(sample->y_m, 0), sample->z_m};

    return hs_vec3_add(origin_m, hs_mat3_apply(&turn, load_m));
}

hs_vec2
hs_scene_hands(const hs_scene *scene, int bearer)
{
    const hs_bearer *asked = &scene->option->asked->bearers[bearer];
    hs_vec3 sum_m = {0, 0, 0};

    for (int i = 0; i < asked->n_grips; i++)
        sum_m = hs_vec3_add(
            sum_m, hs_scene_load_world(scene->sample,
                                       scene->request->task->load.grips[asked->grips[i]].at_m));
    sum_m = hs_vec3_scale(sum_m, 1.0 / MAX(asked->n_grips, 1));
    return hs_scene_moving(scene, sum_m.x, scene->is_plan ? sum_m.y : sum_m.z);
}

gboolean
hs_scene_load_box(const hs_task *task, hs_vec3 *ret_least_m, hs_vec3 *ret_most_m)
{
    gboolean has_any = FALSE;
    hs_vec3 least_m = {INFINITY, INFINITY, INFINITY},
            most_m = {-INFINITY, -INFINITY, -INFINITY};

    for (int i = 0; i < task->load.n_parts; i++) {
        hs_vec3 a_m, b_m;

        if (task->load.parts[i].is_void || task->load.parts[i].shape == HS_SHAPE_POINT)
            continue;
        hs_part_box(&task->load.parts[i], &a_m, &b_m);
        least_m =
            (hs_vec3){fmin(least_m.x, a_m.x), fmin(least_m.y, a_m.y), fmin(least_m.z, a_m.z)};
        most_m = (hs_vec3){fmax(most_m.x, b_m.x), fmax(most_m.y, b_m.y), fmax(most_m.z, b_m.z)};
        has_any = TRUE;
    }
    if (has_any) {
        *ret_least_m = least_m;
        *ret_most_m = most_m;
    }
    return has_any;
}

const hs_worker *
hs_scene_worker(const hs_scene *scene, int bearer)
{
    return &scene->request->task->workers[scene->option->asked->bearers[bearer].worker];
}

const hs_suit *
hs_scene_suit(const hs_scene *scene, int bearer)
{
    int suit = scene->option->asked->bearers[bearer].suit;

    return suit >= 0 ? &scene->request->task->suits[suit] : NULL;
}

const char *
hs_scene_bearer_id(const hs_scene *scene, int bearer)
{
    return scene->option->asked->bearers[bearer].id;
}
