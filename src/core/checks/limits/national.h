/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which guide values and laws of single countries are known?
 * Answer:    the rows of lists/limits_national.def, and one of them by its words.
 * Not here:  any check; the sets made of them (national_sets.h). */
#ifndef HS_NATIONAL_H
#define HS_NATIONAL_H

#include "sources.h"
#include "status.h"

/* Words as in the list; data, not sentences. */
typedef struct {
    const char *place, *what, *who, *condition;
    double figure;
    const char *unit; /* "": a share */
    hs_source_id source;
} hs_national;

int hs_national_count(void);
const hs_national *hs_national_row(int i);

/* The row of these words; NULL where there is none. */
const hs_national *
hs_national_find(const char *place, const char *what, const char *who, const char *condition);
/* The row's figure; HS_ABSENT where there is none of these words. */
double
hs_national_figure(const char *place, const char *what, const char *who, const char *condition);

#endif
