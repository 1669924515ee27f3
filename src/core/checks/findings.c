/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a check say what it found?
 * Answer:    the hs_finding_* helpers: one place for status, ratio and the order of what decides.
 * Not here:  the checks themselves, the verdict (decide.c). */
#include "check.h"

#include <string.h>

static const hs_check table[HS_N_CHECKS] = {
#define CHECK(id, name, unit, function) {HS_CHECK_##id, name, unit, function},
#include "lists/checks.def"
#undef CHECK
};

const hs_check *
hs_check_get(hs_check_id check)
{
    return &table[check];
}

int
hs_check_find(const char *id)
{
    for (int i = 0; i < HS_N_CHECKS; i++)
        if (strcmp(table[i].id, id) == 0)
            return i;
    return -1;
}

/* A limit that is only remembered decides nothing alone. */
static void
soften_memory(hs_finding *finding)
{
    if (finding->status == HS_STATUS_BEYOND && finding->confidence == HS_CONF_MEMORY)
        finding->status = HS_STATUS_NEAR;
}

void
hs_finding_judge_ratio(
    hs_finding *finding, double value, double limit, double ratio, double near_ratio)
{
    if (!isfinite(value) || !isfinite(limit) || !isfinite(ratio)) {
        hs_finding_missing(finding, finding->text);
        return;
    }
    finding->value = value;
    finding->limit = limit;
    finding->ratio = ratio;
    finding->why = HS_WHY_COMPUTED;
    if (ratio > 1.0)
        finding->status = HS_STATUS_BEYOND;
    else
        finding->status = ratio >= near_ratio ? HS_STATUS_NEAR : HS_STATUS_WITHIN;
    soften_memory(finding);
}

void
hs_finding_judge(hs_finding *finding, double value, double limit, double near_ratio)
{
    hs_finding_judge_ratio(finding, value, limit, value / limit, near_ratio);
}

void
hs_finding_scope(hs_finding *finding, double value, hs_message text)
{
    finding->status = HS_STATUS_NOT_JUDGED;
    finding->why = HS_WHY_SCOPE;
    finding->value = isfinite(value) ? value : HS_ABSENT;
    finding->ratio = HS_ABSENT;
    finding->text = text;
}

void
hs_finding_missing(hs_finding *finding, hs_message text)
{
    finding->status = HS_STATUS_NOT_JUDGED;
    finding->why = HS_WHY_MISSING;
    finding->value = finding->limit = finding->ratio = HS_ABSENT;
    finding->text = text;
}

void
hs_finding_beyond(hs_finding *finding, hs_message text)
{
    finding->status = HS_STATUS_BEYOND;
    finding->why = HS_WHY_COMPUTED;
    finding->value = finding->ratio = HS_ABSENT;
    finding->text = text;
    soften_memory(finding);
}

void
hs_finding_at_best_near(hs_finding *finding)
{
    if (finding->status == HS_STATUS_WITHIN)
        finding->status = HS_STATUS_NEAR;
}

void
hs_finding_at(hs_finding *finding, const hs_run *run, int station, int bearer)
{
    finding->bearer = bearer;
    finding->route = run->stations[station].place.route;
    finding->t_s = run->stations[station].place.t_s;
}

static int
rank_of(const hs_finding *finding)
{
    switch (finding->status) {
    case HS_STATUS_BEYOND:
        return 5;
    case HS_STATUS_NOT_JUDGED:
        return finding->why == HS_WHY_MISSING ? 4 : 1;
    case HS_STATUS_NEAR:
        return 3;
    case HS_STATUS_WITHIN:
        return 2;
    case HS_STATUS_NONE:
    default:
        return 0;
    }
}

bool
hs_finding_worse(const hs_finding *a, const hs_finding *b)
{
    if (rank_of(a) != rank_of(b))
        return rank_of(a) > rank_of(b);
    /* Beyond without a figure (no pose, tipping) is worse than any figure. */
    if (hs_has(a->ratio) != hs_has(b->ratio))
        return a->status == HS_STATUS_BEYOND ? !hs_has(a->ratio) : hs_has(a->ratio);
    if (hs_has(a->ratio) && a->ratio != b->ratio)
        return a->ratio > b->ratio;
    return hs_has(a->value) &&
           (!hs_has(b->value) || (!hs_has(a->ratio) && a->value > b->value));
}

hs_finding
hs_finding_start(const hs_asking *asking, hs_check_id check)
{
    return (hs_finding){.check = check,
                        .bearer = -1,
                        .route = HS_ABSENT,
                        .t_s = HS_ABSENT,
                        .value = HS_ABSENT,
                        .limit = HS_ABSENT,
                        .ratio = HS_ABSENT,
                        .unit = table[check].unit,
                        .confidence = HS_CONF_DERIVED,
                        .working = {.arena = asking->arena}};
}

double
hs_site_limit_of(const hs_task *task, const char *id)
{
    for (int i = 0; i < task->policy.n_site_limits; i++)
        if (strcmp(task->policy.site_limits[i].id, id) == 0)
            return task->policy.site_limits[i].figure;
    return HS_ABSENT;
}

bool
hs_criterion_on(const hs_task *task, const char *id)
{
    if (!task->has_criteria)
        return true;
    for (int i = 0; i < task->n_criteria; i++)
        if (strcmp(task->criteria[i], id) == 0)
            return true;
    return false;
}

double
hs_friction_up(double friction)
{
    return ceil(friction * 100.0) / 100.0;
}
