/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can a printed working be done again, to its last printed digit?
 * Answer:    every equation of the lists, with many sets of terms, is printed and worked out anew by an evaluator of the tests.
 * Not here:  the workings of the examples (tests/cli), which terms a check records (the checks' own tests). */
#include "evaluate.h"
#include "formula.h"
#include "near.h"
#include "words.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define MOST 24

static void
working__evaluator_knows_its_arithmetic(void)
{
    g_autofree char *why = NULL;

    hs_near("precedence", hs_evaluate("2 + 3*4^2/8 - 1"), 7.0, 1e-12);
    hs_near("power to the right", hs_evaluate("2^3^2"), 512.0, 1e-9);
    hs_near("sign below power", hs_evaluate("-2^2 + (-2)^2"), 0.0, 1e-12);
    hs_near("functions", hs_evaluate("max(1, min(5, 3), 2) + sqrt(16) + atan2(0, 1) + abs(-2)"),
            9.0, 1e-12);
    hs_near("degrees", hs_evaluate("sin(30*pi/180)"), 0.5, 1e-12);
    hs_near("exponent", hs_evaluate("1.5e-05*2e+5"), 3.0, 1e-12);
    g_assert_true(isnan(hs_evaluate("2*(3")));
    g_assert_true(isnan(hs_evaluate("2*W")));
    g_assert_true(hs_evaluate_line("R = 2*3/4 = 1.5 N", &why));
    g_assert_false(hs_evaluate_line("R = 2*3/4 = 1.6 N", &why));
}

/* The program's own reader agrees with the tests' on arbitrary arithmetic. */
static void
working__both_evaluators_agree(void)
{
    static const char *const samples[] = {"1 - 2 - 3",
                                          "8/4/2",
                                          "-3^2",
                                          "2*-3",
                                          "max(-1, -2)*3",
                                          "exp(ln(5))*(2+1)",
                                          "cos(1)^2 + sin(1)^2",
                                          "7",
                                          "min(1,2,3)/4",
                                          "tan(0.3) - asin(0.5)*acos(0.2)"};

    for (gsize i = 0; i < G_N_ELEMENTS(samples); i++) {
        double value = NAN;

        g_assert_true(hs_formula_value(samples[i], &value));
        hs_near(samples[i], value, hs_evaluate(samples[i]), 1e-12);
    }
    g_assert_false(hs_formula_value("2*(3", &(double){0}));
    g_assert_false(hs_formula_value("x + 1", &(double){0}));
    g_assert_false(hs_formula_value("2 3", &(double){0}));
    g_assert_false(hs_formula_value("", &(double){0}));
}

static gboolean
is_symbol(const char *at, gsize n)
{
    return at[n] != '(' && !(n == 2 && strncmp(at, "pi", 2) == 0);
}

static int
symbols_of(const char *expression, char symbols[MOST][32])
{
    int n = 0;

    for (const char *at = expression; *at != '\0';) {
        gsize length = 0;
        gboolean known = FALSE;

        if (g_ascii_isdigit(*at) || *at == '.') {
            at += strspn(at, "0123456789.");
            if ((*at == 'e' || *at == 'E') &&
                (g_ascii_isdigit(at[1]) || at[1] == '-' || at[1] == '+'))
                at += 2 + strspn(at + 2, "0123456789");
            continue;
        }
        while (g_ascii_isalnum(at[length]) || at[length] == '_' || (guchar)at[length] >= 0x80)
            length++;
        if (length == 0) {
            at++;
            continue;
        }
        for (int i = 0; i < n; i++)
            known |= strlen(symbols[i]) == length && strncmp(symbols[i], at, length) == 0;
        if (!known && is_symbol(at, length)) {
            g_assert_cmpint(n, <, MOST);
            g_assert_cmpuint(length, <, 32);
            memcpy(symbols[n], at, length);
            symbols[n++][length] = '\0';
        }
        at += length;
    }
    return n;
}

/* The value to 17 digits, by the tests' own evaluator. */
static double
exact_result(const char *expression, const hs_term *terms, int n)
{
    const char *symbols[MOST] = {NULL};
    char *numbers[MOST] = {NULL};
    g_autofree char *text = NULL;

    for (int i = 0; i < n; i++) {
        symbols[i] = terms[i].symbol;
        numbers[i] = g_strdup_printf("%.17g", terms[i].value);
    }
    text = hs_formula_substitute(expression, n, symbols, (const char *const *)numbers);
    for (int i = 0; i < n; i++)
        g_free(numbers[i]);
    return hs_evaluate(text);
}

static gboolean
print_and_check(hs_equation_id id, const hs_term *terms, int n)
{
    const hs_equation *equation = hs_equation_get(id);
    double result = exact_result(hs_formula_expression(equation->formula), terms, n);
    hs_working_line line = {
        .equation = id, .n_terms = n, .terms = terms, .result = result, .unit = "N"};
    hs_finding finding = {.working = {.first = &line, .last = &line, .n_lines = 1}};
    g_auto(GStrv) lines = NULL;
    g_autofree char *why = NULL;

    /* These terms are outside what the formula can take (a root of a negative figure). */
    if (!isfinite(result))
        return FALSE;
    lines = hs_words_working(&finding);
    g_assert_cmpuint(g_strv_length(lines), ==, 3);
    g_assert_true(g_str_has_prefix(lines[0], equation->formula));
    g_assert_true(g_str_has_prefix(lines[2], "Source: "));
    if (!hs_evaluate_line(lines[1], &why))
        g_error("%s: %s", equation->id, why);
    return TRUE;
}

static void
working__every_equation_is_recomputed_from_what_is_printed(void)
{
    GRand *random = g_rand_new_with_seed(7);

    for (int id = HS_EQ_none + 1; id < HS_N_EQUATIONS; id++) {
        const hs_equation *equation = hs_equation_get((hs_equation_id)id);
        char symbols[MOST][32];
        int n = symbols_of(hs_formula_expression(equation->formula), symbols), n_good = 0;

        for (int round = 0; round < 400 && n_good < 40; round++) {
            hs_term terms[MOST];

            for (int i = 0; i < n; i++)
                terms[i] = (hs_term){
                    symbols[i],
                    g_rand_double_range(random, 0.001, round % 2 == 0 ? 1.0 : 2000.0), "m"};
            n_good += print_and_check((hs_equation_id)id, terms, n) ? 1 : 0;
        }
        if (n_good == 0)
            g_error("equation %s could not be worked out with any terms: %s", equation->id,
                    equation->formula);
    }
    g_rand_free(random);
}

/* Inputs have no more digits than the result needs, and a figure that few digits write is written whole. */
static void
working__digits_are_as_few_as_will_do(void)
{
    const hs_term terms[] = {{"p1", 40.0, "kg"},
                             {"p2", 20.0, "kg"},
                             {"R", 0.4512345678, "m"},
                             {"R1", 0.3, "m"},
                             {"R2", 0.6, "m"}};
    hs_working_line line = {
        .equation = HS_EQ_suit_payload, .n_terms = 5, .terms = terms, .unit = "kg"};
    hs_finding finding = {.working = {.first = &line, .last = &line, .n_lines = 1}};
    g_auto(GStrv) lines = NULL;

    line.result = 40.0 + (20.0 - 40.0) * (0.4512345678 - 0.3) / (0.6 - 0.3);
    lines = hs_words_working(&finding);
    g_assert_nonnull(strstr(lines[1], "40 + (20 - 40)"));
    g_assert_null(strstr(lines[1], "0.4512345678"));
    g_assert_true(g_str_has_suffix(lines[1], "29.92 kg"));
}

static void
working__numbers_have_a_point_in_every_language(void)
{
    const hs_term terms[] = {{"F", 377.5, "N"},
                             {"p", 38.25, "kg"},
                             {"g", 9.80665, "m_s2"},
                             {"G", 8.5, ""},
                             {"r", 15.5, "N"}};
    hs_working_line line = {
        .equation = HS_EQ_suit_felt, .n_terms = 5, .terms = terms, .result = 62.0, .unit = "N"};
    hs_finding finding = {.working = {.first = &line, .last = &line, .n_lines = 1}};
    g_auto(GStrv) lines = NULL;

    line.result = exact_result(hs_formula_expression(hs_equation_get(HS_EQ_suit_felt)->formula),
                               terms, 5);
    if (setlocale(LC_NUMERIC, "de_DE.UTF-8") == NULL)
        g_test_message("no locale with a comma here");
    lines = hs_words_working(&finding);
    setlocale(LC_NUMERIC, "C");
    g_assert_nonnull(strstr(lines[1], "377.5"));
}

/* What a step gives stands above it, once where the same equation follows itself; results carry no titles. */
static void
working__every_step_says_what_it_gives(void)
{
    const hs_term terms[] = {{"before", 2.0, "kg"}, {"part", 3.0, "kg"}};
    hs_working_line third = {HS_EQ_loss_landing, 0, NULL, 1.0, "m_s", NULL},
                    second = {HS_EQ_load_sum, 2, terms, 5.0, "kg", &third},
                    first = {HS_EQ_load_sum, 2, terms, 5.0, "kg", &second};
    hs_finding finding = {.working = {.first = &first, .last = &third, .n_lines = 3}};
    g_autoptr(GPtrArray) steps = hs_words_worked(&finding);
    g_auto(GStrv) lines = hs_words_working(&finding);

    g_assert_cmpuint(steps->len, ==, 3);
    g_assert_cmpstr(((hs_worked *)g_ptr_array_index(steps, 0))->title, ==,
                    hs_words_equation(HS_EQ_load_sum));
    g_assert_null(((hs_worked *)g_ptr_array_index(steps, 1))->title);
    g_assert_cmpstr(((hs_worked *)g_ptr_array_index(steps, 2))->title, ==,
                    hs_words_equation(HS_EQ_loss_landing));
    for (int id = HS_EQ_none + 1; id < HS_N_EQUATIONS; id++)
        g_assert_cmpuint(strlen(hs_words_equation((hs_equation_id)id)), >, 5);
    g_assert_cmpuint(g_strv_length(lines), ==, 8);
    for (guint i = 0; lines[i] != NULL; i++)
        g_assert_true(strchr(lines[i], '=') != NULL || g_str_has_prefix(lines[i], "Source: "));
}

int
main(int argc, char **argv)
{
    setlocale(LC_ALL, "C.UTF-8");
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/working/evaluator_knows_its_arithmetic",
                    working__evaluator_knows_its_arithmetic);
    g_test_add_func("/working/both_evaluators_agree", working__both_evaluators_agree);
    g_test_add_func("/working/every_equation_is_recomputed_from_what_is_printed",
                    working__every_equation_is_recomputed_from_what_is_printed);
    g_test_add_func("/working/digits_are_as_few_as_will_do",
                    working__digits_are_as_few_as_will_do);
    g_test_add_func("/working/numbers_have_a_point_in_every_language",
                    working__numbers_have_a_point_in_every_language);
    g_test_add_func("/working/every_step_says_what_it_gives",
                    working__every_step_says_what_it_gives);
    return g_test_run();
}
