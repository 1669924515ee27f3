/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a grip look like?
 * Answer:    hs_grip_mark_draw(): one small sign for each kind, to scale, on the side of the load where it is.
 * Not here:  who holds it (figure_layer.c). */
#include "grip_mark.h"

/* Sizes of the signs in metres: about those of the things, drawn by eye. */
#define HANDLE_m    0.060
#define RISE_m      0.030
#define PAD_ALONG_m 0.08 /* defaults of the file format for pad_m */
#define PAD_UP_m    0.09

/* Direction out of the load in the picture: against `inward`, else away from the middle of the load's outline. */
static hs_vec2
outwards(const hs_scene *scene, const hs_projection *projection, const hs_grip *grip)
{
    hs_vec3 least_m, most_m, away = {0, 0, 1};
    hs_vec2 here = hs_project(projection, hs_scene_load_world(projection->sample, grip->at_m));

    if (grip->has_inward) {
        away = hs_vec3_scale(grip->inward, -1);
    } else if (hs_scene_load_box(scene->request->task, &least_m, &most_m)) {
        hs_vec3 half_m = hs_vec3_scale(hs_vec3_sub(most_m, least_m), 0.5);
        hs_vec3 off_m =
            hs_vec3_sub(grip->at_m, hs_vec3_scale(hs_vec3_add(most_m, least_m), 0.5));
        double x = fabs(off_m.x) / fmax(half_m.x, 0.01),
               y = fabs(off_m.y) / fmax(half_m.y, 0.01),
               z = fabs(off_m.z) / fmax(half_m.z, 0.01);

        if (x >= y && x >= z)
            away = (hs_vec3){off_m.x < 0 ? -1 : 1, 0, 0};
        else if (y >= z)
            away = (hs_vec3){0, off_m.y < 0 ? -1 : 1, 0};
        else
            away = (hs_vec3){0, 0, off_m.z < 0 ? -1 : 1};
    }
    hs_vec2 there = hs_project(
        projection, hs_scene_load_world(projection->sample, hs_vec3_add(grip->at_m, away)));

    return hs_vec2_length(hs_vec2_sub(there, here)) > 0.2
               ? hs_vec2_unit(hs_vec2_sub(there, here))
               : (hs_vec2){0, 0};
}

static hs_vec2
off(hs_vec2 at, hs_vec2 out, double out_m, double across_m)
{
    return (hs_vec2){at.x + out.x * out_m - out.y * across_m,
                     at.y + out.y * out_m + out.x * across_m};
}

static void
line(hs_scene *scene, const hs_vec2 *points_m, int n)
{
    hs_scene_add_line(scene, points_m, n, HS_INK_LOAD_LINE, 1.8, HS_DASH_NONE);
}

static void
draw_bow(hs_scene *scene, hs_vec2 at, hs_vec2 out, double half_m, double rise_m)
{
    hs_vec2 bow_m[] = {off(at, out, 0, -half_m),
                       off(at, out, rise_m * 0.75, -half_m * 0.9),
                       off(at, out, rise_m, -half_m * 0.55),
                       off(at, out, rise_m, half_m * 0.55),
                       off(at, out, rise_m * 0.75, half_m * 0.9),
                       off(at, out, 0, half_m)};

    line(scene, bow_m, (int)G_N_ELEMENTS(bow_m));
}

static void
draw_hook(hs_scene *scene, hs_vec2 at)
{
    hs_vec2 hook_m[9] = {{at.x, at.y + 0.075}};

    for (int i = 0; i < 8; i++) {
        double a = G_PI / 2 - i * G_PI * 1.35 / 7;

        hook_m[i + 1] = (hs_vec2){at.x + 0.022 * cos(a), at.y + 0.006 + 0.022 * sin(a)};
    }
    line(scene, hook_m, 9);
}

static void
draw_pad(hs_scene *scene, hs_vec2 at, hs_vec2 out, const hs_grip *grip)
{
    double along_m = hs_or(grip->pad_along_m, PAD_ALONG_m),
           up_m = hs_or(grip->pad_up_m, PAD_UP_m);
    gboolean is_on_edge = hs_vec2_length(out) > 0.5;
    hs_outline outline;

    if (is_on_edge)
        hs_outline_strip(&outline, off(at, out, 0.012, -up_m / 2),
                         off(at, out, 0.012, up_m / 2), 0.012, 0.006);
    else
        hs_outline_strip(&outline, (hs_vec2){at.x - along_m / 2, at.y},
                         (hs_vec2){at.x + along_m / 2, at.y}, up_m / 2, 0.012);
    hs_scene_add_shape(scene, outline.at, outline.n, HS_INK_LOAD_LINE, HS_INK_LOAD)->weight =
        1.4;
}

static void
draw_cradle(hs_scene *scene, hs_vec2 at)
{
    hs_vec2 cradle_m[] = {{at.x - 0.09, at.y + 0.05},
                          {at.x - 0.075, at.y},
                          {at.x, at.y - 0.012},
                          {at.x + 0.075, at.y},
                          {at.x + 0.09, at.y + 0.05}};

    line(scene, cradle_m, (int)G_N_ELEMENTS(cradle_m));
}

void
hs_grip_mark_draw(hs_scene *scene, const hs_projection *projection, const hs_grip *grip)
{
    hs_vec2 at = hs_project(projection, hs_scene_load_world(projection->sample, grip->at_m));
    hs_vec2 out = outwards(scene, projection, grip);
    hs_vec2 up = {0, 1};

    switch (grip->kind) {
    case HS_GRIP_EDGE:
        if (hs_vec2_length(out) > 0.5) {
            hs_vec2 lip_m[2] = {off(at, out, 0, -HANDLE_m / 2), off(at, out, 0, HANDLE_m / 2)};

            hs_scene_add_line(scene, lip_m, 2, HS_INK_LOAD_LINE, 3.2, HS_DASH_NONE);
        } else {
            hs_scene_add_segment(scene, (hs_vec2){at.x - HANDLE_m / 2, at.y},
                                 (hs_vec2){at.x + HANDLE_m / 2, at.y}, HS_INK_LOAD_LINE, 3.2,
                                 HS_DASH_NONE);
        }
        break;
    case HS_GRIP_HOOK:
        draw_hook(scene, at);
        break;
    case HS_GRIP_STRAP:
        draw_bow(scene, at, hs_vec2_length(out) > 0.5 ? out : up, HANDLE_m * 0.45,
                 RISE_m * 2.2);
        break;
    case HS_GRIP_PAD:
        draw_pad(scene, at, out, grip);
        break;
    case HS_GRIP_CRADLE:
        draw_cradle(scene, at);
        break;
    case HS_GRIP_HANDLE:
    default:
        draw_bow(scene, at, hs_vec2_length(out) > 0.5 ? out : up, HANDLE_m, RISE_m);
    }
}
