/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a new limit need nothing but its own file, its lines in the lists and its data?
 * Answer:    the core built once more with the invented Yard rule 7 in its lists (docs/adding.md): the new check is asked, judged,
 *            taken into the verdict, replaced by a site's figure and listed, and no file of the core was changed for it.
 * Not here:  real limits. */
#include "one_bearer.h"

#include "assess.h"
#include "figures.h"
#include "yard7.h"

static hs_finding
in_results(one *o, hs_results *ret_results)
{
    hs_error error = {0};

    o->bearer.suit = -1;
    if (hs_assess(&o->task, HS_ASSESS_PLAIN, o->arena, ret_results, &error) != HS_OK)
        g_error("assess: %s", error.where);
    for (int i = 0; i < ret_results->options[0].n_findings; i++)
        if (ret_results->options[0].findings[i].check == HS_CHECK_lift_yard_7)
            return ret_results->options[0].findings[i];
    return (hs_finding){0};
}

static void
it_is_judged_among_the_others(void)
{
    one o;
    hs_results results;
    hs_finding f;
    bool decides = false;

    one_make(&o, 14);
    f = in_results(&o, &results);
    EXPECT(f, WITHIN, yard_is);
    hs_near("row of the hands' height", f.limit, 20, 0);
    hs_near("held", f.value, 14, 1e-9);
    g_assert_cmpint(f.working.n_lines, ==, 1);
    g_assert_cmpint(hs_check_find("lift.yard-7"), ==, HS_CHECK_lift_yard_7);
    /* the other checks are still there and first */
    g_assert_cmpint(results.options[0].findings[0].check, ==, HS_CHECK_share);
    g_assert_cmpint(hs_check_find("data"), ==, HS_CHECK_lift_yard_7 - 1);
    o.part.mass_kg = 24;
    f = in_results(&o, &results);
    EXPECT(f, BEYOND, yard_is);
    g_assert_cmpint(f.remedy.reason, ==, HS_REASON_limits_remedy_mass);
    g_assert_cmpint(results.options[0].verdict.status, ==, HS_VERDICT_NOT_SUPPORTED);
    for (int i = 0; i < results.options[0].verdict.n_reasons; i++)
        decides |= results.options[0].verdict.reasons[i] == HS_CHECK_lift_yard_7;
    g_assert_true(decides);
    o.part.mass_kg = f.remedy.number[0];
    f = in_results(&o, &results);
    EXPECT(f, WITHIN, yard_is);
    one_free(&o);
}

static void
it_keeps_to_its_scope_and_its_criterion(void)
{
    static const char *const others[] = {"niosh-1994"};
    one o;
    hs_results results;
    hs_finding f;

    one_make(&o, 14);
    for (int i = 0; i < 4; i++)
        o.points[i].z_m += 1.0;
    f = in_results(&o, &results);
    EXPECT(f, NOT_JUDGED, yard_high);
    o.bearer.suit = 0;
    f = one_ask(&o, HS_CHECK_lift_yard_7);
    EXPECT(f, NOT_JUDGED, limits_suit);
    one_free(&o);
    one_make(&o, 14);
    o.task.criteria = others;
    o.task.n_criteria = 1;
    o.task.has_criteria = true;
    g_assert_cmpint(in_results(&o, &results).status, ==, HS_STATUS_NONE);
    one_free(&o);
}

static void
a_site_may_replace_it(void)
{
    hs_site_limit own = {.id = "lift.yard-7", .figure = 10};
    one o;
    hs_results results;
    hs_finding f;

    g_assert_true(hs_limit_takes_own(HS_CHECK_lift_yard_7));
    one_make(&o, 14);
    o.task.policy.site_limits = &own;
    o.task.policy.n_site_limits = 1;
    f = in_results(&o, &results);
    EXPECT(f, BEYOND, limits_site_mass);
    hs_near("own figure", f.limit, 10, 0);
    own.is_unconfirmed = true;
    f = in_results(&o, &results);
    EXPECT(f, NEAR, limits_site_unsure);
    one_free(&o);
}

static void
count_yard(const hs_limit_figure *figure, void *data)
{
    if (figure->check == HS_CHECK_lift_yard_7 && figure->value == hs_yard7_kg(1.0))
        (*(int *)data)++;
}

static void
it_stands_in_the_list_of_figures(void)
{
    int n = 0;

    hs_limit_figures_each(count_yard, &n);
    g_assert_cmpint(n, ==, 1);
    g_assert_cmpstr(hs_source_get(HS_SRC_yard_7)->title, ==, "Yard rule 7, invented");
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
#define TEST(name) g_test_add_func("/made_up/" #name, name)
    TEST(it_is_judged_among_the_others);
    TEST(it_keeps_to_its_scope_and_its_criterion);
    TEST(a_site_may_replace_it);
    TEST(it_stands_in_the_list_of_figures);
#undef TEST
    return g_test_run();
}
