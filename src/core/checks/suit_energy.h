/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does one work cycle ask of a suit's drives and battery?
 * Answer:    hs_energy_cycle_of() for one bearer, hs_energy_Wh_per_h() for an option.
 * Not here:  the sum over an hour and a shift (forces/energy.c). */
#ifndef HS_SUIT_ENERGY_H
#define HS_SUIT_ENERGY_H

#include "energy.h"
#include "run.h"

/**
 * hs_energy_cycle_of - what one bearer's suit does in one cycle
 *
 * What    rise of each leg by the bearer's mass at rest; hand force x reach summed over time, trapezoids
 * In      a run with hand forces
 * Out     *ret_cycle
 * Frame   world
 * Errors  none
 * Source  file format, section suit.energy
 */
void hs_energy_cycle_of(const hs_run *run, int bearer, hs_energy_cycle *ret_cycle);

/* All powered suits of the option, Wh an hour; 0 without one, HS_ABSENT where a suit's power is not given. */
double hs_energy_Wh_per_h(const hs_asking *asking);

#endif
