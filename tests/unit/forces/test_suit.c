/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are felt force, load path and energy of a suit what mechanics gives?
 * Answer:    the cases of tests/cases/suit.json with layer "forces", and the edges of range and rating.
 * Not here:  power lost and surroundings (checks/test_suit_checks.c). */
#include "energy.h"
#include "load_path.h"
#include "near.h"
#include "solve.h"
#include "suit.h"
#include "units.h"

#define POUND_FORCE_N 4.4482216152605 /* exact: pound x standard gravity */

static hs_rating_point wide_rating[] = {{0.2, 1000.0}, {0.9, 1000.0}};

static hs_suit
suit_of(double gain, double residual_N)
{
    return (hs_suit){.kind = HS_SUIT_POWERED,
                     .gain_hands = gain,
                     .residual_hands_N = residual_N,
                     .n_rating = 2,
                     .rating = wide_rating,
                     .hand_height_m = {0.3, 1.6},
                     .self_carried = 0.9,
                     .mass_kg = 38.0,
                     .self_carried_unpowered = HS_ABSENT,
                     .harness_m = HS_ABSENT};
}

static double
given(JsonObject *of, const char *key, double otherwise)
{
    return json_object_has_member(of, key) ? json_object_get_double_member(of, key) : otherwise;
}

static double
felt_N(const hs_suit *suit, double hand_N)
{
    return hs_suit_model_of(suit)->felt(suit, hand_N, 0.4, 1.0, NULL).felt_N;
}

static double
ask_felt(JsonObject *of)
{
    hs_suit suit = suit_of(given(of, "gain", NAN), given(of, "residual_N", 0.0));
    hs_rating_point rating[] = {{0.4, given(of, "payload_kg", 1000.0)}};
    double hand_N = given(of, "force_N",
                          given(of, "mass_kg", NAN) *
                              (HS_GRAVITY_m_s2 + given(of, "acceleration_m_s2", 0.0)));

    suit.rating = rating;
    suit.n_rating = 1;
    return felt_N(&suit, hand_N);
}

typedef struct {
    JsonObject *of;
    hs_suit suit;
} felt_question;

static double
felt_at_gain(double gain, void *data)
{
    felt_question *q = data;

    q->suit.gain_hands = gain;
    return felt_N(&q->suit, given(q->of, "mass_kg", NAN) * HS_GRAVITY_m_s2) -
           given(q->of, "felt_N", NAN);
}

static double
felt_at_mass(double mass_kg, void *data)
{
    felt_question *q = data;

    return felt_N(&q->suit, mass_kg * HS_GRAVITY_m_s2) - given(q->of, "felt_N", NAN);
}

static double
ask_root(JsonObject *of, hs_function function, double low, double high)
{
    felt_question q = {of, suit_of(given(of, "gain", 1.0), given(of, "residual_N", 0.0))};
    double root;

    g_assert_cmpint(hs_root_find(function, &q, low, high, 1e-12, &root, NULL), ==, HS_OK);
    return root;
}

static double
ask_payload(JsonObject *of)
{
    hs_rating_point rating[] = {{given(of, "r1_m", NAN), given(of, "p1_kg", NAN)},
                                {given(of, "r2_m", NAN), given(of, "p2_kg", NAN)}};
    hs_suit suit = {.kind = HS_SUIT_POWERED, .n_rating = 2, .rating = rating};

    return hs_suit_payload_kg(&suit, given(of, "reach_m", NAN));
}

static double
ask_torque(JsonObject *of)
{
    hs_torque_point table[] = {{0.0, 0.0},
                               {given(of, "a1_deg", NAN), given(of, "m1_Nm", NAN)},
                               {given(of, "a2_deg", NAN), given(of, "m2_Nm", NAN)}};
    hs_suit suit = {.kind = HS_SUIT_BACK_SPRING, .n_torque = 3, .torque = table};

    return hs_suit_torque_Nm(&suit, given(of, "angle_deg", NAN));
}

static hs_load_path
path_of(JsonObject *of)
{
    hs_suit suit = suit_of(given(of, "gain", NAN), given(of, "residual_N", NAN));
    double hand_N = given(of, "load_kg", NAN) * HS_GRAVITY_m_s2;
    hs_load_path path;

    suit.mass_kg = given(of, "suit_kg", NAN);
    suit.self_carried = given(of, "self_carried", NAN);
    hs_load_path_of(&suit, given(of, "body_kg", NAN), hand_N, felt_N(&suit, hand_N), 1.0,
                    &path);
    hs_near("sum of the load path", path.sum_N, 0.0, 1e-9);
    return path;
}

static hs_suit
battery(
    double idle_W, double hold_W_per_Nm, double efficiency, double battery_Wh, double reserve)
{
    return (hs_suit){.kind = HS_SUIT_POWERED,
                     .has_power = true,
                     .idle_W = idle_W,
                     .hold_W_per_Nm = hold_W_per_Nm,
                     .lift_efficiency = efficiency,
                     .battery_Wh = battery_Wh,
                     .reserve = reserve};
}

static hs_energy
energy_of(hs_suit suit, hs_energy_cycle cycle)
{
    hs_energy energy;

    g_assert_cmpint(hs_energy_sum(&suit, &cycle, NULL, &energy, NULL), ==, HS_OK);
    return energy;
}

static double
ask_energy(const char *ask, JsonObject *of)
{
    if (g_str_equal(ask, "lift_Wh"))
        return energy_of(
                   battery(0, 0, given(of, "efficiency", NAN), 1, 0),
                   (hs_energy_cycle){.lift_J = given(of, "mass_kg", NAN) * HS_GRAVITY_m_s2 *
                                               given(of, "height_m", NAN),
                                     .cycles_per_h = 1,
                                     .hours = 1})
            .lift_Wh;
    /* Held the whole hour: watt hours an hour are watts. */
    if (g_str_equal(ask, "hold_W"))
        return energy_of(battery(0, given(of, "hold_W_per_Nm", NAN), 1, 1, 0),
                         (hs_energy_cycle){.hold_Nms = given(of, "torque_Nm", NAN) * 3600.0,
                                           .cycles_per_h = 1,
                                           .hours = 1})
            .hold_Wh;
    if (g_str_equal(ask, "set_down_Wh"))
        return energy_of(battery(given(of, "idle_W", NAN), 1, 1, 1, 0),
                         (hs_energy_cycle){.worst_hold_Nm = given(of, "hold_W", NAN),
                                           .worst_to_set_down_s = given(of, "time_s", NAN)})
            .set_down_Wh;
    g_assert_cmpstr(ask, ==, "hours_a_charge");
    return energy_of(battery(given(of, "use_Wh_per_h", NAN), 0, 1, given(of, "battery_Wh", NAN),
                             given(of, "reserve", NAN)),
                     (hs_energy_cycle){.cycles_per_h = 1, .hours = 1})
        .hours_a_charge;
}

static double
answer(const char *ask, JsonObject *of)
{
    if (g_str_equal(ask, "felt") || g_str_equal(ask, "felt_of"))
        return ask_felt(of);
    if (g_str_equal(ask, "felt_each"))
        return ask_felt(of) / given(of, "hands", NAN);
    if (g_str_equal(ask, "felt_each_lbf"))
        return ask_felt(of) / given(of, "hands", NAN) / POUND_FORCE_N;
    if (g_str_equal(ask, "gain_for"))
        return ask_root(of, felt_at_gain, 1.0, 50.0);
    if (g_str_equal(ask, "mass_for"))
        return ask_root(of, felt_at_mass, 0.0, given(of, "payload_kg", NAN));
    if (g_str_equal(ask, "payload"))
        return ask_payload(of);
    if (g_str_equal(ask, "torque"))
        return ask_torque(of);
    if (g_str_equal(ask, "wearer_soles"))
        return path_of(of).along_N[HS_PATH_WEARER_TO_FLOOR];
    if (g_str_equal(ask, "suit_soles"))
        return path_of(of).along_N[HS_PATH_SUIT_TO_FLOOR];
    if (g_str_equal(ask, "floor"))
        return path_of(of).along_N[HS_PATH_WEARER_TO_FLOOR] +
               path_of(of).along_N[HS_PATH_SUIT_TO_FLOOR];
    return ask_energy(ask, of);
}

static void
published_and_derived_cases(void)
{
    g_assert_cmpint(hs_cases_ask("suit", "forces", answer), >=, 20);
}

static void
outside_the_height_range_all_falls_on_the_wearer_without_residual(void)
{
    hs_suit suit = suit_of(8.0, 15.0);
    const hs_suit_model *model = hs_suit_model_of(&suit);
    hs_felt low = model->felt(&suit, 300.0, 0.4, 0.299, NULL),
            edge = model->felt(&suit, 300.0, 0.4, 0.3, NULL);

    g_assert_true(low.is_outside_height);
    hs_near("felt below the range", low.felt_N, 300.0, 0.0);
    hs_near("excess below the range", low.excess_N, 300.0, 0.0);
    g_assert_false(edge.is_outside_height);
    hs_near("felt at the edge", edge.felt_N, 300.0 / 8.0 + 15.0, 1e-12);
    g_assert_false(model->felt(&suit, 300.0, 0.4, 0.3 - 1e-10, NULL).is_outside_height);
}

static void
the_rating_is_constant_nearer_and_nothing_beyond_and_its_end_counts(void)
{
    hs_rating_point rating[] = {{0.25, 60}, {0.40, 50}, {0.60, 32}, {0.75, 20}};
    hs_suit suit = suit_of(8.0, 15.0);

    suit.rating = rating;
    suit.n_rating = 4;
    hs_near("nearer", hs_suit_payload_kg(&suit, 0.1), 60.0, 0.0);
    hs_near("at a point", hs_suit_payload_kg(&suit, 0.40), 50.0, 1e-12);
    hs_near("between", hs_suit_payload_kg(&suit, 0.52), 39.2, 1e-12);
    hs_near("at the end", hs_suit_payload_kg(&suit, 0.75 + 1e-10), 20.0, 1e-12);
    hs_near("beyond", hs_suit_payload_kg(&suit, 0.7501), 0.0, 0.0);
    hs_near("felt beyond", hs_suit_model_of(&suit)->felt(&suit, 200.0, 0.8, 1.0, NULL).felt_N,
            200.0, 0.0);
    suit.n_rating = 0;
    g_assert_true(isnan(hs_suit_payload_kg(&suit, 0.4)));
}

static void
a_gap_in_the_data_never_becomes_a_figure(void)
{
    for (int gap = 0; gap < 4; gap++) {
        hs_suit suit = suit_of(8.0, 15.0);
        hs_felt felt;

        if (gap == 0)
            suit.gain_hands = HS_ABSENT;
        else if (gap == 1)
            suit.residual_hands_N = HS_ABSENT;
        else if (gap == 2)
            suit.hand_height_m[1] = HS_ABSENT;
        else
            suit.n_rating = 0;
        felt = hs_suit_model_of(&suit)->felt(&suit, 300.0, 0.4, 1.0, NULL);
        g_assert_true(felt.is_missing);
        g_assert_true(isnan(felt.felt_N));
    }
    hs_suit suit = suit_of(8.0, 15.0);

    suit.gain_trunk = 5.0;
    suit.residual_trunk_N = 30.0;
    g_assert_false(hs_suit_body_is_missing(&suit));
    suit.self_carried = HS_ABSENT;
    g_assert_true(hs_suit_body_is_missing(&suit));
}

static void
springs_and_no_suit_leave_the_hands_alone(void)
{
    hs_torque_point table[] = {{20, 5}, {60, 30}};
    hs_suit back = {
        .kind = HS_SUIT_BACK_SPRING, .mass_kg = 3.0, .n_torque = 2, .torque = table};
    hs_suit arm = {.kind = HS_SUIT_ARM_SPRING, .mass_kg = 2.5, .n_torque = 2, .torque = table};
    hs_body_suit terms;

    hs_near("back spring", felt_N(&back, 250.0), 250.0, 0.0);
    hs_near("arm spring", felt_N(&arm, 250.0), 250.0, 0.0);
    hs_near("none", felt_N(NULL, 250.0), 250.0, 0.0);
    hs_near("below the table", hs_suit_torque_Nm(&back, 19.9), 0.0, 0.0);
    hs_near("above the table", hs_suit_torque_Nm(&back, 95.0), 30.0, 0.0);
    hs_suit_model_of(&back)->in_body(&back, 1.1, &terms);
    hs_near("its weight with the walking factor", terms.weight_N, 3.0 * HS_GRAVITY_m_s2 * 1.1,
            1e-12);
    hs_near("its gain", terms.gain_trunk, 1.0, 0.0);
    g_assert_true(terms.torque == &back);
    g_assert_false(hs_suit_model_of(&back)->has_power);
}

static void
every_account_from_load_to_floor_sums_to_zero(void)
{
    for (int kind = 0; kind <= HS_SUIT_ARM_SPRING; kind++)
        for (int i = 0; i < 200; i++) {
            hs_suit suit =
                suit_of(g_test_rand_double_range(1, 20), g_test_rand_double_range(0, 50));
            double hand_N = g_test_rand_double_range(0, 900),
                   k = g_test_rand_double_range(1, 1.6);
            double body_kg = g_test_rand_double_range(45, 120),
                   suit_kg = kind == 0 ? 0.0 : suit.mass_kg;
            hs_load_path path;

            suit.kind = (hs_suit_kind)kind;
            hs_load_path_of(kind == 0 ? NULL : &suit, body_kg, hand_N,
                            felt_N(kind == 0 ? NULL : &suit, hand_N), k, &path);
            hs_near("sum", path.sum_N, 0.0, 1e-9);
            hs_near("soles",
                    path.along_N[HS_PATH_WEARER_TO_FLOOR] + path.along_N[HS_PATH_SUIT_TO_FLOOR],
                    (body_kg + suit_kg) * HS_GRAVITY_m_s2 * k + hand_N, 1e-9);
            if (kind != HS_SUIT_POWERED)
                hs_near("only a powered suit has soles", path.along_N[HS_PATH_SUIT_TO_FLOOR],
                        0.0, 1e-9);
        }
}

static void
energy_names_the_figure_that_is_absent_and_counts_changes(void)
{
    hs_suit suit = battery(90, 0.6, HS_ABSENT, 900, 0.15);
    hs_energy_cycle cycle = {.lift_J = 300, .hold_Nms = 900, .cycles_per_h = 6, .hours = 8};
    hs_error error;
    hs_energy energy;

    g_assert_cmpint(hs_energy_sum(&suit, &cycle, NULL, &energy, &error), ==, HS_E_RANGE);
    g_assert_cmpstr(error.where, ==, "power.lift_efficiency");
    suit.lift_efficiency = 0.35;
    energy = energy_of(suit, cycle);
    hs_near("an hour", energy.hour_Wh, 90 + 300 / 0.35 * 6 / 3600 + 0.6 * 900 * 6 / 3600, 1e-9);
    hs_near("a charge that just lasts needs no change",
            energy_of(battery(100, 0, 1, 1000, 0.2),
                      (hs_energy_cycle){.cycles_per_h = 1, .hours = 8})
                .n_swaps,
            0.0, 0.0);
    hs_near("a little longer needs one",
            energy_of(battery(100, 0, 1, 1000, 0.2),
                      (hs_energy_cycle){.cycles_per_h = 1, .hours = 8.1})
                .n_swaps,
            1.0, 0.0);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/suit/" #name, name)
    TEST(published_and_derived_cases);
    TEST(outside_the_height_range_all_falls_on_the_wearer_without_residual);
    TEST(the_rating_is_constant_nearer_and_nothing_beyond_and_its_end_counts);
    TEST(a_gap_in_the_data_never_becomes_a_figure);
    TEST(springs_and_no_suit_leave_the_hands_alone);
    TEST(every_account_from_load_to_floor_sums_to_zero);
    TEST(energy_names_the_figure_that_is_absent_and_counts_changes);
    return g_test_run();
}
