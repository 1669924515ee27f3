/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where on the surface is a place, and back?
 * Answer:    hs_view: metres to pixels, z up; the floor lies low, with room under it for dimensions and scales;
 *            where the whole way would make people small, the picture travels along with the load.
 * Not here:  what is there (scene.h, hit.h). */
#include "view.h"

#include "scene_internal.h"

/* Room around the picture in heights of the label type: chosen by eye. */
#define TOP_em    4.2
#define BOTTOM_em 7.6
#define SIDE_em   1.6
#define PLAN_em   2.2
#define TOP_PART                                                                               \
    0.14 /* but no more than these parts of the height: large type must not crowd the picture out */
#define BOTTOM_PART      0.25
#define SMALL_em         1.0 /* a small picture has no labels at its edge */
#define LARGEST_px_per_m 600.0
#define ARROW_PART       0.24 /* the greatest force takes this part of the height */
#define ARROW_m          0.55 /* and never more than this length in the picture */
#define PERSON_PART                                                                            \
    0.48 /* a standing person takes this part of the height where the whole way would make him a speck */

static double
top_px_of(double height_px, double font_px)
{
    return fmin(TOP_em * font_px, TOP_PART * height_px);
}

static double
bottom_px_of(double height_px, double font_px)
{
    return fmin(BOTTOM_em * font_px, BOTTOM_PART * height_px);
}

static double
room_px_of(const hs_view *view)
{
    return view->height_px - top_px_of(view->height_px, view->font_px) -
           bottom_px_of(view->height_px, view->font_px);
}

static hs_view
fit(hs_vec2 least_m,
    hs_vec2 most_m,
    double greatest_N,
    gboolean is_plan,
    double width_px,
    double height_px,
    double font_px)
{
    double top_px = is_plan ? PLAN_em * font_px : top_px_of(height_px, font_px),
           bottom_px = is_plan ? PLAN_em * font_px : bottom_px_of(height_px, font_px);
    double side_px = SIDE_em * font_px;
    double wide_m = fmax(most_m.x - least_m.x, 0.5), high_m = fmax(most_m.y - least_m.y, 0.5);
    double room_x_px = fmax(width_px - 2 * side_px, width_px * 0.5);
    double room_y_px = fmax(height_px - top_px - bottom_px, height_px * 0.4);
    double scale = fmin(fmin(room_x_px / wide_m, room_y_px / high_m), LARGEST_px_per_m);
    hs_view view = {.scale_px_per_m = scale,
                    .width_px = width_px,
                    .height_px = height_px,
                    .font_px = font_px,
                    .x0_px = width_px / 2 - (least_m.x + most_m.x) / 2 * scale};

    if (is_plan)
        view.y0_px = height_px / 2 + (least_m.y + most_m.y) / 2 * scale;
    else
        view.y0_px = height_px - bottom_px + least_m.y * scale;
    view.force_px_per_N = fmin(ARROW_PART * height_px, ARROW_m * scale) / fmax(greatest_N, 1.0);
    return view;
}

hs_view
hs_view_fit_whole(const hs_scene *scene, double width_px, double height_px, double font_px)
{
    return fit(scene->least_m, scene->most_m, scene->greatest_N, scene->is_plan, width_px,
               height_px, font_px);
}

hs_view
hs_view_fit_two(
    const hs_scene *a, const hs_scene *b, double width_px, double height_px, double font_px)
{
    hs_vec2 least_m = {fmin(a->least_m.x, b->least_m.x), fmin(a->least_m.y, b->least_m.y)};
    hs_vec2 most_m = {fmax(a->most_m.x, b->most_m.x), fmax(a->most_m.y, b->most_m.y)};

    return fit(least_m, most_m, fmax(a->greatest_N, b->greatest_N), a->is_plan, width_px,
               height_px, font_px);
}

/* The largest scale at which load and people are whole at every moment, but no larger than legible people need. */
static double
near_scale(const hs_travel *travel, const hs_view *whole)
{
    double wide_px = whole->width_px - 2 * SIDE_em * whole->font_px,
           high_px = room_px_of(whole);
    double wide_m = travel->below_m.x + travel->above_m.x,
           high_m = travel->below_m.y + travel->above_m.y;

    if (!(wide_m > 0) || !(high_m > 0) || !(wide_px > 0) || !(high_px > 0))
        return 0;
    return fmin(fmin(wide_px / wide_m, high_px / high_m),
                PERSON_PART * whole->height_px / travel->stature_m);
}

/* The least coordinate that is seen: from the least of all at the start of the way evenly to the last at its end, so
 * that what reaches `below` and `above` from the load's place is always inside. */
static double
travelled(double at, double least, double most, double below, double above, double seen)
{
    double whole = most - least + below + above;

    if (seen >= whole)
        return least - below - (seen - whole) / 2;
    return least - below +
           (most > least ? (at - least) / (most - least) : 0.0) * (whole - seen);
}

static void
travel_to(hs_view *view, const hs_travel *travel, hs_vec2 now_m, double scale)
{
    double wide_px = view->width_px - 2 * SIDE_em * view->font_px, high_px = room_px_of(view);
    double seen_m = high_px / scale;
    double left_m = travelled(now_m.x, travel->least_m.x, travel->most_m.x, travel->below_m.x,
                              travel->above_m.x, wide_px / scale);
    double low_m = travel->least_m.y - travel->below_m.y;

    if (seen_m < travel->most_m.y + travel->above_m.y - low_m)
        low_m = travelled(now_m.y, travel->least_m.y, travel->most_m.y, travel->below_m.y,
                          travel->above_m.y, seen_m);
    view->force_px_per_N *= fmin(ARROW_PART * view->height_px, ARROW_m * scale) /
                            fmin(ARROW_PART * view->height_px, ARROW_m * view->scale_px_per_m);
    view->scale_px_per_m = scale;
    view->x0_px = SIDE_em * view->font_px - left_m * scale;
    view->y0_px =
        view->height_px - bottom_px_of(view->height_px, view->font_px) + low_m * scale;
}

hs_view
hs_view_fit(const hs_scene *scene, double width_px, double height_px, double font_px)
{
    hs_view view = hs_view_fit_whole(scene, width_px, height_px, font_px);
    double scale = scene->is_plan ? 0 : near_scale(&scene->travel, &view);

    if (scale > view.scale_px_per_m)
        travel_to(&view, &scene->travel, scene->travel.now_m, scale);
    return view;
}

static hs_travel
both(const hs_travel *a, const hs_travel *b)
{
    return (hs_travel){
        .least_m = {fmin(a->least_m.x, b->least_m.x), fmin(a->least_m.y, b->least_m.y)},
        .most_m = {fmax(a->most_m.x, b->most_m.x), fmax(a->most_m.y, b->most_m.y)},
        .below_m = {fmax(a->below_m.x, b->below_m.x), fmax(a->below_m.y, b->below_m.y)},
        .above_m = {fmax(a->above_m.x, b->above_m.x), fmax(a->above_m.y, b->above_m.y)},
        .stature_m = fmin(a->stature_m, b->stature_m)};
}

void
hs_view_fit_pair(const hs_scene *a,
                 const hs_scene *b,
                 double width_px,
                 double height_px,
                 double font_px,
                 hs_view ret_views[2])
{
    hs_travel travel = both(&a->travel, &b->travel);

    ret_views[0] = ret_views[1] = hs_view_fit_two(a, b, width_px, height_px, font_px);
    double scale = near_scale(&travel, &ret_views[0]);

    if (!(scale > ret_views[0].scale_px_per_m))
        return;
    travel_to(&ret_views[0], &travel, a->travel.now_m, scale);
    travel_to(&ret_views[1], &travel, b->travel.now_m, scale);
}

hs_view
hs_view_fit_people(const hs_scene *scene, double width_px, double height_px, double font_px)
{
    const hs_travel *travel = &scene->travel;
    hs_view view = hs_view_fit_whole(scene, width_px, height_px, font_px);
    hs_vec2 least_m = {travel->now_m.x - travel->below_m.x,
                       travel->now_m.y - travel->below_m.y};
    hs_vec2 most_m = {travel->now_m.x + travel->above_m.x, travel->now_m.y + travel->above_m.y};
    double edge_px = SMALL_em * font_px;
    double scale = fmin((width_px - 2 * edge_px) / fmax(most_m.x - least_m.x, 0.5),
                        (height_px - 3 * edge_px) / fmax(most_m.y - least_m.y, 0.5));

    if (!(scale > 0) || !isfinite(scale))
        return view;
    view.scale_px_per_m = fmin(scale, LARGEST_px_per_m);
    view.force_px_per_N = fmin(ARROW_PART * height_px, ARROW_m * view.scale_px_per_m) /
                          fmax(scene->greatest_N, 1.0);
    view.x0_px = width_px / 2 - (least_m.x + most_m.x) / 2 * view.scale_px_per_m;
    view.y0_px = height_px - 2 * edge_px + least_m.y * view.scale_px_per_m;
    return view;
}

hs_vec2
hs_view_to_surface(const hs_view *view, hs_vec2 at_m)
{
    return (hs_vec2){view->x0_px + at_m.x * view->scale_px_per_m,
                     view->y0_px - at_m.y * view->scale_px_per_m};
}

hs_vec2
hs_view_to_world(const hs_view *view, hs_vec2 at_px)
{
    return (hs_vec2){(at_px.x - view->x0_px) / view->scale_px_per_m,
                     (view->y0_px - at_px.y) / view->scale_px_per_m};
}

void
hs_view_zoom(hs_view *view, double factor, hs_vec2 about_px)
{
    double scale = CLAMP(view->scale_px_per_m * factor, 5.0, 5000.0);
    hs_vec2 at_m = hs_view_to_world(view, about_px);

    view->scale_px_per_m = scale;
    view->x0_px = about_px.x - at_m.x * scale;
    view->y0_px = about_px.y + at_m.y * scale;
}

void
hs_view_pan(hs_view *view, double dx_px, double dy_px)
{
    view->x0_px += dx_px;
    view->y0_px += dy_px;
}
