/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who gets the wearer out of a dead or fallen suit, and how long does it take?
 * Answer:    hs_check_rescue(): within where a role names the rescuer and the helper's time is given, else near at most.
 * Not here:  the load while the power is gone (power_loss_check.c). */
#include "check.h"
#include "decide_roles.h"
#include "loss_beside.h"
#include "units.h"

#define DRAG_FRICTION                                                                          \
    0.5 /* clothing on a floor, an example figure: HS_SRC_suit_drag speaks of grass; common practice */

static void
write_drag(double down_kg, double drag_N, hs_finding *finding)
{
    HS_WORK(&finding->working, rescue_drag, drag_N, "N", {"mu", DRAG_FRICTION, ""},
            {"m", down_kg, "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"});
    HS_WORK(&finding->working, rescue_drag_least,
            drag_N / sqrt(1.0 + DRAG_FRICTION * DRAG_FRICTION), "N", {"mu", DRAG_FRICTION, ""},
            {"m", down_kg, "kg"}, {"g", HS_GRAVITY_m_s2, "m/s2"});
}

static void
judge(const hs_asking *asking, int b, hs_finding *finding)
{
    const hs_suit *suit = asking->run->setup->bearers[b].suit;
    const char *rescuer = hs_roles_person_for(asking, HS_ROLE_RESCUES);
    double down_kg = asking->run->persons[b].mass_kg + hs_or(suit->mass_kg, 0.0);
    double drag_N = DRAG_FRICTION * down_kg * HS_GRAVITY_m_s2;
    double exit_m = asking->task->site.exit_m;
    double out_s =
        hs_rescue_out_s(suit->release_helper_s, asking->run->persons[b].mass_kg, exit_m);

    finding->bearer = b;
    finding->source = HS_SRC_suit_data;
    if (!hs_has(suit->release_helper_s)) {
        hs_finding_missing(finding, HS_SAY(rescue_missing));
        return;
    }
    finding->why = HS_WHY_COMPUTED;
    finding->value = suit->release_helper_s;
    finding->status = rescuer != NULL ? HS_STATUS_WITHIN : HS_STATUS_NEAR;
    finding->text = HS_SAY(none, suit->release_helper_s, down_kg, drag_N, exit_m, out_s);
    if (rescuer != NULL) {
        finding->text.reason =
            hs_has(out_s) ? HS_REASON_rescue_within_out : HS_REASON_rescue_within;
        finding->text.name[0] = rescuer;
    } else {
        finding->text.reason =
            hs_has(out_s) ? HS_REASON_rescue_no_helper_out : HS_REASON_rescue_no_helper;
        finding->remedy = HS_SAY(rescue_remedy, suit->release_helper_s);
    }
    write_drag(down_kg, drag_N, finding);
    if (!asking->is_live)
        hs_rescue_write_way_out(suit, asking->run->persons[b].mass_kg, exit_m,
                                &finding->working);
}

void
hs_check_rescue(const hs_asking *asking, hs_finding *finding)
{
    hs_finding worst = *finding;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_suit *suit = asking->run->setup->bearers[b].suit;
        hs_finding candidate = *finding;

        if (suit == NULL || !hs_suit_model_of(suit)->has_power)
            continue;
        judge(asking, b, &candidate);
        if (worst.status == HS_STATUS_NONE || hs_finding_worse(&candidate, &worst))
            worst = candidate;
    }
    *finding = worst;
}
