/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much may one member of a team carry by the team rule that was chosen?
 * Answer:    hs_team_fraction() of hs_team_one_person(): every rule has its own one-person figure; they are never mixed.
 * Not here:  the limits as checks of their own (limits/), the shares (share_checks.c). */
#ifndef HS_TEAM_H
#define HS_TEAM_H

#include "check.h"

typedef struct {
    double one_person_N; /* HS_ABSENT: the rule has none here */
    double fraction;     /* f(n); HS_ABSENT: the rule does not say */
    hs_source_id source;
    hs_confidence confidence;
    hs_reason silent; /* why there is no figure; HS_REASON_none when there is one */
} hs_team_limit;

/* The rule's word in files: "none", "gb", ... */
const char *hs_team_rule_id(hs_team_rule rule);

/* Greatest share of one of n equal members, as a fraction of that member's own figure; HS_ABSENT where the rule is silent. */
double hs_team_fraction(const hs_policy *policy, int n);

/**
 * hs_team_one_person - what the chosen rule lets this member carry alone at this place
 *
 * What    gb: guidance box of hands' height and reach, twist and frequency; mil-std-1472: row of the hands' height or of carrying, by
 *         the crew's sexes; en-1005-2: recommended mass on lift and lower legs; measured: the share at which the member's
 *         strongest-loaded joint reaches its strength in this posture
 * In      asking with run; station and bearer in range; bearer unsuited
 * Out     *ret_limit
 * Frame   none
 * Errors  none: silent says why there is no figure
 * Source  HS_SRC_gb_guideline, HS_SRC_mil_std_1472, HS_SRC_en_1005_2, HS_SRC_team_measured
 */
void
hs_team_one_person(const hs_asking *asking, int station, int bearer, hs_team_limit *ret_limit);

/* The same by another rule than the chosen one, for the spread between them; measured asks for policy.team_factor. */
void hs_team_by_rule(const hs_asking *asking,
                     hs_team_rule rule,
                     int station,
                     int bearer,
                     hs_team_limit *ret_limit);

typedef struct {
    int n; /* rules that have a figure here */
    double least_N,
        most_N; /* greatest share of this member by the strictest and by the mildest of them */
    hs_team_limit
        by_rule[HS_TEAM_MEASURED + 1]; /* indexed by rule; one_person_N HS_ABSENT: silent */
} hs_team_spread;

/**
 * hs_team_spread_of - how far the published team rules are apart for this member of this crew
 *
 * What    every rule's f(n) times its own one-person figure at this place; rules are never mixed
 * In      asking with run; station and bearer in range; bearer unsuited
 * Out     *ret_spread; least_N and most_N HS_ABSENT where no rule has a figure
 * Frame   none
 * Errors  none
 * Source  as hs_team_one_person()
 */
void
hs_team_spread_of(const hs_asking *asking, int station, int bearer, hs_team_spread *ret_spread);

#define HS_N_TEAM_RULES (HS_TEAM_MEASURED - HS_TEAM_GB + 1)

/**
 * hs_team_rules_of - the finding `share` by every rule that could be chosen, the chosen one among them
 *
 * What    the same check once for each rule: its own worst bearer and place, allowed share, share, status, or why it is silent
 * In      asking with run
 * Out     ret_findings[rule - HS_TEAM_GB], in the asking's arena
 * Frame   none
 * Errors  none
 * Source  as hs_team_one_person()
 */
void hs_team_rules_of(const hs_asking *asking, hs_finding ret_findings[HS_N_TEAM_RULES]);

/* f(n) times the sum of all members' own figures by the chosen rule; HS_ABSENT where one of them has none. */
double hs_team_sum_N(const hs_asking *asking, int station, double *ret_sum_one_person_N);

/* Lines of working: the form on the sum by the chosen rule, and the spread between the rules. */
void hs_team_work(const hs_asking *asking, int station, int bearer, hs_working *working);

#endif
