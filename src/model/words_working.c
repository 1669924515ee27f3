/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a working printed so that it can be done again with a pocket calculator?
 * Answer:    for each line what it gives, the formula, the formula with numbers, and the source; numbers get as many
 *            digits as the result needs, and no more.
 * Not here:  recording (core, base/working.h), evaluating (formula.c).
 *
 * Workings are in SI and with a point in every language: a formula has constants in SI, and a
 * comma parts arguments. */
#include "formula.h"
#include "quantity.h"
#include "translate.h"
#include "words.h"

#include <math.h>
#include <string.h>

#define MAX_TERMS    24
#define LEAST_DIGITS 4  /* of inputs and result */
#define USUAL_DIGITS 6  /* inputs, at most, where that is enough */
#define MOST_DIGITS  15 /* inputs of a difference of nearly equal figures */

typedef struct {
    const char *symbols[MAX_TERMS];
    char *numbers[MAX_TERMS];
    int n;
} printed_terms;

static char *
significant(double value, int digits)
{
    char buffer[G_ASCII_DTOSTR_BUF_SIZE], format[8];

    g_snprintf(format, sizeof format, "%%.%dg", digits);
    return g_strdup(g_ascii_formatd(buffer, sizeof buffer, format, value));
}

/* An input that a few digits write exactly is written exactly: 9.80665 stays 9.80665. */
static char *
term_text(double value, int digits)
{
    g_autofree char *usual = significant(value, USUAL_DIGITS);

    return g_ascii_strtod(usual, NULL) == value ? g_steal_pointer(&usual)
                                                : significant(value, digits);
}

static void
terms_clear(printed_terms *terms)
{
    for (int i = 0; i < terms->n; i++)
        g_free(terms->numbers[i]);
    terms->n = 0;
}

static void
terms_print(const hs_working_line *line, int digits, printed_terms *terms)
{
    terms_clear(terms);
    for (int i = 0; i < line->n_terms && i < MAX_TERMS; i++) {
        terms->symbols[i] = line->terms[i].symbol;
        terms->numbers[i] = term_text(line->terms[i].value, digits);
        terms->n++;
    }
}

static char *
substituted(const hs_working_line *line, const printed_terms *terms)
{
    const char *expression = hs_formula_expression(hs_equation_get(line->equation)->formula);

    return hs_formula_substitute(expression, terms->n, terms->symbols,
                                 (const char *const *)terms->numbers);
}

/* A sum that closes is printed as 0, not as its rounding. */
static double
without_rounding(const hs_working_line *line)
{
    double most = 0.0;

    for (int i = 0; i < line->n_terms; i++)
        most = fmax(most, fabs(line->terms[i].value));
    return fabs(line->result) < 1e-9 * most ? 0.0 : line->result;
}

/* The printed numbers give the printed result, and the printed result is the recorded one at
 * its digits. */
static gboolean
meets(const char *expression, const char *result, int digits)
{
    g_autofree char *again = NULL;
    double value;

    if (!hs_formula_value(expression, &value) || !isfinite(value))
        return FALSE;
    again = significant(value, digits);
    return g_ascii_strtod(again, NULL) == g_ascii_strtod(result, NULL);
}

static char *
numbers_line(const hs_working_line *line)
{
    g_autofree char *expression = NULL, *result = NULL, *left = NULL;
    const char *formula = hs_equation_get(line->equation)->formula;
    const char *equals = strchr(formula, '=');
    const char *unit = line->unit != NULL ? hs_quantity_unit(line->unit, HS_UNITS_SI) : "";
    printed_terms terms = {.n = 0};
    int digits = LEAST_DIGITS;

    result = significant(without_rounding(line), LEAST_DIGITS);
    for (;; digits += digits < USUAL_DIGITS ? 1 : 3) {
        g_clear_pointer(&expression, g_free);
        terms_print(line, digits, &terms);
        expression = substituted(line, &terms);
        if (meets(expression, result, LEAST_DIGITS) || digits >= MOST_DIGITS)
            break;
    }
    terms_clear(&terms);
    left = equals != NULL ? g_strchomp(g_strndup(formula, (gsize)(equals - formula)))
                          : g_strdup("");
    return g_strdup_printf("%s = %s = %s%s%s", left, expression, result,
                           *unit != '\0' ? " " : "", unit);
}

/* The formula, and the unit of every symbol in it. */
static char *
symbols_line(const hs_working_line *line)
{
    GString *text = g_string_new(hs_equation_get(line->equation)->formula);
    const char *lead = "; ";

    for (int i = 0; i < line->n_terms; i++) {
        const char *unit = line->terms[i].unit;

        if (unit == NULL || *unit == '\0')
            continue;
        /* Translators: symbol and its unit, below a formula: "F in N" */
        g_string_append(text, lead);
        g_string_append_printf(text, _("%s in %s"), line->terms[i].symbol,
                               hs_quantity_unit(unit, HS_UNITS_SI));
        lead = ", ";
    }
    return g_string_free(text, FALSE);
}

static char *
source_line(hs_source_id id)
{
    g_autofree char *source = hs_words_source(id);
    const char *known = hs_words_confidence(hs_source_get(id)->confidence);

    /* Translators: where a formula or a limit comes from, and how it is known ("read in the
     * source") */
    return g_strdup_printf(_("Source: %s (%s)"), source, known);
}

static const char *const titles[HS_N_EQUATIONS] = {
#define EQUATION_WORDS(id, text) [HS_EQ_##id] = text,
#include "words_equations.h"
#undef EQUATION_WORDS
};

const char *
hs_words_equation(hs_equation_id equation)
{
    return titles[equation] != NULL ? _(titles[equation]) : "";
}

static void
worked_free(gpointer data)
{
    hs_worked *worked = data;

    g_free(worked->symbols);
    g_free(worked->numbers);
    g_free(worked->source);
    g_free(worked);
}

GPtrArray *
hs_words_worked(const hs_finding *finding)
{
    GPtrArray *all = g_ptr_array_new_with_free_func(worked_free);
    const hs_working_line *before = NULL;

    for (const hs_working_line *line = finding->working.first; line != NULL;
         before = line, line = line->next) {
        hs_source_id source = hs_equation_get(line->equation)->source;
        hs_worked *worked = g_new0(hs_worked, 1);

        if (before == NULL || before->equation != line->equation)
            worked->title = hs_words_equation(line->equation);
        worked->symbols = symbols_line(line);
        worked->numbers = numbers_line(line);
        if (line->next == NULL || hs_equation_get(line->next->equation)->source != source)
            worked->source = source_line(source);
        g_ptr_array_add(all, worked);
    }
    return all;
}

char **
hs_words_working(const hs_finding *finding)
{
    g_autoptr(GPtrArray) all = hs_words_worked(finding);
    GPtrArray *lines = g_ptr_array_new();

    for (guint i = 0; i < all->len; i++) {
        hs_worked *worked = g_ptr_array_index(all, i);

        g_ptr_array_add(lines, g_steal_pointer(&worked->symbols));
        g_ptr_array_add(lines, g_steal_pointer(&worked->numbers));
        if (worked->source != NULL)
            g_ptr_array_add(lines, g_steal_pointer(&worked->source));
    }
    g_ptr_array_add(lines, NULL);
    return (char **)g_ptr_array_free(lines, FALSE);
}
