/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does an option cost in an hour?
 * Answer:    mass moved, metabolic rate, minutes of work; the figures of results.totals.
 * Not here:  the suit's own energy (suit_energy.h), limits on any of them (limits/). */
#ifndef HS_TOTALS_H
#define HS_TOTALS_H

#include "run.h"

/* Of the bearer who has most; HS_ABSENT where a body mass or a time is missing. */
double hs_day_metabolic_W(const hs_asking *asking);
/* Of one worker, the way back empty counting nothing. */
double hs_day_mass_kg_per_h(const hs_asking *asking);
/* All bearers together: cycle and walk back, donning and battery changes spread over the shift. */
double hs_day_worker_minutes_per_h(const hs_asking *asking);

#endif
