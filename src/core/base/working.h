/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how was a figure worked out?
 * Answer:    lines of formula (one of lists/equations*.def), terms with numbers, and the result.
 * Not here:  printing (model/results_text.c puts the terms' numbers in place of the symbols).
 *
 * Formula text is plain: identifiers, numbers, + - * / ^ ( ), sqrt sin cos tan atan atan2 asin acos min max abs exp ln;
 * angles in rad unless the term's unit is "deg", then sin(t*pi/180) is written out. "result = expression". Each identifier
 * of the expression is a term; tests re-evaluate every line from its printed numbers. */
#ifndef HS_WORKING_H
#define HS_WORKING_H

#include "arena.h"
#include "sources.h"

typedef enum {
    HS_EQ_none = 0,
#define EQ(id, formula, source) HS_EQ_##id,
#include "lists/equations.def"
#undef EQ
    HS_N_EQUATIONS
} hs_equation_id;

typedef struct {
    const char *id, *formula;
    hs_source_id source;
} hs_equation;

const hs_equation *hs_equation_get(hs_equation_id id);

typedef struct {
    const char *symbol;
    double value;
    const char *unit; /* "N", "m", "kg", "deg", "" ... */
} hs_term;

typedef struct hs_working_line hs_working_line;
struct hs_working_line {
    hs_equation_id equation;
    int n_terms;
    const hs_term *terms;
    double result;
    const char *unit;
    hs_working_line *next;
};

typedef struct {
    hs_arena *arena; /* NULL: recording is off */
    hs_working_line *first, *last;
    int n_lines;
} hs_working;

/**
 * hs_working_add - record one line: equation, terms, result
 *
 * What    copies terms into the working's arena; does nothing when working or its arena is NULL, or when a figure is absent:
 *         such a line could not be redone
 * In      terms in the order of the formula; strings must be static or live as long as the arena
 * Out     working grows by one line
 * Frame   none
 * Errors  none
 * Source  none
 */
void hs_working_add(hs_working *working,
                    hs_equation_id equation,
                    const hs_term *terms,
                    int n_terms,
                    double result,
                    const char *unit);

#define HS_WORK(working, eq, result, unit, ...)                                                \
    hs_working_add((working), HS_EQ_##eq, (const hs_term[]){__VA_ARGS__},                      \
                   (int)(sizeof((const hs_term[]){__VA_ARGS__}) / sizeof(hs_term)), (result),  \
                   (unit))

#endif
