/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the workings of team rules, low back, day and rest say what was published, computed apart from the program?
 * Answer:    an invented crew and box; the lines of working against the same arithmetic written here.
 * Not here:  the figures (test_limits.c), printing (tests/unit/model). */
#include "one_bearer.h"

#include "dose.h"
#include "gb.h"
#include "mil1472.h"
#include "rest.h"
#include "spine_sets.h"
#include "team.h"

static const int left_grip[] = {0}, right_grip[] = {1};

typedef struct {
    one o;
    hs_bearer crew[2];
    hs_worker workers[2];
} pair;

/* A man and a woman at one box, hands from 0.70 to 0.90 m, then 4 m on and down. */
static void
pair_make(pair *p, double mass_kg)
{
    one_make(&p->o, mass_kg);
    p->o.task.work = (hs_work){20, 8, NONE, NONE};
    for (int b = 0; b < 2; b++) {
        p->workers[b] = p->o.worker;
        p->crew[b] = p->o.bearer;
        p->crew[b].suit = -1;
        p->crew[b].worker = b;
        p->crew[b].n_grips = 1;
        p->crew[b].grips = b == 0 ? left_grip : right_grip;
        p->o.grips[b].hands = 2;
    }
    p->workers[1].sex = HS_SEX_FEMALE;
    p->o.task.n_workers = 2;
    p->o.task.workers = p->workers;
    p->o.option.n_bearers = 2;
    p->o.option.bearers = p->crew;
}

static const hs_working_line *
line_of(const hs_finding *f, hs_equation_id equation)
{
    for (const hs_working_line *line = f->working.first; line != NULL; line = line->next)
        if (line->equation == equation)
            return line;
    return NULL;
}

static double
term_of(const hs_working_line *line, const char *symbol)
{
    for (int i = 0; i < line->n_terms; i++)
        if (strcmp(line->terms[i].symbol, symbol) == 0)
            return line->terms[i].value;
    g_assert_not_reached();
}

/* Both forms beside the share: two thirds of one's own figure, and two thirds of the sum. */
static void
a_team_rule_is_given_for_each_and_for_the_sum(void)
{
    pair p;
    hs_finding f;
    double rate = hs_gb_rate_factor(20 / 60.0), man_kg, woman_kg, total_N;

    pair_make(&p, 40);
    p.o.task.policy.team_rule = HS_TEAM_GB;
    f = one_ask(&p.o, HS_CHECK_share);
    EXPECT(f, BEYOND, share_judged);
    g_assert_cmpstr(f.text.name[1], ==, "gb");
    /* hands at 0.70 m, below the knuckles; reach 0.40 m, more than half an arm's length and less than a whole one */
    man_kg = 10 * rate;
    woman_kg = 7 * rate;
    hs_near("the woman's own", term_of(line_of(&f, HS_EQ_share_limit), "L1"),
            woman_kg * HS_GRAVITY_m_s2, 1e-9);
    hs_near("hers at most", f.limit, 2 / 3.0 * woman_kg * HS_GRAVITY_m_s2, 1e-9);
    hs_near("the sum at most", line_of(&f, HS_EQ_share_sum)->result,
            2 / 3.0 * (man_kg + woman_kg) * HS_GRAVITY_m_s2, 1e-9);
    /* the form on each is the stricter one for an even split among unequal members */
    total_N = line_of(&f, HS_EQ_shares_total)->result;
    g_assert_cmpfloat(f.ratio, >, total_N / line_of(&f, HS_EQ_share_sum)->result);
    one_free(&p.o);
}

static void
the_spread_between_the_rules_is_that_of_this_crew(void)
{
    pair p;
    hs_finding f;
    hs_team_spread spread;
    double gb_N, mil_N, en_N;

    pair_make(&p, 24);
    f = one_ask(&p.o, HS_CHECK_share);
    EXPECT(f, NOT_JUDGED, share_no_rule);
    g_assert_null(line_of(&f, HS_EQ_share_sum));
    g_assert_nonnull(line_of(&f, HS_EQ_team_gb));
    g_assert_null(line_of(&f, HS_EQ_team_own)); /* no factor is given */
    hs_near("spread", line_of(&f, HS_EQ_team_spread)->result,
            term_of(line_of(&f, HS_EQ_team_spread), "most") /
                term_of(line_of(&f, HS_EQ_team_spread), "least"),
            1e-12);
    /* on the lift: the mixed crew's row of 20 kg, twice for two, at its rate */
    hs_asking asking = {.task = &p.o.task,
                        .load = &p.o.load,
                        .run = &p.o.run,
                        .baseline = &p.o.run,
                        .arena = p.o.arena,
                        .near_ratio = 0.9};

    hs_team_spread_of(&asking, 0, 0, &spread);
    mil_N = 20 * hs_mil1472_lift_rate_factor(20 / 60.0, 8) * HS_GRAVITY_m_s2;
    g_assert_cmpint(spread.n, ==, 3);
    hs_near("mil-std-1472", spread.most_N, mil_N, 1e-9);
    gb_N = 2 / 3.0 * 10 * HS_GRAVITY_m_s2; /* below the knuckles, extended */
    en_N = 0.85 * spread.by_rule[HS_TEAM_EN_1005_2].one_person_N;
    hs_near("least", spread.least_N, fmin(gb_N, en_N), 1e-9);
    g_assert_cmpint(spread.by_rule[HS_TEAM_MEASURED].silent, ==, HS_REASON_team_no_factor);
    /* the rule that is chosen changes nothing of what the others say */
    p.o.task.policy.team_rule = HS_TEAM_EN_1005_2;
    f = one_ask(&p.o, HS_CHECK_share);
    g_assert_nonnull(line_of(&f, HS_EQ_team_gb));
    g_assert_cmpstr(f.text.name[1], ==, "en-1005-2");
    one_free(&p.o);
}

static void
no_spread_where_no_rule_speaks(void)
{
    pair p;
    hs_finding f;

    pair_make(&p, 24);
    p.o.option.n_bearers = 1;
    p.crew[0].n_grips = 2;
    p.crew[0].grips = one_grips;
    for (int g = 0; g < 2; g++)
        p.o.grips[g].hands = 1;
    f = one_ask(&p.o, HS_CHECK_share);
    EXPECT(f, NOT_JUDGED, share_single);
    g_assert_null(line_of(&f, HS_EQ_team_spread));
    one_free(&p.o);
}

/* Remembered: shown, and whatever it says the status stays that of the one figure. */
static void
the_set_by_age_and_sex_stands_beside(void)
{
    one o;
    hs_finding f, old;

    one_make(&o, 14);
    o.bearer.suit = -1;
    o.worker.age_years = 25;
    f = one_ask(&o, HS_CHECK_spine_compression);
    hs_near("the row of 30 years", term_of(line_of(&f, HS_EQ_spine_by_age), "limit"), 5000, 0);
    hs_near("ratio", line_of(&f, HS_EQ_spine_by_age)->result, f.value / 5000, 1e-12);
    g_assert_cmpint(hs_equation_get(HS_EQ_spine_by_age)->source, ==, HS_SRC_spine_dortmund);
    g_assert_cmpint(hs_source_get(HS_SRC_spine_dortmund)->confidence, ==, HS_CONF_MEMORY);
    o.worker.age_years = 70;
    old = one_ask(&o, HS_CHECK_spine_compression);
    hs_near("the last row", term_of(line_of(&old, HS_EQ_spine_by_age), "limit"), 2300, 0);
    g_assert_cmpint(old.status, ==, f.status);
    g_assert_cmpfloat(old.limit, ==, HS_SPINE_COMPRESSION_N);
    o.worker.age_years = NONE;
    f = one_ask(&o, HS_CHECK_spine_compression);
    g_assert_null(line_of(&f, HS_EQ_spine_by_age));
    g_assert_false(hs_has(hs_spine_by_age_N(HS_SEX_MALE, NONE)));
    one_free(&o);
}

/* 20 kg: lift and lower 3300 N for 2.5 s each, 4 m of carrying 2700 N, which does not reach the men's 3200 N. */
static void
the_dose_counts_what_is_above_the_threshold(void)
{
    one o;
    hs_finding f;
    double n = 6 * 8, sum_N2h = n * 2 * 3300.0 * 3300.0 * 2.5 / 3600;

    one_make(&o, 20);
    o.bearer.suit = -1;
    f = one_ask(&o, HS_CHECK_day_spine);
    g_assert_cmpint(f.status, ==, HS_STATUS_NOT_JUDGED);
    hs_near_rel("sum", term_of(line_of(&f, HS_EQ_dose_root), "S"), sum_N2h, 1e-12);
    hs_near_rel("dose", line_of(&f, HS_EQ_dose_root)->result, 8 * sqrt(sum_N2h / 8), 1e-12);
    hs_near("guide", term_of(line_of(&f, HS_EQ_dose_guide), "D_shift"), 5500, 0);
    /* a woman's threshold is lower: the carry counts a second a metre, and lifts placed with care longer */
    o.worker.sex = HS_SEX_FEMALE;
    o.points[3].precise = HS_YES;
    sum_N2h = n * (3300.0 * 3300.0 * (2.5 + 7.5) + 2700.0 * 2700.0 * 4) / 3600;
    f = one_ask(&o, HS_CHECK_day_spine);
    hs_near_rel("with the carry", term_of(line_of(&f, HS_EQ_dose_root), "S"), sum_N2h, 1e-9);
    hs_near("guide", term_of(line_of(&f, HS_EQ_dose_guide), "D_shift"), 3500, 0);
    g_assert_null(line_of(&f, HS_EQ_dose_beside)); /* it is today's way itself */
    /* a light box counts for nothing */
    o.part.mass_kg = 5;
    f = one_ask(&o, HS_CHECK_day_spine);
    hs_near("nothing", line_of(&f, HS_EQ_dose_root)->result, 0, 0);
    one_free(&o);
}

/* The mean of an hour with that rest in it is within; a minute less and it is not. */
static void
rest_brings_the_hour_within(void)
{
    one o;
    hs_finding f;
    double rest_min, hour_W;

    one_make(&o, 30);
    o.bearer.suit = -1;
    o.task.work = (hs_work){200, 8, NONE, 20};
    f = one_ask(&o, HS_CHECK_day_energy);
    g_assert_cmpint(f.remedy.reason, ==, HS_REASON_day_energy_remedy_rest);
    rest_min = f.remedy.number[2] / 60;
    g_assert_cmpfloat(rest_min, ==, floor(rest_min));
    hour_W = (f.value * (60 - rest_min) + HS_REST_MURRELL_W * rest_min) / 60;
    g_assert_cmpfloat(hour_W, <, 0.9 * f.limit);
    hour_W = (f.value * (61 - rest_min) + HS_REST_MURRELL_W * (rest_min - 1)) / 60;
    g_assert_cmpfloat(hour_W, >=, 0.9 * f.limit);
    hs_near("as worked", line_of(&f, HS_EQ_rest_murrell)->result,
            60 * (f.value - 0.9 * f.limit) / (f.value - HS_REST_MURRELL_W), 1e-9);
    one_free(&o);
}

/* What must hold of the formulas without a source. */
static void
rest_and_endurance_keep_their_shape(void)
{
    double last = INFINITY;

    for (double f = 0.2; f <= 1.0; f += 0.05) {
        double t_s = hs_rest_kamon_endurance_s(f);

        g_assert_cmpfloat(t_s, <, last);
        last = t_s;
        g_assert_cmpfloat(hs_rest_kamon_s(f, t_s / 2), <, hs_rest_kamon_s(f, t_s));
    }
    hs_near("no rest for a light hold", hs_rest_kamon_s(0.15, 600), 0, 0);
    g_assert_false(hs_has(hs_rest_kamon_endurance_s(0)));
    g_assert_false(hs_has(hs_rest_rohmert_endurance_s(-1)));
    hs_near("below the standard", hs_rest_murrell_min(300, 350, 105, 60), 0, 0);
    g_assert_false(hs_has(hs_rest_murrell_min(500, 100, 105, 60)));
    /* the two forms of rest differ only by 18 minutes against 18 holds, so that they meet at a hold of a minute */
    hs_near("one minute", hs_rest_kamon_s(0.4, 60) * pow(hs_rest_kamon_endurance_s(0.4), 1.4),
            hs_rest_remembered_s(0.4, 60) * pow(hs_rest_rohmert_endurance_s(0.4), 1.4), 1e-6);
    g_assert_false(hs_has(hs_dose_shift_Nh(HS_SEX_MALE, HS_DOSE_COURT_2007)));
    hs_near("court's threshold", hs_dose_threshold_N(HS_SEX_MALE, HS_DOSE_COURT_2007), 2700, 0);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/limit_working/" #name, name)
    TEST(a_team_rule_is_given_for_each_and_for_the_sum);
    TEST(the_spread_between_the_rules_is_that_of_this_crew);
    TEST(no_spread_where_no_rule_speaks);
    TEST(the_set_by_age_and_sex_stands_beside);
    TEST(the_dose_counts_what_is_above_the_threshold);
    TEST(rest_brings_the_hour_within);
    TEST(rest_and_endurance_keep_their_shape);
#undef TEST
    return g_test_run();
}
