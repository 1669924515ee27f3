/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how far are the team rules apart for a crew?
 * Answer:    a row for each rule: what it allows, as a share of the own figure, what is carried, the status or why it is silent.
 * Not here:  the rules (core, checks/team.c), the table on the screen (app) and in the report (cli). */
#ifndef HS_TEAM_RULES_H
#define HS_TEAM_RULES_H

#include "result.h"
#include "unit_system.h"

#include <glib.h>

/* Texts; "" where the rule has nothing to say. */
typedef struct {
    const char *rule;                      /* borrowed */
    char *allowed, *part, *carried, *said; /* "177 N", "0.667 of 266 N", "A 229 N", "beyond" */
} hs_team_row;

/* New, of hs_team_row, in the order of the rules; empty for one bearer and where nothing was worked out. */
GPtrArray *hs_team_rules_rows(const hs_option_result *option, hs_units units);
/* "The rules allow 177 N to 265 N at the place that is worst by each: 1.5 times apart."; NULL where fewer than two speak. New. */
char *hs_team_rules_spread(const hs_option_result *option, hs_units units);
/* Every option with a crew, a line a rule: for the text report. New; "" where there is none. */
char *hs_team_rules_to_text(const hs_results *results, hs_units units);

#endif
