/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the load weigh, where is its CG, what is its inertia?
 * Answer:    hs_load_solve() from parts, from weighings, or from both with their difference.
 * Not here:  slosh (liquid.c), where the load is on the way (motion/place.c). */
#ifndef HS_LOAD_H
#define HS_LOAD_H

#include "arena.h"
#include "assume.h"
#include "task.h"
#include "working.h"

typedef struct {
    double mass_kg, mass_tol_kg;
    hs_vec3 cg_m;          /* load frame; z HS_ABSENT after level weighings alone */
    bool has_inertia;      /* false for weighings alone (a point) */
    hs_mat3 inertia_kg_m2; /* about the CG, load axes, off-diagonals minus the integral */
    bool has_box;          /* parts give an outline */
    hs_vec3 least_m,
        most_m; /* outline of the solids in the load frame (voids and points with no size add nothing) */
    /* parts against weighings, where both are given; else HS_ABSENT */
    double parts_mass_kg, weighed_mass_kg;
    double parts_tol_kg; /* of the parts alone; HS_ABSENT without parts */
    hs_vec3 parts_cg_m, weighed_cg_m;
} hs_load_state;

/**
 * hs_load_solve - mass, CG and inertia of the load
 *
 * What    sums parts (voids negative, liquid at rest added), or solves the weighings, or both (weighings win, inertia
 *         scales with the mass)
 * In      load: validated document data; assumptions: defaults used (known, mass_tol_kg)
 * Out     *ret_state; working (may be NULL) gets the sums
 * Frame   load frame
 * Errors  HS_E_RANGE: total mass not above 0, supports that do not determine a CG; where names the JSON path
 * Source  parallel-axis theorem and solids as in lists/sources_load.def; file format, section Weighings
 */
hs_status hs_load_solve(const hs_load *load,
                        hs_arena *arena,
                        hs_assumptions *assumptions,
                        hs_working *working,
                        hs_load_state *ret_state,
                        hs_error *error);

/* Outline of one part in the load frame (least, most), turned as the document says. */
void hs_part_box(const hs_part *part, hs_vec3 *ret_least_m, hs_vec3 *ret_most_m);

#endif
