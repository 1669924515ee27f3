/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do checks and motion say where a worked figure needs a whole run?
 * Answer:    worked_ask_run(): an invented box in bare hands, the figures of the case put in, one check asked.
 * Not here:  what follows from a person or a posture alone. */
#include "../checks/one_bearer.h"
#include "place.h"
#include "quantity.h"
#include "worked.h"

static void
bare(one *o, double load_kg, double body_kg)
{
    one_make(o, load_kg);
    o->bearer.suit = -1;
    o->worker.mass_kg = body_kg;
    o->worker.sex = HS_SEX_MALE;
}

/* The floor's friction for the start alone, standing: what the feet press and push is as given. */
static double
standing_need(one *o, double push_N, double acceleration_m_s2)
{
    hs_asking asking = {.task = &o->task,
                        .load = &o->load,
                        .run = &o->run,
                        .baseline = &o->run,
                        .arena = o->arena,
                        .near_ratio = 0.9};
    hs_finding finding = hs_finding_start(&asking, HS_CHECK_floor_friction);
    hs_bearer_state *feet = &o->run.stations[0].bearers[0];

    o->run.n_stations = 1;
    feet->input.push_N = push_N;
    feet->input.foot_acc_m_s2 = acceleration_m_s2;
    hs_check_floor_friction(&asking, &finding);
    return finding.value;
}

static double
ask_friction(const char *ask, JsonObject *given)
{
    double load_kg = worked_figure(given, "load_kg", 0.001),
           acceleration_m_s2 = worked_figure(given, "acceleration_m_s2", 0.0);
    double slope = tan(worked_figure(given, "slope_deg", 0.0) * HS_RAD_PER_DEG), got;
    one o;

    bare(&o, load_kg, worked_figure(given, "mass_kg", 80.0));
    if (slope > 0.0) {
        o.floor[0] = (hs_vec2){-9.0, -9.0 * slope};
        o.floor[1] = (hs_vec2){9.0, 9.0 * slope};
        o.task.site.n_floor = 2;
    }
    one_run(&o);
    got = standing_need(&o, -worked_figure(given, "push_N", load_kg * acceleration_m_s2),
                        acceleration_m_s2);
    one_free(&o);
    return g_str_has_suffix(ask, "_needs") ? got : HS_ABSENT;
}

/* Friction of the floor over what a carry with a corner needs. */
static double
ask_turn(JsonObject *given)
{
    hs_finding finding;
    one o;

    bare(&o, 5.0, 80.0);
    o.task.site.friction = worked_figure(given, "floor", NAN);
    o.points[3] = one_point(4.0, 0.7, HS_MOVE_CARRY, 6.0);
    o.points[2].y_m = 0.0;
    o.points[3].y_m = 4.0;
    finding = one_ask(&o, HS_CHECK_floor_friction);
    one_free(&o);
    return finding.limit / finding.value;
}

/* Middle of the carry, where the law of motion is fastest: 15 / 8 of the mean speed. */
static double
ask_walking(const char *ask, JsonObject *given)
{
    double speed_m_s = worked_figure(given, "speed_m_s", 1.0), got = 0.0;
    hs_place place;
    one o;

    bare(&o, worked_figure(given, "load_kg", 5.0), worked_figure(given, "body_kg", 80.0));
    o.points[2].time_s = 15.0 / 8.0 * 4.0 / speed_m_s;
    if (g_str_equal(ask, "stairs_ground_N")) {
        static const hs_vec2 steps[4] = {{-9.0, 0.0}, {1.5, 0.0}, {1.5, 0.15}, {9.0, 0.15}};

        memcpy(o.floor, steps, sizeof steps);
        o.task.site.n_floor = 4;
    }
    one_run(&o);
    if (g_str_equal(ask, "walking_factor")) {
        hs_place_at(o.run.setup, 1,
                    o.run.setup->motions[0].legs[1].start_s + 0.5 * o.points[2].time_s, &place);
        hs_near("at this speed", place.motion.vx_m_s, speed_m_s, 1e-9);
        got = place.bearers[0].walking_factor;
    } else {
        for (int s = 0; s < o.run.n_stations; s++)
            got = fmax(got, o.run.bearers[s].ground_force_N);
    }
    one_free(&o);
    return got;
}

/* What one palm presses, as the working of a box held between two flat palms says it. */
static double
ask_palm(JsonObject *given)
{
    double got = HS_ABSENT;
    hs_finding finding;
    one o;

    bare(&o, 2.0, 80.0);
    o.worker.sex = g_str_equal(json_object_get_string_member(given, "sex"), "female")
                       ? HS_SEX_FEMALE
                       : HS_SEX_MALE;
    for (int i = 0; i < 2; i++) {
        o.grips[i].kind = HS_GRIP_PAD;
        o.grips[i].friction = 0.5;
    }
    finding = one_ask(&o, HS_CHECK_grip_hold);
    for (hs_working_line *line = finding.working.first; line != NULL; line = line->next)
        if (line->equation == HS_EQ_grip_palms)
            got = line->result;
    one_free(&o);
    return got;
}

static double
ask_limit(void)
{
    hs_finding finding;
    one o;

    bare(&o, 5.0, 80.0);
    finding = one_ask(&o, HS_CHECK_spine_compression);
    one_free(&o);
    return finding.limit;
}

static double
ask_pounds(JsonObject *given)
{
    double kg = HS_ABSENT;

    g_assert_true(hs_quantity_parse(json_object_get_string_member(given, "text"), "kg",
                                    HS_UNITS_SI, &kg, NULL));
    return kg;
}

double
worked_ask_run(const char *ask, JsonObject *given)
{
    if (g_str_has_suffix(ask, "_needs"))
        return ask_friction(ask, given);
    if (g_str_equal(ask, "turn_left_over"))
        return ask_turn(given);
    if (g_str_equal(ask, "walking_factor") || g_str_equal(ask, "stairs_ground_N"))
        return ask_walking(ask, given);
    if (g_str_equal(ask, "palm_N"))
        return ask_palm(given);
    if (g_str_equal(ask, "limit_spine_N"))
        return ask_limit();
    return g_str_equal(ask, "pounds") ? ask_pounds(given) : HS_ABSENT;
}
