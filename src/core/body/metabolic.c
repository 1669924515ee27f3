/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much energy does the body spend on a piece of work?
 * Answer:    hs_metabolic_J(), one published equation for each row of lists/metabolic.def.
 * Not here:  limits for a day (checks). */
#include "metabolic.h"

#include "units.h"

#include <math.h>

/* The equations disagree by up to two to one for a load in the hands (docs/body.md), so a row is always named. */
static const hs_metabolic_about table[HS_N_METABOLIC_ROWS] = {
#define METABOLIC(id, kind, source, confidence)                                                \
    {#id, HS_METABOLIC_##kind, HS_SRC_##source, confidence},
#include "lists/metabolic.def"
#undef METABOLIC
};

const hs_metabolic_about *
hs_metabolic_get(hs_metabolic_row row)
{
    return &table[row];
}

/* Garg, Chaffin & Herrin 1978: kcal a minute, times time. BW, L in kg, V in m/s, G in per cent. */
static double
garg_rate_kcal_min(hs_metabolic_row row, const hs_metabolic_input *in)
{
    double body = in->body_kg, load = in->load_kg;
    double v2 = in->speed_m_s * in->speed_m_s;
    double climb = 0.379 * fmax(in->grade, 0.0) * 100.0 * in->speed_m_s;

    switch (row) {
    case HS_METABOLIC_ROW_garg_sit:
        return 0.01 * 2.3 * body;
    case HS_METABOLIC_ROW_garg_stand:
        return 0.01 * 2.4 * body;
    case HS_METABOLIC_ROW_garg_stand_bent:
        return 0.01 * 2.8 * body;
    case HS_METABOLIC_ROW_garg_walk:
        return 0.01 * (51.0 + 2.54 * body * v2 + climb * body);
    case HS_METABOLIC_ROW_garg_carry_sides:
        return 0.01 * (80.0 + 2.43 * body * v2 + 4.63 * load * v2 + 4.62 * load +
                       climb * (load + body));
    case HS_METABOLIC_ROW_garg_carry_waist:
        return 0.01 * (68.0 + 2.54 * body * v2 + 4.08 * load * v2 + 11.4 * load +
                       climb * (load + body));
    case HS_METABOLIC_ROW_garg_hold_sides:
        return 0.01 * 3.7 * load;
    case HS_METABOLIC_ROW_garg_hold_waist:
        return 0.01 * 6.2 * load;
    default:
        return HS_ABSENT;
    }
}

/* Garg, Chaffin & Herrin 1978: kcal for one lift or lower between heights low <= high; S = 1 for a man. */
static double
garg_lift_kcal(hs_metabolic_row row, const hs_metabolic_input *in)
{
    double s = in->is_male ? 1.0 : 0.0, body = in->body_kg, load = in->load_kg;
    double low = fmin(in->from_m, in->to_m), high = fmax(in->from_m, in->to_m);
    double below = fmax(HS_METABOLIC_ARMS_m - low, 0.0);
    double above = fmax(high - HS_METABOLIC_ARMS_m, 0.0);
    double legs = fmax(fmin(high, HS_METABOLIC_ARMS_m) - low, 0.0);
    double arms = fmax(high - fmax(low, HS_METABOLIC_ARMS_m), 0.0);

    switch (row) {
    case HS_METABOLIC_ROW_garg_stoop_lift:
        return 0.01 * (0.325 * body * below + (1.41 * load + 0.76 * s * load) * legs);
    case HS_METABOLIC_ROW_garg_squat_lift:
        return 0.01 * (0.514 * body * below + (2.19 * load + 0.62 * s * load) * legs);
    case HS_METABOLIC_ROW_garg_one_hand_lift:
        return 0.01 * (0.352 * body * below + 3.03 * load * (high - low));
    case HS_METABOLIC_ROW_garg_arm_lift:
        return 0.01 * (0.062 * body * above + (3.19 * load - 0.52 * s * load) * arms);
    case HS_METABOLIC_ROW_garg_stoop_lower:
        return 0.01 * (0.268 * body * below + 0.675 * load * legs + 5.22 * s * below);
    case HS_METABOLIC_ROW_garg_squat_lower:
        return 0.01 * (0.511 * body * below + 0.701 * load * legs);
    case HS_METABOLIC_ROW_garg_arm_lower:
        return 0.01 * (0.093 * body * above + (1.02 * load + 0.37 * s * load) * arms);
    default:
        return HS_ABSENT;
    }
}

/* Pandolf, Givoni & Goldman 1977: W body, L load in kg, V m/s, G per cent, load on the back. */
static double
pandolf_W(const hs_metabolic_input *in)
{
    double body = in->body_kg, load = in->load_kg, v = in->speed_m_s;
    double grade_pct = 100.0 * fmax(in->grade, 0.0);

    return 1.5 * body + 2.0 * (body + load) * (load / body) * (load / body) +
           in->terrain * (body + load) * (1.5 * v * v + 0.35 * v * grade_pct);
}

/* Givoni & Goldman 1971 as in Johnson, Biomechanics and Exercise Physiology, section 5.5.1: weights in N; V at least 0.7 m/s.
 * The term of loads in the hands, 0.015 L^2 V^2 with L in kg and V in km/h, is in kcal/h: the SI constant printed in the book
 * takes it for kgf km/h and comes out 2.35 times too large. */
static double
givoni_W(const hs_metabolic_input *in, bool in_hands)
{
    double v = fmax(in->speed_m_s, 0.7), g = fmax(in->grade, 0.0);
    double weight_N = (in->body_kg + in->load_kg) * HS_GRAVITY_m_s2;
    double v_km_h = 3.6 * v;
    double ret = 0.10 * in->terrain * weight_N *
                 (2.7 + 3.2 * pow(v - 0.7, 1.65) + 100.0 * g * (0.23 + 0.29 * (v - 0.7)));

    if (in_hands)
        ret +=
            0.015 * in->load_kg * in->load_kg * v_km_h * v_km_h * HS_J_PER_KCAL / HS_J_PER_Wh;
    return ret;
}

/* ACSM's Health & Fitness J. 2020: mL of oxygen per kg and minute; what is carried counts as body mass. */
static double
acsm_W(hs_metabolic_row row, const hs_metabolic_input *in)
{
    double speed_m_min = 60.0 * in->speed_m_s, mass_kg = in->body_kg + in->load_kg;
    double rate =
        row == HS_METABOLIC_ROW_acsm_walk
            ? 3.5 + 0.1 * speed_m_min + 1.8 * speed_m_min * fmax(in->grade, 0.0)
            : 3.5 + 0.2 * in->steps_per_min + 1.33 * 1.8 * in->steps_per_min * in->step_m;

    return rate * mass_kg * HS_J_PER_ML_OXYGEN / 60.0;
}

double
hs_metabolic_J(hs_metabolic_row row, const hs_metabolic_input *input)
{
    double ret;

    switch (row) {
    case HS_METABOLIC_ROW_pandolf:
        ret = pandolf_W(input) * input->time_s;
        break;
    case HS_METABOLIC_ROW_givoni_trunk:
    case HS_METABOLIC_ROW_givoni_hands:
        ret = givoni_W(input, row == HS_METABOLIC_ROW_givoni_hands) * input->time_s;
        break;
    case HS_METABOLIC_ROW_acsm_walk:
    case HS_METABOLIC_ROW_acsm_step:
        ret = acsm_W(row, input) * input->time_s;
        break;
    default:
        ret = garg_rate_kcal_min(row, input) * HS_J_PER_KCAL * input->time_s / 60.0;
        if (!hs_has(ret))
            ret = garg_lift_kcal(row, input) * HS_J_PER_KCAL;
        break;
    }
    return hs_has(ret) ? fmax(ret, 0.0) : HS_ABSENT;
}

double
hs_metabolic_rest_share(double work_W, double rest_W, double limit_W)
{
    if (!(rest_W < limit_W))
        return work_W <= limit_W ? 0.0 : HS_ABSENT;
    return work_W <= limit_W ? 0.0 : (work_W - limit_W) / (work_W - rest_W);
}
