/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  may these figures leave core?
 * Answer:    finite or absent, yes; an infinite one is our own mistake: hs_pack_finding() makes its finding not judged before the
 *            verdict is made, hs_pack_results() refuses the rest at the end.
 * Not here:  what a figure is (result.h), how files leave out what is absent (model/results_json.c). */
#ifndef HS_PACK_H
#define HS_PACK_H

#include "result.h"

/**
 * hs_pack_finding - a finding with an infinite figure is not judged
 *
 * What    looks at value, limit, ratio, place, both messages and the working; also at a finding that is not judged and does not
 *         say why
 * In      finding as a check left it; status none is left alone
 * Out     *finding: unchanged, or not judged (missing) with the reason `internal` and no figures
 * Frame   none
 * Errors  none
 * Source  none
 */
void hs_pack_finding(hs_finding *finding);

/**
 * hs_pack_results - the one door out of core
 *
 * What    looks at every number of the results
 * In      results as assembled
 * Out     nothing
 * Frame   none
 * Errors  HS_E_INTERNAL naming the path of the first infinite number
 * Source  none
 */
hs_status hs_pack_results(const hs_results *results, hs_error *error);

#endif
