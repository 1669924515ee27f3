/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is it ready to sign?
 * Answer:    the "Sheet" button: how many items are open, the list with a jump to each field, export and print.
 * Not here:  which items (draw/sheet.h). */
#ifndef HS_SIGN_OFF_H
#define HS_SIGN_OFF_H

#include "brief.h"

void hs_sign_off_attach(GtkMenuButton *button, HsSession *session, HsBrief *brief);

#endif
