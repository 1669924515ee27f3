/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a liquid swing in time with the steps?
 * Answer:    the check slosh: both horizontal directions of every container against half, once and twice the step rate.
 * Not here:  the frequencies (load/liquid.c). */
#include "check.h"
#include "grip.h"
#include "liquid.h"
#include "shares.h"
#include "units.h"

#define STEP_Hz     1.9  /* default of policy.step_Hz: HS_SRC_step_rates */
#define BEYOND_PART 0.10 /* nearer than this to a drive: HS_SRC_slosh_band */
#define NEAR_PART   0.20
#define TIE         1e-12 /* numerics: at 20 per cent exactly it is clear */
#define MOST_RATIO  10.0
#define CLEAR_PART  0.201 /* what a remedy aims at */
#define PACE_LEAST  1.2   /* step rates that people walk at, HS_SRC_step_rates */
#define PACE_MOST   2.7
#define DAMPING     0.02 /* small smooth containers 1 to 5 per cent: HS_SRC_slosh_damping */
#define SWAY_m_s2   0.1  /* of the hands at the drive, an example figure: the same source */

static const double drives[3] = {0.5, 1.0, 2.0};

static double
apart(double frequency_Hz, double drive_Hz)
{
    return fabs(frequency_Hz - drive_Hz) / drive_Hz;
}

static double
nearest_drive(double frequency_Hz, double step_Hz)
{
    double best = drives[0];

    for (int k = 1; k < 3; k++)
        if (apart(frequency_Hz, drives[k] * step_Hz) < apart(frequency_Hz, best * step_Hz))
            best = drives[k];
    return best;
}

static bool
is_clear(const double frequency_Hz[2], double step_Hz)
{
    for (int i = 0; i < 2; i++)
        if (!(apart(frequency_Hz[i], nearest_drive(frequency_Hz[i], step_Hz) * step_Hz) >=
              CLEAR_PART))
            return false;
    return true;
}

/* The nearest pace at which both directions are clear; HS_ABSENT when no pace of people is. */
static double
clear_pace_Hz(const double frequency_Hz[2], double step_Hz)
{
    for (double off = 0.01; off <= PACE_MOST; off += 0.01)
        for (int sign = -1; sign <= 1; sign += 2) {
            double pace_Hz = step_Hz + sign * off;

            if (pace_Hz >= PACE_LEAST && pace_Hz <= PACE_MOST &&
                is_clear(frequency_Hz, pace_Hz))
                return pace_Hz;
        }
    return HS_ABSENT;
}

/* The nearest depth at which both directions are clear; HS_ABSENT when none is. */
static double
clear_depth_m(const hs_part *part, double step_Hz)
{
    double height_m = part->shape == HS_SHAPE_BOX ? part->size_m.z
                      : part->axis == HS_AXIS_X || part->axis == HS_AXIS_Y
                          ? 2.0 * part->radius_m
                          : part->length_m;

    for (double off_m = 0.001; off_m < height_m; off_m += 0.001)
        for (int sign = -1; sign <= 1; sign += 2) {
            hs_part filled = *part;
            hs_slosh slosh;

            filled.liquid_depth_m = part->liquid_depth_m + sign * off_m;
            if (!(filled.liquid_depth_m > 0.0) || !(filled.liquid_depth_m < height_m))
                continue;
            if (hs_liquid_slosh(&filled, NULL, &slosh, NULL) == HS_OK &&
                is_clear(slosh.frequency_Hz, step_Hz))
                return filled.liquid_depth_m;
        }
    return HS_ABSENT;
}

static void
remedy(const hs_part *part, const hs_slosh *slosh, double step_Hz, hs_finding *finding)
{
    double depth_m = clear_depth_m(part, step_Hz),
           pace_Hz = clear_pace_Hz(slosh->frequency_Hz, step_Hz);

    if (hs_has(depth_m) && hs_has(pace_Hz))
        finding->remedy = HS_SAY(slosh_fix_depth, depth_m, pace_Hz);
    else if (hs_has(depth_m))
        finding->remedy = HS_SAY(slosh_fix_depth_only, depth_m);
    else if (hs_has(pace_Hz))
        finding->remedy = HS_SAY(slosh_fix_pace, pace_Hz);
    else
        finding->remedy = HS_SAY(slosh_fix_close);
}

/* Shift of the whole load's CG when this liquid's surface stands level over the steepest pitch, and what goes from one end
 * to the other with it. */
static void
say_wander(const hs_asking *asking,
           const hs_part *part,
           const hs_slosh *slosh,
           hs_finding *finding)
{
    double pitch_rad = 0.0, span_m = 0.0, share_N = 0.0;
    const hs_setup *setup = asking->run->setup;
    hs_wander wander;

    for (int s = 0; s < asking->run->n_stations; s++)
        if (fabs(asking->run->stations[s].place.motion.pitch_rad) > fabs(pitch_rad))
            pitch_rad = asking->run->stations[s].place.motion.pitch_rad;
    if (hs_liquid_wander(part, HS_AXIS_X, fabs(pitch_rad), &wander, NULL) != HS_OK)
        return;
    for (int i = 0; i < setup->n_used; i++)
        for (int j = 0; j < i; j++)
            span_m = fmax(span_m, fabs(asking->task->load.grips[setup->used[i]].at_m.x -
                                       asking->task->load.grips[setup->used[j]].at_m.x));
    if (span_m > 0.0)
        share_N = slosh->mass_kg * HS_GRAVITY_m_s2 * wander.shift_m / span_m;
    HS_WORK(&finding->working, slosh_wander,
            slosh->mass_kg * wander.shift_m / asking->load->mass_kg, "m",
            {"m_l", slosh->mass_kg, "kg"}, {"x", wander.shift_m, "m"},
            {"m", asking->load->mass_kg, "kg"});
    if (share_N > 0.0)
        HS_WORK(&finding->working, slosh_share, share_N, "N", {"m_l", slosh->mass_kg, "kg"},
                {"x", wander.shift_m, "m"}, {"L", span_m, "m"});
    finding->text.number[5] = slosh->mass_kg * wander.shift_m / asking->load->mass_kg;
}

/* Demand over capacity from the distance to a drive: 1 at 10 per cent, near_ratio at 20, falling on beyond that. */
static double
ratio_of(double far, double near_ratio)
{
    if (far >= NEAR_PART)
        return near_ratio * NEAR_PART / (far + TIE);
    if (far >= BEYOND_PART)
        return 1.0 - (1.0 - near_ratio) * (far - BEYOND_PART) / (NEAR_PART - BEYOND_PART);
    return fmin(BEYOND_PART / fmax(far, TIE), MOST_RATIO);
}

/* What a surface in time with the steps pushes with at last, for a sway of the hands, and after how many steps. */
static void
write_resonance(double mass_kg, double moving_share, double drive, hs_working *working)
{
    HS_WORK(working, slosh_force,
            hs_liquid_resonance_N(mass_kg, moving_share, SWAY_m_s2, DAMPING), "N",
            {"m_l", mass_kg, "kg"}, {"k", moving_share, ""}, {"a", SWAY_m_s2, "m/s2"},
            {"zeta", DAMPING, ""});
    HS_WORK(working, slosh_steps, hs_liquid_build_up_count(DAMPING, drive), "",
            {"zeta", DAMPING, ""}, {"k", drive, ""});
}

static void
judge(const hs_asking *asking,
      const hs_part *part,
      int direction,
      double step_Hz,
      hs_finding *candidate)
{
    hs_slosh slosh;
    double f_Hz, drive, far, moving_kg;

    if (hs_liquid_slosh(part, &candidate->working, &slosh, NULL) != HS_OK || !slosh.has_surface)
        return;
    f_Hz = slosh.frequency_Hz[direction];
    drive = nearest_drive(f_Hz, step_Hz);
    far = apart(f_Hz, drive * step_Hz);
    moving_kg = slosh.mass_kg * hs_or(slosh.moving_share[direction], 1.0);
    candidate->source = HS_SRC_slosh_band;
    candidate->confidence = HS_CONF_COMMON_PRACTICE;
    hs_finding_judge_ratio(candidate, f_Hz, drive * step_Hz, ratio_of(far, asking->near_ratio),
                           asking->near_ratio);
    candidate->text = (hs_message){
        .reason =
            candidate->status == HS_STATUS_WITHIN
                ? (direction == 0 ? HS_REASON_slosh_clear_along : HS_REASON_slosh_clear_across)
                : (direction == 0 ? HS_REASON_slosh_near_along : HS_REASON_slosh_near_across),
        .number = {f_Hz, drive * step_Hz, drive, far, moving_kg},
        .name = {part->name != NULL ? part->name : part->id}};
    HS_WORK(&candidate->working, slosh_drive, drive * step_Hz, "Hz", {"k", drive, ""},
            {"f_s", step_Hz, "Hz"});
    HS_WORK(&candidate->working, slosh_apart, far, "", {"f", f_Hz, "Hz"},
            {"f_d", drive * step_Hz, "Hz"});
    if (!asking->is_live)
        write_resonance(slosh.mass_kg, slosh.moving_share[direction], drive,
                        &candidate->working);
    /* A quarter turn of the container brings its other direction to where this one met the walk. */
    HS_WORK(&candidate->working, slosh_turned,
            apart(slosh.frequency_Hz[1 - direction], drive * step_Hz), "",
            {"f2", slosh.frequency_Hz[1 - direction], "Hz"}, {"f_d", drive * step_Hz, "Hz"});
    say_wander(asking, part, &slosh, candidate);
    if (candidate->status != HS_STATUS_WITHIN)
        remedy(part, &slosh, step_Hz, candidate);
}

static bool
walks(const hs_run *run, int *ret_station)
{
    for (int s = 0; s < run->n_stations; s++)
        if (run->stations[s].place.move == HS_MOVE_CARRY &&
            fabs(run->stations[s].place.motion.vx_m_s) > 0.0) {
            *ret_station = s;
            return true;
        }
    return false;
}

void
hs_check_slosh(const hs_asking *asking, hs_finding *finding)
{
    double step_Hz = hs_or(asking->task->policy.step_Hz, STEP_Hz);
    hs_finding worst = {0};
    bool has_liquid = false, has_assumed = hs_has(asking->task->policy.step_Hz);
    int station = 0;

    for (int i = 0; i < asking->task->load.n_parts; i++)
        has_liquid = has_liquid || asking->task->load.parts[i].has_liquid;
    if (!has_liquid || !walks(asking->run, &station))
        return;
    if (!has_assumed)
        hs_assume(asking->assumptions, STEP_Hz, NULL, HS_SAY(assumed_step_rate, STEP_Hz),
                  "policy.step_Hz");
    for (int i = 0; i < asking->task->load.n_parts; i++)
        for (int direction = 0; asking->task->load.parts[i].has_liquid && direction < 2;
             direction++) {
            hs_finding candidate = hs_finding_start(asking, HS_CHECK_slosh);

            judge(asking, &asking->task->load.parts[i], direction, step_Hz, &candidate);
            hs_finding_at(&candidate, asking->run, station, -1);
            if (hs_finding_worse(&candidate, &worst))
                worst = candidate;
        }
    if (worst.status != HS_STATUS_NONE)
        *finding = worst;
}
