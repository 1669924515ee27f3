/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much room does a body take, and how is its mass spread?
 * Answer:    hs_solid_of() for every shape of part, hs_liquid_body() for a liquid at rest in one.
 * Not here:  the sum of the parts (load.c), a moving liquid (liquid.c). */
#ifndef HS_SOLIDS_H
#define HS_SOLIDS_H

#include "task.h"
#include "vec.h"

/* Per kilogram, about the body's own centroid, in the part's own axes (before turn_deg). */
typedef struct {
    double volume_m3;  /* 0 for a point */
    hs_mat3 spread_m2; /* inertia over mass */
} hs_solid;

typedef struct {
    double volume_m3;
    hs_vec3 from_centre_m; /* its centroid from the container's centre */
    hs_mat3 spread_m2;
} hs_liquid_body;

/* Volume and inertia of a homogeneous part. */
hs_solid hs_solid_of(const hs_part *part);

/**
 * hs_liquid_body_of - the body of liquid at rest in an upright box or cylinder or a lying cylinder
 *
 * What    box of the depth, cylinder of the depth, or the segment of a circle along the axis
 * In      part with liquid, not turned; depth 0 .. inner height
 * Out     *ret_body
 * Frame   load axes, from the container's centre
 * Errors  HS_E_RANGE naming the key: another shape, turned, void, depth outside the container
 * Source  integrals over a circular segment, DERIVED; HS_SRC_solids_course
 */
hs_status hs_liquid_body_of(const hs_part *part, hs_liquid_body *ret_body, hs_error *error);

/* How far the part reaches from its centroid in a direction (own axes, unit). */
double hs_solid_reach_m(const hs_part *part, hs_vec3 direction);

#endif
