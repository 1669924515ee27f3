/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are mass, CG, inertia and liquids what mechanics gives?
 * Answer:    the cases of tests/cases/statics.json and suit_grip.json, and a few laws.
 * Not here:  who carries it (forces/test_shares.c). */
#include "../forces/case_load.h"
#include "liquid.h"
#include "near.h"
#include "solids.h"
#include "units.h"
#include "weigh.h"

#include <stdlib.h>
#include <string.h>

static const char *
name_of(JsonObject *of)
{
    return json_object_get_string_member(of, "name");
}

static double
relative_of(JsonObject *of)
{
    return hs_case_number(of, "relative", 1e-9);
}

static double
inertia_of(const hs_load_state *state, const char *key, const hs_vec3 *about_m)
{
    int i = key[0] - 'x', j = key[1] - 'x';
    hs_vec3 d = about_m != NULL ? hs_vec3_sub(state->cg_m, *about_m) : (hs_vec3){0, 0, 0};
    double at[3] = {d.x, d.y, d.z};

    return state->inertia_kg_m2.m[i][j] +
           state->mass_kg * ((i == j ? hs_vec3_dot(d, d) : 0.0) - at[i] * at[j]);
}

static void
ask_parts(JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    hs_load load = {0};
    hs_load_state state;
    JsonObject *expect = json_object_get_object_member(of, "expect");
    g_autoptr(GList) keys = json_object_get_members(expect);
    hs_vec3 about_m = hs_case_vec3(of, "about_m");

    hs_case_parts(json_object_get_array_member(of, "parts"), arena, &load);
    g_assert_cmpint(hs_load_solve(&load, arena, NULL, NULL, &state, NULL), ==, HS_OK);
    for (GList *k = keys; k != NULL; k = k->next)
        hs_near_rel(name_of(of),
                    inertia_of(&state, k->data,
                               json_object_has_member(of, "about_m") ? &about_m : NULL),
                    json_object_get_double_member(expect, k->data), 1e-9);
    hs_arena_free(arena);
}

static void
load__parts_about_an_axis(void)
{
    hs_case_each("statics", "ask", "parts", ask_parts);
}

static void
ask_outline(JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    hs_load load = {0};
    hs_vec3 least_m, most_m;
    JsonObject *expect = json_object_get_object_member(of, "expect");

    hs_case_parts(json_object_get_array_member(of, "parts"), arena, &load);
    hs_part_box(&load.parts[0], &least_m, &most_m);
    hs_near(name_of(of), least_m.z, hs_case_number(expect, "least_z_m", HS_ABSENT), 1e-12);
    hs_near(name_of(of), most_m.z, hs_case_number(expect, "most_z_m", HS_ABSENT), 1e-12);
    hs_arena_free(arena);
}

static void
load__outline_of_a_cone(void)
{
    hs_case_each("statics", "ask", "outline", ask_outline);
}

static void
ask_weigh(JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    hs_load load = {0};
    hs_weighed weighed;
    JsonObject *expect = json_object_get_object_member(of, "expect");

    hs_case_weighings(json_object_get_array_member(of, "weighings"), arena, &load);
    g_assert_cmpint(
        hs_weigh_solve(load.weighings, load.n_weighings, NULL, NULL, &weighed, NULL), ==,
        HS_OK);
    if (json_object_has_member(expect, "mass_kg"))
        hs_near_rel(name_of(of), weighed.mass_kg, hs_case_number(expect, "mass_kg", 0.0), 1e-9);
    if (json_object_has_member(expect, "x_m"))
        hs_near_rel(name_of(of), weighed.cg_m.x, hs_case_number(expect, "x_m", 0.0), 1e-9);
    if (json_object_has_member(expect, "z_m"))
        hs_near_rel(name_of(of), weighed.cg_m.z + hs_case_number(of, "plus_z_m", 0.0),
                    hs_case_number(expect, "z_m", 0.0), 1e-8);
    else
        g_assert_false(hs_has(weighed.cg_m.z));
    hs_arena_free(arena);
}

static void
load__scales_give_mass_and_centre(void)
{
    hs_case_each("statics", "ask", "weigh", ask_weigh);
}

/* The results load.* of the worked documents. */
static void
ask_document(JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    hs_load load;
    hs_load_state state;
    JsonArray *results = json_object_get_array_member(of, "results");

    hs_case_document_load(json_object_get_object_member(of, "document"), arena, &load);
    g_assert_cmpint(hs_load_solve(&load, arena, NULL, NULL, &state, NULL), ==, HS_OK);
    for (guint i = 0; i < json_array_get_length(results); i++) {
        JsonObject *one = json_array_get_object_element(results, i);
        const char *path = json_object_get_string_member(one, "path");
        double value = json_object_get_double_member(one, "value"), got;
        double tolerance = fmax(hs_case_number(one, "abs_tol", 0.0),
                                hs_case_number(one, "rel_tol", 0.0) * fabs(value));
        double centre[3] = {state.cg_m.x, state.cg_m.y, state.cg_m.z};

        if (!g_str_has_prefix(path, "load."))
            continue;
        if (g_str_has_prefix(path, "load.mass_kg"))
            got = state.mass_kg;
        else if (g_str_has_prefix(path, "load.centre_m"))
            got = centre[path[strlen("load.centre_m[")] - '0'];
        else
            got = state.inertia_kg_m2.m[path[strlen("load.inertia_kg_m2[")] - '0']
                                       [path[strlen("load.inertia_kg_m2[0][")] - '0'];
        hs_near(name_of(of), got, value, fmax(tolerance, 1e-12));
    }
    hs_arena_free(arena);
}

static void
load__documents_with_known_answers(void)
{
    g_assert_cmpint(hs_case_each("statics", "document", NULL, ask_document), >, 50);
}

static double
answer_of(const hs_part *part, JsonObject *of, const char *key)
{
    hs_slosh slosh;
    hs_wander wander = {0};
    hs_liquid_body body;
    hs_axis tilt =
        g_strcmp0(json_object_has_member(of, "tilt") ? json_object_get_string_member(of, "tilt")
                                                     : "x",
                  "x") == 0
            ? HS_AXIS_X
            : HS_AXIS_Y;

    g_assert_cmpint(hs_liquid_slosh(part, NULL, &slosh, NULL), ==, HS_OK);
    g_assert_cmpint(hs_liquid_body_of(part, &body, NULL), ==, HS_OK);
    g_assert_cmpint(hs_liquid_wander(part, tilt,
                                     hs_case_number(of, "tilt_deg", 0.0) * HS_RAD_PER_DEG,
                                     &wander, NULL),
                    ==, HS_OK);
    if (strcmp(key, "frequency_Hz") == 0)
        return slosh.frequency_Hz[0];
    if (strcmp(key, "frequency_across_Hz") == 0)
        return slosh.frequency_Hz[1];
    if (strcmp(key, "moving_part") == 0)
        return slosh.moving_share[0];
    if (strcmp(key, "depth_for_1Hz_m") == 0)
        return hs_liquid_depth_for_m(part, 0, 1.0);
    if (strcmp(key, "shift_m") == 0)
        return wander.shift_m;
    if (strcmp(key, "rise_m") == 0)
        return wander.rise_m;
    if (strcmp(key, "dry_deg") == 0)
        return wander.dry_tilt_rad * HS_DEG_PER_RAD;
    if (strcmp(key, "spill_deg") == 0)
        return wander.spill_tilt_rad * HS_DEG_PER_RAD;
    if (strcmp(key, "down_m") == 0)
        return -body.from_centre_m.z;
    g_error("%s", key);
}

static void
ask_liquid(JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    JsonObject *given = json_object_get_object_member(of, "part");
    JsonObject *expect = json_object_get_object_member(of, "expect");
    g_autoptr(JsonArray) list = json_array_new();
    g_autoptr(GList) keys = json_object_get_members(expect);
    hs_load load = {0};
    hs_part part;

    json_array_add_object_element(list, json_object_ref(given));
    hs_case_parts(list, arena, &load);
    part = load.parts[0];
    part.mass_kg = 1.0;
    part.has_liquid = true;
    part.liquid_density_kg_m3 = 1000.0;
    part.liquid_depth_m = hs_case_number(given, "depth_m", HS_ABSENT);
    for (GList *k = keys; k != NULL; k = k->next)
        hs_near_rel(name_of(of), answer_of(&part, given, k->data),
                    json_object_get_double_member(expect, k->data), relative_of(of));
    hs_arena_free(arena);
}

static void
load__liquids_swing_and_wander(void)
{
    hs_case_each("suit_grip", "ask", "liquid", ask_liquid);
}

static hs_part
random_part(void)
{
    return (hs_part){
        .id = "p",
        .shape = (hs_shape)g_test_rand_int_range(HS_SHAPE_BOX, HS_SHAPE_POINT + 1),
        .axis = (hs_axis)g_test_rand_int_range(HS_AXIS_X, HS_AXIS_Z + 1),
        .size_m = {g_test_rand_double_range(0.1, 1.0), g_test_rand_double_range(0.1, 1.0),
                   g_test_rand_double_range(0.1, 1.0)},
        .radius_m = g_test_rand_double_range(0.1, 0.5),
        .inner_radius_m = 0.05,
        .length_m = g_test_rand_double_range(0.1, 1.0),
        .centre_m = {g_test_rand_double_range(-1, 1), g_test_rand_double_range(-1, 1),
                     g_test_rand_double_range(-1, 1)},
        .turn_deg = {g_test_rand_double_range(-90, 90), g_test_rand_double_range(-90, 90),
                     g_test_rand_double_range(-90, 90)},
        .mass_kg = g_test_rand_double_range(1, 30),
        .density_kg_m3 = HS_ABSENT,
        .mass_tol_kg = HS_ABSENT};
}

static void
load__moving_all_parts_moves_the_centre_alone(void)
{
    hs_part parts[4];
    hs_load load = {.n_parts = 4, .parts = parts};
    hs_load_state before, after;
    hs_vec3 shift_m = {0.7, -0.3, 1.9};

    for (int trial = 0; trial < 200; trial++) {
        for (int i = 0; i < 4; i++)
            parts[i] = random_part();
        g_assert_cmpint(hs_load_solve(&load, NULL, NULL, NULL, &before, NULL), ==, HS_OK);
        for (int i = 0; i < 4; i++)
            parts[i].centre_m = hs_vec3_add(parts[i].centre_m, shift_m);
        g_assert_cmpint(hs_load_solve(&load, NULL, NULL, NULL, &after, NULL), ==, HS_OK);
        hs_near("mass", after.mass_kg, before.mass_kg, 1e-12);
        hs_near("x", after.cg_m.x - before.cg_m.x, shift_m.x, 1e-12);
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++) {
                hs_near("inertia", after.inertia_kg_m2.m[i][j], before.inertia_kg_m2.m[i][j],
                        1e-9);
                hs_near("symmetric", after.inertia_kg_m2.m[i][j], after.inertia_kg_m2.m[j][i],
                        1e-12);
            }
    }
}

static void
load__liquid_deeper_than_its_container_is_refused(void)
{
    hs_part part = {.shape = HS_SHAPE_BOX,
                    .size_m = {0.4, 0.3, 0.2},
                    .mass_kg = 1.0,
                    .has_liquid = true,
                    .liquid_density_kg_m3 = 1000.0,
                    .liquid_depth_m = 0.21};
    hs_liquid_body body;
    hs_error error = {0};

    g_assert_cmpint(hs_liquid_body_of(&part, &body, &error), ==, HS_E_RANGE);
    g_assert_cmpstr(error.where, ==, "liquid.depth_m");
}

static void
load__full_lying_cylinder_is_a_cylinder(void)
{
    hs_part part = {.shape = HS_SHAPE_CYLINDER,
                    .axis = HS_AXIS_Y,
                    .radius_m = 0.2,
                    .length_m = 0.7,
                    .mass_kg = 1.0,
                    .has_liquid = true,
                    .liquid_density_kg_m3 = 1000.0,
                    .liquid_depth_m = 0.4};
    hs_solid solid = hs_solid_of(&part);
    hs_liquid_body body;

    g_assert_cmpint(hs_liquid_body_of(&part, &body, NULL), ==, HS_OK);
    hs_near_rel("volume", body.volume_m3, solid.volume_m3, 1e-12);
    hs_near("centre", body.from_centre_m.z, 0.0, 1e-12);
    for (int i = 0; i < 3; i++)
        hs_near_rel("spread", body.spread_m2.m[i][i], solid.spread_m2.m[i][i], 1e-9);
}

/* Where parts and scales are both given the scales win, and inertia goes with the mass. */
static void
load__scales_win_over_parts(void)
{
    hs_part part = {.shape = HS_SHAPE_BOX,
                    .size_m = {0.6, 0.4, 0.3},
                    .centre_m = {0.0, 0.05, 0.15},
                    .mass_kg = 20.0,
                    .density_kg_m3 = HS_ABSENT,
                    .mass_tol_kg = HS_ABSENT};
    hs_reading readings[2] = {{-0.3, 0.0, 9.0}, {0.3, 0.0, 13.0}};
    hs_weighing set = {.about = HS_AXIS_Y, .n_readings = 2, .readings = readings};
    hs_load load = {.n_parts = 1, .parts = &part, .n_weighings = 1, .weighings = &set};
    hs_load_state state;

    g_assert_cmpint(hs_load_solve(&load, NULL, NULL, NULL, &state, NULL), ==, HS_OK);
    hs_near("mass", state.mass_kg, 22.0, 1e-12);
    hs_near("x", state.cg_m.x, 0.3 * 4.0 / 22.0, 1e-12);
    hs_near("y, across the line of supports: the parts'", state.cg_m.y, 0.05, 1e-12);
    hs_near("z", state.cg_m.z, 0.15, 1e-12);
    hs_near("inertia", state.inertia_kg_m2.m[2][2], 22.0 * (0.36 + 0.16) / 12.0, 1e-12);
    hs_near("tolerance of the parts, estimated", state.parts_tol_kg, 6.0, 1e-12);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/load/parts_about_an_axis", load__parts_about_an_axis);
    g_test_add_func("/load/outline_of_a_cone", load__outline_of_a_cone);
    g_test_add_func("/load/scales_give_mass_and_centre", load__scales_give_mass_and_centre);
    g_test_add_func("/load/documents_with_known_answers", load__documents_with_known_answers);
    g_test_add_func("/load/liquids_swing_and_wander", load__liquids_swing_and_wander);
    g_test_add_func("/load/moving_all_parts_moves_the_centre_alone",
                    load__moving_all_parts_moves_the_centre_alone);
    g_test_add_func("/load/liquid_deeper_than_its_container_is_refused",
                    load__liquid_deeper_than_its_container_is_refused);
    g_test_add_func("/load/full_lying_cylinder_is_a_cylinder",
                    load__full_lying_cylinder_is_a_cylinder);
    g_test_add_func("/load/scales_win_over_parts", load__scales_win_over_parts);
    return g_test_run();
}
