/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which sets of single countries' figures can be chosen, and for whom and what is each figure?
 * Answer:    hs_national_set_get(), hs_national_entry_get(): what data/limits/national is made from.
 * Not here:  titles and wordings (model/words_national.h). */
#ifndef HS_NATIONAL_SETS_H
#define HS_NATIONAL_SETS_H

#include "national.h"
#include "result.h"
#include "task.h"

typedef struct {
    const char *id, *edition, *place; /* place: as in limits_national.def */
} hs_national_set;

typedef struct {
    int set;
    hs_check_id check;
    const char *what, *who, *condition; /* of its row */
    double factor;                      /* from the row's unit to the check's */
    hs_site_when when;
} hs_national_entry;

int hs_national_set_count(void);
const hs_national_set *hs_national_set_get(int i);
int hs_national_entry_count(void);
const hs_national_entry *hs_national_entry_get(int i);
/* Its row of limits_national.def; NULL only while the two lists disagree (a test looks). */
const hs_national *hs_national_entry_row(const hs_national_entry *entry);

#endif
