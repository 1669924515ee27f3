/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much room does a body take, and how is its mass spread?
 * Answer:    closed forms about the centroid, long axis z, then turned to the part's own axis.
 * Not here:  the sum of the parts (load.c), a moving liquid (liquid.c). */
#include "solids.h"

#include "units.h"

/* Along the axis and across it, both per kilogram. Sources: solids_course (box, cylinder, tube, sphere), solids_cone,
 * solids_hemisphere; the figures for cone and hemisphere about the centroid are derived with the parallel-axis theorem. */
static void
round_solid(const hs_part *part,
            double *ret_volume_m3,
            double *ret_along_m2,
            double *ret_across_m2)
{
    double r = part->radius_m, ri = part->inner_radius_m, h = part->length_m;

    switch (part->shape) {
    case HS_SHAPE_CYLINDER:
        *ret_volume_m3 = HS_PI * r * r * h;
        *ret_along_m2 = r * r / 2.0;
        *ret_across_m2 = (3.0 * r * r + h * h) / 12.0;
        break;
    case HS_SHAPE_TUBE:
        *ret_volume_m3 = HS_PI * (r * r - ri * ri) * h;
        *ret_along_m2 = (r * r + ri * ri) / 2.0;
        *ret_across_m2 = (3.0 * (r * r + ri * ri) + h * h) / 12.0;
        break;
    case HS_SHAPE_CONE:
        *ret_volume_m3 = HS_PI * r * r * h / 3.0;
        *ret_along_m2 = 3.0 / 10.0 * r * r;
        *ret_across_m2 = 3.0 / 80.0 * (4.0 * r * r + h * h);
        break;
    case HS_SHAPE_HEMISPHERE:
        *ret_volume_m3 = 2.0 / 3.0 * HS_PI * r * r * r;
        *ret_along_m2 = 2.0 / 5.0 * r * r;
        *ret_across_m2 = (2.0 / 5.0 - (3.0 / 8.0) * (3.0 / 8.0)) * r *
                         r; /* the flat face's, moved by 3 r / 8 */
        break;
    case HS_SHAPE_SPHERE:
        *ret_volume_m3 = 4.0 / 3.0 * HS_PI * r * r * r;
        *ret_along_m2 = *ret_across_m2 = 2.0 / 5.0 * r * r;
        break;
    case HS_SHAPE_BOX:
    case HS_SHAPE_WEDGE:
    case HS_SHAPE_POINT:
    default:
        *ret_volume_m3 = *ret_along_m2 = *ret_across_m2 = 0.0;
        break;
    }
}

hs_solid
hs_solid_of(const hs_part *part)
{
    hs_solid solid = {0};
    double a = part->size_m.x, b = part->size_m.y, c = part->size_m.z, along_m2, across_m2;

    if (part->shape == HS_SHAPE_BOX) {
        solid.volume_m3 = a * b * c;
        solid.spread_m2 = (hs_mat3){{{(b * b + c * c) / 12.0, 0, 0},
                                     {0, (a * a + c * c) / 12.0, 0},
                                     {0, 0, (a * a + b * b) / 12.0}}};
        return solid;
    }
    if (part->shape == HS_SHAPE_WEDGE) { /* right angle at (-x, -z), prism along y */
        solid.volume_m3 = a * b * c / 2.0;
        solid.spread_m2 = (hs_mat3){{{b * b / 12.0 + c * c / 18.0, 0, a * c / 36.0},
                                     {0, (a * a + c * c) / 18.0, 0},
                                     {a * c / 36.0, 0, a * a / 18.0 + b * b / 12.0}}};
        return solid;
    }
    round_solid(part, &solid.volume_m3, &along_m2, &across_m2);
    for (int i = 0; i < 3; i++)
        solid.spread_m2.m[i][i] = across_m2;
    if (part->axis == HS_AXIS_X)
        solid.spread_m2.m[0][0] = along_m2;
    else if (part->axis == HS_AXIS_Y)
        solid.spread_m2.m[1][1] = along_m2;
    else
        solid.spread_m2.m[2][2] = along_m2;
    return solid;
}

static hs_mat3
spread_of(double xx, double yy, double zz)
{
    /* from the mean squares of x, y, z about the centroid */
    return (hs_mat3){{{yy + zz, 0, 0}, {0, xx + zz, 0}, {0, 0, xx + yy}}};
}

/* Segment of a circle filled to a depth; a: half the wetted arc, from the lowest point. */
static void
lying_body(const hs_part *part, hs_liquid_body *body)
{
    double r = part->radius_m, length = part->length_m;
    double a = acos(fmax(-1.0, fmin(1.0, 1.0 - part->liquid_depth_m / r)));
    double area = r * r * (a - sin(a) * cos(a));
    double down = area > 0.0 ? 2.0 * pow(r * sin(a), 3.0) / (3.0 * area) : r;
    double across_m4 =
        2.0 / 3.0 * pow(r, 4.0) * (3.0 * a / 8.0 - sin(2.0 * a) / 4.0 + sin(4.0 * a) / 32.0);
    double up_m4 = 2.0 * pow(r, 4.0) * (a / 8.0 - sin(4.0 * a) / 32.0);
    double across = area > 0.0 ? across_m4 / area : 0.0;
    double up = area > 0.0 ? up_m4 / area - down * down : 0.0, along = length * length / 12.0;

    body->volume_m3 = area * length;
    body->from_centre_m = (hs_vec3){0, 0, -down};
    body->spread_m2 =
        part->axis == HS_AXIS_X ? spread_of(along, across, up) : spread_of(across, along, up);
}

hs_status
hs_liquid_body_of(const hs_part *part, hs_liquid_body *ret_body, hs_error *error)
{
    double depth = part->liquid_depth_m, r = part->radius_m, x = part->size_m.x,
           y = part->size_m.y;
    bool is_box = part->shape == HS_SHAPE_BOX,
         lies = part->axis == HS_AXIS_X || part->axis == HS_AXIS_Y;
    double height = is_box ? part->size_m.z : lies ? 2.0 * r : part->length_m;

    if (!is_box && part->shape != HS_SHAPE_CYLINDER)
        return hs_refuse(error, "liquid", part->shape, HS_SHAPE_BOX, HS_SHAPE_CYLINDER);
    if (part->turn_deg.x != 0.0 || part->turn_deg.y != 0.0 || part->turn_deg.z != 0.0)
        return hs_refuse(error, "turn_deg", part->turn_deg.x, 0.0, 0.0);
    if (part->is_void || !hs_has(part->mass_kg))
        return hs_refuse(error, "mass_kg", part->mass_kg, 0.0, (double)INFINITY);
    if (!(depth >= 0.0) || depth > height)
        return hs_refuse(error, "liquid.depth_m", depth, 0.0, height);
    if (!is_box && lies) {
        lying_body(part, ret_body);
        return HS_OK;
    }
    ret_body->from_centre_m = (hs_vec3){0, 0, (depth - height) / 2.0};
    ret_body->volume_m3 = is_box ? x * y * depth : HS_PI * r * r * depth;
    ret_body->spread_m2 = is_box ? spread_of(x * x / 12.0, y * y / 12.0, depth * depth / 12.0)
                                 : spread_of(r * r / 4.0, r * r / 4.0, depth * depth / 12.0);
    return HS_OK;
}

static double
round_reach_m(const hs_part *part, double along, double across)
{
    double r = part->radius_m, h = part->length_m;

    switch (part->shape) {
    case HS_SHAPE_SPHERE:
        return r;
    case HS_SHAPE_CONE: /* base a quarter below the centroid, apex three quarters above */
        return fmax(along * 3.0 * h / 4.0, -along * h / 4.0 + r * across);
    case HS_SHAPE_HEMISPHERE: /* the ball's centre is 3 r / 8 behind the centroid */
        return -along * 3.0 * r / 8.0 + (along >= 0.0 ? r : r * across);
    case HS_SHAPE_CYLINDER:
    case HS_SHAPE_TUBE:
        return fabs(along) * h / 2.0 + r * across;
    case HS_SHAPE_BOX:
    case HS_SHAPE_WEDGE:
    case HS_SHAPE_POINT:
    default:
        return 0.0;
    }
}

double
hs_solid_reach_m(const hs_part *part, hs_vec3 direction)
{
    double a = part->size_m.x, b = part->size_m.y, c = part->size_m.z, along;

    if (part->shape == HS_SHAPE_BOX)
        return (fabs(direction.x) * a + fabs(direction.y) * b + fabs(direction.z) * c) / 2.0;
    if (part->shape == HS_SHAPE_WEDGE)
        return fabs(direction.y) * b / 2.0 +
               fmax(-direction.x * a / 3.0 - direction.z * c / 3.0,
                    fmax(direction.x * 2.0 * a / 3.0 - direction.z * c / 3.0,
                         -direction.x * a / 3.0 + direction.z * 2.0 * c / 3.0));
    along = part->axis == HS_AXIS_X   ? direction.x
            : part->axis == HS_AXIS_Y ? direction.y
                                      : direction.z;
    return round_reach_m(part, along, sqrt(fmax(0.0, 1.0 - along * along)));
}
