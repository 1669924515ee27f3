/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is everything that core can say said in a sentence?
 * Answer:    every reason, check and status has its words, and every placeholder can be filled.
 * Not here:  whether the sentence is true (the checks' own tests). */
#include "words.h"

#include <locale.h>
#include <math.h>
#include <string.h>

static void
words__every_reason_has_a_sentence(void)
{
    for (int i = HS_REASON_none + 1; i < HS_N_REASONS; i++)
        if (hs_words_sentence((hs_reason)i) == NULL)
            g_error("reason %s has no sentence", hs_reason_name((hs_reason)i));
}

/* {0}..{5} with a unit that is known, {a} {b} alone or as a check. */
static gboolean
is_placeholder(const char *inside)
{
    static const char *const units[] = {"N",   "kN", "kg",  "m",    "cm", "mm", "s",    "min",
                                        "deg", "Nm", "kPa", "Hz",   "Wh", "W",  "m_s",  "pct",
                                        "int", "J",  "C",   "m_s2", "h",  "Nh", "kg_m3"};
    gboolean is_number = inside[0] >= '0' && inside[0] < '0' + HS_MESSAGE_NUMBERS;
    gboolean is_name = inside[0] >= 'a' && inside[0] < 'a' + HS_MESSAGE_NAMES;

    if (inside[1] == '\0')
        return is_number || is_name;
    if (is_name)
        return strcmp(inside + 1, ":check") == 0;
    for (gsize i = 0; is_number && inside[1] == ':' && i < G_N_ELEMENTS(units); i++)
        if (strcmp(inside + 2, units[i]) == 0)
            return TRUE;
    return FALSE;
}

static void
words__every_placeholder_can_be_filled(void)
{
    for (int i = HS_REASON_none + 1; i < HS_N_REASONS; i++) {
        const char *text = hs_words_sentence((hs_reason)i);

        for (const char *at = text != NULL ? strchr(text, '{') : NULL; at != NULL;
             at = strchr(at + 1, '{')) {
            const char *close = strchr(at, '}');
            g_autofree char *inside = NULL;

            g_assert_nonnull(close);
            inside = g_strndup(at + 1, (gsize)(close - at - 1));
            if (!is_placeholder(inside))
                g_error("reason %s: {%s} cannot be filled", hs_reason_name((hs_reason)i),
                        inside);
        }
    }
}

static void
words__no_sentence_calls_a_lift_by_a_forbidden_word(void)
{
    /* In pieces, so that a search for them does not end here. */
    static const char *const never[] = {"sa"
                                        "fe ",
                                        "cert"
                                        "ified",
                                        "risk-"
                                        "free",
                                        "exo"
                                        "skeleton",
                                        "man"
                                        "power"};

    for (int i = HS_REASON_none + 1; i < HS_N_REASONS; i++)
        for (gsize k = 0; k < G_N_ELEMENTS(never); k++)
            if (hs_words_sentence((hs_reason)i) != NULL &&
                strstr(hs_words_sentence((hs_reason)i), never[k]) != NULL)
                g_error("reason %s says \"%s\"", hs_reason_name((hs_reason)i), never[k]);
}

static void
words__every_check_has_a_name_and_a_hint(void)
{
    for (int i = 0; i < HS_N_CHECKS; i++) {
        g_assert_nonnull(hs_words_check((hs_check_id)i));
        g_assert_nonnull(hs_words_check_hint((hs_check_id)i));
        g_assert_cmpuint(strlen(hs_words_check_hint((hs_check_id)i)), >, 20);
        for (int k = 0; k < i; k++)
            g_assert_cmpstr(hs_words_check((hs_check_id)i), !=, hs_words_check((hs_check_id)k));
    }
}

static void
words__a_message_is_filled_in_the_readers_unit(void)
{
    hs_message message = HS_SAY(assume_reach, 0.508);
    g_autofree char *si = hs_words_message(&message, HS_UNITS_SI);
    g_autofree char *us = hs_words_message(&message, HS_UNITS_US);

    g_assert_nonnull(strstr(si, "0.51\u00a0m"));
    g_assert_nonnull(strstr(us, "20.0\u00a0in"));
    message.number[0] = NAN;
    g_clear_pointer(&si, g_free);
    si = hs_words_message(&message, HS_UNITS_SI);
    g_assert_null(strstr(si, "nan"));
    message = (hs_message){.reason = HS_REASON_condition_near, .name = {"spine.compression"}};
    g_clear_pointer(&si, g_free);
    si = hs_words_message(&message, HS_UNITS_SI);
    g_assert_true(g_str_has_prefix(si, "Low back, compression "));
}

static hs_finding
finding(hs_check_id check, const char *unit, double value, double limit, double ratio)
{
    return (hs_finding){.check = check,
                        .bearer = -1,
                        .route = HS_ABSENT,
                        .t_s = HS_ABSENT,
                        .value = value,
                        .limit = limit,
                        .ratio = ratio,
                        .unit = unit,
                        .status = HS_STATUS_NEAR,
                        .why = HS_WHY_COMPUTED};
}

static void
figure_is(const hs_finding *at, const char *wanted)
{
    g_autofree char *text = hs_words_figure(at, HS_UNITS_SI);

    g_assert_cmpstr(text, ==, wanted);
}

static void
words__a_figure_is_value_of_limit(void)
{
    hs_finding at = finding(HS_CHECK_spine_compression, "N", 3912, 3400, 3912.0 / 3400);

    figure_is(&at, "3.9 of 3.4\u00a0kN");
    /* Value and limit that would read alike show their difference. */
    at = finding(HS_CHECK_spine_compression, "N", 3412, 3400, 3412.0 / 3400);
    figure_is(&at, "3.41 of 3.40\u00a0kN");
    at = finding(HS_CHECK_balance, "m", 0.063, 0.060, 0.9);
    figure_is(&at, "63\u00a0mm left, 60 wanted");
    at = finding(HS_CHECK_balance, "m", -0.02, 0.0, 1.1);
    figure_is(&at, "20\u00a0mm too little");
    at = finding(HS_CHECK_strength, "", 0.62, 1.0, 0.62);
    figure_is(&at, "62 of 100\u00a0%");
    at = finding(HS_CHECK_suit_power_loss, "s", 13, 8, 13.0 / 8);
    figure_is(&at, "13.0\u00a0s needed, 8.0\u00a0s held");
}

static void
words__outside_its_scope_a_figure_stands_in_brackets(void)
{
    hs_finding at = finding(HS_CHECK_lift_niosh_1994, "", 3.4, HS_ABSENT, HS_ABSENT);
    g_autofree char *text = NULL;

    at.status = HS_STATUS_NOT_JUDGED;
    at.why = HS_WHY_SCOPE;
    at.text = (hs_message){.reason = HS_REASON_caution_limits};
    text = hs_words_figure(&at, HS_UNITS_SI);
    g_assert_true(g_str_has_prefix(text, "(3.4) "));
    at.value = HS_ABSENT;
    g_clear_pointer(&text, g_free);
    text = hs_words_figure(&at, HS_UNITS_SI);
    g_assert_true(g_str_has_prefix(text, "does not apply: "));
    g_assert_false(g_str_has_suffix(text, "."));
}

static void
words__a_place_names_bearer_and_point(void)
{
    hs_bearer bearer = {.id = "A"};
    hs_option asked = {.n_bearers = 1, .bearers = &bearer};
    hs_option_result option = {.asked = &asked};
    hs_finding at = finding(HS_CHECK_balance, "m", 0.1, 0.06, 0.6);
    g_autofree char *text = NULL;

    at.bearer = 0;
    at.route = 1.0;
    text = hs_words_place(&option, &at);
    g_assert_cmpstr(text, ==, "A · point 1");
    at.route = 2.25;
    g_clear_pointer(&text, g_free);
    text = hs_words_place(&option, &at);
    g_assert_cmpstr(text, ==, "A · between points 2 and 3");
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/words/every_reason_has_a_sentence", words__every_reason_has_a_sentence);
    g_test_add_func("/words/every_placeholder_can_be_filled",
                    words__every_placeholder_can_be_filled);
    g_test_add_func("/words/no_sentence_calls_a_lift_by_a_forbidden_word",
                    words__no_sentence_calls_a_lift_by_a_forbidden_word);
    g_test_add_func("/words/every_check_has_a_name_and_a_hint",
                    words__every_check_has_a_name_and_a_hint);
    g_test_add_func("/words/a_message_is_filled_in_the_readers_unit",
                    words__a_message_is_filled_in_the_readers_unit);
    g_test_add_func("/words/a_figure_is_value_of_limit", words__a_figure_is_value_of_limit);
    g_test_add_func("/words/outside_its_scope_a_figure_stands_in_brackets",
                    words__outside_its_scope_a_figure_stands_in_brackets);
    g_test_add_func("/words/a_place_names_bearer_and_point",
                    words__a_place_names_bearer_and_point);
    return g_test_run();
}
