/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much of its battery does a suit use, and how long does a charge last?
 * Answer:    idle + lift + hold per hour, by the suit's own figures; lowering gives nothing back.
 * Not here:  what a cycle asks of the drives (checks/suit_energy.c), the wearer's own effort (body/metabolic.c).
 *
 * hold_W_per_Nm is linear in torque while the loss in a drive grows with its square: measured at a light hold it
 * understates a heavy one. The figure belongs to the heaviest load of the route (docs/suit.md). */
#include "energy.h"

#include "units.h"

static hs_status
require(const hs_suit *suit, hs_error *error)
{
    if (!suit->has_power)
        return hs_refuse(error, "power", HS_ABSENT, 0.0, INFINITY);
    if (!hs_has(suit->idle_W))
        return hs_refuse(error, "power.idle_W", suit->idle_W, 0.0, INFINITY);
    if (!hs_has(suit->hold_W_per_Nm))
        return hs_refuse(error, "power.hold_W_per_Nm", suit->hold_W_per_Nm, 0.0, INFINITY);
    if (!(suit->lift_efficiency > 0.0))
        return hs_refuse(error, "power.lift_efficiency", suit->lift_efficiency, 0.0, 1.0);
    if (!(suit->battery_Wh > 0.0))
        return hs_refuse(error, "power.battery_Wh", suit->battery_Wh, 0.0, INFINITY);
    return HS_OK;
}

static void
write_sum(const hs_suit *suit,
          const hs_energy_cycle *cycle,
          const hs_energy *sum,
          hs_working *working)
{
    double reserve = hs_or(suit->reserve, 0.0);

    HS_WORK(working, energy_lift, sum->lift_Wh, "Wh", {"mgh", cycle->lift_J, "J"},
            {"eff", suit->lift_efficiency, ""}, {"n", cycle->cycles_per_h, "1/h"});
    HS_WORK(working, energy_hold, sum->hold_Wh, "Wh", {"w", suit->hold_W_per_Nm, "W/Nm"},
            {"FRt", cycle->hold_Nms, "Nms"}, {"n", cycle->cycles_per_h, "1/h"});
    HS_WORK(working, energy_hour, sum->hour_Wh, "Wh", {"idle", sum->idle_Wh, "Wh"},
            {"lift", sum->lift_Wh, "Wh"}, {"hold", sum->hold_Wh, "Wh"});
    HS_WORK(working, energy_shift, sum->shift_Wh, "Wh", {"hour", sum->hour_Wh, "Wh"},
            {"hours", cycle->hours, "h"});
    HS_WORK(working, energy_limit, sum->limit_Wh, "Wh", {"battery", suit->battery_Wh, "Wh"},
            {"reserve", reserve, ""});
    HS_WORK(working, energy_set_down, sum->set_down_Wh, "Wh",
            {"P", suit->hold_W_per_Nm * cycle->worst_hold_Nm, "W"}, {"idle", suit->idle_W, "W"},
            {"T", cycle->worst_to_set_down_s, "s"});
    HS_WORK(working, energy_hours, sum->hours_a_charge, "h", {"limit", sum->limit_Wh, "Wh"},
            {"hour", sum->hour_Wh, "Wh/h"});
    HS_WORK(working, energy_cycles, sum->cycles_a_charge, "", {"T", sum->hours_a_charge, "h"},
            {"n", cycle->cycles_per_h, "1/h"});
    if (hs_has(suit->swap_min))
        HS_WORK(working, energy_swap_min, suit->swap_min / sum->hours_a_charge, "min/h",
                {"swap", suit->swap_min, "min"}, {"T", sum->hours_a_charge, "h"});
    if (reserve < 1.0)
        HS_WORK(working, energy_battery, sum->shift_Wh / (1.0 - reserve), "Wh",
                {"hour", sum->hour_Wh, "Wh/h"}, {"hours", cycle->hours, "h"},
                {"reserve", reserve, ""});
}

double
hs_energy_square_W(double hold_W_per_Nm, double measured_at_Nm, double torque_Nm)
{
    return hold_W_per_Nm * torque_Nm * torque_Nm / measured_at_Nm;
}

hs_status
hs_energy_sum(const hs_suit *suit,
              const hs_energy_cycle *cycle,
              hs_working *working,
              hs_energy *ret_energy,
              hs_error *error)
{
    double reserve = hs_or(suit->reserve, 0.0);
    hs_energy sum = {0};

    HS_TRY(require(suit, error));
    sum.idle_Wh = suit->idle_W;
    sum.lift_Wh = cycle->lift_J / suit->lift_efficiency * cycle->cycles_per_h / HS_J_PER_Wh;
    sum.hold_Wh = suit->hold_W_per_Nm * cycle->hold_Nms * cycle->cycles_per_h / HS_J_PER_Wh;
    sum.hour_Wh = sum.idle_Wh + sum.lift_Wh + sum.hold_Wh;
    sum.shift_Wh = sum.hour_Wh * cycle->hours;
    sum.limit_Wh = suit->battery_Wh * (1.0 - reserve);
    sum.reserve_Wh = suit->battery_Wh * reserve;
    sum.hours_a_charge = sum.limit_Wh / sum.hour_Wh;
    sum.cycles_a_charge = sum.hours_a_charge * cycle->cycles_per_h;
    /* A charge that lasts the shift to the last minute needs no change. */
    sum.n_swaps = fmax(ceil(sum.shift_Wh / sum.limit_Wh - HS_SAME_PLACE_m) - 1.0, 0.0);
    sum.set_down_Wh = (suit->hold_W_per_Nm * cycle->worst_hold_Nm + suit->idle_W) *
                      cycle->worst_to_set_down_s / HS_J_PER_Wh;
    write_sum(suit, cycle, &sum, working);
    if (suit->hold_at_Nm > 0.0 && cycle->worst_hold_Nm > 0.0)
        HS_WORK(working, energy_square,
                hs_energy_square_W(suit->hold_W_per_Nm, suit->hold_at_Nm, cycle->worst_hold_Nm),
                "W", {"w", suit->hold_W_per_Nm, "W/Nm"}, {"T", cycle->worst_hold_Nm, "Nm"},
                {"T0", suit->hold_at_Nm, "Nm"});
    *ret_energy = sum;
    return HS_OK;
}
