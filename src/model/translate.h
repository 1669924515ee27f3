/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a sentence marked for translation?
 * Answer:    _() says it in the reader's language, N_() marks it for later; GLib's own macro casts const away.
 * Not here:  the sentences. */
#ifndef HS_TRANSLATE_H
#define HS_TRANSLATE_H

#include <glib.h>

#define _(text)           g_dgettext(GETTEXT_PACKAGE, text)
#define N_(text)          text
#define C_(context, text) g_dpgettext(GETTEXT_PACKAGE, context "\004" text, sizeof(context))

#endif
