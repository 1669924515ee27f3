/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what outline has a part of the load, seen from the side or from above?
 * Answer:    hs_solid_outline(), and the faces that are seen of boxes and wedges.
 * Not here:  mass (core/load). */
#ifndef HS_SOLID_H
#define HS_SOLID_H

#include "scene_internal.h"
#include "shape.h"

typedef enum {
    HS_LOOK_ALONG_Y,
    HS_LOOK_DOWN
} hs_look;

typedef struct {
    hs_look look;
    const hs_sample *sample;
    double shift_m;
} hs_projection;

/* World to drawing plane. */
hs_vec2 hs_project(const hs_projection *projection, hs_vec3 world_m);
/* Silhouette of a part; radius_m > 0 replaces the outer radius (the bore of a tube). FALSE: a point, which has none. */
gboolean hs_solid_outline(const hs_projection *projection,
                          const hs_part *part,
                          double radius_m,
                          hs_outline *ret);
/* Faces of a box or wedge that look at the viewer, up to 3; 0 for other shapes. */
int
hs_solid_faces(const hs_projection *projection, const hs_part *part, hs_outline ret_faces[3]);
/* Is the part's axis along the view, so that it is seen as a circle? */
gboolean hs_solid_is_end_on(const hs_projection *projection, const hs_part *part);
/* The part's frame at the sample: its own point to the world. */
hs_vec3 hs_solid_world(const hs_projection *projection, const hs_part *part, hs_vec3 own_m);

#endif
