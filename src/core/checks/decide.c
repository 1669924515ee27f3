/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is the verdict?
 * Answer:    hs_decide(): the mapping of the file format, one readable table.
 * Not here:  findings (the checks), the twin without suits (assess.c). */
#include "decide.h"

#include "check.h"
#include "decide_roles.h"

#define CONDITIONS_MOST (2 * HS_N_CHECKS + 4)

/* An acute check that is within but worse than today's is a stated condition. */
static bool
is_acute(hs_check_id check)
{
    return check == HS_CHECK_strength || check == HS_CHECK_spine_compression ||
           check == HS_CHECK_spine_shear || check == HS_CHECK_balance ||
           check == HS_CHECK_grip_hold;
}

static bool
decides(const hs_finding *finding)
{
    return finding->status != HS_STATUS_NONE && finding->check != HS_CHECK_loss_bearer;
}

static bool
is_missing(const hs_finding *finding)
{
    return finding->status == HS_STATUS_NOT_JUDGED && finding->why == HS_WHY_MISSING;
}

static bool
is_worse_than_today(const hs_asking *asking, const hs_finding *finding)
{
    const hs_finding *today;

    if (asking->baseline_findings == NULL || !is_acute(finding->check) ||
        !hs_has(finding->ratio))
        return false;
    today = &asking->baseline_findings[finding->check];
    return hs_has(today->ratio) && finding->ratio > today->ratio + 1e-9;
}

static hs_message
say_near(const hs_finding *finding)
{
    hs_message said = {.reason = HS_REASON_condition_near,
                       .name = {hs_check_get(finding->check)->id}};

    return finding->remedy.reason != HS_REASON_none ? finding->remedy : said;
}

static hs_message
say_worse(const hs_asking *asking, const hs_finding *finding)
{
    return (hs_message){
        .reason = HS_REASON_condition_worse,
        .number = {finding->ratio, asking->baseline_findings[finding->check].ratio},
        .name = {hs_check_get(finding->check)->id}};
}

static void
collect_conditions(const hs_asking *asking, const hs_finding *findings, hs_verdict *verdict)
{
    hs_message *list = HS_NEW(asking->arena, hs_message, CONDITIONS_MOST);
    int n = 0, devices = hs_roles_n_devices(asking);

    for (int i = 0; i < HS_N_CHECKS; i++) {
        const hs_finding *finding = &findings[i];

        if (!decides(finding))
            continue;
        if (finding->status == HS_STATUS_NEAR)
            list[n++] = say_near(finding);
        else if (finding->status == HS_STATUS_WITHIN && is_worse_than_today(asking, finding))
            list[n++] = say_worse(asking, finding);
    }
    if (devices > 0)
        list[n++] = HS_SAY(condition_device, devices);
    /* A rescue that holds because somebody is there holds only while somebody is there. */
    if (findings[HS_CHECK_rescue].status == HS_STATUS_WITHIN &&
        hs_has(findings[HS_CHECK_rescue].value))
        list[n++] = HS_SAY(condition_helper, findings[HS_CHECK_rescue].value);
    verdict->conditions = list;
    verdict->n_conditions = n;
}

static void
sort_reasons(const hs_finding *findings, hs_verdict *verdict)
{
    /* Insertion sort: a handful of entries, worst first. */
    for (int i = 1; i < verdict->n_reasons; i++)
        for (int j = i; j > 0 && hs_finding_worse(&findings[verdict->reasons[j]],
                                                  &findings[verdict->reasons[j - 1]]);
             j--) {
            hs_check_id swap = verdict->reasons[j];

            verdict->reasons[j] = verdict->reasons[j - 1];
            verdict->reasons[j - 1] = swap;
        }
}

void
hs_decide(const hs_asking *asking, const hs_finding *findings, hs_verdict *ret_verdict)
{
    int n_beyond = 0, n_missing = 0;

    *ret_verdict = (hs_verdict){0};
    for (int i = 0; i < HS_N_CHECKS; i++)
        if (decides(&findings[i])) {
            n_beyond += findings[i].status == HS_STATUS_BEYOND;
            n_missing += is_missing(&findings[i]);
        }
    /* What is beyond a limit is not mended by conditions: none are stated. */
    if (n_beyond == 0)
        collect_conditions(asking, findings, ret_verdict);
    if (n_beyond > 0)
        ret_verdict->status = HS_VERDICT_NOT_SUPPORTED;
    else if (n_missing > 0)
        ret_verdict->status = HS_VERDICT_UNDECIDED;
    else if (ret_verdict->n_conditions > 0)
        ret_verdict->status = HS_VERDICT_WITH_CONDITIONS;
    else
        ret_verdict->status = HS_VERDICT_SUPPORTED;
    for (int i = 0; i < HS_N_CHECKS; i++) {
        const hs_finding *finding = &findings[i];
        bool counts = n_beyond > 0    ? finding->status == HS_STATUS_BEYOND
                      : n_missing > 0 ? is_missing(finding)
                                      : finding->status == HS_STATUS_NEAR ||
                                            is_worse_than_today(asking, finding);

        if (decides(finding) && counts)
            ret_verdict->reasons[ret_verdict->n_reasons++] = (hs_check_id)i;
    }
    sort_reasons(findings, ret_verdict);
}
