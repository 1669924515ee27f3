/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a formula give when its symbols are replaced by printed numbers?
 * Answer:    a scanner for the symbols and a recursive descent for + - * / ^, brackets and a dozen functions.
 * Not here:  the choice of digits (words_working.c). */
#include "formula.h"

#include "units.h"

#include <math.h>
#include <string.h>

#define MAX_ARGUMENTS 8

const char *
hs_formula_expression(const char *formula)
{
    const char *equals = strchr(formula, '=');

    if (equals == NULL)
        return formula;
    for (equals++; *equals == ' '; equals++)
        ;
    return equals;
}

static gboolean
is_letter(char c)
{
    return g_ascii_isalpha(c) || c == '_' || (guchar)c >= 0x80;
}

/* Length of the identifier at s, 0 when there is none. */
static gsize
identifier_length(const char *s)
{
    gsize n = 0;

    if (!is_letter(*s))
        return 0;
    while (is_letter(s[n]) || g_ascii_isdigit(s[n]))
        n++;
    return n;
}

/* Length of the number at s with its exponent, 0 when there is none. */
static gsize
number_length(const char *s)
{
    gsize n = 0;

    while (g_ascii_isdigit(s[n]) || s[n] == '.')
        n++;
    if (n > 0 && (s[n] == 'e' || s[n] == 'E')) {
        gsize k = n + 1;

        if (s[k] == '+' || s[k] == '-')
            k++;
        if (g_ascii_isdigit(s[k])) {
            while (g_ascii_isdigit(s[k]))
                k++;
            n = k;
        }
    }
    return n;
}

char *
hs_formula_substitute(const char *expression,
                      int n,
                      const char *const *symbols,
                      const char *const *numbers)
{
    GString *out = g_string_new(NULL);

    for (const char *s = expression; *s != '\0';) {
        gsize length = identifier_length(s), digits = number_length(s);
        int found = -1;

        for (int i = 0; i < n && length > 0 && s[length] != '('; i++)
            if (strlen(symbols[i]) == length && strncmp(symbols[i], s, length) == 0)
                found = i;
        if (found >= 0 && numbers[found][0] == '-')
            g_string_append_printf(out, "(%s)", numbers[found]);
        else if (found >= 0)
            g_string_append(out, numbers[found]);
        else
            g_string_append_len(out, s, (gssize)(length > 0 ? length : MAX(digits, 1)));
        s += length > 0 ? length : MAX(digits, 1);
    }
    return g_string_free(out, FALSE);
}

typedef struct {
    const char *at;
    gboolean failed;
    int depth;
} reader;

static double read_sum(reader *in);

static char
next(reader *in)
{
    while (*in->at == ' ')
        in->at++;
    return *in->at;
}

static double
fail(reader *in)
{
    in->failed = TRUE;
    return NAN;
}

static double
call_one(const char *name, double x)
{
    static const struct {
        const char *name;
        double (*function)(double);
    } table[] = {{"sqrt", sqrt}, {"sin", sin},   {"cos", cos},  {"tan", tan}, {"atan", atan},
                 {"asin", asin}, {"acos", acos}, {"abs", fabs}, {"exp", exp}, {"ln", log}};

    for (gsize i = 0; i < G_N_ELEMENTS(table); i++)
        if (strcmp(table[i].name, name) == 0)
            return table[i].function(x);
    return NAN;
}

static double
call_many(reader *in, const char *name, const double *x, int n)
{
    double out = n > 0 ? x[0] : (double)NAN;

    if (strcmp(name, "atan2") == 0 && n == 2)
        return atan2(x[0], x[1]);
    if (n == 0 || (strcmp(name, "min") != 0 && strcmp(name, "max") != 0))
        return n == 1 ? call_one(name, x[0]) : fail(in);
    for (int i = 1; i < n; i++)
        out = name[1] == 'i' ? fmin(out, x[i]) : fmax(out, x[i]);
    return out;
}

static double
read_call(reader *in, const char *name)
{
    double x[MAX_ARGUMENTS];
    int n = 0;

    in->at++;
    while (!in->failed && n < MAX_ARGUMENTS) {
        x[n++] = read_sum(in);
        if (next(in) != ',')
            break;
        in->at++;
    }
    if (next(in) != ')')
        return fail(in);
    in->at++;
    return in->failed ? (double)NAN : call_many(in, name, x, n);
}

static double
read_atom(reader *in)
{
    char c = next(in), name[16];
    gsize length = identifier_length(in->at), digits = number_length(in->at);
    double value;

    if (c == '(') {
        in->at++;
        value = read_sum(in);
        if (next(in) != ')')
            return fail(in);
        in->at++;
        return value;
    }
    if (digits > 0) {
        value = g_ascii_strtod(in->at, NULL);
        in->at += digits;
        return value;
    }
    if (length == 0 || length >= sizeof name)
        return fail(in);
    memcpy(name, in->at, length);
    name[length] = '\0';
    in->at += length;
    if (next(in) == '(')
        return read_call(in, name);
    return strcmp(name, "pi") == 0 ? HS_PI : fail(in);
}

/* A sign binds less than a power: -2^2 is -4. A power binds to the right. */
static double
read_power(reader *in)
{
    double base;

    if (++in->depth > 100)
        return fail(in);
    if (next(in) == '-') {
        in->at++;
        base = -read_power(in);
    } else {
        base = read_atom(in);
        if (!in->failed && next(in) == '^') {
            in->at++;
            base = pow(base, read_power(in));
        }
    }
    in->depth--;
    return base;
}

static double
read_product(reader *in)
{
    double out = read_power(in);

    while (!in->failed && (next(in) == '*' || *in->at == '/')) {
        char op = *in->at++;
        double right = read_power(in);

        out = op == '*' ? out * right : out / right;
    }
    return out;
}

static double
read_sum(reader *in)
{
    double out;

    if (next(in) == '+')
        in->at++;
    out = read_product(in);
    while (!in->failed && (next(in) == '+' || *in->at == '-')) {
        char op = *in->at++;
        double right = read_product(in);

        out = op == '+' ? out + right : out - right;
    }
    return out;
}

gboolean
hs_formula_value(const char *expression, double *ret_value)
{
    reader in = {.at = expression};
    double value = read_sum(&in);

    if (in.failed || next(&in) != '\0')
        return FALSE;
    *ret_value = value;
    return TRUE;
}
