/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how tall and how heavy are small, middle and large people?
 * Answer:    hs_body_size_get(): percentiles of one named survey, to be entered for a worker.
 * Not here:  what follows from them (segments.c). */
#ifndef HS_SIZES_H
#define HS_SIZES_H

#include "sources.h"
#include "task.h"

/* Stature and mass of one percentile, each by itself: a person who has both is rarer than the percentile says. */
typedef struct {
    hs_sex sex;
    double percentile, stature_m, mass_kg;
    hs_source_id source;
} hs_body_size;

/* The sizes in the order of the list; NULL past its end. */
const hs_body_size *hs_body_size_get(int index);
/* The one that a worker has to the last digit; -1: none. */
int hs_body_size_find(hs_sex sex, double stature_m, double mass_kg);

#endif
