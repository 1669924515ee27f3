/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is a point against the hull of some places in plan?
 * Answer:    the hull by a sweep, then side by side.
 * Not here:  forces (shares.c). */
#include "hull.h"

#include "units.h"

#include <stdlib.h>
#include <string.h>

#define FLAT 1e-12 /* relative to the spread: numerics */

static double
turn(hs_vec2 a, hs_vec2 b, hs_vec2 c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static double
spread_of(const hs_vec2 *at_m, int n)
{
    double spread_m = 0.0;

    for (int i = 0; i < n; i++)
        spread_m = fmax(spread_m, hypot(at_m[i].x - at_m[0].x, at_m[i].y - at_m[0].y));
    return spread_m;
}

/* Indices by x, then y (insertion: at most 64). */
static void
sort(const hs_vec2 *at_m, int n, int *order)
{
    for (int i = 0; i < n; i++) {
        int j = i;

        for (; j > 0; j--) {
            hs_vec2 before = at_m[order[j - 1]];

            if (before.x < at_m[i].x || (before.x == at_m[i].x && before.y <= at_m[i].y))
                break;
            order[j] = order[j - 1];
        }
        order[j] = i;
    }
}

static int
chain(const hs_vec2 *at_m,
      const int *order,
      int n,
      int step,
      double flat_m2,
      double same_m,
      int *corner)
{
    int count = 0;

    for (int k = step > 0 ? 0 : n - 1; k >= 0 && k < n; k += step) {
        hs_vec2 p = at_m[order[k]];

        if (count > 0 &&
            hypot(p.x - at_m[corner[count - 1]].x, p.y - at_m[corner[count - 1]].y) <= same_m)
            continue;
        while (count >= 2 &&
               turn(at_m[corner[count - 2]], at_m[corner[count - 1]], p) <= flat_m2)
            count--;
        corner[count++] = order[k];
    }
    return count;
}

int
hs_hull_corners(const hs_vec2 *at_m, int n, int *ret_corner)
{
    int order[HS_HULL_MAX], lower[HS_HULL_MAX], upper[HS_HULL_MAX], n_lower, n_upper, count = 0;
    double spread_m = spread_of(at_m, n), same_m = fmax(FLAT * spread_m, 1e-300);

    if (!(spread_m > HS_SAME_PLACE_m)) {
        ret_corner[0] = 0;
        return 1;
    }
    sort(at_m, n, order);
    n_lower = chain(at_m, order, n, 1, FLAT * spread_m * spread_m, same_m, lower);
    n_upper = chain(at_m, order, n, -1, FLAT * spread_m * spread_m, same_m, upper);
    for (int i = 0; i < n_lower - 1; i++)
        ret_corner[count++] = lower[i];
    for (int i = 0; i < n_upper - 1; i++)
        ret_corner[count++] = upper[i];
    return count;
}

/* Nearest point of a side; returns its distance. part: 0 at a .. 1 at b. */
static double
to_side(hs_vec2 a, hs_vec2 b, hs_vec2 p, hs_vec2 *ret_nearest, double *ret_part)
{
    double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
    double part = square > 0.0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / square : 0.0;

    part = fmax(0.0, fmin(1.0, part));
    *ret_nearest = (hs_vec2){a.x + part * dx, a.y + part * dy};
    *ret_part = part;
    return hypot(p.x - ret_nearest->x, p.y - ret_nearest->y);
}

static void
mark_corner(const hs_vec2 *at_m, int n, double close_m, hs_hull_place *place)
{
    place->dimension = 0;
    for (int i = 0; i < n; i++)
        place->carries[i] =
            hypot(at_m[i].x - place->nearest_m.x, at_m[i].y - place->nearest_m.y) <= close_m;
}

/* The nearest point lies on the side a-b: those on it carry, unless it is one of the ends. */
static void
mark_side(
    const hs_vec2 *at_m, int n, hs_vec2 a, hs_vec2 b, double close_m, hs_hull_place *place)
{
    double length_m = hypot(b.x - a.x, b.y - a.y);

    place->dimension = 1;
    place->along = (hs_vec2){(b.x - a.x) / length_m, (b.y - a.y) / length_m};
    for (int i = 0; i < n; i++)
        place->carries[i] = fabs(turn(a, b, at_m[i])) <= close_m * length_m;
    if (hypot(a.x - place->nearest_m.x, a.y - place->nearest_m.y) <= close_m) {
        place->nearest_m = a;
        mark_corner(at_m, n, close_m, place);
    } else if (hypot(b.x - place->nearest_m.x, b.y - place->nearest_m.y) <= close_m) {
        place->nearest_m = b;
        mark_corner(at_m, n, close_m, place);
    }
}

static void
mark_inside(const hs_vec2 *at_m, int n, const int *corner, int count, hs_hull_place *place)
{
    double longest_m = 0.0;

    place->dimension = 2;
    for (int i = 0; i < n; i++)
        place->carries[i] = true;
    for (int i = 0; i < count; i++)
        for (int j = 0; j < i; j++) {
            double dx = at_m[corner[i]].x - at_m[corner[j]].x,
                   dy = at_m[corner[i]].y - at_m[corner[j]].y;

            if (hypot(dx, dy) > longest_m) {
                longest_m = hypot(dx, dy);
                place->along = (hs_vec2){dx / longest_m, dy / longest_m};
            }
        }
}

void
hs_hull_locate(const hs_vec2 *at_m, int n, hs_vec2 point_m, hs_hull_place *ret_place)
{
    int corner[2 * HS_HULL_MAX], count = hs_hull_corners(at_m, n, corner), side = 0;
    double close_m = fmax(HS_SAME_PLACE_m * 1e-3, FLAT * spread_of(at_m, n)),
           nearest = (double)INFINITY;
    bool is_inside = count > 2;

    memset(ret_place, 0, sizeof *ret_place);
    if (count == 1) {
        ret_place->nearest_m = at_m[corner[0]];
        ret_place->outside_m =
            hypot(point_m.x - at_m[corner[0]].x, point_m.y - at_m[corner[0]].y);
        mark_corner(at_m, n, HS_SAME_PLACE_m, ret_place);
        return;
    }
    for (int i = 0; i < (count == 2 ? 1 : count); i++) {
        hs_vec2 a = at_m[corner[i]], b = at_m[corner[(i + 1) % count]], on_side;
        double part, distance = to_side(a, b, point_m, &on_side, &part);

        if (turn(a, b, point_m) < 0.0)
            is_inside = false;
        if (distance < nearest) {
            nearest = distance;
            side = i;
            ret_place->nearest_m = on_side;
        }
    }
    ret_place->inside_m = is_inside ? nearest : 0.0;
    ret_place->outside_m = is_inside ? 0.0 : nearest;
    if (is_inside && nearest > close_m) {
        ret_place->nearest_m = point_m;
        mark_inside(at_m, n, corner, count, ret_place);
        return;
    }
    mark_side(at_m, n, at_m[corner[side]], at_m[corner[(side + 1) % count]], close_m,
              ret_place);
}
