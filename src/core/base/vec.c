/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are places, directions and turns written?
 * Answer:    the few matrix products that are too long for the header.
 * Not here:  frames: the name of each variable says its frame. */
#include "vec.h"

hs_mat3
hs_mat3_mul(const hs_mat3 *a, const hs_mat3 *b)
{
    hs_mat3 c;

    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            c.m[i][j] =
                a->m[i][0] * b->m[0][j] + a->m[i][1] * b->m[1][j] + a->m[i][2] * b->m[2][j];
    return c;
}

hs_mat3
hs_mat3_transpose(const hs_mat3 *a)
{
    hs_mat3 c;

    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            c.m[i][j] = a->m[j][i];
    return c;
}

hs_mat3
hs_mat3_turn_xyz(hs_vec3 turn_rad)
{
    double ca = cos(turn_rad.x), sa = sin(turn_rad.x);
    double cb = cos(turn_rad.y), sb = sin(turn_rad.y);
    double cc = cos(turn_rad.z), sc = sin(turn_rad.z);
    hs_mat3 rx = {{{1, 0, 0}, {0, ca, -sa}, {0, sa, ca}}};
    hs_mat3 ry = {{{cb, 0, sb}, {0, 1, 0}, {-sb, 0, cb}}};
    hs_mat3 rz = {{{cc, -sc, 0}, {sc, cc, 0}, {0, 0, 1}}};
    hs_mat3 zy = hs_mat3_mul(&rz, &ry);

    return hs_mat3_mul(&zy, &rx);
}

hs_mat3
hs_mat3_load_to_world(double pitch_rad, double heading_rad)
{
    hs_vec3 turn_rad = {0, -pitch_rad, heading_rad};

    return hs_mat3_turn_xyz(turn_rad);
}
