/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  can a finding's remedy be tried by one button?
 * Answer:    hs_remedy_edit(): the edit, where the remedy is a single number of the document.
 * Not here:  the remedies themselves (core), their sentences (model/words.c). */
#ifndef HS_REMEDY_H
#define HS_REMEDY_H

#include "session.h"

/* NULL when it cannot be tried by a single change. *ret_label: the button's text, new. */
hs_edit *
hs_remedy_edit(HsSession *session, int option, const hs_finding *finding, char **ret_label);

#endif
