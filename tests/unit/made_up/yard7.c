/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the invented Yard rule 7 allow one standing person to lift?
 * Answer:    a mass by the height of the hands, and its check: all that a new limit adds beside its lines in the lists.
 * Not here:  the words (none: this limit is only built by the test). */
#include "yard7.h"

#include "check.h"
#include "legs.h"

double
hs_yard7_kg(double hand_height_m)
{
    static const struct {
        double to_m, kg;
    } rows[] = {
#define YARD_7(to, mass) {to, mass},
#include "lists/limits_yard7.def"
#undef YARD_7
    };

    for (int i = 0; i < (int)(sizeof rows / sizeof *rows); i++)
        if (hand_height_m <= rows[i].to_m + 1e-9)
            return rows[i].kg;
    return HS_ABSENT;
}

static void
judge(const hs_asking *asking, const hs_limit_leg *leg, hs_finding *candidate)
{
    double high_m = fmax(leg->height_m[0], leg->height_m[1]), row_kg = hs_yard7_kg(high_m);
    hs_message scope = hs_limit_scope_words(asking, leg, true);

    candidate->source = HS_SRC_yard_7;
    candidate->confidence = HS_CONF_SEEN;
    if (hs_limit_judge_site(asking, candidate, leg))
        return;
    if (scope.reason != HS_REASON_none) {
        hs_finding_scope(candidate, leg->held_kg, scope);
        return;
    }
    if (!hs_has(row_kg)) {
        hs_finding_scope(candidate, leg->held_kg, HS_SAY(yard_high, high_m));
        return;
    }
    HS_WORK(&candidate->working, yard_limit, row_kg, "kg", {"row", row_kg, "kg"},
            {"f", 1.0, ""});
    candidate->text = HS_SAY(yard_is, leg->held_kg, row_kg, high_m);
    hs_finding_judge(candidate, leg->held_kg, row_kg, asking->near_ratio);
    hs_limit_remedy_mass(asking, candidate);
}

void
hs_check_lift_yard_7(const hs_asking *asking, hs_finding *finding)
{
    if (!hs_criterion_on(asking->task, "yard-7"))
        return;
    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        const hs_limit_leg *legs;
        int n = hs_limit_legs(asking, b, &legs);

        for (int i = 0; i < n; i++) {
            hs_finding candidate = hs_finding_start(asking, HS_CHECK_lift_yard_7);

            if (!hs_limit_leg_lifts(&legs[i]))
                continue;
            judge(asking, &legs[i], &candidate);
            hs_limit_keep(asking, finding, &candidate, &legs[i], 0);
        }
    }
}
