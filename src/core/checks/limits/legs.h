/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the published limits need to know of each leg and bearer?
 * Answer:    hs_limit_legs(): hands, reach, turn, mass at the two ends of every leg, and what may put it out of scope.
 * Not here:  the limits themselves. */
#ifndef HS_LIMIT_LEGS_H
#define HS_LIMIT_LEGS_H

#include "check.h"

typedef struct {
    int bearer, from, to; /* stations at the leg's two ends */
    int point;            /* the leg leads to it */
    hs_move move;
    double height_m[2], reach_m[2], turn_deg[2]; /* at the two ends */
    double share_kg;                             /* larger static share of the two ends */
    double held_kg; /* what the hands hold: the felt force for a suit, else share_kg */
    double way_m, speed_m_s, steepest_rad; /* carry: along the way */
    bool steps;                            /* feet pass a riser */
    bool is_precise, kneels, is_one_handed, has_suit, is_team;
    hs_coupling coupling; /* worst of the bearer's grips */
} hs_limit_leg;

/* Legs (without holds) of one bearer in the asking's arena; returns how many. */
int hs_limit_legs(const hs_asking *asking, int bearer, const hs_limit_leg **ret_legs);

/* Lift and lower: what the lifting limits are asked about. */
bool hs_limit_leg_lifts(const hs_limit_leg *leg);

/* Cycles an hour, hours, recovery, with the defaults of the file format. */
double hs_limit_cycles_per_h(const hs_asking *asking);
double hs_limit_hours(const hs_asking *asking);
double hs_limit_recovery_h(const hs_asking *asking);

/* Way of one carry run after another in the cycle, m. */
double hs_limit_carry_m(const hs_asking *asking);

/* Men only in the option's crew. */
bool hs_limit_men_only(const hs_asking *asking);

/* Keeps the worse of the two; place and bearer from leg end 0 or 1. */
void hs_limit_keep(const hs_asking *asking,
                   hs_finding *finding,
                   hs_finding *candidate,
                   const hs_limit_leg *leg,
                   int end);

/* Why a limit for one unsuited standing person of at most 8 h does not apply: suit, team where team_too, kneeling, hours;
 * HS_REASON_none where it does. One hand is each limit's own. */
hs_message
hs_limit_scope_words(const hs_asking *asking, const hs_limit_leg *leg, bool team_too);

/* To 0.1 kg, downward: a remedy that is printed rounded must still be one. */
double hs_limit_round_down(double mass_kg);

typedef enum {
    HS_SITE_NONE = 0, /* the site has no figure for this check */
    HS_SITE_FIGURE,
    HS_SITE_SILENT /* it has some, and none for this worker and this handling */
} hs_site_answer;

/**
 * hs_limit_site - the site's own figure in place of the published one
 *
 * What    the first entry of policy.site_limits for the check that has no conditions; of those with conditions the least that fits. An
 *         age that is not entered is the one assumed
 * In      asking with run; bearer; leg or NULL where the check knows none (its conditions then do not fit)
 * Out     *limit, candidate's source and confidence, only on HS_SITE_FIGURE; *ret_from the entry (NULL: not wanted)
 * Frame   none
 * Errors  none
 * Source  docs/limits/site.md
 */
hs_site_answer hs_limit_site(const hs_asking *asking,
                             int bearer,
                             const hs_limit_leg *leg,
                             hs_finding *candidate,
                             double *limit,
                             const hs_site_limit **ret_from);

/* Judges the mass held against the site's own figure in kg, suit or not; false when the site has none. */
bool
hs_limit_judge_site(const hs_asking *asking, hs_finding *candidate, const hs_limit_leg *leg);

/* "The chosen set has no figure for this": own is any of its entries. */
hs_message hs_limit_set_silent(const hs_site_limit *own);

/* The load that would bring the ratio to near_ratio, where it is near or beyond. */
void hs_limit_remedy_mass(const hs_asking *asking, hs_finding *candidate);

#endif
