/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which outlines do limbs, heads, rims and solids have?
 * Answer:    closed lines of points in the plane: tapered capsules, ellipses, smooth closed curves, hulls.
 * Not here:  what they stand for (layers). */
#ifndef HS_SHAPE_H
#define HS_SHAPE_H

#include "vec.h"

#define HS_SHAPE_MAX 128

typedef struct {
    int n;
    hs_vec2 at[HS_SHAPE_MAX];
} hs_outline;

/* Two round ends of different radius and their common tangents. */
void hs_outline_capsule(
    hs_outline *ret, hs_vec2 a_m, double a_radius_m, hs_vec2 b_m, double b_radius_m);
void hs_outline_ellipse(
    hs_outline *ret, hs_vec2 at_m, double half_x_m, double half_y_m, double turn_rad);
/* Smooth closed curve through n <= 20 points (centripetal Catmull-Rom). */
void hs_outline_smooth(hs_outline *ret, const hs_vec2 *points_m, int n);
void hs_outline_hull(hs_outline *ret, hs_vec2 *points_m, int n);
/* Rectangle about the line a-b with rounded ends of radius corner_m. */
void
hs_outline_strip(hs_outline *ret, hs_vec2 a_m, hs_vec2 b_m, double half_m, double corner_m);
double hs_outline_area_m2(const hs_outline *outline);

static inline hs_vec2
hs_vec2_add(hs_vec2 a, hs_vec2 b)
{
    return (hs_vec2){a.x + b.x, a.y + b.y};
}

static inline hs_vec2
hs_vec2_sub(hs_vec2 a, hs_vec2 b)
{
    return (hs_vec2){a.x - b.x, a.y - b.y};
}

static inline hs_vec2
hs_vec2_scale(hs_vec2 a, double k)
{
    return (hs_vec2){a.x * k, a.y * k};
}

static inline hs_vec2
hs_vec2_mix(hs_vec2 a, hs_vec2 b, double t)
{
    return (hs_vec2){a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
}

static inline double
hs_vec2_length(hs_vec2 a)
{
    return sqrt(a.x * a.x + a.y * a.y);
}

/* Unit vector; straight up where a has no length. */
static inline hs_vec2
hs_vec2_unit(hs_vec2 a)
{
    double length = hs_vec2_length(a);

    return length > 1e-9 ? hs_vec2_scale(a, 1.0 / length) : (hs_vec2){0, 1};
}

#endif
