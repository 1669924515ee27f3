/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a liquid move in its container?
 * Answer:    linear potential theory for the lowest sideways mode; the surface's second moment for the CG's wander.
 * Not here:  the liquid at rest (solids.c), whether a step meets it (checks/slosh_check.c). */
#include "liquid.h"

#include "solids.h"
#include "solve.h"
#include "units.h"

#define XI        1.8411837813 /* first zero of J1': HS_SRC_slosh_sp106 */
#define HALF_FULL 1.3557       /* w2 R / g of a half-full canal: HS_SRC_slosh_canal */

double
hs_liquid_box_Hz(double length_m, double depth_m)
{
    double k = HS_PI / length_m;

    return sqrt(HS_GRAVITY_m_s2 * k * tanh(k * depth_m)) / (2.0 * HS_PI);
}

double
hs_liquid_upright_Hz(double radius_m, double depth_m)
{
    double k = XI / radius_m;

    return sqrt(HS_GRAVITY_m_s2 * k * tanh(k * depth_m)) / (2.0 * HS_PI);
}

double
hs_liquid_across_Hz(double radius_m)
{
    return sqrt(HALF_FULL * HS_GRAVITY_m_s2 / radius_m) / (2.0 * HS_PI);
}

static double
box_part(double length_m, double depth_m)
{
    return 8.0 / pow(HS_PI, 3.0) * length_m / depth_m * tanh(HS_PI * depth_m / length_m);
}

static double
upright_part(double radius_m, double depth_m)
{
    return 2.0 * radius_m * tanh(XI * depth_m / radius_m) / (XI * depth_m * (XI * XI - 1.0));
}

static void
work_box(hs_working *working, double length_m, double depth_m, double frequency_Hz)
{
    double k = HS_PI / length_m;

    HS_WORK(working, slosh_tanh, tanh(k * depth_m), "", {"k", k, ""}, {"h", depth_m, "m"});
    HS_WORK(working, slosh_box, frequency_Hz, "Hz", {"L", length_m, "m"},
            {"T", tanh(k * depth_m), ""});
}

static bool
is_lying(const hs_part *part)
{
    return part->shape == HS_SHAPE_CYLINDER &&
           (part->axis == HS_AXIS_X || part->axis == HS_AXIS_Y);
}

/* Width of the surface of a lying cylinder and the depth of a box of that width with the same liquid. */
static void
lying_surface(const hs_part *part, double *ret_width_m, double *ret_mean_depth_m)
{
    double r = part->radius_m, d = part->liquid_depth_m;
    double a = acos(fmax(-1.0, fmin(1.0, 1.0 - d / r)));

    *ret_width_m = 2.0 * r * sin(a);
    *ret_mean_depth_m = *ret_width_m > 0.0 ? r * r * (a - sin(a) * cos(a)) / *ret_width_m : 0.0;
}

/* Across a canal that is not half full: a box as wide as the surface, brought to the known figure at half full. */
static double
across_Hz(double radius_m, double width_m, double mean_depth_m)
{
    double half_m = HS_PI * radius_m / 4.0;
    double correction =
        hs_liquid_across_Hz(radius_m) / hs_liquid_box_Hz(2.0 * radius_m, half_m);

    return correction * hs_liquid_box_Hz(width_m, mean_depth_m);
}

static void
slosh_lying(const hs_part *part, hs_working *working, hs_slosh *slosh)
{
    int along = part->axis == HS_AXIS_X ? 0 : 1, across = 1 - along;
    double width_m, mean_m, r = part->radius_m;

    lying_surface(part, &width_m, &mean_m);
    slosh->length_m[along] = part->length_m;
    slosh->length_m[across] = width_m;
    slosh->depth_m = mean_m;
    slosh->frequency_Hz[along] = hs_liquid_box_Hz(part->length_m, mean_m);
    slosh->moving_share[along] = box_part(part->length_m, mean_m);
    slosh->is_approximate[along] = true;
    work_box(working, part->length_m, mean_m, slosh->frequency_Hz[along]);
    slosh->moving_share[across] = HS_ABSENT;
    if (fabs(part->liquid_depth_m - r) <= HS_SAME_PLACE_m) {
        slosh->frequency_Hz[across] = hs_liquid_across_Hz(r);
        HS_WORK(working, slosh_across, slosh->frequency_Hz[across], "Hz",
                {"lambda", HALF_FULL, ""}, {"R", r, "m"});
    } else {
        slosh->frequency_Hz[across] = across_Hz(r, width_m, mean_m);
        slosh->is_approximate[across] = true;
    }
}

hs_status
hs_liquid_slosh(const hs_part *part, hs_working *working, hs_slosh *ret_slosh, hs_error *error)
{
    hs_slosh slosh = {0};
    hs_liquid_body body;
    double h = part->liquid_depth_m, r = part->radius_m, height_m;

    HS_TRY(hs_liquid_body_of(part, &body, error));
    slosh.mass_kg = part->liquid_density_kg_m3 * body.volume_m3;
    height_m = part->shape == HS_SHAPE_BOX ? part->size_m.z
               : is_lying(part)            ? 2.0 * r
                                           : part->length_m;
    slosh.depth_m = h;
    slosh.has_surface = h > HS_SAME_PLACE_m && h < height_m - HS_SAME_PLACE_m;
    if (slosh.has_surface && part->shape == HS_SHAPE_BOX) {
        for (int i = 0; i < 2; i++) {
            slosh.length_m[i] = i == 0 ? part->size_m.x : part->size_m.y;
            slosh.frequency_Hz[i] = hs_liquid_box_Hz(slosh.length_m[i], h);
            slosh.moving_share[i] = box_part(slosh.length_m[i], h);
            work_box(working, slosh.length_m[i], h, slosh.frequency_Hz[i]);
        }
    } else if (slosh.has_surface && is_lying(part)) {
        slosh_lying(part, working, &slosh);
    } else if (slosh.has_surface) {
        for (int i = 0; i < 2; i++) {
            slosh.length_m[i] = 2.0 * r;
            slosh.frequency_Hz[i] = hs_liquid_upright_Hz(r, h);
            slosh.moving_share[i] = upright_part(r, h);
        }
        HS_WORK(working, slosh_tanh, tanh(XI / r * h), "", {"k", XI / r, ""}, {"h", h, "m"});
        HS_WORK(working, slosh_upright, slosh.frequency_Hz[0], "Hz", {"xi", XI, ""},
                {"R", r, "m"}, {"T", tanh(XI / r * h), ""});
    }
    *ret_slosh = slosh;
    return HS_OK;
}

/* Second moment of the surface about its middle axis, over the volume: the shift for tan t = 1. */
static double
surface_over_volume_m(const hs_part *part, hs_axis axis, double volume_m3)
{
    double width_m, mean_m, r = part->radius_m, length_m, across_m;

    if (part->shape == HS_SHAPE_BOX) {
        length_m = axis == HS_AXIS_X ? part->size_m.x : part->size_m.y;
        across_m = axis == HS_AXIS_X ? part->size_m.y : part->size_m.x;
    } else if (is_lying(part)) {
        lying_surface(part, &width_m, &mean_m);
        length_m = part->length_m;
        across_m = width_m;
    } else {
        return HS_PI * pow(r, 4.0) / 4.0 / volume_m3;
    }
    return across_m * pow(length_m, 3.0) / 12.0 / volume_m3;
}

hs_status
hs_liquid_wander(
    const hs_part *part, hs_axis axis, double tilt_rad, hs_wander *ret_wander, hs_error *error)
{
    hs_wander wander = {.dry_tilt_rad = HS_ABSENT, .spill_tilt_rad = HS_ABSENT};
    hs_liquid_body body;
    double h = part->liquid_depth_m, length_m, height_m;

    HS_TRY(hs_liquid_body_of(part, &body, error));
    if (!(fabs(tilt_rad) < HS_PI / 2.0))
        return hs_refuse(error, "tilt_rad", tilt_rad, -HS_PI / 2.0, HS_PI / 2.0);
    if (!(body.volume_m3 > 0.0)) {
        *ret_wander = wander;
        return HS_OK;
    }
    if (is_lying(part) &&
        axis != part->axis) { /* rolled about its own axis: the liquid stays under the middle */
        double down_m = -body.from_centre_m.z;

        wander.shift_m = down_m * sin(tilt_rad);
        wander.rise_m = down_m * (1.0 - cos(tilt_rad));
    } else {
        wander.shift_m = surface_over_volume_m(part, axis, body.volume_m3) * tan(tilt_rad);
        wander.rise_m = wander.shift_m * tan(tilt_rad) / 2.0;
        length_m = part->shape == HS_SHAPE_BOX
                       ? (axis == HS_AXIS_X ? part->size_m.x : part->size_m.y)
                   : is_lying(part) ? part->length_m
                                    : 2.0 * part->radius_m;
        height_m = part->shape == HS_SHAPE_BOX ? part->size_m.z
                   : is_lying(part)            ? 2.0 * part->radius_m
                                               : part->length_m;
        wander.dry_tilt_rad = atan(2.0 * h / length_m);
        wander.spill_tilt_rad = atan(2.0 * (height_m - h) / length_m);
    }
    *ret_wander = wander;
    return HS_OK;
}

double
hs_liquid_depth_for_m(const hs_part *part, int direction, double frequency_Hz)
{
    double w = 2.0 * HS_PI * frequency_Hz, k, ratio;

    if (is_lying(part))
        return HS_ABSENT;
    if (part->shape == HS_SHAPE_BOX)
        k = HS_PI / (direction == 0 ? part->size_m.x : part->size_m.y);
    else
        k = XI / part->radius_m;
    ratio = w * w / (HS_GRAVITY_m_s2 * k);
    return ratio < 1.0 ? atanh(ratio) / k : HS_ABSENT;
}

double
hs_liquid_resonance_N(double mass_kg,
                      double moving_share,
                      double sway_m_s2,
                      double damping_ratio)
{
    return mass_kg * moving_share * sway_m_s2 / (2.0 * damping_ratio);
}

double
hs_liquid_build_up_count(double damping_ratio, double drive_ratio)
{
    return 1.0 / (2.0 * HS_PI * damping_ratio * drive_ratio);
}
