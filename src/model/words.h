/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are reasons, statuses, checks and cautions said in a sentence?
 * Answer:    hs_words_*: whole sentences through gettext, figures through quantity.c.
 * Not here:  which reason holds (core). All returned char * are new; const char * are translated constants. */
#ifndef HS_WORDS_H
#define HS_WORDS_H

#include "unit_system.h"

#include "result.h"

#include <glib.h>

char *hs_words_message(const hs_message *message, hs_units units);
const char *hs_words_check(hs_check_id check); /* "Low back, compression" */
/* The same in these results: where a chosen set stands in place of the published figures, its name says so. NULL: as above. */
const char *hs_words_check_in(const hs_results *results, hs_check_id check);
/* "limit unconfirmed" for a judged finding whose limit is only remembered; NULL for others. Every view says it. */
const char *hs_words_unconfirmed(const hs_finding *finding);
const char *hs_words_check_hint(hs_check_id check);    /* one line that explains it */
const char *hs_words_status(hs_finding_status status); /* "within" ... */
const char *hs_words_verdict(hs_verdict_status status);
const char *hs_words_confidence(hs_confidence confidence);
/* "3.9 of 3.4 kN", "63 mm left, 60 wanted", "does not apply: no suit": value, limit, unit in the reader's unit */
char *hs_words_figure(const hs_finding *finding, hs_units units);
/* "A · point 1" : bearer and place */
char *hs_words_place(const hs_option_result *option, const hs_finding *finding);
/* "point 1", "between points 1 and 2"; empty when absent */
char *hs_words_route(double route);
/* the untranslated sentence of a reason, NULL when there is none: for tests and docs */
const char *hs_words_sentence(hs_reason reason);
/* what an equation gives, in a few words */
const char *hs_words_equation(hs_equation_id equation);
/* a step of a working: title NULL where the equation is that of the step before, source NULL where the next step has the same */
typedef struct {
    const char *title;
    char *symbols, *numbers, *source;
} hs_worked;
/* the steps of the working, hs_worked; formulas are in SI */
GPtrArray *hs_words_worked(const hs_finding *finding);
/* its lines without titles, as in results: formula, numbers, source; NULL-terminated */
char **hs_words_working(const hs_finding *finding);
char *hs_words_source(hs_source_id source); /* "Title (year), place" */
const char *hs_words_team_rule(hs_team_rule rule);
const char *hs_words_move(hs_move move);
const char *hs_words_shape(hs_shape shape);
const char *hs_words_grip(hs_grip_kind kind);
const char *hs_words_suit_kind(hs_suit_kind kind);
/* JSON words: as in files */
const char *hs_words_status_id(hs_finding_status status);
const char *hs_words_check_id(hs_check_id check);
const char *hs_words_verdict_id(hs_verdict_status status);

#endif
