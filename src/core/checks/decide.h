/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is the verdict?
 * Answer:    hs_decide(): the mapping of the file format, one readable table.
 * Not here:  findings (the checks), the twin without suits (assess.c). */
#ifndef HS_DECIDE_H
#define HS_DECIDE_H

#include "run.h"

/**
 * hs_decide - verdict of one option
 *
 * What    any beyond (loss.bearer aside) or a gate answered no: not supported; any missing or an open gate: undecided; any
 *         near, a role handed to a device, or a stated condition: with conditions; else supported
 * In      findings: HS_N_CHECKS of them, indexed by check; asking->baseline_findings for what is worse than today
 * Out     *ret_verdict; conditions in the arena; suit_only is set by the caller
 * Frame   none
 * Errors  none
 * Source  file format, section Status and verdict
 */
void hs_decide(const hs_asking *asking, const hs_finding *findings, hs_verdict *ret_verdict);

#endif
