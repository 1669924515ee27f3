/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would the other published equations say of the carrying?
 * Answer:    watts while the load is carried, by Garg, Pandolf, Givoni and the walking equation of ACSM. They disagree by up to
 *            two to one (docs/limits/energy.md), so that all of them are shown and none is averaged.
 * Not here:  the equations (body/metabolic.c). */
#include "energy_beside.h"

#include "legs.h"
#include "metabolic.h"

/* The equation of loads in the hands holds from this speed: HS_SRC_givoni_1971. */
#define GIVONI_SLOWEST_m_s 0.7

static const hs_limit_leg *
longest_carry(const hs_asking *asking, int bearer)
{
    const hs_limit_leg *legs, *longest = NULL;
    int n = hs_limit_legs(asking, bearer, &legs);

    for (int i = 0; i < n; i++)
        if (legs[i].move == HS_MOVE_CARRY && legs[i].way_m > 0.0 &&
            (longest == NULL || legs[i].way_m > longest->way_m))
            longest = &legs[i];
    return longest;
}

static double
grade_of(const hs_asking *asking, const hs_limit_leg *leg)
{
    const hs_station *stations = asking->run->stations;
    double rise_m = stations[leg->to].place.bearers[leg->bearer].floor_z_m -
                    stations[leg->from].place.bearers[leg->bearer].floor_z_m;

    return fmax(0.0, rise_m / leg->way_m);
}

void
hs_energy_beside(const hs_asking *asking, int bearer, double worn_kg, hs_working *working)
{
    const hs_limit_leg *leg = longest_carry(asking, bearer);
    hs_metabolic_input in;
    double garg_W, grade_pct, givoni_m_s;

    if (leg == NULL || !hs_has(leg->held_kg) || !hs_has(worn_kg))
        return;
    in = (hs_metabolic_input){.body_kg = asking->run->persons[bearer].mass_kg + worn_kg,
                              .load_kg = leg->held_kg,
                              .speed_m_s = leg->speed_m_s,
                              .grade = grade_of(asking, leg),
                              .time_s = 1.0,
                              .terrain = 1.0};
    grade_pct = 100.0 * in.grade;
    givoni_m_s = fmax(in.speed_m_s, GIVONI_SLOWEST_m_s);
    garg_W = hs_metabolic_J(HS_METABOLIC_ROW_garg_stand, &in) +
             hs_metabolic_J(HS_METABOLIC_ROW_garg_carry_sides, &in);
    HS_WORK(working, energy_garg, garg_W, "W", {"B", in.body_kg, "kg"}, {"L", in.load_kg, "kg"},
            {"V", in.speed_m_s, "m/s"}, {"G", grade_pct, "%"});
    HS_WORK(working, energy_pandolf, hs_metabolic_J(HS_METABOLIC_ROW_pandolf, &in), "W",
            {"B", in.body_kg, "kg"}, {"L", in.load_kg, "kg"}, {"V", in.speed_m_s, "m/s"},
            {"G", grade_pct, "%"});
    HS_WORK(working, energy_givoni, hs_metabolic_J(HS_METABOLIC_ROW_givoni_hands, &in), "W",
            {"B", in.body_kg, "kg"}, {"L", in.load_kg, "kg"}, {"V", givoni_m_s, "m/s"},
            {"G", grade_pct, "%"});
    HS_WORK(working, energy_acsm, hs_metabolic_J(HS_METABOLIC_ROW_acsm_walk, &in), "W",
            {"B", in.body_kg, "kg"}, {"L", in.load_kg, "kg"}, {"V", in.speed_m_s, "m/s"},
            {"G", grade_pct, "%"});
}
