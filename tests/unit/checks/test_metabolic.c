/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does what an option costs in watts follow from the published equations?
 * Answer:    standing, walking back empty, lifting, carrying and lowering of one bearer, each written out here by hand and summed over an hour.
 * Not here:  the equations' own figures, with their sources (tests/cases/limits.json), the limits for a day (test_limit_checks.c). */
#include "one_bearer.h"
#include "totals.h"

#define BODY_kg 79.0
#define J_PER_KCAL                                                                             \
    4184.0 /* thermochemical kilocalorie, SI Brochure 8th ed. (2006), table 8 note */
#define EMPTY_m_s                                                                              \
    1.2 /* pace of the way back: docs/limits/energy.md, common practice, no source */
#define GIVONI_m_s 0.7  /* Givoni & Goldman 1971: from this speed */
#define J_PER_ML   20.1 /* ACSM's Health & Fitness J. 2020 */
#define ARMS_m     0.81 /* Garg, Chaffin & Herrin 1978: the arms take over */
#define HOUR_s     3600.0

/* Pandolf, Givoni & Goldman 1977, level, paved: W body, L load on it. */
static double
pandolf_W(double body_kg, double load_kg, double v_m_s)
{
    return 1.5 * body_kg + 2.0 * (body_kg + load_kg) * pow(load_kg / body_kg, 2.0) +
           1.5 * (body_kg + load_kg) * v_m_s * v_m_s;
}

static double
total_W(one *o)
{
    one_run(o);
    hs_asking asking = {.task = &o->task,
                        .load = &o->load,
                        .run = &o->run,
                        .baseline = &o->run,
                        .arena = o->arena,
                        .near_ratio = o->task.policy.near_ratio};

    return hs_day_metabolic_W(&asking);
}

/* A bare man of 79 kg, 12 kg, hands from 0.3 to 0.6 m up, 4 m in 6 s, down again: all below the arms' height. */
static void
make(one *o, double per_h)
{
    one_make(o, 12);
    o->bearer.suit = -1;
    o->points[0].z_m = o->points[3].z_m = 0.1;
    o->points[1].z_m = o->points[2].z_m = 0.4;
    o->task.work = (hs_work){per_h, 8, NONE, NONE};
}

static void
standing_is_pandolfs_first_term(void)
{
    one o;

    make(&o, 1e-9);
    hs_near("bare", total_W(&o), pandolf_W(BODY_kg, 0.0, 0.0), 1e-6);
    hs_near("the same", pandolf_W(BODY_kg, 0.0, 0.0), 118.5, 1e-12);
    o.bearer.suit = 0;
    /* Of 38 kg the suit carries 0.9 itself: 3.8 kg are worn. */
    hs_near("in the suit", total_W(&o), pandolf_W(BODY_kg, 3.8, 0.0), 1e-6);
    one_free(&o);
}

/* 24 m back in 20 s, 30 times an hour: walking by Pandolf in place of standing. */
static void
the_way_back_is_walked_by_pandolf(void)
{
    double still_W = pandolf_W(BODY_kg, 0.0, 0.0), walk_W = pandolf_W(BODY_kg, 0.0, EMPTY_m_s);
    double before_W;
    one o;

    make(&o, 30);
    before_W = total_W(&o);
    o.task.work.one_way_empty_walk_m = 24;
    hs_near("walking", total_W(&o) - before_W, 30 * 20 / HOUR_s * (walk_W - still_W), 1e-6);
    one_free(&o);
}

/* Garg, Chaffin & Herrin 1978, kcal x 100: the sum and the choice of rows are held here, the coefficients are remembered. */
static double
cycle_kcal100(bool with_legs)
{
    double stand = 2.4 * BODY_kg, v2 = pow(4.0 / 6.0, 2.0), below_m = ARMS_m - 0.3;
    double carry = 80.0 + 2.43 * BODY_kg * v2 + 4.63 * 12 * v2 + 4.62 * 12;
    double stoop = 0.325 * BODY_kg * below_m + (1.41 + 0.76) * 12 * 0.3;
    double stoop_down = 0.268 * BODY_kg * below_m + 0.675 * 12 * 0.3 + 5.22 * below_m;
    double squat = 0.514 * BODY_kg * below_m + (2.19 + 0.62) * 12 * 0.3;
    double squat_down = 0.511 * BODY_kg * below_m + 0.701 * 12 * 0.3;

    return stand * 10 / 60.0 + carry * 6 / 60.0 +
           (with_legs ? squat + squat_down : stoop + stoop_down);
}

static void
lifting_and_carrying_add_up_by_garg(void)
{
    double per_h = 60, still_W = pandolf_W(BODY_kg, 0.0, 0.0);
    one o;

    make(&o, per_h);
    for (int legs = 0; legs < 2; legs++) {
        double cycle_J = cycle_kcal100(legs == 1) / 100.0 * J_PER_KCAL;

        o.bearer.style = legs == 1 ? HS_STYLE_LEGS : HS_STYLE_BACK;
        hs_near(legs == 1 ? "with the legs" : "with the back", total_W(&o),
                per_h * cycle_J / HOUR_s + still_W * (1.0 - per_h * 10 / HOUR_s), 1e-6);
    }
    one_free(&o);
}

/* More cycles than an hour has room for cannot be worked. */
static void
no_more_than_fits_into_the_hour(void)
{
    double full_W;
    one o;

    make(&o, 360);
    full_W = total_W(&o);
    hs_near("cycle after cycle", full_W, cycle_kcal100(false) / 100.0 * J_PER_KCAL / 10.0,
            1e-6);
    o.task.work.cycles_per_hour = 500;
    hs_near("no more fits", total_W(&o), full_W, 1e-9);
    one_free(&o);
}

static double
line_of(const hs_finding *finding, hs_equation_id equation)
{
    for (const hs_working_line *line = finding->working.first; line != NULL; line = line->next)
        if (line->equation == equation)
            return line->result;
    return NONE;
}

/* Beside the sum stand the equations that were read, for the carry: 12 kg at 4 / 6 m/s. */
static void
the_other_equations_stand_beside(void)
{
    double v = 4.0 / 6.0, both_kg = BODY_kg + 12, km_h = 3.6 * GIVONI_m_s;
    one o;
    hs_finding finding;

    make(&o, 60);
    finding = one_ask(&o, HS_CHECK_day_energy);
    hs_near("Pandolf", line_of(&finding, HS_EQ_energy_pandolf), pandolf_W(BODY_kg, 12, v),
            1e-6);
    hs_near("ACSM", line_of(&finding, HS_EQ_energy_acsm),
            (3.5 + 0.1 * 60 * v) * both_kg * J_PER_ML / 60, 1e-6);
    hs_near("Givoni", line_of(&finding, HS_EQ_energy_givoni),
            0.10 * both_kg * HS_GRAVITY_m_s2 * 2.7 +
                0.015 * 12 * 12 * km_h * km_h * J_PER_KCAL / HOUR_s,
            1e-6);
    one_free(&o);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/metabolic/standing", standing_is_pandolfs_first_term);
    g_test_add_func("/metabolic/way_back", the_way_back_is_walked_by_pandolf);
    g_test_add_func("/metabolic/lifting_and_carrying", lifting_and_carrying_add_up_by_garg);
    g_test_add_func("/metabolic/no_more_than_fits", no_more_than_fits_into_the_hour);
    g_test_add_func("/metabolic/beside", the_other_equations_stand_beside);
    return g_test_run();
}
