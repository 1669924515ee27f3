/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a formula give when its symbols are replaced by printed numbers?
 * Answer:    hs_formula_substitute() replaces, hs_formula_value() evaluates what is then there.
 * Not here:  which formulas there are (core, lists/equations.def). */
#ifndef HS_FORMULA_H
#define HS_FORMULA_H

#include <glib.h>

/* The right-hand side of "result = expression". */
const char *hs_formula_expression(const char *formula);

/**
 * hs_formula_substitute - put printed numbers in the place of symbols
 *
 * What    every identifier that is one of the symbols is replaced by its number, in brackets where it is negative;
 *         functions and pi stay
 * In      n symbols and their numbers as text, locale-free
 * Out     a new string
 * Frame   none
 * Errors  none: a symbol without a number stays
 * Source  none
 */
char *hs_formula_substitute(const char *expression,
                            int n,
                            const char *const *symbols,
                            const char *const *numbers);

/* Value of an expression of numbers; FALSE when it is not one (a symbol is left, a bracket is
 * missing). */
gboolean hs_formula_value(const char *expression, double *ret_value);

#endif
