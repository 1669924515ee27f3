/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which figures of published limits does the program hold?
 * Answer:    every one with its check, unit, source and how it is known; and the checks that take a site's own figure.
 * Not here:  writing them down (model/limits_json.c). */
#ifndef HS_FIGURES_H
#define HS_FIGURES_H

#include "result.h"

typedef struct {
    hs_check_id check;
    const char *name;
    double value;
    const char *unit;
    hs_source_id source;
    hs_confidence known;
} hs_limit_figure;

typedef void (*hs_limit_figure_visit)(const hs_limit_figure *figure, void *data);

/* In the order of lists/limit_figures.def, then the rows of the tables. */
void hs_limit_figures_each(hs_limit_figure_visit visit, void *data);

typedef enum {
    HS_OWN_NOT = 0,
    HS_OWN_BY_ALL,
    HS_OWN_BY_PERSON,
    HS_OWN_BY_LEG
} hs_own_by;

/* By what the figures that a set has for this check may differ. */
hs_own_by hs_limit_own_by(hs_check_id check);
/* Does policy.site_limits with this check's id replace the published figure? */
bool hs_limit_takes_own(hs_check_id check);

#endif
