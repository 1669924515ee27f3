/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do ISO 11228-1 and EN 1005-2 allow one person to lift, and how much in a day?
 * Answer:    reference masses, factors, the shared equation with them, the table of cumulative mass.
 * Not here:  legs of a route and what is out of scope (limit_checks_iso_en.c), the multipliers (niosh.c). */
#ifndef HS_ISO11228_H
#define HS_ISO11228_H

#include "niosh.h"

#define HS_ISO_LIGHTEST_kg  3.0 /* scope, HS_SRC_iso_11228_1; the same in EN 1005-2 */
#define HS_ISO_SLOWEST_m_s  0.5
#define HS_ISO_FASTEST_m_s  1.0
#define HS_ISO_ONE_HAND     0.6  /* read for EN 1005-2, remembered for ISO 11228-1 */
#define HS_ISO_TWO_PERSONS  0.85 /* the same; each one's share is compared */
#define HS_EN_OTHER_TASK    0.8  /* HS_SRC_en_1005_2 */
#define HS_EN_ADULTS_kg     25.0 /* mass constant for adults at work: remembered */
#define HS_EN_CARRY_UNDER_m 2.0  /* scope */
#define HS_EN_TOLERABLE     0.85 /* bands of the risk index: remembered */
#define HS_EN_REDESIGN      1.0

/* 2021: 25/20 kg men, 20/15 kg women; the higher from 20 to 45 years (the ages are remembered). */
double hs_iso11228_reference_kg(hs_sex sex, double age_years);

/* reference x multipliers x factors; the answer's multipliers as of niosh.c. */
double
hs_iso11228_limit_kg(double reference_kg, const hs_niosh_answer *multipliers, double factor);

typedef struct {
    double carry_m, per_min_kg, per_h_kg, per_8h_kg;
} hs_iso11228_day;

/* Row of table 1 (2003) for a way: the next longer one; NULL beyond 20 m. HS_SRC_iso_11228_1_day, remembered. */
const hs_iso11228_day *hs_iso11228_day_of(double carry_m);

typedef enum {
    HS_EN_BAND_TOLERABLE = 1,
    HS_EN_BAND_SIGNIFICANT,
    HS_EN_BAND_REDESIGN
} hs_en1005_band;

hs_en1005_band hs_en1005_band_of(double risk_index);

#endif
