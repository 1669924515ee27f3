/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a printed working give its printed result?
 * Answer:    hs_evaluate() reads "R = 2*3/4 = 1.5 N" and does the arithmetic anew, with nothing of the program's own.
 * Not here:  printing (model/words_working.c). */
#ifndef HS_EVALUATE_H
#define HS_EVALUATE_H

#include <glib.h>

/* Value of an expression of numbers and functions; NAN when it is not one. */
double hs_evaluate(const char *expression);

/* TRUE when the last "= number" of a line is what the expression before it gives, to the last digit printed. On FALSE *ret_why
 * (free it) says what came out. */
gboolean hs_evaluate_line(const char *line, char **ret_why);

#endif
