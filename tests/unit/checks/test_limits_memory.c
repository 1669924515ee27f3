/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does the program hold the remembered figures as they are remembered?
 * Answer:    tests/cases/limits_memory.json. This proves nothing about the publications: none of it was read.
 * Not here:  figures that were read (test_niosh.c, test_limits.c). */
#include "limit_cases.h"
#include "niosh_cases.h"

static JsonObject *root;

static void
frequency_rows_above_ten(void)
{
    check_multipliers(root);
}

static void
examples_of_the_manual(void)
{
    check_examples(root);
    check_composites(root);
}

static void
other_limits(void)
{
    check_limits(json_object_get_array_member(root, "limits"));
}

int
main(int argc, char **argv)
{
    JsonNode *node;

    g_test_init(&argc, &argv, NULL);
    node = hs_cases_load("limits_memory");
    root = json_node_get_object(node);
    g_test_add_func("/limits_memory/frequency_rows_above_ten", frequency_rows_above_ten);
    g_test_add_func("/limits_memory/examples_of_the_manual", examples_of_the_manual);
    g_test_add_func("/limits_memory/other_limits", other_limits);
    int result = g_test_run();

    json_node_unref(node);
    return result;
}
