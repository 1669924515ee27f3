/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the figures beside the checks of suit, grip and floor what their sources give?
 * Answer:    the cases of tests/cases/suit.json with layer "figures", read out of findings and their working.
 * Not here:  felt force, load path, rating (forces/test_suit.c), what is judged (test_surroundings.c, test_grip_checks.c). */
#include "energy.h"
#include "floor.h"
#include "geometry.h"
#include "grip_figures.h"
#include "lines.h"
#include "liquid.h"
#include "person.h"
#include "solve.h"

static void
make(one *o, JsonObject *of)
{
    one_make(o, json_object_has_member(of, "mass_kg") ? given(of, "mass_kg") : 20.0);
    stand_still(o);
}

static double
ask_energy(const char *ask, JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    hs_working working = {.arena = arena};
    hs_suit suit = {.kind = HS_SUIT_POWERED,
                    .has_power = true,
                    .hold_W_per_Nm = 1.0,
                    .lift_efficiency = 1.0,
                    .battery_Wh = 1000.0,
                    .reserve = NONE,
                    .swap_min = NONE};
    hs_energy_cycle cycle = {.cycles_per_h = 1.0, .hours = 1.0};
    hs_energy energy;
    double got;

    if (g_str_equal(ask, "swap_min") || g_str_equal(ask, "battery_Wh")) {
        suit.idle_W = given(of, "use_Wh_per_h");
        suit.reserve = given(of, "reserve");
        if (json_object_has_member(of, "swap_min"))
            suit.swap_min = given(of, "swap_min");
        if (json_object_has_member(of, "hours"))
            cycle.hours = given(of, "hours");
    } else {
        suit.lift_efficiency = given(of, "efficiency");
        cycle.lift_J = given(of, "mass_kg") * HS_GRAVITY_m_s2 * given(of, "height_m");
    }
    if (g_str_equal(ask, "hour_Wh")) {
        suit.idle_W = given(of, "idle_W");
        cycle.cycles_per_h = given(of, "lifts");
        cycle.hold_Nms =
            given(of, "hold_W") * given(of, "hold_h") * HS_J_PER_Wh / cycle.cycles_per_h;
    }
    g_assert_cmpint(hs_energy_sum(&suit, &cycle, &working, &energy, NULL), ==, HS_OK);
    if (g_str_equal(ask, "swap_min"))
        got = line_of(&working, HS_EQ_energy_swap_min);
    else if (g_str_equal(ask, "battery_Wh"))
        got = line_of(&working, HS_EQ_energy_battery);
    else
        got = g_str_equal(ask, "lift_Wh") ? energy.lift_Wh : energy.hour_Wh;
    hs_arena_free(arena);
    return got;
}

static double
friction_over(double value, void *data)
{
    JsonObject *of = data;
    bool is_tilt = json_object_has_member(of, "tilt");
    double tilt_rad = is_tilt ? value * HS_RAD_PER_DEG : 0.0;
    hs_mat3 turned = hs_mat3_turn_xyz((hs_vec3){0, tilt_rad, 0});

    return hs_rest_friction(&turned, is_tilt ? 0.0 : value, HS_GRAVITY_m_s2) - given(of, "mu");
}

static double
ask_slide(const char *ask, JsonObject *of)
{
    double root = NONE;

    if (g_str_equal(ask, "slide_deg"))
        json_object_set_boolean_member(of, "tilt", TRUE);
    g_assert_cmpint(hs_root_find(friction_over, of, 0.0, 40.0, 1e-12, &root, NULL), ==, HS_OK);
    return root;
}

static double
ask_person(const char *ask, JsonObject *of)
{
    hs_worker worker = {"w",  "w", given(of, "female") > 0.0 ? HS_SEX_FEMALE : HS_SEX_MALE,
                        1.70, 70,  34};
    double percentile =
        json_object_has_member(of, "percentile") ? given(of, "percentile") : 50.0;
    hs_person person;
    double held_N;

    g_assert_cmpint(hs_person_make(&worker, percentile, HS_SEGMENTS_DE_LEVA, &person, NULL), ==,
                    HS_OK);
    held_N =
        2.0 * given(of, "mu") * hs_palm_press(&person, NONE, NULL).press_N / given(of, "SF");
    return g_str_equal(ask, "palm_N") ? held_N : held_N / HS_GRAVITY_m_s2;
}

static double
ask_endurance(const char *ask, JsonObject *of)
{
    static const struct {
        const char *name;
        int joint;
    } joints[] = {{"ankle", HS_JOINT_ANKLE},
                  {"knee", HS_JOINT_KNEE},
                  {"trunk", HS_JOINT_L5S1},
                  {"shoulder", HS_JOINT_SHOULDER},
                  {"elbow", HS_JOINT_ELBOW}};
    double f = given(of, "f");
    bool outside;

    if (g_str_equal(ask, "endure_ratio"))
        return hs_endurance_s(HS_JOINT_SHOULDER, f, &outside) /
               hs_endurance_s(HS_JOINT_L5S1, f, &outside);
    for (gsize i = 0; i < G_N_ELEMENTS(joints); i++)
        if (g_str_equal(joints[i].name, json_object_get_string_member(of, "joint")))
            return hs_endurance_s(joints[i].joint, f, &outside);
    g_assert_not_reached();
}

static hs_part
can_of(double radius_m, double depth_m)
{
    return (hs_part){.id = "can",
                     .shape = HS_SHAPE_CYLINDER,
                     .axis = HS_AXIS_Z,
                     .radius_m = radius_m,
                     .length_m = 2.0 * depth_m,
                     .mass_kg = 1.0,
                     .has_liquid = true,
                     .liquid_density_kg_m3 = 1000.0,
                     .liquid_depth_m = depth_m};
}

static double
deep_box_over(double length_m, void *data)
{
    hs_part box = {.id = "box",
                   .shape = HS_SHAPE_BOX,
                   .size_m = {length_m, 0.2, 10.0},
                   .mass_kg = 1.0,
                   .has_liquid = true,
                   .liquid_density_kg_m3 = 1000.0,
                   .liquid_depth_m = 5.0};
    hs_slosh slosh;

    if (hs_liquid_slosh(&box, NULL, &slosh, NULL) != HS_OK)
        return NONE;
    return slosh.frequency_Hz[0] - given(data, "frequency_Hz");
}

static double
ask_slosh(const char *ask, JsonObject *of)
{
    hs_part can;
    hs_slosh slosh;
    double root = NONE;

    if (g_str_equal(ask, "slosh_length")) {
        g_assert_cmpint(hs_root_find(deep_box_over, of, 0.05, 1.0, 1e-12, &root, NULL), ==,
                        HS_OK);
        return root;
    }
    can = can_of(given(of, "radius_m"), given(of, "depth_m"));
    g_assert_cmpint(hs_liquid_slosh(&can, NULL, &slosh, NULL), ==, HS_OK);
    return g_str_equal(ask, "slosh_Hz") ? slosh.frequency_Hz[0] : slosh.moving_share[0];
}

static double
ask_pair(const char *ask, JsonObject *of)
{
    double span_m = given(of, "half_span_m"), got;
    hs_part parts[2];
    one o;

    one_make(&o, 20);
    stand_still(&o);
    parts[0] = parts[1] = o.part;
    parts[1].id = "other";
    parts[0].mass_kg = given(of, "m1_kg");
    parts[1].mass_kg = given(of, "m2_kg");
    parts[0].centre_m.y = o.grips[0].at_m.y = span_m;
    parts[1].centre_m.y = o.grips[1].at_m.y = -span_m;
    if (json_object_has_member(of, "body_kg")) {
        o.worker.mass_kg = given(of, "body_kg");
        o.suit.mass_kg = given(of, "suit_kg");
    }
    o.task.load.n_parts = 2;
    o.task.load.parts = parts;
    one_run(&o);
    if (g_str_equal(ask, "pair_Nm"))
        got = (o.run.stations[0].shares.up_N[0] - o.run.stations[0].shares.up_N[1]) * span_m;
    else
        got = g_str_equal(ask, "pair_cg_m") ? o.load.cg_m.y : o.run.samples[0].combined_m.y;
    one_free(&o);
    return got;
}

static double
ask_pad(one *o, JsonObject *of)
{
    for (int i = 0; i < 2; i++) {
        o->grips[i].kind = HS_GRIP_PAD;
        o->grips[i].friction = 0.5;
        o->grips[i].at_m.z = 0.15; /* at the box's CG */
        o->grips[i].pad_along_m = o->grips[i].pad_up_m = 0.1;
    }
    o->part.mass_kg = given(of, "normal_N") / 1.5 / HS_GRAVITY_m_s2;
    return LINE(one_ask(o, HS_CHECK_grip_hold), grip_pad_pressure);
}

static double
ask_loss(const char *ask, one *o, JsonObject *of)
{
    hs_finding finding;

    if (g_str_equal(ask, "landing_m_s") || g_str_equal(ask, "throw_m")) {
        for (int i = 0; i < 4; i++)
            o->points[i].z_m = given(of, "height_m");
        o->bearer.effector = 0;
        o->effector.holds_without_power = HS_NO;
        /* A leg between rests peaks at 15/8 of its mean speed (minimum jerk). */
        if (g_str_equal(ask, "throw_m"))
            o->points[2].time_s = 15.0 / 8.0 * 4.0 / given(of, "speed_m_s");
        finding = one_ask(o, HS_CHECK_suit_power_loss);
        return g_str_equal(ask, "throw_m") ? finding.text.number[3]
                                           : LINE(finding, loss_landing);
    }
    if (g_str_equal(ask, "jump")) {
        o->suit.residual_hands_N = 0.0;
        o->suit.gain_hands = given(of, "gain");
        o->suit.mass_kg = given(of, "dead_kg");
        o->suit.on_power_loss = HS_LOSS_LIMP;
        return LINE(one_ask(o, HS_CHECK_suit_power_loss), loss_jump);
    }
    if (g_str_equal(ask, "brake_Nm"))
        for (int i = 0; i < 4; i++)
            o->points[i].reach_m = given(of, "arm_m");
    else {
        o->suit.on_power_loss = HS_LOSS_DESCEND;
        o->suit.sink_m_s = given(of, "sink_m_s");
        return LINE(one_ask(o, HS_CHECK_suit_power_loss), loss_heat);
    }
    return LINE(one_ask(o, HS_CHECK_suit_power_loss), loss_brake);
}

static double
ask_floor(const char *ask, one *o, JsonObject *of)
{
    hs_finding finding;

    if (g_str_equal(ask, "slope_deg")) {
        o->floor[1] = (hs_vec2){given(of, "run"), given(of, "rise")};
        o->task.site.n_floor = 2;
        return hs_floor_slope_rad(&o->task.site, 1.0) * HS_DEG_PER_RAD;
    }
    if (g_str_equal(ask, "turn_margin")) {
        o->task.site.corner_in_m = o->task.site.corner_out_m = 3.0;
        o->task.site.friction = given(of, "floor");
        finding = one_ask(o, HS_CHECK_floor_friction);
        return finding.limit / finding.value;
    }
    o->part.mass_kg = given(of, "mass_kg") - o->worker.mass_kg - o->suit.mass_kg;
    o->task.site.rating_kg = given(of, "limit_N") / HS_GRAVITY_m_s2;
    return one_ask(o, HS_CHECK_floor_load).ratio;
}

static double
ask_placing(one *o, JsonObject *of)
{
    o->points[3].z_m = o->points[2].z_m - given(of, "distance_m");
    o->points[3].precise = HS_YES;
    o->points[3].tolerance_m = given(of, "window_m") / 2.0;
    return one_ask(o, HS_CHECK_placing).value;
}

static double
ask_skin(const char *ask, JsonObject *of)
{
    hs_arena *arena = hs_arena_new();
    hs_working working = {.arena = arena};
    double got;

    hs_skin_write(json_object_has_member(of, "felt_N") ? given(of, "felt_N") : 1.0, 2,
                  &working);
    got = g_str_equal(ask, "handle_N") ? line_of(&working, HS_EQ_grip_skin_most) / 2.0
                                       : line_of(&working, HS_EQ_grip_skin);
    hs_arena_free(arena);
    return got;
}

static double
ask_whole(const char *ask, JsonObject *of)
{
    one o;
    double got;

    make(&o, of);
    if (g_str_equal(ask, "model_error")) {
        o.suit.gain_hands = given(of, "gain");
        got = LINE(one_ask(&o, HS_CHECK_suit_rating), gain_model);
    } else if (g_str_equal(ask, "sway_Hz")) {
        /* a tub that sways at 0.95 Hz along its length */
        o.part.size_m = (hs_vec3){0.53, 0.30, 0.32};
        o.part.has_liquid = true;
        o.part.liquid_density_kg_m3 = 1080;
        o.part.liquid_depth_m = 0.12;
        o.task.policy.step_Hz = given(of, "step_Hz");
        got = one_ask(&o, HS_CHECK_slosh).limit;
    } else if (g_str_equal(ask, "pad_kPa"))
        got = ask_pad(&o, of);
    else if (g_str_equal(ask, "placing_s"))
        got = ask_placing(&o, of);
    else if (g_str_equal(ask, "drag_least_N")) {
        o.worker.mass_kg = given(of, "body_kg");
        o.suit.mass_kg = given(of, "suit_kg");
        got = LINE(one_ask(&o, HS_CHECK_rescue), rescue_drag_least);
    } else if (g_str_equal(ask, "slope_deg") || g_str_equal(ask, "turn_margin") ||
               g_str_equal(ask, "floor_ratio"))
        got = ask_floor(ask, &o, of);
    else
        got = ask_loss(ask, &o, of);
    one_free(&o);
    return got;
}

static double
answer(const char *ask, JsonObject *of)
{
    if (g_str_equal(ask, "lift_Wh") || g_str_equal(ask, "hour_Wh") ||
        g_str_equal(ask, "swap_min") || g_str_equal(ask, "battery_Wh"))
        return ask_energy(ask, of);
    if (g_str_has_prefix(ask, "slide_"))
        return ask_slide(ask, of);
    if (g_str_has_prefix(ask, "palm_"))
        return ask_person(ask, of);
    if (g_str_has_prefix(ask, "endure_"))
        return ask_endurance(ask, of);
    if (g_str_has_prefix(ask, "slosh_"))
        return ask_slosh(ask, of);
    if (g_str_has_prefix(ask, "pair_"))
        return ask_pair(ask, of);
    if (g_str_has_prefix(ask, "handle_"))
        return ask_skin(ask, of);
    return ask_whole(ask, of);
}

static void
published_and_derived_cases(void)
{
    g_assert_cmpint(hs_cases_ask("suit", "figures", answer), >=, 45);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/suit_figures/published_and_derived_cases", published_and_derived_cases);
    return g_test_run();
}
