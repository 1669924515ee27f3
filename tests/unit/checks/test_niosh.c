/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the lifting equation as published?
 * Answer:    tables and examples read in sources, own examples, and what must hold without a source (tests/cases/niosh.json).
 * Not here:  remembered figures (test_limits_memory.c), legs of a route (test_limit_checks.c). */
#include "niosh_cases.h"

static JsonObject *root;

static void
multipliers_are_as_printed(void)
{
    check_multipliers(root);
}

static void
examples_come_out(void)
{
    check_examples(root);
}

static void
composite_examples_come_out(void)
{
    check_composites(root);
}

static void
duration_classes_are_as_stated(void)
{
    JsonArray *list = json_object_get_array_member(root, "duration");

    g_assert_cmpuint(json_array_get_length(list), ==, 10);
    for (guint i = 0; i < json_array_get_length(list); i++) {
        JsonObject *o = json_array_get_object_element(list, i);

        g_assert_cmpint(hs_niosh_duration_of(number_of(o, "hours"), number_of(o, "recovery_h")),
                        ==, duration_of(json_object_get_string_member(o, "class")));
    }
    g_assert_cmpint(hs_niosh_duration_of(HS_ABSENT, 0), ==, HS_NIOSH_NONE);
}

static void
frequency_lines_never_lead_to_a_zero(void)
{
    hs_near("between 1 and 2", hs_niosh_fm_factor(1.5, HS_NIOSH_SHORT, true), (0.94 + 0.91) / 2,
            1e-12);
    hs_near("between 8 and 9, high", hs_niosh_fm_factor(8.5, HS_NIOSH_LONG, false),
            (0.18 + 0.15) / 2, 1e-12);
    hs_near("between 8 and 9, low", hs_niosh_fm_factor(8.5, HS_NIOSH_LONG, true), 0.0, 0.0);
    hs_near("last low row", hs_niosh_fm_factor(8.0, HS_NIOSH_LONG, true), 0.18, 0.0);
    hs_near("rare", hs_niosh_fm_factor(0.01, HS_NIOSH_MODERATE, true), 0.95, 0.0);
    hs_near("over 8 h", hs_niosh_fm_factor(1, HS_NIOSH_NONE, true), 0.0, 0.0);
    hs_near("not a number", hs_niosh_fm_factor(HS_ABSENT, HS_NIOSH_SHORT, true), 0.0, 0.0);
}

static double
rwl(double reach_m, double height_m, double distance_m, double turn_deg, double per_min)
{
    hs_niosh_input in = {reach_m, height_m,          distance_m,      turn_deg,
                         per_min, HS_NIOSH_MODERATE, HS_COUPLING_POOR};
    hs_niosh_answer answer;

    hs_niosh_rwl(&in, &answer);
    return answer.rwl_kg;
}

static void
ends_are_sharp(void)
{
    g_assert_cmpfloat(rwl(0.63, 0.5, 0.5, 0, 1), >, 0.0);
    g_assert_cmpfloat(rwl(0.631, 0.5, 0.5, 0, 1), ==, 0.0);
    g_assert_cmpfloat(rwl(0.4, 1.75, 0.5, 0, 1), >, 0.0);
    g_assert_cmpfloat(rwl(0.4, 1.751, 0.5, 0, 1), ==, 0.0);
    g_assert_cmpfloat(rwl(0.4, 0.5, 1.75, 0, 1), >, 0.0);
    g_assert_cmpfloat(rwl(0.4, 0.5, 1.751, 0, 1), ==, 0.0);
    g_assert_cmpfloat(rwl(0.4, 0.5, 0.5, 135, 1), >, 0.0);
    g_assert_cmpfloat(rwl(0.4, 0.5, 0.5, -135.1, 1), ==, 0.0);
    g_assert_cmpfloat(rwl(HS_ABSENT, 0.5, 0.5, 0, 1), ==, 0.0);
}

static void
small_figures_are_clamped_and_sides_are_alike(void)
{
    hs_near("reach", rwl(0.10, 0.5, 0.5, 0, 1), rwl(0.25, 0.5, 0.5, 0, 1), 1e-12);
    hs_near("reach of nothing", rwl(0.0, 0.5, 0.5, 0, 1), rwl(0.25, 0.5, 0.5, 0, 1), 1e-12);
    hs_near("distance of nothing", rwl(0.4, 0.5, 0.0, 0, 1), rwl(0.4, 0.5, 0.25, 0, 1), 1e-12);
    hs_near("lower", rwl(0.4, 0.5, -0.7, 0, 1), rwl(0.4, 0.5, 0.7, 0, 1), 1e-12);
    hs_near("side", rwl(0.4, 0.5, 0.5, -40, 1), rwl(0.4, 0.5, 0.5, 40, 1), 1e-12);
}

static void
farther_longer_turned_and_oftener_is_never_more(void)
{
    for (double step = 0.0; step < 1.0; step += 0.02) {
        double next = step + 0.02;

        g_assert_cmpfloat(rwl(0.2 + next, 0.5, 0.5, 0, 1), <=, rwl(0.2 + step, 0.5, 0.5, 0, 1));
        g_assert_cmpfloat(rwl(0.4, 0.5, 2 * next, 0, 1), <=, rwl(0.4, 0.5, 2 * step, 0, 1));
        g_assert_cmpfloat(rwl(0.4, 0.5, 0.5, 150 * next, 1), <=,
                          rwl(0.4, 0.5, 0.5, 150 * step, 1));
        g_assert_cmpfloat(rwl(0.4, 0.5, 0.5, 0, 16 * next), <=,
                          rwl(0.4, 0.5, 0.5, 0, 16 * step));
        g_assert_cmpfloat(rwl(0.4, 0.75 + 1.1 * next, 0.5, 0, 1), <=,
                          rwl(0.4, 0.75 + 1.1 * step, 0.5, 0, 1));
    }
}

static void
like_tasks_merge_into_one(void)
{
    hs_niosh_task two[] = {{9, 9, 12, 1, true}, {9, 9, 12, 2, true}}, one = {9, 9, 12, 3, true};
    hs_niosh_sum split, merged;

    hs_niosh_composite(two, 2, HS_NIOSH_MODERATE, &split);
    hs_niosh_composite(&one, 1, HS_NIOSH_MODERATE, &merged);
    hs_near("merge", split.index, merged.index, 1e-12);
    hs_near("merge", merged.index, 9.0 / (12.0 * 0.79), 1e-12);
}

static void
a_sum_beyond_the_table_has_no_index(void)
{
    hs_niosh_task tasks[] = {{9, 9, 12, 8, false}, {9, 9, 12, 8, false}};
    hs_niosh_sum sum;

    hs_niosh_composite(tasks, 2, HS_NIOSH_SHORT, &sum);
    g_assert_false(hs_has(sum.index));
    g_assert_true(hs_has(sum.first_index));
    tasks[0].firwl_kg = 0.0;
    hs_niosh_composite(tasks, 1, HS_NIOSH_SHORT, &sum);
    g_assert_false(hs_has(sum.index));
}

int
main(int argc, char **argv)
{
    JsonNode *node;

    g_test_init(&argc, &argv, NULL);
    node = hs_cases_load("niosh");
    root = json_node_get_object(node);
#define TEST(name) g_test_add_func("/niosh/" #name, name)
    TEST(multipliers_are_as_printed);
    TEST(examples_come_out);
    TEST(composite_examples_come_out);
    TEST(duration_classes_are_as_stated);
    TEST(frequency_lines_never_lead_to_a_zero);
    TEST(ends_are_sharp);
    TEST(small_figures_are_clamped_and_sides_are_alike);
    TEST(farther_longer_turned_and_oftener_is_never_more);
    TEST(like_tasks_merge_into_one);
    TEST(a_sum_beyond_the_table_has_no_index);
#undef TEST
    int result = g_test_run();

    json_node_unref(node);
    return result;
}
