/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a row of the window say "unconfirmed" and "does not apply"?
 * Answer:    the cell's text for every status and way of knowing.
 * Not here:  the other views (tests/cli/test_sheet.py). */
#include "short.h"

#include <locale.h>
#include <string.h>

static hs_finding
finding_of(hs_finding_status status, hs_why why, hs_confidence known)
{
    return (hs_finding){.check = HS_CHECK_lift_gb_guideline,
                        .status = status,
                        .why = why,
                        .value = 12.0,
                        .limit = 10.0,
                        .ratio = 1.2,
                        .unit = "kg",
                        .confidence = known,
                        .text = {.reason = HS_REASON_limits_suit}};
}

static void
only_a_judged_remembered_limit_is_marked(void)
{
    static const hs_finding_status all[] = {HS_STATUS_WITHIN, HS_STATUS_NEAR, HS_STATUS_BEYOND,
                                            HS_STATUS_NOT_JUDGED};

    for (gsize i = 0; i < G_N_ELEMENTS(all); i++)
        for (int known = HS_CONF_SEEN; known <= HS_CONF_COMMON_PRACTICE; known++) {
            hs_finding at = finding_of(
                all[i], all[i] == HS_STATUS_NOT_JUDGED ? HS_WHY_SCOPE : HS_WHY_COMPUTED,
                (hs_confidence)known);
            g_autofree char *cell = hs_short_cell(&at, HS_UNITS_SI);
            gboolean is_marked = strstr(cell, "limit unconfirmed") != NULL;

            g_test_message("%d, %d: %s", (int)all[i], known, cell);
            g_assert_cmpint(is_marked, ==,
                            known == HS_CONF_MEMORY && all[i] != HS_STATUS_NOT_JUDGED);
            g_assert_cmpint(strstr(cell, "does not apply: suit") != NULL, ==,
                            all[i] == HS_STATUS_NOT_JUDGED);
            g_assert_nonnull(strstr(cell, "12.0"));
        }
}

static void
the_name_of_a_chosen_set_stands_in_place_of_the_publications(void)
{
    hs_finding at = finding_of(HS_STATUS_WITHIN, HS_WHY_COMPUTED, HS_CONF_SEEN);
    hs_option_result option = {.n_findings = 1, .findings = &at};
    hs_results results = {.n_options = 1, .options = &option};

    at.source = HS_SRC_gb_guideline;
    g_assert_cmpstr(hs_words_check_in(&results, at.check), ==, hs_words_check(at.check));
    at.source = HS_SRC_limits_set_memory;
    g_assert_cmpstr(hs_words_check_in(&results, at.check), ==, "Guide values, chosen set");
    g_assert_cmpstr(hs_words_check_in(NULL, at.check), ==, hs_words_check(at.check));
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/short/only_a_judged_remembered_limit_is_marked",
                    only_a_judged_remembered_limit_is_marked);
    g_test_add_func("/short/the_name_of_a_chosen_set_stands_in_place_of_the_publications",
                    the_name_of_a_chosen_set_stands_in_place_of_the_publications);
    return g_test_run();
}
