/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a liquid move in its container?
 * Answer:    hs_liquid_*: lowest frequency and moving part for each horizontal direction, wander of its CG when tilted.
 * Not here:  the liquid at rest (solids.c), whether a step meets it (checks/slosh_check.c). */
#ifndef HS_LIQUID_H
#define HS_LIQUID_H

#include "task.h"
#include "working.h"

typedef struct {
    bool has_surface;       /* false: empty, or full to the brim: nothing sloshes */
    double frequency_Hz[2]; /* lowest, along the load's x and y */
    double moving_share
        [2]; /* of the liquid's mass, in that mode; HS_ABSENT where no formula was found */
    double mass_kg;
    double length_m[2],
        depth_m; /* of the surface along x and y; depth as used in the formula */
    bool is_approximate
        [2]; /* lying cylinder: along by a rectangle, across away from half full */
} hs_slosh;

/**
 * hs_liquid_slosh - lowest slosh frequencies of a part with liquid
 *
 * What    rectangle w2 = (pi g / L) tanh(pi h / L), upright cylinder w2 = (xi g / R) tanh(xi h / R), lying cylinder half full
 *         across w2 = 1.3557 g / R, along as a rectangle of mean depth; across away from half full as a rectangle as wide as
 *         its surface, brought to the half-full figure where both hold
 * In      part with liquid, as hs_liquid_body_of() takes it
 * Out     *ret_slosh; working (may be NULL)
 * Frame   load axes
 * Errors  as hs_liquid_body_of()
 * Source  HS_SRC_slosh_sp106, HS_SRC_slosh_canal
 */
hs_status
hs_liquid_slosh(const hs_part *part, hs_working *working, hs_slosh *ret_slosh, hs_error *error);

typedef struct {
    double
        shift_m; /* of the liquid's CG along the tilt, towards the low end, relative to the container */
    double rise_m; /* above its place with a level surface, container's axes */
    double
        dry_tilt_rad; /* here the base begins to run dry: formulas hold below it; HS_ABSENT: none */
    double spill_tilt_rad; /* here the liquid reaches the rim */
} hs_wander;

/**
 * hs_liquid_wander - how far the liquid's CG moves when the container is tilted
 *
 * What    prism: shift = I_surface tan t / V, rise = half of shift tan t; lying cylinder about its own axis: r_c sin t
 * In      part with liquid; axis: horizontal direction in which the container is tilted (x: about y); |tilt| < pi/2
 * Out     *ret_wander
 * Frame   container's axes
 * Errors  as hs_liquid_body_of()
 * Source  surface's second moment, DERIVED
 */
hs_status hs_liquid_wander(
    const hs_part *part, hs_axis axis, double tilt_rad, hs_wander *ret_wander, hs_error *error);

/* Depth at which the lowest frequency along an axis is the wanted one; HS_ABSENT when no depth gives it. */
double hs_liquid_depth_for_m(const hs_part *part, int direction, double frequency_Hz);

/* One formula at a time, for tests and working: frequency in Hz. */
double hs_liquid_box_Hz(double length_m, double depth_m);
double hs_liquid_upright_Hz(double radius_m, double depth_m);
double hs_liquid_across_Hz(double radius_m); /* lying, half full */

/* Force of a surface in time with its drive, at last, for a swing of so much acceleration; and swings of the drive until 63 per cent
 * of it has built up, counted in steps when the drive is `drive_ratio` times the step rate: HS_SRC_slosh_damping. */
double hs_liquid_resonance_N(double mass_kg,
                             double moving_share,
                             double sway_m_s2,
                             double damping_ratio);
double hs_liquid_build_up_count(double damping_ratio, double drive_ratio);

#endif
