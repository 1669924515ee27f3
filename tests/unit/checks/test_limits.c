/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  are the figures of the other published limits as read?
 * Answer:    tests/cases/limits.json, and what must hold without a source.
 * Not here:  remembered figures (test_limits_memory.c), legs of a route (test_limit_checks.c). */
#include "limit_cases.h"

static void
figures_are_as_read(void)
{
    JsonNode *node = hs_cases_load("limits");
    JsonArray *list = json_object_get_array_member(json_node_get_object(node), "checks");

    g_assert_cmpuint(json_array_get_length(list), >=, 240);
    check_limits(list);
    json_node_unref(node);
}

static void
hands_that_pass_boxes_take_the_smallest(void)
{
    hs_gb_landmarks body = hs_gb_landmarks_of(1.756);

    hs_near("floor to waist", hs_gb_least_kg(HS_SEX_MALE, &body, 0.1, 0.9, 0.3), 10, 0);
    hs_near("waist to waist", hs_gb_least_kg(HS_SEX_MALE, &body, 0.85, 0.95, 0.3), 25, 0);
    hs_near("far", hs_gb_least_kg(HS_SEX_FEMALE, &body, 0.85, 0.95, 0.6), 10, 0);
    g_assert_false(hs_has(hs_gb_least_kg(HS_SEX_MALE, &body, 0.85, 0.95, 0.9)));
    g_assert_false(hs_has(hs_gb_team_share(4)));
}

static void
rows_end_where_they_end(void)
{
    hs_confidence confidence;

    g_assert_cmpfloat(hs_mil1472_lift_kg(true, 0.91, &confidence), ==, 39.5);
    g_assert_cmpint(confidence, ==, HS_CONF_SEEN);
    hs_mil1472_lift_kg(true, 0.92, &confidence);
    g_assert_cmpint(confidence, ==, HS_CONF_MEMORY);
    g_assert_false(hs_has(hs_mil1472_lift_kg(true, 1.53, &confidence)));
    g_assert_false(hs_has(hs_mil1472_carry_kg(false, 11, &confidence)));
    g_assert_null(hs_iso11228_day_of(20.1));
    g_assert_false(hs_has(hs_energy_limit_kcal_min(HS_SEX_MALE, 8.5)));
    g_assert_cmpfloat(hs_energy_limit_kcal_min(HS_SEX_FEMALE, 8), ==, 3.0);
    g_assert_cmpfloat(hs_energy_limit_kcal_min(HS_SEX_MALE, 1), ==, 9.0);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/limits/figures_are_as_read", figures_are_as_read);
    g_test_add_func("/limits/hands_that_pass_boxes_take_the_smallest",
                    hands_that_pass_boxes_take_the_smallest);
    g_test_add_func("/limits/rows_end_where_they_end", rows_end_where_they_end);
    return g_test_run();
}
