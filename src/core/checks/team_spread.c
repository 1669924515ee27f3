/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does a team rule say on the sum of the members, and how far are the rules apart for this crew?
 * Answer:    hs_team_sum_N(), hs_team_spread_of(), and both as lines of working.
 * Not here:  a rule's figures (team.c), the share's finding (share_checks.c). */
#include "team.h"

double
hs_team_sum_N(const hs_asking *asking, int station, double *ret_sum_one_person_N)
{
    double sum_N = 0.0, fraction = HS_ABSENT;

    for (int b = 0; b < asking->run->setup->n_bearers; b++) {
        hs_team_limit limit;

        if (asking->run->setup->bearers[b].suit != NULL)
            return HS_ABSENT;
        hs_team_one_person(asking, station, b, &limit);
        if (limit.silent != HS_REASON_none || !hs_has(limit.one_person_N))
            return HS_ABSENT;
        sum_N += limit.one_person_N;
        fraction = limit.fraction;
    }
    *ret_sum_one_person_N = sum_N;
    return fraction * sum_N;
}

void
hs_team_spread_of(const hs_asking *asking, int station, int bearer, hs_team_spread *ret_spread)
{
    *ret_spread = (hs_team_spread){.least_N = HS_ABSENT, .most_N = HS_ABSENT};
    for (int rule = HS_TEAM_GB; rule <= HS_TEAM_MEASURED; rule++) {
        hs_team_limit *limit = &ret_spread->by_rule[rule];
        double share_N;

        hs_team_by_rule(asking, (hs_team_rule)rule, station, bearer, limit);
        if (limit->silent != HS_REASON_none)
            continue;
        share_N = limit->fraction * limit->one_person_N;
        ret_spread->least_N = fmin(ret_spread->least_N, share_N);
        ret_spread->most_N = fmax(ret_spread->most_N, share_N);
        ret_spread->n++;
    }
}

static void
work_rule(hs_team_rule rule, const hs_team_limit *limit, hs_working *working)
{
    static const hs_equation_id equations[] = {[HS_TEAM_GB] = HS_EQ_team_gb,
                                               [HS_TEAM_MIL_STD_1472] = HS_EQ_team_mil,
                                               [HS_TEAM_EN_1005_2] = HS_EQ_team_en,
                                               [HS_TEAM_MEASURED] = HS_EQ_team_own};
    hs_equation_id equation = equations[rule];
    const hs_term terms[] = {{"f", limit->fraction, ""}, {"L1", limit->one_person_N, "N"}};

    if (limit->silent != HS_REASON_none)
        return;
    if (rule == HS_TEAM_MIL_STD_1472 && limit->confidence == HS_CONF_MEMORY)
        equation = HS_EQ_team_mil_memory;
    hs_working_add(working, equation, terms, 2, limit->fraction * limit->one_person_N, "N");
}

void
hs_team_work(const hs_asking *asking, int station, int bearer, hs_working *working)
{
    double sum_one_N, sum_N;
    hs_team_spread spread;

    if (asking->run->setup->n_bearers < 2 || asking->run->setup->bearers[bearer].suit != NULL)
        return;
    if (asking->task->policy.team_rule > HS_TEAM_NONE) {
        sum_N = hs_team_sum_N(asking, station, &sum_one_N);
        if (hs_has(sum_N))
            HS_WORK(working, share_sum, sum_N, "N",
                    {"f",
                     hs_team_fraction(&asking->task->policy, asking->run->setup->n_bearers),
                     ""},
                    {"L1_sum", sum_one_N, "N"});
    }
    if (asking->is_live)
        return;
    hs_team_spread_of(asking, station, bearer, &spread);
    for (int rule = HS_TEAM_GB; rule <= HS_TEAM_MEASURED; rule++)
        work_rule((hs_team_rule)rule, &spread.by_rule[rule], working);
    if (spread.n > 1 && spread.least_N > 0.0)
        HS_WORK(working, team_spread, spread.most_N / spread.least_N, "",
                {"most", spread.most_N, "N"}, {"least", spread.least_N, "N"});
}

void
hs_team_rules_of(const hs_asking *asking, hs_finding ret_findings[HS_N_TEAM_RULES])
{
    hs_task task = *asking->task;
    hs_asking by_rule = *asking;

    by_rule.task = &task;
    by_rule.is_live = true; /* the spread is what this is: no lines about it in each */
    for (int rule = HS_TEAM_GB; rule <= HS_TEAM_MEASURED; rule++) {
        hs_finding *finding = &ret_findings[rule - HS_TEAM_GB];

        task.policy.team_rule = (hs_team_rule)rule;
        *finding = hs_finding_start(&by_rule, HS_CHECK_share);
        hs_check_share(&by_rule, finding);
    }
}
