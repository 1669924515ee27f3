/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much does a shift load the low back beside today's way?
 * Answer:    hs_check_day_spine(): compression summed over the time held. No published limit belongs to such a sum, so it is
 *            never judged: today's figure is given beside it.
 * Not here:  the largest compression (body_checks.c), mass and energy of the day (limits). */
#include "body_remedy.h"
#include "units.h"

/* Newton seconds of one cycle for one bearer; HS_ABSENT when a posture or a figure is missing on the way. */
static double
cycle_Ns(const hs_run *run, int b)
{
    double sum = 0.0;

    for (int s = 1; s < run->n_stations; s++) {
        const hs_station *from = &run->stations[s - 1], *to = &run->stations[s];
        double dt_s = to->place.t_s - from->place.t_s;

        if (dt_s > 0.0)
            sum += 0.5 * dt_s *
                   (from->bearers[b].body.compression_N + to->bearers[b].body.compression_N);
    }
    return sum;
}

static double
worst_cycle_Ns(const hs_run *run, int *ret_bearer)
{
    double worst = HS_ABSENT;

    *ret_bearer = -1;
    for (int b = 0; b < run->setup->n_bearers; b++) {
        double here = cycle_Ns(run, b);

        if (!hs_has(here))
            return HS_ABSENT;
        if (!(worst >= here)) {
            worst = here;
            *ret_bearer = b;
        }
    }
    return worst;
}

void
hs_check_day_spine(const hs_asking *asking, hs_finding *finding)
{
    const hs_work *work = &asking->task->work;
    double per_hour = hs_or(work->cycles_per_hour, 1.0), hours = hs_or(work->hours, 1.0);
    int bearer, other;
    double cycle = worst_cycle_Ns(asking->run, &bearer), today = HS_ABSENT, value_Nh;

    finding->source = HS_SRC_spine_dose;
    finding->confidence = HS_CONF_DERIVED;
    if (!hs_has(cycle)) {
        hs_finding_scope(finding, HS_ABSENT, HS_SAY(dose_none));
        return;
    }
    value_Nh = cycle * per_hour * hours / HS_J_PER_Wh;
    HS_WORK(&finding->working, body_dose, value_Nh, "Nh", {"E", cycle, "Ns"},
            {"n", per_hour, "/h"}, {"h", hours, "h"});
    if (asking->baseline != NULL && asking->baseline != asking->run)
        today = worst_cycle_Ns(asking->baseline, &other) * per_hour * hours / HS_J_PER_Wh;
    if (!hs_has(today)) {
        hs_finding_scope(finding, value_Nh, HS_SAY(dose_is, value_Nh));
    } else {
        hs_finding_scope(finding, value_Nh,
                         HS_SAY(dose_more, value_Nh, today, value_Nh / today));
        if (value_Nh <= today)
            finding->text.reason = HS_REASON_dose_less;
        finding->limit = today;
    }
    finding->bearer = bearer;
}
