/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is every way of holding judged: palms, suited palms, pads of several bearers, pads against handles, cradles on a slope?
 * Answer:    one situation for each, with the figure by hand beside it; slosh close to the walk and the slope's part of friction too.
 * Not here:  squeeze and closure themselves (forces/test_grip.c). */
#include "grip_figures.h"
#include "lines.h"
#include "person.h"

#define LONG_s 4000.0 /* so slow that nothing speeds up (numerics) */

/* Two pads on the box's sides at the height of its CG, so slow that weight alone counts. */
static void
with_pads(one *o, double mass_kg, double friction)
{
    one_make(o, mass_kg);
    o->task.policy.walking_factor = 1.0;
    for (int i = 1; i < 4; i++)
        o->points[i].time_s = LONG_s;
    for (int i = 0; i < 2; i++) {
        o->grips[i].kind = HS_GRIP_PAD;
        o->grips[i].friction = friction;
        o->grips[i].at_m.z = 0.15;
    }
}

static void
bare_palms_are_judged_by_the_smaller_of_press_and_shoulder(void)
{
    one o;
    hs_finding finding;
    double reach_m, z;
    hs_palm palm;

    with_pads(&o, 6, 0.5);
    o.bearer.suit = -1;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    hs_near("squeeze", finding.value, 6 * HS_GRAVITY_m_s2 * 1.5 / (2 * 0.5), 1e-6);
    z = hs_percentile_z(25);
    reach_m = INFINITY;
    for (int s = 0; s < o.run.n_stations; s++) {
        double far_m = hs_palm_reach_m(&o.run.stations[s].bearers[0].body);

        reach_m = s == 0 || far_m > reach_m ? far_m : reach_m;
    }
    hs_near("limit", finding.limit,
            fmin(72.3 / 0.558 * (1 + z * 0.277), 48.0 * (1 + z * 0.277) / reach_m), 1e-6);
    g_assert_cmpint(finding.confidence, ==, HS_CONF_DERIVED);
    /* close to the body the press of the palm decides, at arm's length the shoulder */
    palm = hs_palm_press(&o.run.persons[0], 0.30, NULL);
    g_assert_false(palm.by_joint);
    palm = hs_palm_press(&o.run.persons[0], 0.60, NULL);
    g_assert_true(palm.by_joint);
    hs_near("at arm's length", palm.press_N, 48.0 * (1 + z * 0.277) / 0.60, 1e-9);
    one_free(&o);
}

static void
the_remedies_of_palms_pass(void)
{
    one o;
    hs_finding finding;

    with_pads(&o, 12, 0.5);
    o.bearer.suit = -1;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    g_assert_cmpint(finding.status, ==, HS_STATUS_BEYOND);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_grip_fix_squeeze);
    o.grips[0].friction = o.grips[1].friction = finding.remedy.number[0];
    g_assert_cmpint(one_ask(&o, HS_CHECK_grip_hold).status, ==, HS_STATUS_WITHIN);
    /* no surface has the friction that 40 kg would ask: handles, or a mass that passes */
    o.grips[0].friction = o.grips[1].friction = 0.5;
    o.part.mass_kg = 40;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_grip_fix_squeeze_mass);
    o.part.mass_kg = finding.remedy.number[0];
    g_assert_cmpint(one_ask(&o, HS_CHECK_grip_hold).status, !=, HS_STATUS_BEYOND);
    one_free(&o);
}

static void
a_suit_multiplies_the_press_of_its_palms(void)
{
    one o;
    hs_finding bare, suited;
    double times;

    with_pads(&o, 12, 0.5);
    o.suit.residual_hands_N = 0;
    suited = one_ask(&o, HS_CHECK_grip_hold);
    times = 8.0; /* the suit's gain, without a residual */
    o.bearer.suit = -1;
    bare = one_ask(&o, HS_CHECK_grip_hold);
    hs_near("squeeze is the load's", suited.value, bare.value, 1e-9);
    g_assert_cmpfloat(suited.limit, >, 0.9 * times * bare.limit);
    g_assert_cmpint(suited.status, ==, HS_STATUS_WITHIN);
    o.bearer.suit = 0;
    o.suit.gain_hands = NONE;
    suited = one_ask(&o, HS_CHECK_grip_hold);
    EXPECT(suited, NOT_JUDGED, grip_felt_missing);
    one_free(&o);
}

static void
two_bearers_press_one_pad_each(void)
{
    static const int left[] = {0}, right[] = {1};
    one o;
    hs_worker workers[2];
    hs_bearer bearers[2];
    hs_finding finding;

    with_pads(&o, 10, 0.5);
    workers[0] = workers[1] = o.worker;
    workers[1].id = "v";
    bearers[0] = bearers[1] = o.bearer;
    for (int i = 0; i < 2; i++) {
        bearers[i].suit = -1;
        bearers[i].n_grips = 1;
        bearers[i].worker = i;
        bearers[i].grips = i == 0 ? left : right;
    }
    bearers[1].id = "B";
    o.task.workers = workers;
    o.task.n_workers = 2;
    o.option.bearers = bearers;
    o.option.n_bearers = 2;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    /* neither could hold a pad alone: together they press as one bearer does */
    hs_near("squeeze of both", finding.value, 10 * HS_GRAVITY_m_s2 * 1.5 / (2 * 0.5), 1e-6);
    one_free(&o);
}

static void
a_pad_is_pressed_against_a_handle(void)
{
    one o;
    hs_finding finding;

    with_pads(&o, 10, 0.5);
    o.grips[0].kind = HS_GRIP_HANDLE;
    o.bearer.suit = -1;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    /* half the weight by friction of one pad: N = (W/2) s / mu */
    hs_near("pad against handle", finding.value, 5 * HS_GRAVITY_m_s2 * 1.5 / 0.5, 1e-3);
    g_assert_cmpint(finding.status, ==, HS_STATUS_BEYOND);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_grip_fix_squeeze);
    one_free(&o);
}

static void
a_load_slides_in_its_cradle_until_it_is_lined(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 20);
    for (int i = 1; i < 4; i++)
        o.points[i].time_s = LONG_s;
    for (int i = 0; i < 2; i++) {
        o.grips[i].kind = HS_GRIP_CRADLE;
        o.grips[i].friction = 0.2;
    }
    finding = one_ask(&o, HS_CHECK_grip_hold);
    g_assert_cmpint(finding.text.reason, !=, HS_REASON_grip_cradle_slides);
    for (int i = 0; i < 4; i++)
        o.points[i].pitch_deg = 12;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    EXPECT(finding, NEAR, grip_cradle_slides);
    hs_near("friction needed", finding.text.number[0], tan(12 * HS_RAD_PER_DEG), 1e-5);
    o.grips[0].friction = o.grips[1].friction = finding.remedy.number[0];
    finding = one_ask(&o, HS_CHECK_grip_hold);
    g_assert_cmpint(finding.text.reason, !=, HS_REASON_grip_cradle_slides);
    /* not stated: not asked */
    o.grips[0].friction = o.grips[1].friction = NONE;
    finding = one_ask(&o, HS_CHECK_grip_hold);
    g_assert_cmpint(finding.text.reason, !=, HS_REASON_grip_cradle_slides);
    one_free(&o);
}

static void
a_liquid_close_to_the_walk_is_near_and_its_remedy_is_clear(void)
{
    one o;
    hs_finding finding;

    one_make(&o, 3);
    o.part.size_m = (hs_vec3){0.25, 0.25, 0.30};
    o.part.has_liquid = true;
    o.part.liquid_density_kg_m3 = 1000;
    /* 15 per cent below the steps: (2 pi 1.615)^2 = (pi g/L) tanh(pi h/L) */
    o.part.liquid_depth_m =
        0.25 / HS_PI * atanh(pow(2 * HS_PI * 0.85 * 1.9, 2) * 0.25 / (HS_PI * HS_GRAVITY_m_s2));
    finding = one_ask(&o, HS_CHECK_slosh);
    g_assert_cmpint(finding.status, ==, HS_STATUS_NEAR);
    hs_near("frequency", finding.value, 0.85 * 1.9, 1e-9);
    hs_near("half way between 20 and 10 per cent", finding.ratio, 0.95, 1e-6);
    g_assert_true(finding.remedy.reason == HS_REASON_slosh_fix_depth ||
                  finding.remedy.reason == HS_REASON_slosh_fix_depth_only);
    o.part.liquid_depth_m = finding.remedy.number[0];
    g_assert_cmpint(one_ask(&o, HS_CHECK_slosh).status, ==, HS_STATUS_WITHIN);
    one_free(&o);
}

/* The lowest frequency of a box, worked out here: f = sqrt(g k tanh(k h)) / (2 pi), k = pi / length. */
static double
box_Hz(double length_m, double depth_m)
{
    double k = HS_PI / length_m;

    return sqrt(HS_GRAVITY_m_s2 * k * tanh(k * depth_m)) / (2 * HS_PI);
}

/* The direction that decides stands against its nearest drive; the line "turned" gives the other one's distance from that drive. */
static void
a_quarter_turn_brings_the_other_direction_to_the_drive(void)
{
    static const struct {
        const char *what;
        double along_m, across_m, depth_m, step_Hz;
        double drive;      /* of the steps: where the deciding direction is */
        bool across_first; /* it is the one across */
        bool helps;        /* turned it would be 20 per cent or more away from that drive */
    } table[] = {
        {"a can whose length swings with the steps", 0.22, 0.12, 0.20, 1.9, 1, false, true},
        {"the same can the other way round", 0.12, 0.22, 0.20, 1.9, 1, true, true},
        {"a square can: both directions alike", 0.22, 0.22, 0.20, 1.9, 1, false, false},
        {"a tub that sways with every second step", 0.80, 0.50, 0.40, 1.9, 0.5, false, true},
        {"a narrow tray at twice the steps, slowly walked", 0.052, 0.13, 0.10, 1.9, 2, false,
         true},
        {"a nearly square can", 0.22, 0.20, 0.20, 1.9, 1, false, false},
        {"the can at another pace", 0.30, 0.16, 0.20, 1.6, 1, false, true},
    };

    for (gsize i = 0; i < G_N_ELEMENTS(table); i++) {
        double f_Hz[2] = {box_Hz(table[i].along_m, table[i].depth_m),
                          box_Hz(table[i].across_m, table[i].depth_m)};
        double drive_Hz = table[i].drive * table[i].step_Hz;
        int first = table[i].across_first ? 1 : 0;
        hs_finding finding;
        double turned;
        one o;

        one_make(&o, 3);
        o.part.size_m = (hs_vec3){table[i].along_m, table[i].across_m, 0.60};
        o.part.has_liquid = true;
        o.part.liquid_density_kg_m3 = 1000;
        o.part.liquid_depth_m = table[i].depth_m;
        o.task.policy.step_Hz = table[i].step_Hz;
        finding = one_ask(&o, HS_CHECK_slosh);
        hs_near_rel(table[i].what, finding.value, f_Hz[first], 1e-9);
        hs_near_rel(table[i].what, finding.limit, drive_Hz, 1e-12);
        turned = LINE(finding, slosh_turned);
        hs_near(table[i].what, LINE(finding, slosh_apart),
                fabs(f_Hz[first] - drive_Hz) / drive_Hz, 1e-9);
        hs_near(table[i].what, turned, fabs(f_Hz[1 - first] - drive_Hz) / drive_Hz, 1e-9);
        if ((turned >= 0.20) != table[i].helps)
            g_error("%s: turned %g", table[i].what, turned);
        one_free(&o);
    }
}

/* A glove takes its part of the hands' strength and nothing of an end piece. */
static void
a_glove_weakens_hands_and_no_end_piece(void)
{
    hs_finding bare, gloved;
    one o;

    one_make(&o, 20);
    o.bearer.suit = -1;
    bare = one_ask(&o, HS_CHECK_grip_hold);
    EXPECT(bare, WITHIN, grip_up_hands);
    o.task.policy.glove_loss_fraction = 0.25;
    gloved = one_ask(&o, HS_CHECK_grip_hold);
    hs_near_rel("ratio", gloved.ratio, bare.ratio / 0.75, 1e-12);
    hs_near_rel("strength", LINE(gloved, grip_glove), 0.75 * o.run.persons[0].grip_N, 1e-12);
    o.bearer.suit = 0;
    o.bearer.effector = 0;
    o.effector.max_force_N = 500;
    gloved = one_ask(&o, HS_CHECK_grip_hold);
    o.task.policy.glove_loss_fraction = NONE;
    hs_near_rel("end piece", gloved.ratio, one_ask(&o, HS_CHECK_grip_hold).ratio, 0.0);
    one_free(&o);
}

/* A short and a tall bearer with hanging arms tilt the load; entered as its pitch, that tilt moves what the line says. */
static void
statures_tilt_a_load_and_move_its_shares(void)
{
    static const int front[] = {0}, rear[] = {1};
    one o;
    hs_worker workers[2];
    hs_bearer bearers[2];
    hs_finding level, tilted;
    double tilt_deg, more_N, level_N;

    one_make(&o, 30);
    stand_still(&o);
    workers[0] = workers[1] = o.worker;
    workers[0].stature_m = 1.60;
    workers[1].stature_m = 1.90;
    workers[1].id = "v";
    bearers[0] = bearers[1] = o.bearer;
    for (int i = 0; i < 2; i++) {
        o.grips[i].at_m = (hs_vec3){i == 0 ? 0.6 : -0.6, 0, 0.02};
        bearers[i].suit = -1;
        bearers[i].n_grips = 1;
        bearers[i].worker = i;
        bearers[i].grips = i == 0 ? front : rear;
    }
    bearers[1].id = "B";
    o.task.workers = workers;
    o.task.n_workers = 2;
    o.option.bearers = bearers;
    o.option.n_bearers = 2;
    level = one_ask(&o, HS_CHECK_share);
    tilt_deg = LINE(level, share_statures);
    more_N = LINE(level, share_to_lower);
    level_N = o.run.stations[0].shares.up_N[0];
    g_assert_cmpfloat(tilt_deg, >, 1.0);
    for (int i = 0; i < 4; i++)
        o.points[i].pitch_deg = -tilt_deg; /* the short one in front: front end down */
    tilted = one_ask(&o, HS_CHECK_share);
    hs_near_rel("to the lower one", o.run.stations[0].shares.up_N[0] - level_N, more_N, 1e-6);
    hs_near_rel("the statures are the same", LINE(tilted, share_statures), tilt_deg, 0.01);
    workers[1].stature_m = 1.60;
    level = one_ask(&o, HS_CHECK_share);
    for (const hs_working_line *line = level.working.first; line != NULL; line = line->next)
        g_assert_cmpint(line->equation, !=, HS_EQ_share_statures);
    one_free(&o);
}

static void
a_slope_enters_floor_friction_exactly(void)
{
    one o;
    hs_finding finding;
    double slope = 1.0 / 12.0;

    one_make(&o, 12);
    o.floor[0] = (hs_vec2){-2, -2 * slope};
    o.floor[1] = (hs_vec2){8, 8 * slope};
    o.task.site.n_floor = 2;
    finding = one_ask(&o, HS_CHECK_floor_friction);
    /* walking straight takes 0.22 on the level: the turned friction cone */
    hs_near("on 1 in 12", finding.value, tan(atan(0.22) + atan(slope)), 1e-9);
    one_free(&o);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/grip_checks/bare_palms",
                    bare_palms_are_judged_by_the_smaller_of_press_and_shoulder);
    g_test_add_func("/grip_checks/the_remedies_of_palms_pass", the_remedies_of_palms_pass);
    g_test_add_func("/grip_checks/a_suit_multiplies_the_press_of_its_palms",
                    a_suit_multiplies_the_press_of_its_palms);
    g_test_add_func("/grip_checks/two_bearers_press_one_pad_each",
                    two_bearers_press_one_pad_each);
    g_test_add_func("/grip_checks/a_pad_is_pressed_against_a_handle",
                    a_pad_is_pressed_against_a_handle);
    g_test_add_func("/grip_checks/a_load_slides_in_its_cradle_until_it_is_lined",
                    a_load_slides_in_its_cradle_until_it_is_lined);
    g_test_add_func("/grip_checks/a_liquid_close_to_the_walk_is_near",
                    a_liquid_close_to_the_walk_is_near_and_its_remedy_is_clear);
    g_test_add_func("/grip_checks/a_slope_enters_floor_friction_exactly",
                    a_slope_enters_floor_friction_exactly);
    g_test_add_func("/grip_checks/a_quarter_turn_brings_the_other_direction_to_the_drive",
                    a_quarter_turn_brings_the_other_direction_to_the_drive);
    g_test_add_func("/grip_checks/a_glove_weakens_hands_and_no_end_piece",
                    a_glove_weakens_hands_and_no_end_piece);
    g_test_add_func("/grip_checks/statures_tilt_a_load_and_move_its_shares",
                    statures_tilt_a_load_and_move_its_shares);
    return g_test_run();
}
