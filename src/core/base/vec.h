/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are places, directions and turns written?
 * Answer:    hs_vec2 and hs_vec3 by value, hs_mat3 by pointer; rotations are right-handed, radians.
 * Not here:  frames: the name of each variable says its frame. */
#ifndef HS_VEC_H
#define HS_VEC_H

#include <math.h>

typedef struct {
    double x, y;
} hs_vec2;

typedef struct {
    double x, y, z;
} hs_vec3;

typedef struct {
    double m[3][3];
} hs_mat3;

static inline hs_vec3
hs_vec3_add(hs_vec3 a, hs_vec3 b)
{
    return (hs_vec3){a.x + b.x, a.y + b.y, a.z + b.z};
}

static inline hs_vec3
hs_vec3_sub(hs_vec3 a, hs_vec3 b)
{
    return (hs_vec3){a.x - b.x, a.y - b.y, a.z - b.z};
}

static inline hs_vec3
hs_vec3_scale(hs_vec3 a, double k)
{
    return (hs_vec3){a.x * k, a.y * k, a.z * k};
}

static inline double
hs_vec3_dot(hs_vec3 a, hs_vec3 b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline hs_vec3
hs_vec3_cross(hs_vec3 a, hs_vec3 b)
{
    return (hs_vec3){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

static inline double
hs_vec3_length(hs_vec3 a)
{
    return sqrt(hs_vec3_dot(a, a));
}

static inline hs_vec3
hs_mat3_apply(const hs_mat3 *q, hs_vec3 v)
{
    return (hs_vec3){q->m[0][0] * v.x + q->m[0][1] * v.y + q->m[0][2] * v.z,
                     q->m[1][0] * v.x + q->m[1][1] * v.y + q->m[1][2] * v.z,
                     q->m[2][0] * v.x + q->m[2][1] * v.y + q->m[2][2] * v.z};
}

hs_mat3 hs_mat3_mul(const hs_mat3 *a, const hs_mat3 *b);
hs_mat3 hs_mat3_transpose(const hs_mat3 *a);
/* Q = Rz Ry Rx: about the fixed axes x, then y, then z; angles in rad */
hs_mat3 hs_mat3_turn_xyz(hs_vec3 turn_rad);
/* Load frame to world frame: pitch (front +x end up positive) about the load's y, then heading about z. With the
 * right-handed rotation about +y a front end that rises is a negative angle, hence the sign inside. */
hs_mat3 hs_mat3_load_to_world(double pitch_rad, double heading_rad);

#endif
