/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are squeeze, closure and the worst push what friction cones give?
 * Answer:    the cases of tests/cases/statics.json and suit_grip.json.
 * Not here:  comparison with another solver (compare_scipy.py). */
#include "case_load.h"
#include "grip.h"
#include "grip_beside.h"
#include "near.h"
#include "units.h"

#include <string.h>

/* Two facing pads, the CG at an offset from the middle between them. */
static int
facing(JsonObject *of, hs_contact *contacts)
{
    JsonArray *size = json_object_get_array_member(of, "pad_m");
    hs_vec3 offset_m = hs_case_vec3(of, "offset_m");
    double apart_m = hs_case_number(of, "apart_m", 0.2);
    int n = 0;

    for (int side = -1; side <= 1; side += 2) {
        hs_vec3 at_m = hs_vec3_sub((hs_vec3){0, side * apart_m / 2.0, 0}, offset_m);

        n += hs_grip_pad_contacts(at_m, (hs_vec3){0, -side, 0}, hs_case_at(size, 0),
                                  hs_case_at(size, 1), hs_case_number(of, "friction", 0.0),
                                  side > 0, &contacts[n]);
    }
    return n;
}

static int
points(JsonObject *of, hs_contact *contacts)
{
    JsonArray *at = json_object_get_array_member(of, "points_m"),
              *in = json_object_get_array_member(of, "inward");
    int n = (int)json_array_get_length(at);

    for (int i = 0; i < n; i++) {
        JsonArray *p = json_array_get_array_element(at, (guint)i),
                  *d = json_array_get_array_element(in, (guint)i);

        contacts[i] =
            (hs_contact){.at_m = {hs_case_at(p, 0), hs_case_at(p, 1), hs_case_at(p, 2)},
                         .inward = {hs_case_at(d, 0), hs_case_at(d, 1), hs_case_at(d, 2)},
                         .friction = hs_case_number(of, "friction", 0.0),
                         .turning_m = hs_case_number(of, "turning_m", 0.0),
                         .pad = i};
    }
    return n;
}

static void
expect_squeeze(JsonObject *of, double got)
{
    hs_near_rel(
        json_object_get_string_member(of, "name"), got,
        hs_case_number(json_object_get_object_member(of, "expect"), "squeeze_N", HS_ABSENT),
        fmax(hs_case_number(of, "relative", 0.0), 1e-9));
}

static void
ask_squeeze(JsonObject *of)
{
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    hs_wrench need = {.force_N = hs_case_vec3(of, "force_N")};
    hs_squeeze squeeze;
    int n = facing(of, contacts);

    g_assert_cmpint(hs_grip_squeeze(contacts, n, &need, HS_GRIP_EDGES, &squeeze, NULL), ==,
                    HS_OK);
    expect_squeeze(of, squeeze.squeeze_N);
}

static void
grip__squeeze_of_two_pads(void)
{
    hs_case_each("statics", "ask", "squeeze", ask_squeeze);
    hs_case_each("suit_grip", "ask", "squeeze", ask_squeeze);
}

static void
ask_points(JsonObject *of)
{
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    hs_wrench need = {.force_N = hs_case_vec3(of, "force_N")};
    hs_squeeze squeeze;

    g_assert_cmpint(
        hs_grip_squeeze(contacts, points(of, contacts), &need, HS_GRIP_EDGES, &squeeze, NULL),
        ==, HS_OK);
    expect_squeeze(of, squeeze.squeeze_N);
}

static void
grip__squeeze_on_slanting_sides(void)
{
    hs_case_each("suit_grip", "ask", "squeeze_points", ask_points);
}

/* The worst of all level directions; here asked round the circle, with the weight. */
static void
ask_any_direction(JsonObject *of)
{
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    hs_wrench need = {.force_N = hs_case_vec3(of, "force_N")}, pushed;
    double worst_N = 0.0, push_N = hs_case_number(of, "push_N", 0.0);
    int n = facing(of, contacts);

    for (int k = 0; k < 24; k++) {
        hs_squeeze squeeze;

        pushed = need;
        pushed.force_N.x += push_N * cos(k * HS_PI / 12.0);
        pushed.force_N.y += push_N * sin(k * HS_PI / 12.0);
        g_assert_cmpint(hs_grip_squeeze(contacts, n, &pushed, HS_GRIP_EDGES, &squeeze, NULL),
                        ==, HS_OK);
        worst_N = fmax(worst_N, squeeze.squeeze_N);
    }
    expect_squeeze(of, worst_N);
}

static void
grip__squeeze_against_any_level_push(void)
{
    hs_case_each("suit_grip", "ask", "any_direction", ask_any_direction);
}

static void
ask_closure(JsonObject *of)
{
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    JsonObject *expect = json_object_get_object_member(of, "expect");
    hs_wrench weight = {.force_N = {0, 0, 1}};
    bool is_plane = json_object_get_boolean_member(of, "plane"),
         wanted = json_object_get_boolean_member(expect, "closed");
    hs_hold hold =
        hs_grip_closure(contacts, points(of, contacts), &weight, is_plane, HS_GRIP_EDGES);

    if ((hold == HS_HOLD_FORM || hold == HS_HOLD_FORCE) != wanted)
        g_error("%s: hold %d, closed wanted %d", json_object_get_string_member(of, "name"),
                hold, wanted);
    if (json_object_has_member(expect, "rests"))
        g_assert_cmpint(hold, ==, HS_HOLD_RESTS);
    if (wanted && !(hs_case_number(of, "friction", 0.0) > 0.0))
        g_assert_cmpint(hold, ==, HS_HOLD_FORM);
}

static void
grip__closure_of_known_sets(void)
{
    hs_case_each("suit_grip", "ask", "closure", ask_closure);
}

/* One edge in line with the load: the programme and the closed form agree for any direction along the pads. */
static void
grip__programme_meets_the_closed_form(void)
{
    for (int k = 0; k < 40; k++) {
        hs_contact contacts[2] = {
            {.at_m = {0, -0.2, 0}, .inward = {0, 1, 0}, .friction = 0.4, .pad = 0},
            {.at_m = {0, 0.2, 0}, .inward = {0, -1, 0}, .friction = 0.4, .pad = 1}};
        double angle = k * HS_PI / 20.0;
        hs_wrench need = {.force_N = {100.0 * cos(angle), 0, 100.0 * sin(angle)}};
        hs_squeeze closed, programme;

        g_assert_cmpint(hs_grip_squeeze(contacts, 2, &need, 8, &closed, NULL), ==, HS_OK);
        g_assert_true(closed.is_closed_form);
        contacts[0].friction *= 1.0 + 1e-11; /* not quite alike: the programme is asked */
        g_assert_cmpint(hs_grip_squeeze(contacts, 2, &need, 8, &programme, NULL), ==, HS_OK);
        g_assert_false(programme.is_closed_form);
        hs_near_rel("N", programme.squeeze_N, 125.0, 1e-7);
        hs_near_rel("N", closed.squeeze_N, 125.0, 1e-12);
    }
}

static void
grip__smooth_pads_hold_nothing(void)
{
    hs_contact contacts[2] = {{.at_m = {0, -0.2, 0}, .inward = {0, 1, 0}, .pad = 0},
                              {.at_m = {0, 0.2, 0}, .inward = {0, -1, 0}, .pad = 1}};
    hs_wrench need = {.force_N = {0, 0, 100}};
    hs_squeeze squeeze;

    g_assert_cmpint(hs_grip_squeeze(contacts, 2, &need, 32, &squeeze, NULL), ==,
                    HS_E_NO_SOLUTION);
    g_assert_cmpint(hs_grip_closure(contacts, 2, &need, false, 32), ==, HS_HOLD_NONE);
}

static void
grip__worst_push_is_no_less_than_none(void)
{
    hs_contact contacts[8];
    hs_wrench need = {.force_N = {0, 0, 200}};
    hs_vec3 direction;
    double pushed_N;
    int n = hs_grip_pad_contacts((hs_vec3){0, -0.2, 0}, (hs_vec3){0, 1, 0}, 0.1, 0.1, 0.5, 0,
                                 contacts);

    n += hs_grip_pad_contacts((hs_vec3){0, 0.2, 0}, (hs_vec3){0, -1, 0}, 0.1, 0.1, 0.5, 1,
                              &contacts[n]);
    g_assert_cmpint(
        hs_grip_worst_direction(contacts, n, &need, 30.0, 8, &direction, &pushed_N, NULL), ==,
        HS_OK);
    /* straight up and down the need is 230 / (2 mu); slanting to the side may ask for more, never less */
    g_assert_cmpfloat(pushed_N, >=, 230.0 - 1e-6);
    hs_near("unit", hs_vec3_length(direction), 1.0, 1e-12);
}

/* The pad that is pressed less: the forces along the pads' line say by how much. */
static void
ask_squeeze_less(JsonObject *of)
{
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    hs_wrench need = {.force_N = hs_case_vec3(of, "force_N")};
    hs_squeeze squeeze;
    int n = facing(of, contacts);

    g_assert_cmpint(hs_grip_squeeze(contacts, n, &need, HS_GRIP_EDGES, &squeeze, NULL), ==,
                    HS_OK);
    expect_squeeze(of, fmin(squeeze.pad_N[0], squeeze.pad_N[1]));
}

static void
grip__the_pad_pressed_less(void)
{
    hs_case_each("suit_grip", "ask", "squeeze_less", ask_squeeze_less);
}

/* Two facing pads of two points each, twisted so that the friction asked for lies half way between two edges of the cone. */
static double
twisted_N(double friction, double weight_N, int n_edges)
{
    double angle = HS_PI / n_edges - HS_PI / 2.0, arm_m = 0.1;
    hs_vec3 out = {arm_m * cos(angle), 0, arm_m * sin(angle)};
    /* a force too small to count turns the edges into its line, the x axis */
    hs_wrench need = {.force_N = {1e-9 * weight_N, 0, 0},
                      .moment_Nm = {0, weight_N * arm_m, 0}};
    hs_contact contacts[4];
    hs_squeeze squeeze;

    for (int i = 0; i < 4; i++) {
        int side = i < 2 ? 1 : -1, end = i % 2 == 0 ? 1 : -1;

        contacts[i] = (hs_contact){.at_m = {end * out.x, side * 0.2, end * out.z},
                                   .inward = {0, -side, 0},
                                   .friction = friction,
                                   .pad = i < 2 ? 0 : 1};
    }
    g_assert_cmpint(hs_grip_squeeze(contacts, 4, &need, n_edges, &squeeze, NULL), ==, HS_OK);
    g_assert_false(squeeze.is_closed_form);
    return squeeze.squeeze_N;
}

/* Friction that edges lose at worst, by the programme itself; the closed form of the cone: W / (2 mu). */
static void
ask_straddled(JsonObject *of)
{
    JsonObject *expect = json_object_get_object_member(of, "expect");
    const char *name = json_object_get_string_member(of, "name");
    double weight_N = hs_case_number(of, "weight_N", HS_ABSENT),
           friction = hs_case_number(of, "friction", HS_ABSENT);
    int n_edges = (int)hs_case_number(of, "edges", 0);
    double got_N = twisted_N(friction, weight_N, n_edges),
           closed_N = weight_N / (2.0 * friction);

    if (json_object_has_member(expect, "lost")) {
        hs_near_rel(name, 1.0 - closed_N / got_N, hs_case_number(expect, "lost", HS_ABSENT),
                    1e-6);
        hs_near_rel(name, hs_cone_lost_share(n_edges),
                    hs_case_number(expect, "lost", HS_ABSENT), 1e-8);
    } else if (json_object_has_member(expect, "over"))
        hs_near_rel(name, got_N / closed_N - 1.0, hs_case_number(expect, "over", HS_ABSENT),
                    1e-6);
    else
        hs_near_rel(name, got_N, hs_case_number(expect, "squeeze_N", HS_ABSENT), 1e-6);
}

static void
grip__edges_astride_lose_friction(void)
{
    hs_case_each("suit_grip", "ask", "straddled", ask_straddled);
}

static bool
holds_widening(double friction, double taper_deg)
{
    hs_contact contacts[2];
    hs_wrench need = {.force_N = {0, 0, 200}};
    hs_squeeze squeeze;

    for (int side = -1; side <= 1; side += 2)
        contacts[side > 0] = (hs_contact){.at_m = {0, side * 0.2, 0},
                                          .inward = {0, -side * cos(taper_deg * HS_RAD_PER_DEG),
                                                     -sin(taper_deg * HS_RAD_PER_DEG)},
                                          .friction = friction,
                                          .pad = side > 0};
    return hs_grip_squeeze(contacts, 2, &need, HS_GRIP_EDGES, &squeeze, NULL) == HS_OK;
}

/* Sides that widen downward: the widening from which nothing holds. */
static void
ask_taper_limit(JsonObject *of)
{
    double friction = hs_case_number(of, "friction", HS_ABSENT), low_deg = 0.0, high_deg = 60.0;

    while (high_deg - low_deg > 1e-7) {
        double middle_deg = (low_deg + high_deg) / 2.0;

        if (holds_widening(friction, middle_deg))
            low_deg = middle_deg;
        else
            high_deg = middle_deg;
    }
    hs_near_rel(
        "taper", low_deg,
        hs_case_number(json_object_get_object_member(of, "expect"), "taper_deg", HS_ABSENT),
        1e-5);
}

static void
grip__widening_sides_slip(void)
{
    hs_case_each("suit_grip", "ask", "taper_limit", ask_taper_limit);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/grip/squeeze_of_two_pads", grip__squeeze_of_two_pads);
    g_test_add_func("/grip/squeeze_on_slanting_sides", grip__squeeze_on_slanting_sides);
    g_test_add_func("/grip/squeeze_against_any_level_push",
                    grip__squeeze_against_any_level_push);
    g_test_add_func("/grip/closure_of_known_sets", grip__closure_of_known_sets);
    g_test_add_func("/grip/programme_meets_the_closed_form",
                    grip__programme_meets_the_closed_form);
    g_test_add_func("/grip/smooth_pads_hold_nothing", grip__smooth_pads_hold_nothing);
    g_test_add_func("/grip/worst_push_is_no_less_than_none",
                    grip__worst_push_is_no_less_than_none);
    g_test_add_func("/grip/the_pad_pressed_less", grip__the_pad_pressed_less);
    g_test_add_func("/grip/edges_astride_lose_friction", grip__edges_astride_lose_friction);
    g_test_add_func("/grip/widening_sides_slip", grip__widening_sides_slip);
    return g_test_run();
}
