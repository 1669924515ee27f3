/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who joins when a crew grows, and where do they take hold?
 * Answer:    hs_crew_*: the free grip that makes the greatest share smallest; one fewer takes the last one off.
 * Not here:  shares themselves (core). */
#include "crew.h"

#include "assess.h"
#include "change.h"
#include "field.h"
#include "look.h"
#include "notice.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

int
hs_crew_count(HsSession *session)
{
    int option = hs_change_edited(session);
    g_autofree char *path = g_strdup_printf("options[%d].bearers", option);

    return option >= 0 ? hs_field_length(hs_session_document(session), path) : 0;
}

static gboolean
is_grip_used(const hs_document *document, int option, const char *id)
{
    g_autofree char *bearers = g_strdup_printf("options[%d].bearers", option);

    for (int b = 0; b < hs_field_length(document, bearers); b++) {
        g_autofree char *grips = g_strdup_printf("%s[%d].grips", bearers, b);
        for (int g = 0; g < hs_field_length(document, grips); g++) {
            g_autofree char *path = g_strdup_printf("%s[%d]", grips, g);
            if (g_strcmp0(hs_field_text(document, path), id) == 0)
                return TRUE;
        }
    }
    return FALSE;
}

static gboolean
is_worker_used(const hs_document *document, int option, const char *id)
{
    g_autofree char *bearers = g_strdup_printf("options[%d].bearers", option);

    for (int b = 0; b < hs_field_length(document, bearers); b++) {
        g_autofree char *path = g_strdup_printf("%s[%d].worker", bearers, b);
        if (g_strcmp0(hs_field_text(document, path), id) == 0)
            return TRUE;
    }
    return FALSE;
}

/* A worker of the document who does not bear yet, or a new one within the edit. */
static char *
free_worker(const hs_document *document, int option, hs_edit *edit)
{
    int n = hs_field_length(document, "workers");

    for (int i = 0; i < n; i++) {
        g_autofree char *path = g_strdup_printf("workers[%d].id", i);
        const char *id = hs_field_text(document, path);
        if (id != NULL && !is_worker_used(document, option, id))
            return g_strdup(id);
    }
    char *id = hs_free_id(document, "workers", "worker");
    g_autofree char *path = g_strdup_printf("workers[%d]", n);
    g_autofree char *json =
        g_strdup_printf("{\"id\": \"%s\", \"name\": \"%s %d\"}", id, _("Worker"), n + 1);
    hs_edit_insert(edit, path, hs_change_node(json));
    return id;
}

static hs_edit *
edit_with_grip(const hs_document *document, int option, const char *grip)
{
    hs_edit *edit = hs_edit_new(_("Add a bearer"));
    g_autofree char *bearers = g_strdup_printf("options[%d].bearers", option);
    int n = hs_field_length(document, bearers);
    g_autofree char *path = g_strdup_printf("%s[%d]", bearers, n);
    g_autofree char *id = hs_free_id(document, bearers, "bearer");
    g_autofree char *worker = free_worker(document, option, edit);
    g_autofree char *json = g_strdup_printf(
        "{\"id\": \"%s\", \"worker\": \"%s\", \"grips\": [\"%s\"]}", id, worker, grip);

    hs_edit_insert(edit, path, hs_change_node(json));
    return edit;
}

/* The greatest share of one bearer anywhere on the way. */
static double
greatest_share_N(const hs_document *document, int option)
{
    const hs_task *task = hs_document_task(document);
    hs_arena *arena = hs_arena_new();
    hs_results results;
    hs_error error;
    double most_N = 0.0;

    if (task == NULL || hs_assess(task, HS_ASSESS_LIVE, arena, &results, &error) != HS_OK) {
        hs_arena_free(arena);
        return HS_ABSENT;
    }
    const hs_option_result *at = &results.options[option];
    for (int i = 0; i < at->n_samples; i++) {
        for (int b = 0; b < at->asked->n_bearers; b++)
            most_N = MAX(most_N, hs_or(at->samples[i].bearers[b].share_N, 0.0));
    }
    hs_arena_free(arena);
    return most_N;
}

/* NULL: no grip is free. *ret_share_N: the greatest share with the new bearer. */
static hs_edit *
best_edit(HsSession *session, int option, char **ret_grip, double *ret_share_N)
{
    hs_document *document = hs_session_document(session);
    hs_edit *best = NULL;
    int n = hs_field_length(document, "load.grips");

    *ret_share_N = INFINITY;
    for (int i = 0; i < n; i++) {
        g_autofree char *path = g_strdup_printf("load.grips[%d].id", i);
        const char *grip = hs_field_text(document, path);
        if (grip == NULL || is_grip_used(document, option, grip))
            continue;
        hs_edit *edit = edit_with_grip(document, option, grip);
        g_autoptr(hs_document) next = hs_document_apply(document, edit, FALSE, NULL);
        double share_N = next != NULL ? greatest_share_N(next, option) : HS_ABSENT;
        if (share_N < *ret_share_N) {
            *ret_share_N = share_N;
            g_clear_pointer(&best, hs_edit_free);
            g_free(*ret_grip);
            *ret_grip = g_strdup(grip);
            best = edit;
        } else {
            hs_edit_free(edit);
        }
    }
    return best;
}

char *
hs_crew_next(HsSession *session)
{
    int option = hs_change_edited(session);
    g_autofree char *grip = NULL;
    double share_N;

    if (option < 0)
        return NULL;
    hs_edit *edit = best_edit(session, option, &grip, &share_N);
    if (edit == NULL)
        return NULL;
    hs_edit_free(edit);
    g_autofree char *share = hs_quantity_text(share_N, "N", hs_look_units());
    return g_strdup_printf(_("The next bearer takes grip %s; the greatest share is then %s."),
                           grip, share);
}

static void
on_add_grip(GtkWidget *from, gpointer data)
{
    HsSession *session = data;
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "load.grips");
    g_autofree char *id = hs_free_id(document, "load.grips", "grip");
    const hs_results *results = hs_session_results(session);
    g_autofree char *path = g_strdup_printf("load.grips[%d]", n);
    hs_edit *edit = hs_edit_new(_("Add a grip"));
    double z_m = results != NULL ? hs_or(results->load.centre_m.z, 0.2) : 0.2;
    g_autofree char *z = hs_number_text(round(z_m * 100.0) / 100.0);
    g_autofree char *json = g_strdup_printf(
        "{\"id\": \"%s\", \"at_m\": [0, %s, %s], \"kind\": \"handle\", \"hands\": 2}", id,
        n % 2 ? "-0.3" : "0.3", z);

    hs_edit_insert(edit, path, hs_change_node(json));
    hs_change_commit(from, session, edit);
}

static void
add_bearer(GtkWidget *from, HsSession *session, int option)
{
    g_autofree char *grip = NULL;
    double share_N;
    hs_edit *edit = best_edit(session, option, &grip, &share_N);

    if (edit == NULL) {
        hs_notice_ask(from, _("There is no free grip for another bearer."),
                      _("Add a grip here"), on_add_grip, NULL, NULL, g_object_ref(session),
                      g_object_unref);
        return;
    }
    hs_change_option(from, session, option, edit);
}

/* The roles that the last bearer filled are empty now, and the notice says so. */
static int
empty_roles(const hs_document *document, hs_edit *edit, const char *id)
{
    int n = hs_field_length(document, "roles"), emptied = 0;

    for (int i = 0; i < n; i++) {
        g_autofree char *after = g_strdup_printf("roles[%d].after", i);
        if (g_strcmp0(hs_field_text(document, after), id) == 0) {
            hs_edit_set_string(edit, after, "");
            emptied++;
        }
    }
    return emptied;
}

static void
remove_bearer(GtkWidget *from, HsSession *session, int option)
{
    const hs_document *document = hs_session_document(session);
    int last = hs_crew_count(session) - 1;
    g_autofree char *path = g_strdup_printf("options[%d].bearers[%d]", option, last);
    g_autofree char *id_path = g_strdup_printf("%s.id", path);
    g_autofree char *id = g_strdup(hs_field_text(document, id_path));
    hs_edit *edit = hs_edit_new(_("Take a bearer off"));
    int emptied = id != NULL ? empty_roles(document, edit, id) : 0;

    hs_edit_remove(edit, path);
    hs_change_option(from, session, option, edit);
    if (emptied > 0) {
        g_autofree char *text = g_strdup_printf(
            g_dngettext(GETTEXT_PACKAGE, "%d role is EMPTY now: %s did it.",
                        "%d roles are EMPTY now: %s did them.", (gulong)emptied),
            emptied, id);
        hs_notice_say(from, text);
    }
}

void
hs_crew_set_count(GtkWidget *from, HsSession *session, int count)
{
    int option = hs_change_edited(session);

    if (option < 0 || count < 1 || count > HS_CREW_MOST)
        return;
    for (int now = hs_crew_count(session); now != count;) {
        if (now < count)
            add_bearer(from, session, option);
        else
            remove_bearer(from, session, option);
        int then = hs_crew_count(session);
        if (then == now)
            return;
        now = then;
    }
}
