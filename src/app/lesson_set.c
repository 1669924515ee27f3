/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which lessons are ready, with nothing to enter?
 * Answer:    a table of three; their documents are the worked scenarios.
 * Not here:  the page (lesson.c), the pictures on the start page (gallery_view.c). */
#include "lesson_set.h"

#include "gallery.h"

#include <glib/gi18n-lib.h>

static const struct {
    const char *file, *title;
    hs_layer layer;
    int option;
    double part; /* of the way's time */
    gboolean power_off;
} lessons[] = {
    {"03-", N_("Who carries more on a stair?"), HS_LAYER_force, 0, 0.55, FALSE},
    {"02-", N_("What does the suit take, and what not?"), HS_LAYER_felt, 1, 0.5, FALSE},
    {"07-", N_("What is left when the power goes?"), HS_LAYER_path, 1, 0.5, TRUE},
};

int
hs_lesson_set_count(void)
{
    return G_N_ELEMENTS(lessons);
}

const char *
hs_lesson_set_title(int n)
{
    return _(lessons[n].title);
}

hs_layer
hs_lesson_set_layer(int n)
{
    return lessons[n].layer;
}

hs_document *
hs_lesson_set_document(int n)
{
    g_autoptr(GPtrArray) examples = hs_gallery_list();

    for (guint i = 0; i < examples->len; i++) {
        const hs_example *example = examples->pdata[i];
        g_autofree char *name = g_path_get_basename(example->path);
        if (g_str_has_prefix(name, lessons[n].file))
            return hs_document_ref(example->document);
    }
    return NULL;
}

void
hs_lesson_set_arrange(int n, HsSession *session)
{
    const hs_results *results = hs_session_results(session);

    if (results == NULL)
        return;
    hs_session_edit_option(session, MIN(lessons[n].option, results->n_options - 1));
    hs_session_set_moment_s(session, lessons[n].part * hs_session_total_s(session));
    hs_session_set_power_off(session, lessons[n].power_off);
}
