/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does a load slide out of the cradles it rests in?
 * Answer:    hs_grip_judge_slide(): friction needed along its base against the friction that is stated.
 * Not here:  pads, handles, ratings (grip_checks.c). */
#include "grip_figures.h"
#include "units.h"

/* What a cradle or an end piece's cradle under the load gives against sliding; HS_ABSENT when it is not stated. */
static double
cradle_friction(const hs_setup *setup, int used)
{
    const hs_grip *grip = &setup->task->load.grips[setup->used[used]];
    const hs_effector *effector = setup->bearers[setup->used_by[used]].effector;

    if (hs_has(grip->friction))
        return grip->friction;
    return effector != NULL && effector->kind == HS_EFFECTOR_CRADLE ? effector->friction
                                                                    : HS_ABSENT;
}

void
hs_grip_judge_slide(const hs_asking *asking,
                    int station,
                    double slip_factor,
                    hs_finding *finding)
{
    const hs_setup *setup = asking->run->setup;
    const hs_place *place = &asking->run->stations[station].place;
    double least = (double)INFINITY, need;
    int at = -1;

    for (int i = 0; i < setup->n_used; i++) {
        double friction = cradle_friction(setup, i);

        if (asking->task->load.grips[setup->used[i]].kind != HS_GRIP_CRADLE)
            return;
        if (hs_has(friction) && friction < least) {
            least = friction;
            at = i;
        }
    }
    need = hs_rest_friction(&place->load_to_world, place->cg_acc_m_s2.x,
                            HS_GRAVITY_m_s2 + place->cg_acc_m_s2.z);
    if (at < 0 || !(need > least / slip_factor))
        return;
    hs_finding_at(finding, asking->run, station, setup->used_by[at]);
    finding->source = HS_SRC_coulomb_pads;
    finding->confidence = HS_CONF_DERIVED;
    finding->why = HS_WHY_COMPUTED;
    finding->status = HS_STATUS_NEAR;
    finding->text = HS_SAY(grip_cradle_slides, need, least, slip_factor);
    finding->text.name[0] = asking->task->load.grips[setup->used[at]].id;
    finding->remedy = HS_SAY(grip_cradle_fix, hs_friction_up(need * slip_factor));
    HS_WORK(&finding->working, grip_cradle_ratio, need * slip_factor / least, "",
            {"need", need, ""}, {"s", slip_factor, ""}, {"mu", least, ""});
}
