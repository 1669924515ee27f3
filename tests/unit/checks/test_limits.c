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

/* The list of what is not asked is the page's, and nothing is both asked and left out. */
static void
left_out_cases_are_named_on_the_page(void)
{
    JsonNode *node = hs_cases_load("limits");
    JsonObject *root = json_node_get_object(node);
    JsonArray *asked = json_object_get_array_member(root, "checks"),
              *left = json_object_get_array_member(root, "left_out");
    g_autoptr(GHashTable) ids = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    g_autofree char *page = NULL;

    g_assert_true(
        g_file_get_contents(HS_SOURCE_ROOT "/docs/testing-limits.md", &page, NULL, NULL));
    for (guint i = 0; i < json_array_get_length(asked); i++)
        g_assert_true(g_hash_table_add(
            ids, g_strdup(TEXT(json_array_get_object_element(asked, i), "id"))));
    g_assert_cmpuint(json_array_get_length(left), >, 50);
    g_assert_cmpuint(json_array_get_length(asked) +
                         json_array_get_length(json_object_get_array_member(root, "converted")),
                     >, 255);
    for (guint i = 0; i < json_array_get_length(left); i++) {
        JsonObject *o = json_array_get_object_element(left, i);
        g_autofree char *quoted = g_strdup_printf("`%s`", TEXT(o, "id"));

        g_test_message("%s", quoted);
        g_assert_true(g_hash_table_add(ids, g_strdup(TEXT(o, "id"))));
        g_assert_nonnull(strstr(page, quoted));
        g_assert_cmpstr(TEXT(o, "why"), !=, "");
    }
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
    g_test_add_func("/limits/left_out_cases_are_named_on_the_page",
                    left_out_cases_are_named_on_the_page);
    g_test_add_func("/limits/hands_that_pass_boxes_take_the_smallest",
                    hands_that_pass_boxes_take_the_smallest);
    g_test_add_func("/limits/rows_end_where_they_end", rows_end_where_they_end);
    return g_test_run();
}
