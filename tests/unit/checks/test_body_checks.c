/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  do the checks of low back, strength, balance, holding and floor say what the file format asks?
 * Answer:    one invented lift and carry, changed in one figure at a time; each remedy is applied and must end within.
 * Not here:  the body's own figures (tests/unit/body). */
#include "one_bearer.h"

static void
bare(one *o, double mass_kg, double reach_m)
{
    one_make(o, mass_kg);
    o->bearer.suit = -1;
    for (int i = 0; i < 4; i++)
        o->points[i].reach_m = reach_m;
}

/* Applies what the remedy of a finding says; false: it names nothing that can be set. */
static gboolean
apply(one *o, const hs_finding *finding)
{
    const hs_message *remedy = &finding->remedy;

    for (int i = 0; i < 4 && remedy->reason == HS_REASON_body_remedy_reach; i++)
        o->points[i].reach_m = fmin(o->points[i].reach_m, remedy->number[0]);
    /* The grips lie 0.2 m above the load's base. */
    for (int i = 0; i < 4 && remedy->reason == HS_REASON_body_remedy_height; i++)
        o->points[i].z_m = fmax(o->points[i].z_m, remedy->number[0] - 0.2);
    if (remedy->reason == HS_REASON_body_remedy_mass)
        o->part.mass_kg = remedy->number[0];
    return remedy->reason == HS_REASON_body_remedy_reach ||
           remedy->reason == HS_REASON_body_remedy_height ||
           remedy->reason == HS_REASON_body_remedy_mass;
}

static void
a_remedy_ends_within(hs_check_id check, double mass_kg, double reach_m)
{
    one o;
    hs_finding before, after;

    bare(&o, mass_kg, reach_m);
    before = one_ask(&o, check);
    g_assert_cmpint(before.status, ==, HS_STATUS_BEYOND);
    g_test_message("%s: %s %g", hs_check_get(check)->id, hs_reason_name(before.remedy.reason),
                   before.remedy.number[0]);
    g_assert_cmpint(before.remedy.reason, !=, HS_REASON_none);
    if (apply(&o, &before)) {
        after = one_ask(&o, check);
        if (after.status != HS_STATUS_WITHIN)
            g_error("%s after %s %g: ratio %g", hs_check_get(check)->id,
                    hs_reason_name(before.remedy.reason), before.remedy.number[0], after.ratio);
    }
    one_free(&o);
}

static void
remedies_end_within(void)
{
    a_remedy_ends_within(HS_CHECK_spine_compression, 22, 0.50);
    a_remedy_ends_within(HS_CHECK_spine_compression, 38, 0.35);
    a_remedy_ends_within(HS_CHECK_strength, 30, 0.50);
}

static void
compression_is_judged_against_the_published_or_the_sites_limit(void)
{
    static hs_site_limit own[] = {{"spine.compression", 5000.0}};
    one o;
    hs_finding finding;

    bare(&o, 12, 0.40);
    finding = one_ask(&o, HS_CHECK_spine_compression);
    hs_near("NIOSH 1981", finding.limit, 3400.0, 0.0);
    hs_near("ratio", finding.ratio, finding.value / 3400.0, 1e-12);
    g_assert_cmpint(finding.working.n_lines, >=, 3);
    o.task.policy.n_site_limits = 1;
    o.task.policy.site_limits = own;
    finding = one_ask(&o, HS_CHECK_spine_compression);
    hs_near("the site's", finding.limit, 5000.0, 0.0);
    one_free(&o);
}

static void
turned_and_one_handed_work_is_out_of_scope(void)
{
    one o;
    hs_finding finding;

    bare(&o, 12, 0.40);
    for (int i = 0; i < 4; i++)
        o.points[i].turn_deg = 45;
    finding = one_ask(&o, HS_CHECK_spine_compression);
    EXPECT(finding, NOT_JUDGED, spine_turned);
    g_assert_cmpint(finding.why, ==, HS_WHY_SCOPE);
    g_assert_true(hs_has(finding.value));
    for (int i = 0; i < 4; i++)
        o.points[i].turn_deg = 20;
    g_assert_cmpint(one_ask(&o, HS_CHECK_spine_compression).status, !=, HS_STATUS_WITHIN);
    for (int i = 0; i < 4; i++)
        o.points[i].turn_deg = NONE;
    o.bearer.n_grips = 1;
    finding = one_ask(&o, HS_CHECK_spine_compression);
    EXPECT(finding, NOT_JUDGED, spine_one_handed);
    one_free(&o);
}

static void
out_of_reach_is_beyond_without_a_value(void)
{
    one o;
    hs_finding finding;

    bare(&o, 5, 0.40);
    o.points[1].z_m = o.points[2].z_m = 2.3;
    finding = one_ask(&o, HS_CHECK_strength);
    EXPECT(finding, BEYOND, strength_out_of_reach);
    g_assert_false(hs_has(finding.value) || hs_has(finding.ratio));
    g_assert_cmpfloat(finding.text.number[0], >, 0.0);
    one_free(&o);
}

static void
nothing_balances_is_beyond_without_a_value(void)
{
    one o;
    hs_finding finding;

    bare(&o, 60, 0.60);
    finding = one_ask(&o, HS_CHECK_balance);
    EXPECT(finding, BEYOND, balance_none);
    g_assert_false(hs_has(finding.value) || hs_has(finding.ratio));
    one_free(&o);
}

static void
balance_is_near_from_three_quarters(void)
{
    one o;
    hs_finding finding;

    bare(&o, 12, 0.40);
    finding = one_ask(&o, HS_CHECK_balance);
    g_assert_cmpfloat(finding.ratio, <=, 1.0);
    g_assert_cmpint(finding.status, ==,
                    finding.ratio >= 0.75 ? HS_STATUS_NEAR : HS_STATUS_WITHIN);
    g_assert_cmpfloat(finding.value, >=, 0.0);
    one_free(&o);
}

static void
longer_holding_uses_up_more(void)
{
    one o;
    double before;
    hs_finding finding;

    bare(&o, 12, 0.40);
    before = one_ask(&o, HS_CHECK_hold_endurance).ratio;
    o.points[2].time_s = 60;
    finding = one_ask(&o, HS_CHECK_hold_endurance);
    g_assert_cmpfloat(finding.ratio, >, before);
    hs_near("time asked", finding.value, 60.0, 1e-9);
    hs_near("ratio", finding.ratio, finding.value / finding.limit, 1e-9);
    one_free(&o);
}

static void
floor_needs_more_in_a_turn_and_says_what_is_missing(void)
{
    one o;
    hs_finding finding;

    bare(&o, 12, 0.40);
    finding = one_ask(&o, HS_CHECK_floor_friction);
    EXPECT(finding, WITHIN, floor_straight);
    hs_near("straight", finding.value, 0.22, 1e-12);
    o.task.site.corner_in_m = o.task.site.corner_out_m = 1.2;
    finding = one_ask(&o, HS_CHECK_floor_friction);
    EXPECT(finding, WITHIN, floor_turn);
    hs_near("Fino & Lockhart 2014", finding.value, 0.45, 1e-12);
    o.task.site.friction = 0.4;
    finding = one_ask(&o, HS_CHECK_floor_friction);
    EXPECT(finding, BEYOND, floor_turn);
    o.task.site.friction = finding.remedy.number[0];
    finding = one_ask(&o, HS_CHECK_floor_friction);
    EXPECT(finding, WITHIN, floor_turn);
    o.task.site.friction = NONE;
    finding = one_ask(&o, HS_CHECK_floor_friction);
    EXPECT(finding, NOT_JUDGED, floor_missing);
    g_assert_cmpint(finding.why, ==, HS_WHY_MISSING);
    one_free(&o);
}

static void
dose_is_never_judged(void)
{
    one o;
    hs_finding finding;

    bare(&o, 40, 0.40);
    finding = one_ask(&o, HS_CHECK_day_spine);
    g_assert_cmpint(finding.status, ==, HS_STATUS_NOT_JUDGED);
    g_assert_cmpint(finding.why, ==, HS_WHY_SCOPE);
    one_free(&o);
}

static void
a_gap_in_the_suits_figures_is_missing(void)
{
    static const hs_check_id checks[] = {HS_CHECK_spine_compression, HS_CHECK_spine_shear,
                                         HS_CHECK_strength, HS_CHECK_balance};
    one o;

    one_make(&o, 20);
    o.suit.gain_trunk = NONE;
    for (gsize i = 0; i < G_N_ELEMENTS(checks); i++) {
        hs_finding finding = one_ask(&o, checks[i]);

        EXPECT(finding, NOT_JUDGED, body_missing);
        g_assert_cmpint(finding.why, ==, HS_WHY_MISSING);
    }
    one_free(&o);
}

/* On the knees near at best, and the remedy says so; where standing ends it, it is named. */
static void
on_the_knees_it_is_near_at_best(void)
{
    static const hs_check_id checks[] = {HS_CHECK_spine_compression, HS_CHECK_spine_shear,
                                         HS_CHECK_strength};
    one o;

    /* The knees are a shank ahead of the ankles. */
    bare(&o, 3, 0.60);
    for (gsize i = 0; i < G_N_ELEMENTS(checks); i++) {
        hs_finding finding;

        o.option.stance = HS_STANCE_KNEELING;
        finding = one_ask(&o, checks[i]);
        g_test_message("%s: ratio %g", hs_check_get(checks[i])->id, finding.ratio);
        g_assert_cmpint(finding.status, ==, HS_STATUS_NEAR);
        g_assert_cmpfloat(finding.ratio, <, 0.9);
        g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_body_remedy_stand);
        if (checks[i] == HS_CHECK_spine_compression)
            EXPECT(finding, NEAR, spine_compression_kneeling);
        o.option.stance = HS_STANCE_STANDING;
        g_assert_cmpint(one_ask(&o, checks[i]).status, ==, HS_STATUS_WITHIN);
    }
    one_free(&o);
}

/* What is too heavy standing too does not become within by standing up, and no mass or reach is promised. */
static void
heavy_on_the_knees_has_no_promise(void)
{
    one o;
    hs_finding finding;

    bare(&o, 40, 0.40);
    o.option.stance = HS_STANCE_KNEELING;
    finding = one_ask(&o, HS_CHECK_spine_compression);
    g_assert_true(finding.status == HS_STATUS_BEYOND || finding.status == HS_STATUS_NEAR);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_body_remedy_kneeling);
    o.option.stance = HS_STANCE_STANDING;
    g_assert_cmpint(one_ask(&o, HS_CHECK_spine_compression).status, !=, HS_STATUS_WITHIN);
    one_free(&o);
}

static void
turn_all(one *o, double turn_deg)
{
    for (int i = 0; i < 4; i++)
        o->points[i].turn_deg = turn_deg;
}

/* Turned work is near at best: less of a turn where that alone ends it, else with what the load asks for besides. */
static void
a_turn_is_named_alone_or_with_the_rest(void)
{
    one o;
    hs_finding finding;

    bare(&o, 3, 0.30);
    turn_all(&o, -20);
    finding = one_ask(&o, HS_CHECK_spine_compression);
    g_assert_cmpint(finding.status, ==, HS_STATUS_NEAR);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_body_remedy_turn);
    hs_near("at most", finding.remedy.number[0], 10.0, 0.0);
    hs_near("now", finding.remedy.number[1], 20.0, 0.0);
    turn_all(&o, -finding.remedy.number[0]);
    g_assert_cmpint(one_ask(&o, HS_CHECK_spine_compression).status, ==, HS_STATUS_WITHIN);
    one_free(&o);
    bare(&o, 22, 0.50);
    turn_all(&o, 20);
    finding = one_ask(&o, HS_CHECK_spine_compression);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_body_remedy_turn_reach);
    hs_near("at most", finding.remedy.number[2], 10.0, 0.0);
    for (int i = 0; i < 4; i++)
        o.points[i].reach_m = finding.remedy.number[0];
    g_assert_cmpint(one_ask(&o, HS_CHECK_spine_compression).status, ==, HS_STATUS_NEAR);
    turn_all(&o, finding.remedy.number[2]);
    g_assert_cmpint(one_ask(&o, HS_CHECK_spine_compression).status, ==, HS_STATUS_WITHIN);
    one_free(&o);
}

/* Shear by both rules at its worst place, with a limit that nothing reaches. */
static void
ask_both_rules(one *o, hs_site_limit *own, double *ret_rule_N, double *ret_other_N)
{
    hs_finding finding;

    own->figure = 1e6;
    o->task.policy.n_site_limits = 1;
    o->task.policy.site_limits = own;
    finding = one_ask(o, HS_CHECK_spine_shear);
    EXPECT(finding, WITHIN, spine_shear_is);
    *ret_rule_N = finding.text.number[0];
    *ret_other_N = finding.text.number[2];
    g_test_message("shear %g N by the sacrum, %g N square to the trunk", *ret_rule_N,
                   *ret_other_N);
}

/* A limit between the figures of the two rules decides nothing: near; the remedy brings both below near. */
static void
a_limit_between_the_two_slope_rules_is_near(void)
{
    hs_site_limit own = {"spine.shear", NONE, false};
    one o;
    hs_finding finding;
    double rule_N, other_N;

    bare(&o, 12, 0.40);
    ask_both_rules(&o, &own, &rule_N, &other_N);
    g_assert_cmpfloat(rule_N, >, 1.5 * other_N);
    own.figure = 0.98 * rule_N;
    finding = one_ask(&o, HS_CHECK_spine_shear);
    EXPECT(finding, NEAR, spine_shear_straddles);
    g_assert_cmpfloat(finding.ratio, >, 1.0);
    g_assert_true(apply(&o, &finding));
    finding = one_ask(&o, HS_CHECK_spine_shear);
    EXPECT(finding, WITHIN, spine_shear_is);
    g_assert_cmpfloat(fmax(finding.text.number[0], finding.text.number[2]), <,
                      0.9 * own.figure);
    one_free(&o);
}

/* The same where the figure that is judged lies below the limit and the other above: near, not within. */
static void
a_limit_below_the_other_slope_rule_is_near(void)
{
    hs_site_limit own = {"spine.shear", NONE, false};
    one o;
    hs_finding finding;
    double rule_N, other_N;

    bare(&o, 3, 0.70);
    for (int i = 0; i < 4; i++)
        o.points[i].z_m = 0.25;
    ask_both_rules(&o, &own, &rule_N, &other_N);
    g_assert_cmpfloat(other_N, >, 1.03 * rule_N);
    own.figure = 0.99 * other_N;
    finding = one_ask(&o, HS_CHECK_spine_shear);
    EXPECT(finding, NEAR, spine_shear_straddles);
    g_assert_cmpfloat(finding.ratio, <, 1.0);
    g_assert_true(apply(&o, &finding));
    finding = one_ask(&o, HS_CHECK_spine_shear);
    EXPECT(finding, WITHIN, spine_shear_is);
    one_free(&o);
}

static void
a_floor_without_friction_is_told_what_it_needs(void)
{
    one o;
    hs_finding finding;

    bare(&o, 12, 0.40);
    o.task.site.friction = 0.0;
    finding = one_ask(&o, HS_CHECK_floor_friction);
    g_assert_cmpint(finding.status, ==, HS_STATUS_BEYOND);
    g_assert_cmpint(finding.remedy.reason, ==, HS_REASON_floor_remedy);
    o.task.site.friction = finding.remedy.number[0];
    g_assert_cmpint(one_ask(&o, HS_CHECK_floor_friction).status, ==, HS_STATUS_WITHIN);
    one_free(&o);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/body_checks/remedies_end_within", remedies_end_within);
    g_test_add_func("/body_checks/compression_limit",
                    compression_is_judged_against_the_published_or_the_sites_limit);
    g_test_add_func("/body_checks/turned_and_one_handed_work_is_out_of_scope",
                    turned_and_one_handed_work_is_out_of_scope);
    g_test_add_func("/body_checks/out_of_reach_is_beyond_without_a_value",
                    out_of_reach_is_beyond_without_a_value);
    g_test_add_func("/body_checks/nothing_balances_is_beyond_without_a_value",
                    nothing_balances_is_beyond_without_a_value);
    g_test_add_func("/body_checks/balance_is_near_from_three_quarters",
                    balance_is_near_from_three_quarters);
    g_test_add_func("/body_checks/longer_holding_uses_up_more", longer_holding_uses_up_more);
    g_test_add_func("/body_checks/floor_needs_more_in_a_turn_and_says_what_is_missing",
                    floor_needs_more_in_a_turn_and_says_what_is_missing);
    g_test_add_func("/body_checks/dose_is_never_judged", dose_is_never_judged);
    g_test_add_func("/body_checks/a_gap_in_the_suits_figures_is_missing",
                    a_gap_in_the_suits_figures_is_missing);
    g_test_add_func("/body_checks/on_the_knees_it_is_near_at_best",
                    on_the_knees_it_is_near_at_best);
    g_test_add_func("/body_checks/heavy_on_the_knees_has_no_promise",
                    heavy_on_the_knees_has_no_promise);
    g_test_add_func("/body_checks/a_turn_is_named_alone_or_with_the_rest",
                    a_turn_is_named_alone_or_with_the_rest);
    g_test_add_func("/body_checks/a_limit_between_the_two_slope_rules_is_near",
                    a_limit_between_the_two_slope_rules_is_near);
    g_test_add_func("/body_checks/a_limit_below_the_other_slope_rule_is_near",
                    a_limit_below_the_other_slope_rule_is_near);
    g_test_add_func("/body_checks/a_floor_without_friction_is_told_what_it_needs",
                    a_floor_without_friction_is_told_what_it_needs);
    return g_test_run();
}
