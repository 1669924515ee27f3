/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the load weigh, where is its CG, what is its inertia?
 * Answer:    first and second moments of the parts about the load frame's origin, moved to the CG; weighings over them.
 * Not here:  the shapes (solids.c), the scales (weigh.c), slosh (liquid.c). */
#include "load.h"

#include "solids.h"
#include "units.h"
#include "weigh.h"

/* Tolerances by how a mass is known, fixed by the file format: 1 % or 0.2 kg, 10 %, 30 % (common practice, no source). */
#define WEIGHED_FRACTION   0.01
#define WEIGHED_LEAST_kg   0.2
#define LABEL_FRACTION     0.10
#define ESTIMATED_FRACTION 0.30

typedef struct {
    double mass_kg;
    hs_vec3 first_kg_m;
    hs_mat3 origin_kg_m2; /* inertia about the origin */
    double tol_kg;
    bool has_box;
    hs_vec3 least_m, most_m;
} sums;

static void
add_body(sums *all, double mass_kg, hs_vec3 at_m, const hs_mat3 *spread_m2, hs_working *working)
{
    double square_m2 = hs_vec3_dot(at_m, at_m);
    double at[3] = {at_m.x, at_m.y, at_m.z};
    hs_vec3 before = all->first_kg_m;

    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            all->origin_kg_m2.m[i][j] +=
                mass_kg * (spread_m2->m[i][j] + (i == j ? square_m2 : 0.0) - at[i] * at[j]);
    all->first_kg_m = hs_vec3_add(before, hs_vec3_scale(at_m, mass_kg));
    HS_WORK(working, load_sum, all->mass_kg + mass_kg, "kg", {"before", all->mass_kg, "kg"},
            {"part", mass_kg, "kg"});
    all->mass_kg += mass_kg;
}

static hs_status
tolerance_of(const hs_part *part,
             double mass_kg,
             int index,
             hs_assumptions *assumptions,
             double *ret_tol_kg)
{
    hs_known known = part->known != 0 ? part->known : HS_KNOWN_ESTIMATED;

    if (hs_has(part->mass_tol_kg)) {
        *ret_tol_kg = part->mass_tol_kg;
        return HS_OK;
    }
    if (known == HS_KNOWN_WEIGHED)
        *ret_tol_kg = fmax(WEIGHED_FRACTION * mass_kg, WEIGHED_LEAST_kg);
    else
        *ret_tol_kg = mass_kg * (known == HS_KNOWN_LABEL ? LABEL_FRACTION : ESTIMATED_FRACTION);
    if (part->known == 0)
        hs_assume(assumptions, HS_ABSENT, "estimated", HS_SAY(assumed_estimated),
                  "load.parts[%d].known", index);
    hs_assume(assumptions, *ret_tol_kg, NULL, HS_SAY(assumed_mass_tolerance, *ret_tol_kg),
              "load.parts[%d].mass_tol_kg", index);
    return HS_OK;
}

static void
add_box(sums *all, const hs_part *part)
{
    hs_vec3 least_m, most_m;

    if (part->is_void || part->shape == HS_SHAPE_POINT)
        return;
    hs_part_box(part, &least_m, &most_m);
    if (!all->has_box) {
        all->least_m = least_m;
        all->most_m = most_m;
        all->has_box = true;
        return;
    }
    all->least_m = (hs_vec3){fmin(all->least_m.x, least_m.x), fmin(all->least_m.y, least_m.y),
                             fmin(all->least_m.z, least_m.z)};
    all->most_m = (hs_vec3){fmax(all->most_m.x, most_m.x), fmax(all->most_m.y, most_m.y),
                            fmax(all->most_m.z, most_m.z)};
}

static hs_status
add_part(sums *all,
         const hs_part *part,
         int index,
         hs_assumptions *assumptions,
         hs_working *working,
         hs_error *error)
{
    hs_solid solid = hs_solid_of(part);
    hs_vec3 turn_rad = hs_vec3_scale(part->turn_deg, HS_RAD_PER_DEG);
    hs_mat3 q = hs_mat3_turn_xyz(turn_rad), back = hs_mat3_transpose(&q);
    hs_mat3 half = hs_mat3_mul(&q, &solid.spread_m2), spread_m2 = hs_mat3_mul(&half, &back);
    double mass_kg =
               hs_has(part->mass_kg) ? part->mass_kg : part->density_kg_m3 * solid.volume_m3,
           tol_kg;

    if (!(mass_kg >= 0.0) || !isfinite(mass_kg))
        return hs_refuse(error, "load.parts", mass_kg, 0.0, (double)INFINITY);
    HS_TRY(tolerance_of(part, mass_kg, index, assumptions, &tol_kg));
    all->tol_kg += tol_kg;
    add_body(all, part->is_void ? -mass_kg : mass_kg, part->centre_m, &spread_m2, working);
    add_box(all, part);
    if (part->has_liquid) {
        hs_liquid_body body;

        HS_TRY(hs_liquid_body_of(part, &body, error));
        add_body(all, part->liquid_density_kg_m3 * body.volume_m3,
                 hs_vec3_add(part->centre_m, body.from_centre_m), &body.spread_m2, working);
    }
    return HS_OK;
}

static void
record_centre(const sums *all, hs_vec3 cg_m, hs_working *working)
{
    HS_WORK(working, load_centre_x, cg_m.x, "m", {"S_x", all->first_kg_m.x, "kg m"},
            {"m", all->mass_kg, "kg"});
    HS_WORK(working, load_centre_y, cg_m.y, "m", {"S_y", all->first_kg_m.y, "kg m"},
            {"m", all->mass_kg, "kg"});
    HS_WORK(working, load_centre_z, cg_m.z, "m", {"S_z", all->first_kg_m.z, "kg m"},
            {"m", all->mass_kg, "kg"});
}

/* Mass, CG and inertia of the parts alone. */
static hs_status
solve_parts(const hs_load *load,
            hs_assumptions *assumptions,
            hs_working *working,
            hs_load_state *state,
            hs_error *error)
{
    sums all = {0};

    for (int i = 0; i < load->n_parts; i++)
        HS_TRY(add_part(&all, &load->parts[i], i, assumptions, working, error));
    if (!(all.mass_kg > 0.0))
        return hs_refuse(error, "load.parts", all.mass_kg, 0.0, (double)INFINITY);

    double at[3] = {all.first_kg_m.x / all.mass_kg, all.first_kg_m.y / all.mass_kg,
                    all.first_kg_m.z / all.mass_kg};
    double square_m2 = at[0] * at[0] + at[1] * at[1] + at[2] * at[2];

    state->mass_kg = state->parts_mass_kg = all.mass_kg;
    state->mass_tol_kg = state->parts_tol_kg = all.tol_kg;
    state->cg_m = state->parts_cg_m = (hs_vec3){at[0], at[1], at[2]};
    state->has_inertia = true;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            state->inertia_kg_m2.m[i][j] =
                all.origin_kg_m2.m[i][j] -
                all.mass_kg * ((i == j ? square_m2 : 0.0) - at[i] * at[j]);
    state->has_box = all.has_box;
    state->least_m = all.least_m;
    state->most_m = all.most_m;
    record_centre(&all, state->cg_m, working);
    return HS_OK;
}

/* What the scales determine takes the place of what the parts say. */
static hs_status
apply_weighings(const hs_load *load,
                hs_assumptions *assumptions,
                hs_working *working,
                hs_load_state *state,
                hs_error *error)
{
    hs_weighed weighed;

    HS_TRY(hs_weigh_solve(load->weighings, load->n_weighings,
                          load->n_parts > 0 ? &state->parts_cg_m : NULL, working, &weighed,
                          error));
    if (load->n_parts > 0) {
        double scale = weighed.mass_kg / state->mass_kg;

        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++)
                state->inertia_kg_m2.m[i][j] *= scale;
        if (!hs_has(weighed.cg_m.z))
            weighed.cg_m.z = state->parts_cg_m.z;
    }
    state->weighed_cg_m = weighed.cg_m;
    if (weighed.is_on_line)
        hs_assume(assumptions, HS_ABSENT, "line", HS_SAY(assumed_on_line), "load.weighings");
    state->mass_kg = state->weighed_mass_kg = weighed.mass_kg;
    state->mass_tol_kg = fmax(WEIGHED_FRACTION * weighed.mass_kg, WEIGHED_LEAST_kg);
    state->cg_m = weighed.cg_m;
    return HS_OK;
}

hs_status
hs_load_solve(const hs_load *load,
              hs_arena *arena,
              hs_assumptions *assumptions,
              hs_working *working,
              hs_load_state *ret_state,
              hs_error *error)
{
    hs_vec3 nowhere = {HS_ABSENT, HS_ABSENT, HS_ABSENT};
    hs_load_state state = {.parts_mass_kg = HS_ABSENT,
                           .weighed_mass_kg = HS_ABSENT,
                           .parts_tol_kg = HS_ABSENT,
                           .parts_cg_m = nowhere,
                           .weighed_cg_m = nowhere};

    (void)arena;
    if (load->n_parts < 1 && load->n_weighings < 1)
        return hs_refuse(error, "load", 0, 1, (double)INFINITY);
    if (load->n_parts > 0)
        HS_TRY(solve_parts(load, assumptions, working, &state, error));
    if (load->n_weighings > 0)
        HS_TRY(apply_weighings(load, assumptions, working, &state, error));
    if (load->n_parts < 1 || load->n_weighings < 1) {
        state.parts_mass_kg = state.weighed_mass_kg = HS_ABSENT;
        state.parts_cg_m = state.weighed_cg_m = nowhere;
    }
    *ret_state = state;
    return HS_OK;
}

void
hs_part_box(const hs_part *part, hs_vec3 *ret_least_m, hs_vec3 *ret_most_m)
{
    hs_vec3 turn_rad = hs_vec3_scale(part->turn_deg, HS_RAD_PER_DEG);
    hs_mat3 q = hs_mat3_turn_xyz(turn_rad);
    double least[3], most[3],
        centre[3] = {part->centre_m.x, part->centre_m.y, part->centre_m.z};

    for (int i = 0; i < 3; i++) {
        hs_vec3 own = {q.m[i][0], q.m[i][1],
                       q.m[i][2]}; /* the load's axis i seen from the part */

        most[i] = centre[i] + hs_solid_reach_m(part, own);
        least[i] = centre[i] - hs_solid_reach_m(part, hs_vec3_scale(own, -1.0));
    }
    *ret_least_m = (hs_vec3){least[0], least[1], least[2]};
    *ret_most_m = (hs_vec3){most[0], most[1], most[2]};
}
