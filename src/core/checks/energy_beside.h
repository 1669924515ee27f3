/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would the other published equations say of the carrying?
 * Answer:    hs_energy_beside(): each of them by name, for the longest carry leg of one bearer, as lines of working.
 * Not here:  the equations (body/metabolic.c), the day's mean and its limit (limit_checks_day.c). */
#ifndef HS_ENERGY_BESIDE_H
#define HS_ENERGY_BESIDE_H

#include "check.h"

/* worn_kg: what of the suit's mass the wearer carries. Nothing without a carry leg or a known load. */
void hs_energy_beside(const hs_asking *asking, int bearer, double worn_kg, hs_working *working);

#endif
