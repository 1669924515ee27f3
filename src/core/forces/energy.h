/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much of its battery does a suit use, and how long does a charge last?
 * Answer:    hs_energy_sum() from the lifts and holds of one cycle.
 * Not here:  what a cycle asks of the drives (checks/suit_energy.c), the wearer's own effort (body/metabolic.c). */
#ifndef HS_ENERGY_H
#define HS_ENERGY_H

#include "task.h"
#include "working.h"

/* One work cycle as the suit's drives see it. */
typedef struct {
    double lift_J;   /* m g x rise, in the load, before the efficiency */
    double hold_Nms; /* hand force x reach, over the time it is held and not locked */
    double cycles_per_h;
    double hours; /* of the shift */
    double worst_hold_Nm,
        worst_to_set_down_s; /* place farthest, in energy, from where it can be set down */
} hs_energy_cycle;

typedef struct {
    double idle_Wh, lift_Wh, hold_Wh; /* per hour */
    double hour_Wh, shift_Wh, limit_Wh;
    double hours_a_charge, cycles_a_charge;
    double n_swaps;     /* battery changes within the shift */
    double reserve_Wh;  /* kept back by `reserve` */
    double set_down_Wh; /* needed to set down from the worst place */
} hs_energy;

/**
 * hs_energy_sum - watt hours an hour, a shift, hours and cycles a charge
 *
 * What    idle x 1 h + m g x rise / efficiency + hold_W_per_Nm x hand force x reach while held
 * In      suit with its power; cycle
 * Out     *ret_energy; HS_E_RANGE where a figure of the suit's power is absent, nothing written
 * Frame   none
 * Errors  HS_E_RANGE naming the suit's key
 * Source  HS_SRC_suit_energy_sum
 */
hs_status hs_energy_sum(const hs_suit *suit,
                        const hs_energy_cycle *cycle,
                        hs_working *working,
                        hs_energy *ret_energy,
                        hs_error *error);

/* Power that an electric drive takes to hold a torque, from the maker's figure measured at another: it grows with the square. */
double hs_energy_square_W(double hold_W_per_Nm, double measured_at_Nm, double torque_Nm);

#endif
