/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is a figure what it should be?
 * Answer:    hs_near() with an absolute tolerance in the figure's own unit, hs_near_rel() relative; both name the check.
 * Not here:  the cases (tests/cases). */
#ifndef HS_NEAR_H
#define HS_NEAR_H

#include <json-glib/json-glib.h>

void hs_near(const char *what, double got, double wanted, double tolerance);
void hs_near_rel(const char *what, double got, double wanted, double relative);
/* tests/cases/NAME.json as a tree; the caller frees the node */
JsonNode *hs_cases_load(const char *name);
/* Every case of one layer in a file: its figure asked of the program and held against what is expected. Returns how many. */
int hs_cases_ask(const char *name,
                 const char *layer,
                 double (*answer)(const char *ask, JsonObject *given));

#endif
