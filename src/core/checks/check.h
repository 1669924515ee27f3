/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is a check?
 * Answer:    a function that looks over a run and fills at most one finding: the worst place of the worst bearer.
 * Not here:  which checks there are (lists/checks.def), the verdict (decide.c).
 *
 * A check keeps HS_STATUS_NONE when it was not asked (file format: "any other absent site figure gives no finding"). Several
 * candidates (bearers, places) are compared with hs_finding_worse(). */
#ifndef HS_CHECK_H
#define HS_CHECK_H

#include "run.h"

typedef void (*hs_check_function)(const hs_asking *asking, hs_finding *finding);

typedef struct {
    hs_check_id check;
    const char *id, *unit;
    hs_check_function ask;
} hs_check;

const hs_check *hs_check_get(hs_check_id check);
/* Index of a check by its id in files; -1: none. */
int hs_check_find(const char *id);

#define CHECK(id, name, unit, function)                                                        \
    void function(const hs_asking *asking, hs_finding *finding);
#include "lists/checks.def"
#undef CHECK

/**
 * hs_finding_judge - status from value and limit
 *
 * What    ratio = demand / capacity: value / limit; at most near_ratio within, to 1 near, above beyond; why computed;
 *         a memory limit counts as near at most (beyond becomes near)
 * In      limit > 0, value >= 0, finite; confidence already set
 * Out     value, limit, ratio, status, why
 * Frame   none
 * Errors  none; a non-finite figure makes it not judged (missing)
 * Source  file format, section Status and verdict
 */
void hs_finding_judge(hs_finding *finding, double value, double limit, double near_ratio);
/* The same when the ratio is not value / limit (a margin, a time held against a time needed). */
void hs_finding_judge_ratio(
    hs_finding *finding, double value, double limit, double ratio, double near_ratio);
void hs_finding_scope(hs_finding *finding, double value /* HS_ABSENT: none */, hs_message text);
void hs_finding_missing(hs_finding *finding, hs_message text);
/* Beyond without value or ratio (no pose, tipping, outside the range). */
void hs_finding_beyond(hs_finding *finding, hs_message text);
/* No better than this status: near at most (keeps beyond and not judged). */
void hs_finding_at_best_near(hs_finding *finding);
/* Place it: route, time, bearer from station and bearer index (-1 none). */
void hs_finding_at(hs_finding *finding, const hs_run *run, int station, int bearer);
/* True when a decides over b: beyond > missing > near > within > scope > none; then the larger ratio; then larger value. */
bool hs_finding_worse(const hs_finding *a, const hs_finding *b);
/* A fresh candidate for the same check (arena for its working). */
hs_finding hs_finding_start(const hs_asking *asking, hs_check_id check);

/* policy.site_limits[id], or HS_ABSENT. */
double hs_site_limit_of(const hs_task *task, const char *id);
/* A friction that a remedy names: to two places, upward. */
double hs_friction_up(double friction);

/* Is this criterion asked for? criteria absent: all. */
bool hs_criterion_on(const hs_task *task, const char *id);

#endif
