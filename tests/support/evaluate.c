/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a printed working give its printed result?
 * Answer:    two stacks (numbers, operators), so that it shares no idea with the program's recursive reader.
 * Not here:  printing (model/words_working.c). */
#include "evaluate.h"

#include <math.h>
#include <string.h>

#define DEEP 64

typedef struct {
    double number[DEEP];
    char op[DEEP];       /* + - * / ^ n (minus sign), ( and f for a function's bracket */
    char name[DEEP][12]; /* of the function at f */
    int commas[DEEP];    /* arguments after the first, at f */
    int n_numbers, n_ops;
    gboolean bad;
} stacks;

static int
strength_of(char op)
{
    return op == '^'                ? 4
           : op == 'n'              ? 3
           : op == '*' || op == '/' ? 2
           : op == '+' || op == '-' ? 1
                                    : 0;
}

static double
pop(stacks *s)
{
    if (s->n_numbers == 0) {
        s->bad = TRUE;
        return 0.0;
    }
    return s->number[--s->n_numbers];
}

static void
push(stacks *s, double value)
{
    if (s->n_numbers == DEEP)
        s->bad = TRUE;
    else
        s->number[s->n_numbers++] = value;
}

static void
apply(stacks *s, char op)
{
    double right = pop(s), left = op == 'n' ? 0.0 : pop(s);

    push(s, op == '+'   ? left + right
            : op == '-' ? left - right
            : op == '*' ? left * right
            : op == '/' ? left / right
            : op == '^' ? pow(left, right)
                        : -right);
}

static void
apply_function(stacks *s, const char *name, int n_arguments)
{
    double x = pop(s);

    if (strcmp(name, "min") == 0 || strcmp(name, "max") == 0) {
        for (; n_arguments > 1; n_arguments--) {
            double y = pop(s);

            x = (name[1] == 'i') == (y < x) ? y : x;
        }
        push(s, x);
        return;
    }
    if (strcmp(name, "atan2") == 0)
        push(s, atan2(pop(s), x));
    else
        push(s, strcmp(name, "sqrt") == 0   ? sqrt(x)
                : strcmp(name, "sin") == 0  ? sin(x)
                : strcmp(name, "cos") == 0  ? cos(x)
                : strcmp(name, "tan") == 0  ? tan(x)
                : strcmp(name, "asin") == 0 ? asin(x)
                : strcmp(name, "acos") == 0 ? acos(x)
                : strcmp(name, "atan") == 0 ? atan(x)
                : strcmp(name, "abs") == 0  ? fabs(x)
                : strcmp(name, "exp") == 0  ? exp(x)
                : strcmp(name, "ln") == 0   ? log(x)
                                            : (double)NAN);
}

/* Operators down to the open bracket. */
static void
unwind(stacks *s)
{
    while (s->n_ops > 0 && strength_of(s->op[s->n_ops - 1]) > 0)
        apply(s, s->op[--s->n_ops]);
}

static void
take_operator(stacks *s, char op)
{
    int mine = strength_of(op);

    while (op != 'n' && s->n_ops > 0 &&
           strength_of(s->op[s->n_ops - 1]) >= mine + (op == '^' ? 1 : 0))
        apply(s, s->op[--s->n_ops]);
    if (s->n_ops == DEEP)
        s->bad = TRUE;
    else
        s->op[s->n_ops++] = op;
}

static const char *
take_word(stacks *s, const char *at)
{
    gsize n = strspn(at, "abcdefghijklmnopqrstuvwxyz0123456789");

    if (n == 2 && strncmp(at, "pi", 2) == 0) {
        push(s, acos(-1.0));
        return at + n;
    }
    if (n == 0 || n >= 12 || at[n] != '(' || s->n_ops == DEEP) {
        s->bad = TRUE;
        return at + 1;
    }
    memcpy(s->name[s->n_ops], at, n);
    s->name[s->n_ops][n] = '\0';
    s->commas[s->n_ops] = 0;
    s->op[s->n_ops++] = 'f';
    return at + n + 1;
}

static void
close_bracket(stacks *s)
{
    unwind(s);
    if (s->n_ops == 0) {
        s->bad = TRUE;
        return;
    }
    s->n_ops--;
    if (s->op[s->n_ops] == 'f')
        apply_function(s, s->name[s->n_ops], s->commas[s->n_ops] + 1);
}

double
hs_evaluate(const char *expression)
{
    stacks s = {0};
    gboolean wants_operand = TRUE;

    for (const char *at = expression; *at != '\0' && !s.bad;) {
        if (*at == ' ') {
            at++;
        } else if (g_ascii_isdigit(*at) || *at == '.') {
            char *end;

            push(&s, g_ascii_strtod(at, &end));
            at = end;
            wants_operand = FALSE;
        } else if (g_ascii_isalpha(*at)) {
            const char *after = take_word(&s, at);

            wants_operand = after[-1] == '(';
            at = after;
        } else if (*at == '(') {
            s.op[s.n_ops++] = '(';
            s.bad = s.n_ops == DEEP;
            at++;
        } else if (*at == ')' || *at == ',') {
            if (*at == ')') {
                close_bracket(&s);
            } else {
                unwind(&s);
                if (s.n_ops == 0 || s.op[s.n_ops - 1] != 'f')
                    s.bad = TRUE;
                else
                    s.commas[s.n_ops - 1]++;
            }
            wants_operand = *at == ',';
            at++;
        } else if (strchr("+-*/^", *at) != NULL) {
            if (wants_operand && *at == '-')
                take_operator(&s, 'n');
            else if (!wants_operand)
                take_operator(&s, *at);
            else
                s.bad = *at != '+';
            wants_operand = TRUE;
            at++;
        } else {
            s.bad = TRUE;
        }
    }
    unwind(&s);
    return s.bad || s.n_ops != 0 || s.n_numbers != 1 ? (double)NAN : s.number[0];
}

/* Half of the last digit of a number as printed: "1.50" 0.005, "1.5e-05" 0.05e-05. */
static double
half_digit(const char *number)
{
    const char *exponent = strpbrk(number, "eE");
    gsize length = exponent != NULL ? (gsize)(exponent - number) : strlen(number);
    const char *point = memchr(number, '.', length);
    double scale = exponent != NULL ? pow(10.0, g_ascii_strtod(exponent + 1, NULL)) : 1.0;
    int decimals = point != NULL ? (int)(length - (gsize)(point - number)) - 1 : 0;

    return 0.5 * pow(10.0, -decimals) * scale;
}

gboolean
hs_evaluate_line(const char *line, char **ret_why)
{
    const char *first = strstr(line, " = "), *last = g_strrstr(line, " = ");
    g_autofree char *expression = NULL, *number = NULL;
    double got, printed;

    if (first == NULL || first == last) {
        *ret_why = g_strdup_printf("no \"name = expression = number\": %s", line);
        return FALSE;
    }
    expression = g_strndup(first + 3, (gsize)(last - first) - 3);
    number = g_strndup(last + 3, strspn(last + 3, "0123456789.eE+-"));
    got = hs_evaluate(expression);
    printed = g_ascii_strtod(number, NULL);
    /* A tie may fall either way: a hair more than half a digit. */
    if (fabs(got - printed) <= half_digit(number) * (1.0 + 1e-6) + fabs(printed) * 1e-12)
        return TRUE;
    *ret_why = g_strdup_printf("%s gives %.12g, printed is %s", expression, got, number);
    return FALSE;
}
