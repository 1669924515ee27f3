/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who answers the worked figures of tests/cases/body*.json?
 * Answer:    three files, each for the questions it knows; HS_ABSENT for one that it does not know.
 * Not here:  comparing (test_worked.c). */
#ifndef HS_WORKED_H
#define HS_WORKED_H

#include "body.h"
#include "near.h"

#include <math.h>

/* A figure of a case, or another one where the case does not give it. */
double worked_figure(JsonObject *given, const char *name, double otherwise);
/* The person of a case: sex, size, age, percentile, table. */
hs_person worked_person(JsonObject *given);
/* Hands at a place, a load held at rest, no suit. */
hs_body_input worked_hold(double x_m, double z_m, double load_kg);

/* What follows from a person alone: sizes, masses, strengths, grip, endurance, base of support, the disc. */
double worked_ask_person(const char *ask, JsonObject *given);
/* Statics of the program's chain: a person's in a given posture, or one with the masses and lengths of the case ("own"). */
double worked_ask_chain(const char *ask, JsonObject *given);
/* What needs a whole run: friction of the floor, walking, palms, limits. */
double worked_ask_run(const char *ask, JsonObject *given);

#endif
