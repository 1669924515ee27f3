/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do a fall, a late brake, a drag and a way out come to?
 * Answer:    kinematics of the first moments without power, measured paces of rescuers, seconds until somebody is out.
 * Not here:  what is judged (power_loss_check.c, rescue_check.c). */
#include "loss_beside.h"

#include "endurance_readers.h"
#include "units.h"

#define REACTION_s     0.25 /* HS_SRC_fall_reaction: common practice, no source */
#define SINKS_m        0.01 /* under the weight at rest: an example, common practice, no source */
#define HALVED         0.5  /* a hold that nobody chose: file format, section Power lost */
#define TRIED_m        20.0 /* HS_SRC_suit_drag, all four */
#define LIGHT_kg       55.0
#define HEAVY_kg       110.0
#define LIGHT_s        9.56
#define HEAVY_s        27.08
#define HEAVY_BY_TWO_s 8.36
#define STEP_s         22.0 /* HS_SRC_release_steps_2026 */
#define WALK_m_s       1.4  /* HS_SRC_pachi_ji_2005 */

double
hs_fall_m(double seconds)
{
    return HS_GRAVITY_m_s2 * seconds * seconds / 2.0;
}

double
hs_fall_m_s(double seconds)
{
    return HS_GRAVITY_m_s2 * seconds;
}

double
hs_fall_times(double height_m, double sinks_m)
{
    return 1.0 + sqrt(1.0 + 2.0 * height_m / sinks_m);
}

double
hs_drag_pace_m_s(double mass_kg, int n_rescuers)
{
    double light_m_s = TRIED_m / LIGHT_s, heavy_m_s = TRIED_m / HEAVY_s;

    if (!(mass_kg <= HEAVY_kg))
        return HS_ABSENT;
    if (n_rescuers >= 2)
        return TRIED_m / HEAVY_BY_TWO_s;
    return light_m_s + (heavy_m_s - light_m_s) * (fmax(mass_kg, LIGHT_kg) - LIGHT_kg) /
                           (HEAVY_kg - LIGHT_kg);
}

double
hs_rescue_out_s(double release_helper_s, double wearer_kg, double exit_m)
{
    return exit_m > 0.0 ? release_helper_s + exit_m / hs_drag_pace_m_s(wearer_kg, 1)
                        : HS_ABSENT;
}

void
hs_loss_write_fall(const hs_suit *suit, hs_working *working)
{
    bool brakes = suit->on_power_loss == HS_LOSS_LOCK && suit->brake_s > 0.0;
    double seconds = brakes ? suit->brake_s : REACTION_s, drop_m = hs_fall_m(seconds);

    if (suit->on_power_loss == HS_LOSS_LIMP)
        HS_WORK(working, loss_reaction, drop_m, "m", {"g", HS_GRAVITY_m_s2, "m/s2"},
                {"t", seconds, "s"});
    else if (brakes) {
        HS_WORK(working, loss_brake_drop, drop_m, "m", {"g", HS_GRAVITY_m_s2, "m/s2"},
                {"t", seconds, "s"});
        HS_WORK(working, loss_brake_speed, hs_fall_m_s(seconds), "m/s",
                {"g", HS_GRAVITY_m_s2, "m/s2"}, {"t", seconds, "s"});
        HS_WORK(working, loss_brake_jolt, hs_fall_times(drop_m, SINKS_m), "",
                {"h", drop_m, "m"}, {"d", SINKS_m, "m"});
    }
}

void
hs_loss_write_hands(
    double hand_N, int n_hands, double strength_N, double needed_s, hs_working *working)
{
    double f = hand_N / (n_hands * strength_N), hold_s = HALVED * hs_endurance_hands_s(f);

    HS_WORK(working, loss_hands, f, "", {"F", hand_N, "N"}, {"n", n_hands, ""},
            {"G", strength_N, "N"});
    if (!(hold_s > 0.0) || !hs_has(needed_s))
        return;
    HS_WORK(working, loss_hands_hold, hold_s, "s", {"b0", HS_ENDURANCE_HANDS_b0_s, "s"},
            {"f", f, ""}, {"b1", HS_ENDURANCE_HANDS_b1, ""});
    HS_WORK(working, loss_hands_left, hold_s - needed_s, "s", {"t", hold_s, "s"},
            {"needed", needed_s, "s"});
    if (needed_s > 0.0)
        HS_WORK(working, loss_hands_mass,
                hs_endurance_hands_share(needed_s / HALVED) * n_hands * strength_N /
                    HS_GRAVITY_m_s2,
                "kg", {"needed", needed_s, "s"}, {"b0", HS_ENDURANCE_HANDS_b0_s, "s"},
                {"b1", HS_ENDURANCE_HANDS_b1, ""}, {"n", n_hands, ""}, {"G", strength_N, "N"},
                {"g", HS_GRAVITY_m_s2, "m/s2"});
}

static void
write_paces(double wearer_kg, hs_working *working)
{
    double pace_m_s = hs_drag_pace_m_s(wearer_kg, 1);

    HS_WORK(working, rescue_pace, pace_m_s, "m/s", {"v1", TRIED_m / LIGHT_s, "m/s"},
            {"v2", TRIED_m / HEAVY_s, "m/s"}, {"m", fmax(wearer_kg, LIGHT_kg), "kg"},
            {"m1", LIGHT_kg, "kg"}, {"m2", HEAVY_kg, "kg"});
    if (hs_has(pace_m_s))
        HS_WORK(working, rescue_pace_two, hs_drag_pace_m_s(wearer_kg, 2), "m/s",
                {"x", TRIED_m, "m"}, {"t", HEAVY_BY_TWO_s, "s"});
}

void
hs_rescue_write_way_out(const hs_suit *suit,
                        double wearer_kg,
                        double exit_m,
                        hs_working *working)
{
    HS_WORK(working, rescue_steps, suit->release_helper_s / STEP_s, "",
            {"t", suit->release_helper_s, "s"}, {"step", STEP_s, "s"});
    write_paces(wearer_kg, working);
    if (!(exit_m > 0.0))
        return;
    HS_WORK(working, rescue_out, hs_rescue_out_s(suit->release_helper_s, wearer_kg, exit_m),
            "s", {"t", suit->release_helper_s, "s"}, {"x", exit_m, "m"},
            {"v", hs_drag_pace_m_s(wearer_kg, 1), "m/s"});
    HS_WORK(working, rescue_alone, suit->release_self_s + exit_m / WALK_m_s, "s",
            {"t", suit->release_self_s, "s"}, {"x", exit_m, "m"}, {"v", WALK_m_s, "m/s"});
}
