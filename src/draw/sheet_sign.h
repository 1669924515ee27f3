/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who signs?
 * Answer:    four boxes with room for a hand, review date and triggers; for a draft the list of open items instead.
 * Not here:  what is signed (sheet_decided.c). */
#ifndef HS_SHEET_SIGN_H
#define HS_SHEET_SIGN_H

#include "page.h"

void hs_sheet_sign(hs_page *page);

#endif
