/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the pages of the sheet share?
 * Answer:    the option proposed, closeness of findings, the three parts.
 * Not here:  what others may call (sheet.h). */
#ifndef HS_SHEET_PARTS_H
#define HS_SHEET_PARTS_H

#include "page.h"
#include "short.h"

/* First option that is neither the baseline nor the program's own; the baseline when there is none. */
int hs_sheet_proposed(const hs_results *results);
/* NULL when the option has no finding of the check. */
const hs_finding *hs_sheet_finding(const hs_option_result *option, hs_check_id check);
/* Larger is nearer to (or further beyond) the limit; negative: decides nothing. */
double hs_sheet_closeness(const hs_finding *finding);
/* Checks in the order in which they decide over all options; ret_checks holds HS_N_CHECKS; how many have a finding. */
int hs_sheet_order(const hs_results *results, hs_check_id *ret_checks);
/* The option's name; the program's own option in words. */
const char *hs_sheet_name(const hs_option_result *option);
/* Who stays has nobody at his side: the roles of `after` count. */
gboolean hs_sheet_goes_down(const hs_results *results);
/* Pairs (text, path), not NULL-terminated. */
GPtrArray *hs_sheet_items(const hs_document *document, const hs_results *results);
const char *hs_sheet_or_dash(const char *text); /* "not given" for an absent word */

/* Conditions from (counted from 0) up to, not with, to. */
void hs_sheet_conditions(hs_page *page, int from, int to);
#define HS_SHEET_CONDITIONS 5 /* on side 1; more stand on side 2 */

/* Today, the proposal, one person without a suit. */
gboolean hs_sheet_is_on_side_1(const hs_results *results, int option);
/* What to measure next for an option: the figures that drive its doubt. */
void hs_sheet_drivers(hs_page *page, const hs_doubt_option *option);
/* A finding as a cell: glyph, status, figure, place ("A · 2-3" where is_short, else in words). */
void hs_sheet_add_finding(hs_page *page,
                          hs_table *table,
                          int column,
                          int option_at,
                          hs_check_id check,
                          gboolean is_short);
/* The moment at which most is missing between what is held and what is needed, on a leg or (-1) on the whole way; NULL: none. */
const hs_power_lost *
hs_sheet_worst_loss(const hs_option_result *option, int leg, int *ret_sample);
int hs_sheet_n_open(const hs_page *page); /* what stops a signature */

void hs_sheet_load(hs_page *page); /* its sketch and what is known of it */
void hs_sheet_full(hs_page *page); /* into the annex: what side 2 sums up */
void
hs_sheet_open_all(hs_page *page); /* into the annex: open items that side 2 has no room for */
void hs_sheet_side_decided(hs_page *page);
void hs_sheet_side_why(hs_page *page);
void hs_sheet_annex(hs_page *page);
void hs_sheet_limits(hs_page *page); /* the site's own figures, when there are any */
void
hs_sheet_limits_line(hs_page *page); /* one line that names the site's set, when there is one */
void hs_sheet_pictures(hs_page *page, double height_pt);

#endif
