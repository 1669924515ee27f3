/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what outline has a part of the load, seen from the side or from above?
 * Answer:    points of its surface, turned as the part and the load are, and their hull: every solid of the file is convex.
 * Not here:  mass (core/load). */
#include "solid.h"

#include "units.h"

enum {
    RIM = 36,
    MOST_POINTS = 8 * RIM
};

typedef struct {
    int n;
    hs_vec3 at[MOST_POINTS];
} cloud;

static void
put(cloud *points, double x, double y, double z)
{
    if (points->n < MOST_POINTS)
        points->at[points->n++] = (hs_vec3){x, y, z};
}

/* Own axes with the axis of rotation along `axis`; u and v complete it right-handed. */
static hs_vec3
about_axis(hs_axis axis, double along, double u, double v)
{
    if (axis == HS_AXIS_X)
        return (hs_vec3){along, u, v};
    if (axis == HS_AXIS_Y)
        return (hs_vec3){v, along, u};
    return (hs_vec3){u, v, along};
}

static void
put_rim(cloud *points, hs_axis axis, double along_m, double radius_m)
{
    for (int i = 0; i < RIM; i++) {
        double a = 2 * HS_PI * i / RIM;
        hs_vec3 at = about_axis(axis, along_m, radius_m * cos(a), radius_m * sin(a));

        put(points, at.x, at.y, at.z);
    }
}

/* Corners of the edge lengths about the part's own centroid; a wedge's is at a third of its legs from the right angle. */
static void
put_box(cloud *points, const hs_part *part)
{
    hs_vec3 s = part->size_m;

    if (part->shape == HS_SHAPE_WEDGE) {
        for (int k = -1; k <= 1; k += 2) {
            put(points, -s.x / 3, k * s.y / 2, -s.z / 3);
            put(points, 2 * s.x / 3, k * s.y / 2, -s.z / 3);
            put(points, -s.x / 3, k * s.y / 2, 2 * s.z / 3);
        }
        return;
    }
    for (int i = 0; i < 8; i++)
        put(points, (i & 1 ? 0.5 : -0.5) * s.x, (i & 2 ? 0.5 : -0.5) * s.y,
            (i & 4 ? 0.5 : -0.5) * s.z);
}

static void
put_dome(cloud *points, hs_axis axis, double radius_m, double from_rad, double shift_m)
{
    for (int k = 0; k < 7; k++) {
        double a = from_rad + (HS_PI / 2 - from_rad) * k / 6;

        put_rim(points, axis, radius_m * sin(a) + shift_m, radius_m * cos(a));
    }
}

static void
make_cloud(const hs_part *part, double radius_m, cloud *points)
{
    hs_axis axis = part->axis ? part->axis : HS_AXIS_Z;

    points->n = 0;
    switch (part->shape) {
    case HS_SHAPE_BOX:
    case HS_SHAPE_WEDGE:
        put_box(points, part);
        break;
    case HS_SHAPE_CYLINDER:
    case HS_SHAPE_TUBE:
        put_rim(points, axis, -part->length_m / 2, radius_m);
        put_rim(points, axis, part->length_m / 2, radius_m);
        break;
    case HS_SHAPE_CONE: /* centroid a quarter of the height above the base */
        put_rim(points, axis, -part->length_m / 4, radius_m);
        put_rim(points, axis, part->length_m * 3 / 4, 0);
        break;
    case HS_SHAPE_SPHERE:
        put_dome(points, axis, radius_m, -HS_PI / 2, 0);
        break;
    case HS_SHAPE_HEMISPHERE: /* centroid 3/8 of the radius above the flat face */
        put_dome(points, axis, radius_m, 0, -0.375 * radius_m);
        break;
    case HS_SHAPE_POINT:
        break;
    }
}

static hs_vec3
radians(hs_vec3 deg)
{
    return hs_vec3_scale((hs_vec3){hs_or(deg.x, 0), hs_or(deg.y, 0), hs_or(deg.z, 0)},
                         HS_RAD_PER_DEG);
}

hs_vec3
hs_solid_world(const hs_projection *projection, const hs_part *part, hs_vec3 own_m)
{
    hs_mat3 turn = hs_mat3_turn_xyz(radians(part->turn_deg));

    return hs_scene_load_world(projection->sample,
                               hs_vec3_add(part->centre_m, hs_mat3_apply(&turn, own_m)));
}

hs_vec2
hs_project(const hs_projection *projection, hs_vec3 world_m)
{
    if (projection->look == HS_LOOK_DOWN)
        return (hs_vec2){world_m.x + projection->shift_m, world_m.y};
    return (hs_vec2){world_m.x + projection->shift_m, world_m.z};
}

/* One matrix for the part: the same as hs_solid_world() of each point, without its sines. */
static hs_mat3
whole_turn(const hs_projection *projection, const hs_part *part)
{
    hs_mat3 own = hs_mat3_turn_xyz(radians(part->turn_deg));
    hs_mat3 load =
        hs_mat3_load_to_world(projection->sample->pitch_deg * HS_RAD_PER_DEG,
                              hs_or(projection->sample->heading_deg, 0) * HS_RAD_PER_DEG);

    return hs_mat3_mul(&load, &own);
}

gboolean
hs_solid_outline(const hs_projection *projection,
                 const hs_part *part,
                 double radius_m,
                 hs_outline *ret)
{
    cloud points;
    hs_vec2 plane_m[MOST_POINTS];
    hs_mat3 turn = whole_turn(projection, part);
    hs_vec3 centre_m = hs_scene_load_world(projection->sample, part->centre_m);

    make_cloud(part, radius_m > 0 ? radius_m : part->radius_m, &points);
    if (points.n < 3)
        return FALSE;
    for (int i = 0; i < points.n; i++)
        plane_m[i] =
            hs_project(projection, hs_vec3_add(centre_m, hs_mat3_apply(&turn, points.at[i])));
    hs_outline_hull(ret, plane_m, points.n);
    return ret->n >= 3;
}

static double
towards_viewer(hs_look look, hs_vec3 normal)
{
    return look == HS_LOOK_DOWN ? normal.z : -normal.y;
}

int
hs_solid_faces(const hs_projection *projection, const hs_part *part, hs_outline ret_faces[3])
{
    hs_mat3 turn = whole_turn(projection, part);
    int n = 0;

    if (part->shape != HS_SHAPE_BOX)
        return 0;
    for (int axis = 0; axis < 3 && n < 3; axis++)
        for (int sign = -1; sign <= 1 && n < 3; sign += 2) {
            double half[3] = {part->size_m.x / 2, part->size_m.y / 2, part->size_m.z / 2};
            double corner[3], normal[3] = {0, 0, 0};
            hs_outline *face = &ret_faces[n];
            int u = (axis + 1) % 3, v = (axis + 2) % 3;

            normal[axis] = sign;
            if (towards_viewer(
                    projection->look,
                    hs_mat3_apply(&turn, (hs_vec3){normal[0], normal[1], normal[2]})) < 0.02)
                continue;
            face->n = 0;
            for (int k = 0; k < 4; k++) {
                corner[axis] = sign * half[axis];
                corner[u] = (k == 0 || k == 3 ? -1 : 1) * half[u];
                corner[v] = (k < 2 ? -1 : 1) * half[v];
                face->at[face->n++] = hs_project(
                    projection, hs_solid_world(projection, part,
                                               (hs_vec3){corner[0], corner[1], corner[2]}));
            }
            n++;
        }
    return n;
}

gboolean
hs_solid_is_end_on(const hs_projection *projection, const hs_part *part)
{
    hs_mat3 turn = whole_turn(projection, part);
    hs_vec3 axis =
        hs_mat3_apply(&turn, about_axis(part->axis ? part->axis : HS_AXIS_Z, 1, 0, 0));

    return fabs(projection->look == HS_LOOK_DOWN ? axis.z : axis.y) > 0.98;
}
