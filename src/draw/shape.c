/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which outlines do limbs, heads, rims and solids have?
 * Answer:    closed lines of points in the plane: tapered capsules, ellipses, smooth closed curves, hulls.
 * Not here:  what they stand for (layers). */
#include "shape.h"

#include <stdlib.h>

enum {
    ARC_STEPS = 12,
    ELLIPSE_STEPS = 48,
    CURVE_STEPS = 6
};

static void
put(hs_outline *outline, hs_vec2 at_m)
{
    if (outline->n < HS_SHAPE_MAX)
        outline->at[outline->n++] = at_m;
}

static void
put_arc(hs_outline *outline,
        hs_vec2 at_m,
        double radius_m,
        double from_rad,
        double to_rad,
        int steps)
{
    for (int i = 0; i <= steps; i++) {
        double a = from_rad + (to_rad - from_rad) * i / steps;

        put(outline, (hs_vec2){at_m.x + radius_m * cos(a), at_m.y + radius_m * sin(a)});
    }
}

void
hs_outline_capsule(
    hs_outline *ret, hs_vec2 a_m, double a_radius_m, hs_vec2 b_m, double b_radius_m)
{
    hs_vec2 along = hs_vec2_sub(b_m, a_m);
    double length_m = hs_vec2_length(along);
    double heading_rad = atan2(along.y, along.x);
    double less_m = a_radius_m - b_radius_m;

    ret->n = 0;
    if (!(length_m > fabs(less_m))) { /* one end hides the other */
        hs_vec2 at_m = a_radius_m > b_radius_m ? a_m : b_m;

        hs_outline_ellipse(ret, at_m, fmax(a_radius_m, b_radius_m),
                           fmax(a_radius_m, b_radius_m), 0);
        return;
    }
    double tangent_rad = acos(less_m / length_m);

    put_arc(ret, a_m, a_radius_m, heading_rad + tangent_rad,
            heading_rad + 2 * M_PI - tangent_rad, ARC_STEPS);
    put_arc(ret, b_m, b_radius_m, heading_rad - tangent_rad, heading_rad + tangent_rad,
            ARC_STEPS);
}

void
hs_outline_ellipse(
    hs_outline *ret, hs_vec2 at_m, double half_x_m, double half_y_m, double turn_rad)
{
    double c = cos(turn_rad), s = sin(turn_rad);

    ret->n = 0;
    for (int i = 0; i < ELLIPSE_STEPS; i++) {
        double a = 2 * M_PI * i / ELLIPSE_STEPS;
        double u = half_x_m * cos(a), v = half_y_m * sin(a);

        put(ret, (hs_vec2){at_m.x + c * u - s * v, at_m.y + s * u + c * v});
    }
}

static hs_vec2
knot_mix(hs_vec2 a, hs_vec2 b, double ta, double tb, double t)
{
    return hs_vec2_mix(a, b, (t - ta) / fmax(tb - ta, 1e-9));
}

/* Centripetal parameters keep the curve from looping where points lie close together. */
static hs_vec2
curve_at(const hs_vec2 p[4], double u)
{
    double t[4] = {0};

    for (int i = 1; i < 4; i++)
        t[i] = t[i - 1] + sqrt(fmax(hs_vec2_length(hs_vec2_sub(p[i], p[i - 1])), 1e-9));
    double at = t[1] + (t[2] - t[1]) * u;
    hs_vec2 a = knot_mix(p[0], p[1], t[0], t[1], at);
    hs_vec2 b = knot_mix(p[1], p[2], t[1], t[2], at);
    hs_vec2 c = knot_mix(p[2], p[3], t[2], t[3], at);
    hs_vec2 d = knot_mix(a, b, t[0], t[2], at);
    hs_vec2 e = knot_mix(b, c, t[1], t[3], at);

    return knot_mix(d, e, t[1], t[2], at);
}

void
hs_outline_smooth(hs_outline *ret, const hs_vec2 *points_m, int n)
{
    ret->n = 0;
    for (int i = 0; i < n; i++) {
        hs_vec2 p[4] = {points_m[(i + n - 1) % n], points_m[i], points_m[(i + 1) % n],
                        points_m[(i + 2) % n]};

        for (int k = 0; k < CURVE_STEPS; k++)
            put(ret, curve_at(p, (double)k / CURVE_STEPS));
    }
}

static int
by_x(const void *a, const void *b)
{
    const hs_vec2 *p = a, *q = b;

    if (p->x != q->x)
        return p->x < q->x ? -1 : 1;
    return p->y < q->y ? -1 : p->y > q->y;
}

static double
turn(hs_vec2 a, hs_vec2 b, hs_vec2 c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static void
half_hull(hs_outline *outline, int keep, const hs_vec2 *points_m, int from, int to, int step)
{
    for (int i = from; i != to; i += step) {
        while (outline->n >= keep + 2 &&
               turn(outline->at[outline->n - 2], outline->at[outline->n - 1], points_m[i]) <=
                   1e-12)
            outline->n--;
        put(outline, points_m[i]);
    }
}

void
hs_outline_hull(hs_outline *ret, hs_vec2 *points_m, int n)
{
    ret->n = 0;
    qsort(points_m, (size_t)n, sizeof *points_m, by_x);
    half_hull(ret, 0, points_m, 0, n, 1);
    ret->n--;
    half_hull(ret, ret->n, points_m, n - 1, -1, -1);
    ret->n--;
}

void
hs_outline_strip(hs_outline *ret, hs_vec2 a_m, hs_vec2 b_m, double half_m, double corner_m)
{
    hs_vec2 u = hs_vec2_unit(hs_vec2_sub(b_m, a_m)), v = {-u.y, u.x};
    double heading_rad = atan2(u.y, u.x);
    hs_vec2 ends[4] = {hs_vec2_add(a_m, hs_vec2_scale(v, -half_m)),
                       hs_vec2_add(b_m, hs_vec2_scale(v, -half_m)),
                       hs_vec2_add(b_m, hs_vec2_scale(v, half_m)),
                       hs_vec2_add(a_m, hs_vec2_scale(v, half_m))};
    double su[4] = {1, -1, -1, 1}, sv[4] = {1, 1, -1, -1};

    ret->n = 0;
    for (int i = 0; i < 4; i++) {
        hs_vec2 c = hs_vec2_add(ends[i], hs_vec2_add(hs_vec2_scale(u, su[i] * corner_m),
                                                     hs_vec2_scale(v, sv[i] * corner_m)));
        double from_rad = heading_rad + M_PI + i * M_PI / 2;

        put_arc(ret, c, corner_m, from_rad, from_rad + M_PI / 2, 5);
    }
}

double
hs_outline_area_m2(const hs_outline *outline)
{
    double twice = 0;

    for (int i = 0; i < outline->n; i++) {
        hs_vec2 a = outline->at[i], b = outline->at[(i + 1) % outline->n];

        twice += a.x * b.y - a.y * b.x;
    }
    return fabs(twice) / 2;
}
