/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how was a figure worked out?
 * Answer:    a list of lines in the arena.
 * Not here:  printing (model/results_text.c). */
#include "working.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

static const hs_equation table[HS_N_EQUATIONS] = {
    {"none", "", HS_SRC_none},
#define EQ(id, formula, source) {#id, formula, HS_SRC_##source},
#include "lists/equations.def"
#undef EQ
};

const hs_equation *
hs_equation_get(hs_equation_id id)
{
    return &table[id < HS_N_EQUATIONS ? id : HS_EQ_none];
}

/* An absent figure is no line; an infinite one is a fault, which the door of the results tells (pack.c). */
static bool
is_known(const hs_term *terms, int n_terms, double result)
{
    for (int i = 0; i < n_terms; i++)
        if (isnan(terms[i].value))
            return false;
    return !isnan(result);
}

void
hs_working_add(hs_working *working,
               hs_equation_id equation,
               const hs_term *terms,
               int n_terms,
               double result,
               const char *unit)
{
    hs_working_line *line;
    hs_term *copy;

    if (working == NULL || working->arena == NULL || !is_known(terms, n_terms, result))
        return;
    line = HS_NEW(working->arena, hs_working_line, 1);
    copy = HS_NEW(working->arena, hs_term, n_terms);
    memcpy(copy, terms, (size_t)n_terms * sizeof *copy);
    line->equation = equation;
    line->n_terms = n_terms;
    line->terms = copy;
    line->result = result;
    line->unit = unit;
    if (working->last != NULL)
        working->last->next = line;
    else
        working->first = line;
    working->last = line;
    working->n_lines++;
}
