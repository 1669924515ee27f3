/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a sentence marked for translation?
 * Answer:    _() says it in the reader's language, C_() too where one word means several things, N_() marks it for later.
 *            Straight through gettext: GLib's g_dgettext decides once, at its first sentence, whether it translates at all,
 *            and would not follow a language that is asked for later (--lang). GLib's own N_() casts const away.
 * Not here:  the sentences. */
#ifndef HS_TRANSLATE_H
#define HS_TRANSLATE_H

#include <glib.h>
#include <libintl.h>

/* keyed: context, the byte 4, text; text: where the text begins in keyed. */
static inline const char *hs_translate_context(const char *keyed, gsize text) G_GNUC_FORMAT(1);

static inline const char *
hs_translate_context(const char *keyed, gsize text)
{
    const char *found = dgettext(GETTEXT_PACKAGE, keyed);

    return found == keyed ? keyed + text : found;
}

#define _(text)           dgettext(GETTEXT_PACKAGE, text)
#define N_(text)          text
#define C_(context, text) hs_translate_context(context "\004" text, sizeof(context))

#endif
