/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are floor, room, sight, wind, placing, roles and gates judged as they should be?
 * Answer:    the cases of tests/cases/suit.json with layer "checks", and one situation for each sentence.
 * Not here:  the suit itself (test_power_loss.c). */
#include "decide_roles.h"
#include "geometry.h"
#include "one_bearer.h"
#include "power_loss.h"

static double
given(JsonObject *of, const char *key)
{
    g_assert_true(json_object_has_member(of, key));
    return json_object_get_double_member(of, key);
}

static double
ask_run(const char *ask, JsonObject *of)
{
    one o;
    double got = NONE;

    one_make(&o, 20);
    if (g_str_equal(ask, "sink_s")) {
        o.suit.on_power_loss = HS_LOSS_DESCEND;
        o.suit.sink_m_s = given(of, "sink_m_s");
        o.points[0].z_m = given(of, "height_m");
        one_run(&o);
        got = o.run.samples[0].bearers[0].power_lost.needed_s;
    } else if (g_str_equal(ask, "drop_J")) {
        o.part.mass_kg = given(of, "mass_kg");
        for (int i = 0; i < 4; i++)
            o.points[i].z_m = given(of, "height_m");
        o.bearer.effector = 0;
        o.effector.holds_without_power = HS_NO;
        got = one_ask(&o, HS_CHECK_suit_power_loss).text.number[2];
    } else if (g_str_equal(ask, "limp_N")) {
        o.part.mass_kg = given(of, "mass_kg");
        o.suit.mass_kg = given(of, "dead_kg");
        o.suit.on_power_loss = HS_LOSS_LIMP;
        one_run(&o);
        got = o.run.stations[0].bearers[0].lost_input.felt_N +
              o.run.stations[0].bearers[0].lost_input.suit.weight_N;
    } else if (g_str_equal(ask, "drag_N")) {
        o.worker.mass_kg = given(of, "body_kg");
        o.suit.mass_kg = given(of, "suit_kg");
        got = one_ask(&o, HS_CHECK_rescue).working.first->result;
    } else if (g_str_equal(ask, "sole_kPa")) {
        /* All of the mass on the floor: load, wearer and suit together, walking. */
        o.task.policy.walking_factor = given(of, "factor");
        o.part.mass_kg = given(of, "mass_kg") - o.worker.mass_kg - o.suit.mass_kg;
        o.suit.foot_heel_m = 0.1;
        o.suit.foot_toe_m = given(of, "length_m") - 0.1;
        o.suit.foot_width_m = given(of, "width_m");
        o.task.site.rating_kPa = 100;
        got = one_ask(&o, HS_CHECK_floor_load).value;
    } else {
        o.task.site.temperature_C = 30;
        got = one_ask(&o, HS_CHECK_site_heat).text.number[g_str_equal(ask, "rel_C") ? 1 : 2];
    }
    one_free(&o);
    return got;
}

static double
answer(const char *ask, JsonObject *of)
{
    if (g_str_equal(ask, "wind_N"))
        return hs_wind_N(given(of, "speed_m_s"), given(of, "area_m2"));
    if (g_str_equal(ask, "wind_speed"))
        return hs_wind_speed_m_s(given(of, "force_N"), given(of, "area_m2"));
    if (g_str_equal(ask, "corner"))
        return hs_corner_longest_m(given(of, "a_m"), given(of, "b_m"), given(of, "width_m"));
    if (g_str_equal(ask, "blind"))
        return hs_sight_blind_m(given(of, "eye_m"), given(of, "edge_m"), given(of, "top_m"));
    if (g_str_equal(ask, "top"))
        return hs_sight_top_m(given(of, "eye_m"), given(of, "edge_m"), given(of, "blind_m"));
    if (g_str_equal(ask, "stop"))
        return hs_sight_stop_m(given(of, "speed_m_s"), given(of, "reaction_s"),
                               given(of, "slowing_m_s2"));
    if (g_str_equal(ask, "turn_deg"))
        return hs_placing_turn_rad(given(of, "play_m"), given(of, "radius_m")) * HS_DEG_PER_RAD;
    if (g_str_equal(ask, "index"))
        return hs_placing_index_bit(given(of, "distance_m"), given(of, "window_m"));
    return ask_run(ask, of);
}

static void
published_and_derived_cases(void)
{
    g_assert_cmpint(hs_cases_ask("suit", "checks", answer), >=, 20);
}

static void
the_floor_is_judged_only_where_it_is_rated_and_its_remedies_pass(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    g_assert_cmpint(one_ask(&o, HS_CHECK_floor_load).status, ==, HS_STATUS_NONE);
    o.task.site.rating_kg = 150;
    finding = one_ask(&o, HS_CHECK_floor_load);
    g_assert_cmpstr(finding.unit, ==, "kg");
    g_assert_cmpint(finding.status, !=, HS_STATUS_WITHIN);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_floor_remedy_mass);
    o.part.mass_kg = finding.remedy.number[0];
    finding = one_ask(&o, HS_CHECK_floor_load);
    EXPECT(finding, WITHIN, floor_mass);
    o.task.site.rating_kPa = 10;
    finding = one_ask(&o, HS_CHECK_floor_load);
    EXPECT(finding, BEYOND, floor_pressure);
    hs_near("side of a board", finding.remedy.number[0],
            sqrt(finding.text.number[2] / (0.999 * 0.9 * 10 * 1000)), 1e-9);
    one_free(&o);
}

static void
a_grating_and_a_spread_rating_have_their_remedies(void)
{
    one o;
    hs_finding whole, part, spread;

    one_make(&o, 20);
    o.task.site.rating_kPa = 120;
    whole = one_ask(&o, HS_CHECK_floor_load);
    EXPECT(whole, WITHIN, floor_pressure);
    o.task.site.bearing_fraction = 0.2;
    part = one_ask(&o, HS_CHECK_floor_load);
    EXPECT(part, BEYOND, floor_pressure);
    hs_near_rel("five times", part.value, 5.0 * whole.value, 1e-12);
    /* a board of that side meets a fifth of the grating too */
    hs_near_rel("the board passes",
                part.text.number[2] / (pow(part.remedy.number[0], 2) * 0.2) / 1000.0,
                0.999 * 0.9 * 120, 1e-12);
    o.task.site.rating_kPa = NONE;
    o.task.site.rating_spread_kPa = 1.2;
    spread = one_ask(&o, HS_CHECK_floor_load);
    EXPECT(spread, BEYOND, floor_spread);
    hs_near_rel("the boards pass", spread.text.number[2] / spread.remedy.number[0] / 1000.0,
                0.999 * 0.9 * 1.2, 1e-12);
    o.task.site.rating_spread_kPa = 5;
    spread = one_ask(&o, HS_CHECK_floor_load);
    EXPECT(spread, WITHIN, floor_spread);
    one_free(&o);
}

static void
a_long_load_passes_a_door_lengthwise_and_not_crosswise(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    o.part.size_m = (hs_vec3){2.1, 0.4, 0.3};
    o.opening = (hs_opening){"yard door", 2.0, 1.95, 2.2};
    o.task.site.n_openings = 1;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    g_assert_cmpint(finding.status, ==, HS_STATUS_WITHIN);
    o.option.heading_deg = 90;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_opening_width);
    hs_near("needed", finding.value, 2.1, 1e-9);
    g_assert_cmpstr(finding.text.name[0], ==, "yard door");
    o.opening.width_m = NONE;
    o.opening.height_m = 1.5;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_opening_height);
    hs_near("the suit's height", finding.value, 1.80, 1e-9);
    one_free(&o);
}

static void
corner_headroom_width_and_obstacles_are_told_apart(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    g_assert_cmpint(one_ask(&o, HS_CHECK_route_clearance).status, ==, HS_STATUS_NONE);
    o.part.size_m = (hs_vec3){2.6, 0.5, 0.3};
    o.task.site.corner_in_m = o.task.site.corner_out_m = 1.2;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_corner);
    o.option.heading_deg = 90;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_corner_wide);
    one_free(&o);

    one_make(&o, 20);
    o.task.site.headroom_m = 1.7;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_head_bearer);
    o.task.site.headroom_m = 2.5;
    o.task.site.width_m = 0.7;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_width);
    hs_near("the suit's width", finding.value, 0.75, 1e-9);
    o.task.site.width_m = NONE;
    o.obstacle = (hs_obstacle){"bench", {1.8, 2.2}, {0.6, 0.8}};
    o.task.site.n_obstacles = 1;
    finding = one_ask(&o, HS_CHECK_route_clearance);
    EXPECT(finding, BEYOND, room_obstacle);
    hs_near("overlap", finding.text.number[0], 0.1, 1e-9);
    one_free(&o);
}

static void
a_tall_load_hides_the_floor_until_somebody_watches(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 10);
    finding = one_ask(&o, HS_CHECK_route_sight);
    EXPECT(finding, WITHIN, sight_blind);
    o.part.size_m.z = 0.7;
    o.part.centre_m.z = 0.35;
    finding = one_ask(&o, HS_CHECK_route_sight);
    EXPECT(finding, NEAR, sight_blind);
    o.part.size_m.z = 1.2;
    o.part.centre_m.z = 0.6;
    finding = one_ask(&o, HS_CHECK_route_sight);
    EXPECT(finding, NEAR, sight_none);
    o.task.has_roles = true;
    o.task.n_roles = 1;
    o.roles[0] = (hs_role){"Opens the door", "packer", ""};
    finding = one_ask(&o, HS_CHECK_route_sight);
    EXPECT(finding, NEAR, sight_none);
    o.roles[0].role = "Watch the way";
    finding = one_ask(&o, HS_CHECK_route_sight);
    EXPECT(finding, WITHIN, sight_watched);
    one_free(&o);
}

static void
the_wind_that_turns_the_balance_is_found_and_stopping_there_passes(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    o.part.size_m = (hs_vec3){0.05, 1.4, 1.0};
    o.part.centre_m.z = 0.5;
    o.points[1].z_m = o.points[2].z_m = 0.6;
    g_assert_cmpint(one_ask(&o, HS_CHECK_site_wind).status, ==, HS_STATUS_NONE);
    o.task.site.wind_m_s = 2;
    finding = one_ask(&o, HS_CHECK_site_wind);
    EXPECT(finding, WITHIN, wind_force);
    hs_near("force", finding.value, 0.5 * 1.225 * 4 * 1.28 * 1.4, 1e-9);
    o.task.site.wind_m_s = 20;
    finding = one_ask(&o, HS_CHECK_site_wind);
    EXPECT(finding, BEYOND, wind_force);
    o.task.site.wind_m_s = finding.remedy.number[0];
    finding = one_ask(&o, HS_CHECK_site_wind);
    EXPECT(finding, WITHIN, wind_force);
    hs_near("just within", finding.ratio, 0.9, 0.005);
    one_free(&o);
}

static void
placing_is_scope_without_a_tolerance_and_near_at_most_with_one(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    g_assert_cmpint(one_ask(&o, HS_CHECK_placing).status, ==, HS_STATUS_NONE);
    o.points[3].precise = HS_YES;
    finding = one_ask(&o, HS_CHECK_placing);
    EXPECT(finding, NOT_JUDGED, placing_no_tolerance);
    g_assert_cmpint(finding.why, ==, HS_WHY_SCOPE);
    o.points[3].tolerance_m = 0.005;
    finding = one_ask(&o, HS_CHECK_placing);
    EXPECT(finding, WITHIN, placing_time);
    hs_near("seconds", finding.value, log2(0.2 / 0.01 + 1) / 5, 1e-9);
    o.points[3].meet = 4;
    o.points[3].tolerance_m = 0.0001;
    finding = one_ask(&o, HS_CHECK_placing);
    EXPECT(finding, NEAR, placing_time);
    o.points[3].time_s = finding.remedy.number[0];
    finding = one_ask(&o, HS_CHECK_placing);
    EXPECT(finding, WITHIN, placing_time);
    one_free(&o);
}

static hs_finding
ask_roles(one *o, int n_then, int n_now)
{
    hs_setup today = {.n_bearers = n_then, .is_baseline = true}, then = {.n_bearers = n_now};
    hs_run before = {.setup = &today}, after = {.setup = &then};
    hs_asking asking = {
        .task = &o->task, .run = &after, .baseline = &before, .arena = o->arena};
    hs_finding finding = hs_finding_start(&asking, HS_CHECK_roles);

    hs_check_roles(&asking, &finding);
    g_assert_cmpint(hs_roles_n_devices(&asking), ==,
                    n_now < n_then && o->task.n_roles > 2 ? 1 : 0);
    return finding;
}

static void
roles_use_today_for_as_many_people_and_then_for_fewer(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    finding = ask_roles(&o, 2, 1);
    EXPECT(finding, NOT_JUDGED, roles_missing);
    g_assert_cmpint(finding.why, ==, HS_WHY_MISSING);
    g_assert_cmpint(ask_roles(&o, 2, 2).status, ==, HS_STATUS_NONE);
    o.task.has_roles = true;
    o.task.n_roles = 2;
    o.roles[0] = (hs_role){"steers", "A", "A"};
    o.roles[1] = (hs_role){"opens the door", "B", "  "};
    o.roles[2] = (hs_role){"warns", "B", "Device: lamp"};
    finding = ask_roles(&o, 2, 1);
    EXPECT(finding, BEYOND, roles_empty);
    g_assert_cmpstr(finding.text.name[0], ==, "opens the door");
    finding = ask_roles(&o, 2, 3);
    EXPECT(finding, WITHIN, roles_filled);
    o.roles[1].after = "porter";
    o.task.n_roles = 3;
    finding = ask_roles(&o, 2, 1);
    EXPECT(finding, WITHIN, roles_filled);
    one_free(&o);
}

static void
gates_answered_no_open_and_yes(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    g_assert_cmpint(one_ask(&o, HS_CHECK_gates).status, ==, HS_STATUS_NONE);
    o.task.n_gates = 2;
    o.gates[0] = (hs_gate){"drill done", HS_GATE_YES, ""};
    o.gates[1] = (hs_gate){"health advice", HS_GATE_YES, ""};
    finding = one_ask(&o, HS_CHECK_gates);
    EXPECT(finding, WITHIN, gates_yes);
    o.gates[1].answer = HS_GATE_OPEN;
    finding = one_ask(&o, HS_CHECK_gates);
    EXPECT(finding, NOT_JUDGED, gates_open);
    o.gates[0].answer = HS_GATE_NO;
    finding = one_ask(&o, HS_CHECK_gates);
    EXPECT(finding, BEYOND, gates_no);
    g_assert_cmpstr(finding.text.name[0], ==, "drill done");
    one_free(&o);
}

static void
heat_is_a_note_that_never_decides(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    g_assert_cmpint(one_ask(&o, HS_CHECK_site_heat).status, ==, HS_STATUS_NONE);
    o.task.site.temperature_C = 45;
    finding = one_ask(&o, HS_CHECK_site_heat);
    EXPECT(finding, NOT_JUDGED, heat_note);
    g_assert_cmpint(finding.why, ==, HS_WHY_SCOPE);
    o.task.site.temperature_C = -8;
    finding = one_ask(&o, HS_CHECK_site_heat);
    EXPECT(finding, NOT_JUDGED, heat_cold);
    one_free(&o);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/surroundings/" #name, name)
    TEST(published_and_derived_cases);
    TEST(the_floor_is_judged_only_where_it_is_rated_and_its_remedies_pass);
    TEST(a_long_load_passes_a_door_lengthwise_and_not_crosswise);
    TEST(corner_headroom_width_and_obstacles_are_told_apart);
    TEST(a_tall_load_hides_the_floor_until_somebody_watches);
    TEST(the_wind_that_turns_the_balance_is_found_and_stopping_there_passes);
    TEST(placing_is_scope_without_a_tolerance_and_near_at_most_with_one);
    TEST(roles_use_today_for_as_many_people_and_then_for_fewer);
    TEST(gates_answered_no_open_and_yes);
    TEST(heat_is_a_note_that_never_decides);
    g_test_add_func("/surroundings/a_grating_and_a_spread_rating_have_their_remedies",
                    a_grating_and_a_spread_rating_have_their_remedies);
    return g_test_run();
}
