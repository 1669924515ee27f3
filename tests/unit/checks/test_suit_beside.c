/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the second readers and other figures that only stand in a working what their sources give, and is no figure forgotten?
 * Answer:    the cases of tests/cases/suit.json with layer "beside"; every number stands in a case or, with its reason, in
 *            docs/testing-suit.md.
 * Not here:  figures that a check is judged by (test_suit_figures.c, test_surroundings.c, forces/test_grip.c). */
#include "balance_left.h"
#include "endurance_readers.h"
#include "energy.h"
#include "geometry.h"
#include "grip_beside.h"
#include "lines.h"
#include "liquid.h"
#include "loss_beside.h"
#include "person.h"
#include "suit.h"

#define LAST_NUMBER 247

static hs_arena *arena;

static hs_working
fresh(void)
{
    return (hs_working){.arena = arena};
}

static hs_sex
sex_of(JsonObject *of)
{
    return given(of, "female") > 0.0 ? HS_SEX_FEMALE : HS_SEX_MALE;
}

/* What stands beside hands that carry a part of the published median: "fraction_" by force, "left_s" by share. */
static double
ask_hands(const char *ask, JsonObject *of)
{
    hs_working working = fresh();
    hs_grip_hands hands = {.n_hands = 2, .sex = HS_SEX_FEMALE, .to_set_down_s = 0.0};

    hands.bare_N = hs_grip_median_N(hands.sex);
    if (g_str_equal(ask, "hands_fraction"))
        hands.felt_N = given(of, "mass_kg") * HS_GRAVITY_m_s2 / given(of, "gain");
    else
        hands.felt_N = given(of, "f") * 2.0 * hands.bare_N;
    if (json_object_has_member(of, "to_set_down_s"))
        hands.to_set_down_s = given(of, "to_set_down_s");
    hs_grip_write_hands(&hands, 0.0, &working);
    return line_of(&working, g_str_equal(ask, "hands_fraction") ? HS_EQ_grip_median
                             : g_str_equal(ask, "hands_left_s") ? HS_EQ_grip_hands_left
                                                                : HS_EQ_grip_hands_hold);
}

static double
ask_grip(const char *ask, JsonObject *of)
{
    hs_working working = fresh();

    if (g_str_equal(ask, "median_N"))
        return hs_grip_gloved_N(hs_grip_median_N(sex_of(of)),
                                json_object_has_member(of, "loss") ? given(of, "loss") : NONE);
    if (g_str_equal(ask, "hold_mass_kg")) {
        /* asked of half the time, because a hold that nobody chose is halved */
        hs_loss_write_hands(100.0, 2, hs_grip_median_N(HS_SEX_FEMALE),
                            given(of, "time_s") / 2.0, &working);
        return line_of(&working, HS_EQ_loss_hands_mass);
    }
    if (g_str_equal(ask, "turn_round_Nm"))
        return hs_pad_turn_round_Nm(given(of, "mu"), given(of, "normal_N"),
                                    given(of, "radius_m"));
    if (g_str_equal(ask, "turn_narrow_Nm"))
        return hs_pad_turn_narrow_Nm(given(of, "mu"), given(of, "normal_N"),
                                     given(of, "length_m"));
    if (g_str_equal(ask, "even_N")) {
        double along_m = 2.0 * given(of, "half_spacing_m");
        hs_squeeze squeeze = {.squeeze_N = given(of, "weight_N") / (2.0 * given(of, "mu"))};
        hs_contact contacts[8];
        int n = 0;

        for (int side = -1; side <= 1; side += 2)
            n += hs_grip_pad_contacts((hs_vec3){-given(of, "offset_m"), side * 0.2, 0},
                                      (hs_vec3){0, -side, 0}, along_m, 0.0, given(of, "mu"),
                                      side > 0, &contacts[n]);
        hs_grip_write_uneven(contacts, n, &squeeze, along_m, &working);
        return line_of(&working, HS_EQ_grip_uneven);
    }
    hs_grip grip = {.kind = g_str_equal(ask, "bail_kPa") ? HS_GRIP_HANDLE : HS_GRIP_STRAP};

    hs_grip_write_other_skin(&grip, given(of, "felt_N"), 1, &working);
    return line_of(&working, grip.kind == HS_GRIP_HANDLE ? HS_EQ_grip_bail : HS_EQ_grip_strap);
}

static double
ask_reader(const char *ask, JsonObject *of)
{
    double f = given(of, "f");

    if (g_str_equal(ask, "rohmert_s"))
        return hs_endurance_rohmert_s(f);
    if (g_str_equal(ask, "rohmert_halved_s"))
        return hs_endurance_rohmert_s(f) / 2.0;
    if (g_str_equal(ask, "shoulder_s"))
        return hs_endurance_shoulder_s(f);
    return g_str_equal(ask, "hands_s") ? hs_endurance_hands_s(f) : hs_endurance_any_s(f);
}

static double
ask_suit(const char *ask, JsonObject *of)
{
    if (g_str_equal(ask, "gain_off"))
        return hs_suit_gain_off(given(of, "gain"), given(of, "model_error"));
    if (g_str_equal(ask, "belt_kPa"))
        return hs_suit_belt_kPa(given(of, "force_N"), given(of, "area_m2"));
    if (g_str_equal(ask, "square_W"))
        return hs_energy_square_W(given(of, "hold_W_per_Nm"), given(of, "hold_at_Nm"),
                                  given(of, "torque_Nm"));
    return hs_suit_harness_N(
        given(of, "load_N") * given(of, "reach_m") +
            given(of, "suit_upper_kg") * HS_GRAVITY_m_s2 * given(of, "suit_arm_m"),
        given(of, "gain_trunk"), given(of, "lever_m"), given(of, "residual_N"));
}

/* An arm held level, with nothing else of the body weighing anything, under an arm spring. */
static double
spring_shoulder_Nm(JsonObject *of)
{
    hs_torque_point torque = {.angle_deg = 0, .moment_Nm = given(of, "spring_Nm")};
    hs_suit suit = {.kind = HS_SUIT_ARM_SPRING, .n_torque = 1, .torque = &torque};
    hs_worker worker = {"w", "w", HS_SEX_MALE, 1.76, 79, 38};
    hs_body_input input = {.stance = HS_STANCE_STANDING};
    hs_body_state state = {0};
    hs_person person;

    g_assert_cmpint(hs_person_make(&worker, 50.0, HS_SEGMENTS_DE_LEVA, &person, NULL), ==,
                    HS_OK);
    for (int i = 0; i < HS_N_SEGMENTS; i++)
        person.segment_kg[i] = 0.0;
    person.segment_kg[HS_SEGMENT_UPPER_ARMS] = given(of, "arm_kg");
    person.segment_at[HS_SEGMENT_UPPER_ARMS] = given(of, "arm_m") / person.upper_arm_m;
    hs_suit_model_of(&suit)->in_body(&suit, 1.0, &input.suit);
    input.suit.weight_N = 0.0;
    input.hand_x_m = person.upper_arm_m + person.forearm_m - 1e-9;
    input.hand_z_m = person.ankle_height_m + person.shank_m + person.thigh_m + person.trunk_m;
    g_assert_cmpint(hs_body_at(&person, &input, &state), ==, HS_OK);
    return state.moment_Nm[HS_JOINT_SHOULDER];
}

static double
ask_body(const char *ask, JsonObject *of)
{
    if (g_str_equal(ask, "lean_deg")) {
        double weight_N = (given(of, "body_kg") + given(of, "suit_kg")) * HS_GRAVITY_m_s2;
        double moment_Nm = (given(of, "m1_kg") - given(of, "m2_kg")) * HS_GRAVITY_m_s2 *
                           given(of, "half_span_m");

        return hs_lean_rad(moment_Nm, weight_N, given(of, "height_m")) * HS_DEG_PER_RAD;
    }
    if (g_str_equal(ask, "centre_z_m")) {
        double own_kg = given(of, "body_kg") + given(of, "suit_kg"), x_m, z_m;
        hs_body_state state = {.cm_kg = own_kg,
                               .cm_z_m = (given(of, "body_kg") * given(of, "zb_m") +
                                          given(of, "suit_kg") * given(of, "zs_m")) /
                                         own_kg};
        hs_body_input input = {.weight_factor = 1.0,
                               .felt_N = 2.0 * given(of, "container_kg") * HS_GRAVITY_m_s2,
                               .hand_z_m = given(of, "zc_m")};

        hs_balance_centre(&input, &state, &x_m, &z_m);
        return z_m;
    }
    return spring_shoulder_Nm(of);
}

static double
ask_fall(const char *ask, JsonObject *of)
{
    one o;
    double got;

    if (g_str_equal(ask, "fall_times"))
        return hs_fall_times(given(of, "height_m"), given(of, "sinks_m"));
    one_make(&o, 20);
    stand_still(&o);
    if (g_str_equal(ask, "reaction_m")) {
        o.suit.on_power_loss = HS_LOSS_LIMP;
        got = LINE(one_ask(&o, HS_CHECK_suit_power_loss), loss_reaction);
    } else {
        o.suit.brake_s = given(of, "brake_s");
        got = line_in(one_ask(&o, HS_CHECK_suit_power_loss), g_str_equal(ask, "brake_m")
                                                                 ? HS_EQ_loss_brake_drop
                                                                 : HS_EQ_loss_brake_speed);
    }
    one_free(&o);
    return got;
}

static double
ask_rescue(const char *ask, JsonObject *of)
{
    one o;
    hs_finding finding;
    double got;

    if (g_str_equal(ask, "pace_m_s"))
        return hs_drag_pace_m_s(given(of, "mass_kg"), (int)given(of, "rescuers"));
    one_make(&o, 20);
    if (g_str_equal(ask, "drag_person_N")) {
        o.worker.mass_kg = given(of, "mass_kg");
        o.suit.mass_kg = 0.0;
    } else
        o.suit.release_helper_s = given(of, "release_s");
    finding = one_ask(&o, HS_CHECK_rescue);
    got = g_str_equal(ask, "drag_person_N") ? LINE(finding, rescue_drag)
                                            : LINE(finding, rescue_steps);
    one_free(&o);
    return got;
}

static void
stair_of(one *o, JsonObject *of)
{
    double going_m = given(of, "going_m"), rise_m = given(of, "riser_m");

    o->floor[0] = (hs_vec2){1.0, 0.0};
    o->floor[1] = (hs_vec2){1.0, rise_m};
    o->floor[2] = (hs_vec2){1.0 + going_m, rise_m};
    o->floor[3] = (hs_vec2){1.0 + going_m, 2.0 * rise_m};
    o->task.site.n_floor = 4;
    for (int i = 2; i < 4; i++)
        o->points[i].z_m += 2.0 * rise_m;
}

static double
ask_floor(const char *ask, JsonObject *of)
{
    one o;
    double got;

    one_make(&o, json_object_has_member(of, "mass_kg") ? given(of, "mass_kg") - 117.0 : 20.0);
    stand_still(&o);
    if (g_str_equal(ask, "stair_deg")) {
        stair_of(&o, of);
        got = LINE(one_ask(&o, HS_CHECK_suit_scope), scope_stair);
    } else if (g_str_equal(ask, "along_N")) {
        for (int i = 0; i < 4; i++)
            o.points[i].z_m += o.points[i].x_m * given(of, "rise") / given(of, "run");
        o.floor[0] = (hs_vec2){-100.0 * given(of, "run"), -100.0 * given(of, "rise")};
        o.floor[1] = (hs_vec2){100.0 * given(of, "run"), 100.0 * given(of, "rise")};
        o.task.site.n_floor = 2;
        got = LINE(one_ask(&o, HS_CHECK_floor_friction), floor_along);
    } else if (g_str_equal(ask, "grating_kPa")) {
        o.suit.foot_heel_m = 0.0;
        o.suit.foot_toe_m = given(of, "length_m");
        o.suit.foot_width_m = given(of, "width_m");
        o.task.policy.walking_factor = given(of, "factor");
        o.points[2].time_s = 4.0;
        o.task.site.rating_kPa = 1000.0;
        o.task.site.bearing_fraction = given(of, "bearing");
        got = LINE(one_ask(&o, HS_CHECK_floor_load), floor_grating);
    } else {
        o.task.site.rating_spread_kPa = 5.0;
        got = one_ask(&o, HS_CHECK_floor_load).value;
    }
    one_free(&o);
    return got;
}

/* A plate of 2 m2 whose middle stays 1.2 m up. */
static double
ask_wind(const char *ask, JsonObject *of)
{
    one o;
    hs_finding finding;
    double got;

    one_make(&o, given(of, "mass_kg") - 117.0);
    stand_still(&o);
    o.part.size_m = (hs_vec3){0.4, given(of, "area_m2"), 1.0};
    o.part.centre_m.z = 0.5;
    for (int i = 0; i < 4; i++)
        o.points[i].z_m = given(of, "height_m") - 0.5;
    o.task.site.wind_m_s = given(of, "speed_m_s");
    finding = one_ask(&o, HS_CHECK_site_wind);
    got = g_str_equal(ask, "wind_Nm") ? LINE(finding, wind_moment) : LINE(finding, wind_shift);
    one_free(&o);
    return got;
}

static double
ask_geometry(const char *ask, JsonObject *of)
{
    one o;
    double got;

    if (g_str_equal(ask, "turn_reach_m"))
        return hs_turn_reach_m(given(of, "front_m"), given(of, "width_m"));
    if (g_str_equal(ask, "object_m"))
        return hs_sight_object_m(given(of, "eye_m"), given(of, "edge_m"), given(of, "top_m"),
                                 given(of, "object_m"));
    if (g_str_equal(ask, "tilt_deg"))
        return hs_placing_turn_rad(given(of, "play_m"), given(of, "arm_m")) * HS_DEG_PER_RAD;
    one_make(&o, 20);
    o.points[3].z_m = o.points[2].z_m - given(of, "distance_m");
    o.points[3].precise = HS_YES;
    o.points[3].tolerance_m = given(of, "window_m") / 2.0;
    got = LINE(one_ask(&o, HS_CHECK_placing), placing_first);
    one_free(&o);
    return got;
}

/* The default step rate, as it stands in the assumptions of a tub that is carried. */
static double
ask_slosh(const char *ask, JsonObject *of)
{
    one o;
    hs_finding finding;

    if (g_str_equal(ask, "resonance_N"))
        return hs_liquid_resonance_N(given(of, "mass_kg"), given(of, "part"),
                                     given(of, "sway_m_s2"), given(of, "damping"));
    if (g_str_equal(ask, "steps"))
        return hs_liquid_build_up_count(given(of, "damping"), 1.0);
    one_make(&o, 20);
    o.part.has_liquid = true;
    o.part.liquid_density_kg_m3 = 1000.0;
    o.part.liquid_depth_m = 0.15;
    o.task.policy.step_Hz = NONE;
    finding = one_ask(&o, HS_CHECK_slosh);
    one_free(&o);
    return finding.text.number[1] / finding.text.number[2];
}

static double
answer(const char *ask, JsonObject *of)
{
    static const struct {
        const char *asks;
        double (*answer)(const char *ask, JsonObject *of);
    } table[] = {
        {" hands_fraction hands_left_s hands_hold_s ", ask_hands},
        {" median_N hold_mass_kg turn_round_Nm turn_narrow_Nm even_N bail_kPa strap_kPa ",
         ask_grip},
        {" rohmert_s rohmert_halved_s shoulder_s hands_s any_s ", ask_reader},
        {" gain_off belt_kPa square_W harness_N ", ask_suit},
        {" lean_deg centre_z_m spring_shoulder_Nm ", ask_body},
        {" fall_times reaction_m brake_m brake_m_s ", ask_fall},
        {" pace_m_s drag_person_N release_steps ", ask_rescue},
        {" stair_deg along_N grating_kPa spread_kPa ", ask_floor},
        {" wind_Nm wind_shift_m ", ask_wind},
        {" turn_reach_m object_m tilt_deg first_bit ", ask_geometry},
        {" resonance_N steps default_step_Hz ", ask_slosh},
    };
    g_autofree char *padded = g_strdup_printf(" %s ", ask);

    if (g_str_equal(ask, "hour_share"))
        return HS_ENDURANCE_HOUR_SHARE;
    for (gsize i = 0; i < G_N_ELEMENTS(table); i++)
        if (strstr(table[i].asks, padded) != NULL)
            return table[i].answer(ask, of);
    g_error("nobody answers %s", ask);
}

static void
published_and_derived_cases(void)
{
    arena = hs_arena_new();
    g_assert_cmpint(hs_cases_ask("suit", "beside", answer), >=, 55);
    hs_arena_free(arena);
}

static bool
has_line(const hs_working *working, hs_equation_id equation)
{
    for (const hs_working_line *line = working->first; line != NULL; line = line->next)
        if (line->equation == equation)
            return true;
    return false;
}

/* Arms that lock leave trunk and legs to hold: longer than arms that feel an eighth of 40 kg. */
static void
locked_arms_hold_longer(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 40);
    o.points[2].hold_s = 60;
    finding = one_ask(&o, HS_CHECK_hold_endurance);
    g_assert_cmpint(finding.status, ==, HS_STATUS_WITHIN);
    g_assert_false(has_line(&finding.working, HS_EQ_hold_locked));
    o.suit.lockable = HS_YES;
    finding = one_ask(&o, HS_CHECK_hold_endurance);
    g_assert_cmpfloat(LINE(finding, hold_locked), >, 0.53 * LINE(finding, body_endurance));
    g_assert_true(has_line(&finding.working, HS_EQ_hold_any));
    one_free(&o);
}

/* A load let go anywhere on the way lands within what it flies and half its diagonal. */
static void
the_zone_of_a_fall_is_flight_and_half_the_load(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    finding = one_ask(&o, HS_CHECK_suit_power_loss);
    /* 4 m in 6 s: 15/8 of the mean speed at the middle of the leg, 0.70 m up */
    hs_near_rel("zone", LINE(finding, loss_zone),
                15.0 / 8.0 * 4.0 / 6.0 * sqrt(2.0 * 0.7 / HS_GRAVITY_m_s2) +
                    hypot(0.4, 0.4) / 2.0,
                1e-9);
    one_free(&o);
}

/* A box of 0.40 by 0.40 by 0.30 m, hands in its middle 0.20 m up, put 0.20 m lower with 5 mm of play. */
static void
an_exact_place_says_tilt_side_force_and_view(void)
{
    one o;
    hs_finding finding;
    double try_s = log2(0.2 / 0.01 + 1.0) / 5.0, eye_m;

    one_make(&o, 20);
    o.points[3].precise = HS_YES;
    o.points[3].tolerance_m = 0.005;
    o.points[3].slide_friction = 0.3;
    finding = one_ask(&o, HS_CHECK_placing);
    eye_m = o.run.persons[0].eye_height_m;
    hs_near_rel("tilt", LINE(finding, placing_pitch),
                asin(0.005 / hypot(0.2, 0.2)) * HS_DEG_PER_RAD, 1e-9);
    hs_near_rel("in the sentence", finding.text.number[4], LINE(finding, placing_pitch), 1e-12);
    hs_near_rel("hanging", LINE(finding, placing_nudge),
                20 * 10 / sqrt(3.0) * 0.005 / (try_s * try_s), 1e-9);
    hs_near_rel("resting", LINE(finding, placing_side), 0.3 * 20 * HS_GRAVITY_m_s2, 1e-12);
    /* feet 0.40 m behind the hands, front edge 0.20 m ahead of them; underside at 0.50 m, top at 0.80 m */
    hs_near_rel("view", LINE(finding, placing_view), 0.6 * (eye_m - 0.5) / (eye_m - 0.8), 1e-9);
    one_free(&o);
}

/* The same box turned on the spot: its front corner decides, not the suit behind. */
static void
turning_on_the_spot_needs_a_circle(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    o.task.site.width_m = 3.0;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    hs_near_rel("radius", LINE(finding, room_turn), hypot(0.6, 0.2), 1e-9);
    hs_near_rel("circle", LINE(finding, room_circle), 2.0 * hypot(0.6, 0.2), 1e-9);
    one_free(&o);
}

/* Each number once: a case, or a row "| 17 | figure | why |" of the page. */
static void
mark_cases(const char *file, int add, int *seen)
{
    g_autoptr(JsonNode) root = hs_cases_load(file);
    JsonArray *cases = json_object_get_array_member(json_node_get_object(root), "cases");

    for (guint i = 0; i < json_array_get_length(cases); i++) {
        JsonObject *one_case = json_array_get_object_element(cases, i);
        int number = (int)json_object_get_int_member(one_case, "number") + add;

        g_assert_true(number >= 1 && number <= LAST_NUMBER);
        seen[number] |= 1;
    }
}

static void
mark_left_out(int *seen)
{
    g_autofree char *path = g_build_filename(HS_SOURCE_ROOT, "docs", "testing-suit.md", NULL);
    g_autofree char *text = NULL;
    g_auto(GStrv) lines = NULL;

    g_assert_true(g_file_get_contents(path, &text, NULL, NULL));
    lines = g_strsplit(text, "\n", -1);
    for (char **line = lines; *line != NULL; line++) {
        int number =
            g_str_has_prefix(*line, "| ") ? (int)g_ascii_strtoll(*line + 2, NULL, 10) : 0;
        g_auto(GStrv) cells = NULL;

        if (number < 1 || number > LAST_NUMBER)
            continue;
        cells = g_strsplit(*line, "|", -1);
        if (g_strv_length(cells) < 5 || strlen(g_strstrip(cells[3])) < 10)
            g_error("%s: no reason", *line);
        if (seen[number] & 2)
            g_error("%d stands there twice", number);
        seen[number] |= 2;
    }
}

static void
no_figure_is_forgotten(void)
{
    int seen[LAST_NUMBER + 1] = {0}, n_left_out = 0;

    mark_cases("suit", 0, seen);
    mark_cases("suit_grip", 0, seen);
    mark_cases("body_balance", 177,
               seen); /* 15 of balance: tests/unit/body/test_worked.c asks them */
    mark_left_out(seen);
    for (int i = 1; i <= LAST_NUMBER; i++) {
        n_left_out += seen[i] == 2;
        if (seen[i] == 0 || seen[i] == 3)
            g_error("worked figure %d: %s", i,
                    seen[i] ? "asked, and left out in docs" : "neither asked nor left out");
    }
    g_assert_cmpint(n_left_out, <=, 15);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/suit_beside/published_and_derived_cases", published_and_derived_cases);
    g_test_add_func("/suit_beside/no_figure_is_forgotten", no_figure_is_forgotten);
    g_test_add_func("/suit_beside/locked_arms_hold_longer", locked_arms_hold_longer);
    g_test_add_func("/suit_beside/the_zone_of_a_fall_is_flight_and_half_the_load",
                    the_zone_of_a_fall_is_flight_and_half_the_load);
    g_test_add_func("/suit_beside/an_exact_place_says_tilt_side_force_and_view",
                    an_exact_place_says_tilt_side_force_and_view);
    g_test_add_func("/suit_beside/turning_on_the_spot_needs_a_circle",
                    turning_on_the_spot_needs_a_circle);
    return g_test_run();
}
