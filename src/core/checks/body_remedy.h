/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what change of turn, reach, height, mass or stance would bring a figure of the body to its limit?
 * Answer:    hs_body_remedy_solve(), by root finding over every place of every bearer that is above it.
 * Not here:  the sentences' status (body_checks.c, standing_checks.c). */
#ifndef HS_BODY_REMEDY_H
#define HS_BODY_REMEDY_H

#include "check.h"

/* Ratio of one bearer's figure to its limit in a state; large when nothing is found, 0 where nothing is judged. */
typedef double (*hs_body_ratio)(const hs_asking *asking, int bearer, const hs_body_state *body);

typedef void (*hs_body_judge)(
    const hs_asking *asking, int station, int bearer, bool in_full, hs_finding *finding);

/* File format: over 30 degrees out of scope; up to 10 a turn is not a turn (docs/body.md). */
#define HS_TURN_SCOPE_deg 30.0
#define HS_TURN_FREE_deg  10.0

/* What a check asks of the body. */
typedef struct {
    hs_body_ratio ratio;
    double target; /* the ratio to stay below */
    hs_body_judge judge;
    bool is_capped_kneeling; /* on the knees near at best */
    bool is_spine;           /* the same turned; one-handed and far turned work is not judged */
} hs_body_asked;

/* Writes a remedy into a finding that is near or beyond: applied by every bearer it ends within. None is found: a sentence that
 * says so. */
void
hs_body_remedy_solve(const hs_asking *asking, const hs_body_asked *asked, hs_finding *finding);

/* The worst candidate over all places and bearers; judged once more in full (working, remedy) at the end. */
void hs_body_worst(const hs_asking *asking, hs_body_judge judge, hs_finding *finding);

/* True when the body cannot be asked at all: a figure that has no default is absent. */
bool hs_body_is_missing(const hs_bearer_state *state);

/* Asymmetry angle at a place, linear between the points. */
double hs_body_turn_deg(const hs_asking *asking, const hs_place *place);

#endif
