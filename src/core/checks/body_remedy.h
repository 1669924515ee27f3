/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what change of reach, height or mass would bring a figure of the body to its limit?
 * Answer:    hs_body_remedy_solve(), by root finding over every place of the bearer that is above it.
 * Not here:  the sentences' status (body_checks.c, standing_checks.c). */
#ifndef HS_BODY_REMEDY_H
#define HS_BODY_REMEDY_H

#include "check.h"

/* Ratio of one bearer's figure to its limit in a state; large when nothing is found. */
typedef double (*hs_body_ratio)(const hs_asking *asking, const hs_body_state *body);

/* Writes a remedy into the finding (none is found: a sentence that says so). target: the ratio to reach. */
void hs_body_remedy_solve(const hs_asking *asking,
                          int bearer,
                          hs_body_ratio ratio,
                          double target,
                          hs_finding *finding);

typedef void (*hs_body_judge)(
    const hs_asking *asking, int station, int bearer, bool in_full, hs_finding *finding);

/* The worst candidate over all places and bearers; judged once more in full (working, remedy) at the end. */
void hs_body_worst(const hs_asking *asking, hs_body_judge judge, hs_finding *finding);

/* True when the body cannot be asked at all: a figure that has no default is absent. */
bool hs_body_is_missing(const hs_bearer_state *state);

/* Asymmetry angle at a place, linear between the points. */
double hs_body_turn_deg(const hs_asking *asking, const hs_place *place);

#endif
