/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is a point against the hull of some places in plan?
 * Answer:    hs_hull_locate(): nearest point, distance outside, and which of the places can carry it at all.
 * Not here:  forces (shares.c). */
#ifndef HS_HULL_H
#define HS_HULL_H

#include "status.h"
#include "vec.h"

#define HS_HULL_MAX 64

typedef struct {
    hs_vec2 nearest_m; /* of the hull: the point itself when it lies inside */
    double outside_m;  /* distance to the hull, 0 inside */
    double
        inside_m; /* distance to the nearest side of the hull, 0 outside or when it has no area */
    int dimension; /* of the least face that holds the nearest point: 0 a corner, 1 a side, 2 the inside */
    hs_vec2 along; /* unit, along that side; for 2 the direction of greatest spread */
    bool carries[HS_HULL_MAX]; /* places on that face: no other can carry a positive part */
} hs_hull_place;

/**
 * hs_hull_locate - a point against the convex hull of places
 *
 * What    convex hull (all places in one, in a line, or around an area), nearest point, the face that holds it
 * In      n 1..64 finite places, in any order, also several in one place
 * Out     *ret_place
 * Frame   any plan
 * Errors  none
 * Source  none
 */
void hs_hull_locate(const hs_vec2 *at_m, int n, hs_vec2 point_m, hs_hull_place *ret_place);

/* Corners of the hull, counter-clockwise, as indices; returns how many (1, 2 or more). */
int hs_hull_corners(const hs_vec2 *at_m, int n, int *ret_corner);

#endif
