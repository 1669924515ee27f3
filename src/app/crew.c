/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who joins when a crew grows, and where do they take hold?
 * Answer:    hs_crew_*: the free grip that makes the greatest share smallest; one fewer takes the last one off.
 * Not here:  shares themselves (core). */
#include "crew.h"

#include "change.h"
#include "desk.h"
#include "field.h"
#include "load.h"
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

static gboolean
is_listed(const hs_document *document, const char *list, const char *id)
{
    for (int i = 0; i < hs_field_length(document, list); i++) {
        g_autofree char *path = g_strdup_printf("%s[%d].id", list, i);
        if (g_strcmp0(hs_field_text(document, path), id) == 0)
            return TRUE;
    }
    return FALSE;
}

/* Bearers are named by letters: the picture has little room. */
static char *
free_letter(const hs_document *document, const char *bearers)
{
    for (char letter = 'A'; letter < 'A' + 2 * HS_CREW_MOST; letter++) {
        char id[2] = {letter, '\0'};
        if (!is_listed(document, bearers, id))
            return g_strdup(id);
    }
    return hs_free_id(document, bearers, "bearer");
}

/* A new bearer at a grip, added to an edit. */
static void
insert_bearer(const hs_document *document, int option, const char *grip, hs_edit *edit)
{
    g_autofree char *bearers = g_strdup_printf("options[%d].bearers", option);
    int n = hs_field_length(document, bearers);
    g_autofree char *path = g_strdup_printf("%s[%d]", bearers, n);
    g_autofree char *id = free_letter(document, bearers);
    g_autofree char *worker = free_worker(document, option, edit);
    g_autofree char *json = g_strdup_printf(
        "{\"id\": \"%s\", \"worker\": \"%s\", \"grips\": [\"%s\"]}", id, worker, grip);

    hs_edit_insert(edit, path, hs_change_node(json));
}

/* The greatest share of one bearer anywhere on the way. */
static double
greatest_share_N(hs_document *document, const hs_site_set *set, int option)
{
    double most_N = 0.0;

    if (hs_document_task(document) == NULL)
        return HS_ABSENT;
    hs_answer *answer = hs_answer_new(document, set, HS_ASSESS_LIVE, NULL, NULL);
    if (answer->status != HS_OK) {
        hs_answer_free(answer);
        return HS_ABSENT;
    }
    const hs_option_result *at = &answer->results.options[option];
    for (int i = 0; i < at->n_samples; i++) {
        for (int b = 0; b < at->asked->n_bearers; b++)
            most_N = MAX(most_N, hs_or(at->samples[i].bearers[b].share_N, 0.0));
    }
    hs_answer_free(answer);
    return most_N;
}

static double
share_after_N(hs_document *document, const hs_site_set *set, int option, const hs_edit *edit)
{
    g_autoptr(hs_document) next = hs_document_apply(document, edit, FALSE, NULL);

    return next != NULL ? greatest_share_N(next, set, option) : HS_ABSENT;
}

/* ---- who was taken off ---------------------------------------------------------------------- */

static char *
memory_key(const hs_document *document, int option)
{
    g_autofree char *path = g_strdup_printf("options[%d].id", option);
    const char *id = hs_field_text(document, path);

    return g_strdup_printf("taken off %s", id ? id : "");
}

static void
remember(HsSession *session, int option, const char *bearer_path)
{
    const hs_document *document = hs_session_document(session);
    JsonNode *bearer = hs_field_node(document, bearer_path);
    char *key = memory_key(document, option);
    const char *before = g_hash_table_lookup(hs_session_memory(session), key);
    g_autofree char *one = bearer ? json_to_string(bearer, FALSE) : NULL;

    if (one == NULL)
        g_free(key);
    else /* a line each, the last one first: no line breaks in JSON that is not indented */
        g_hash_table_replace(hs_session_memory(session), key,
                             g_strdup_printf("%s\n%s", one, before ? before : ""));
}

/* Everything the remembered bearer refers to is still there and free. */
static gboolean
can_return(const hs_document *document, int option, JsonObject *bearer, char **ret_grip)
{
    g_autofree char *bearers = g_strdup_printf("options[%d].bearers", option);
    JsonArray *grips = json_object_get_array_member(bearer, "grips");
    guint n = json_array_get_length(grips);

    if (is_listed(document, bearers, json_object_get_string_member(bearer, "id")) ||
        !is_listed(document, "workers", json_object_get_string_member(bearer, "worker")) ||
        (json_object_has_member(bearer, "suit") &&
         !is_listed(document, "suits", json_object_get_string_member(bearer, "suit"))))
        return FALSE;
    for (guint i = 0; i < n; i++) {
        const char *grip = json_array_get_string_element(grips, i);
        if (!is_listed(document, "load.grips", grip) || is_grip_used(document, option, grip))
            return FALSE;
    }
    *ret_grip = g_strdup(n > 0 ? json_array_get_string_element(grips, 0) : "");
    return n > 0;
}

/* The bearer who was taken off last, as he was; NULL: nobody, or he cannot come back. */
static hs_edit *
return_edit(HsSession *session, int option, char **ret_grip)
{
    const hs_document *document = hs_session_document(session);
    g_autofree char *key = memory_key(document, option);
    const char *kept = g_hash_table_lookup(hs_session_memory(session), key);
    g_autofree char *bearers = g_strdup_printf("options[%d].bearers", option);
    g_autofree char *path =
        g_strdup_printf("%s[%d]", bearers, hs_field_length(document, bearers));

    if (kept == NULL || *kept == '\0')
        return NULL;
    g_autofree char *line = g_strndup(kept, strcspn(kept, "\n"));
    JsonNode *node = hs_change_node(line);
    if (!can_return(document, option, json_node_get_object(node), ret_grip)) {
        json_node_unref(node);
        return NULL;
    }
    hs_edit *edit = hs_edit_new(_("Add a bearer"));
    hs_edit_insert(edit, path, node);
    return edit;
}

/* He is back, or somebody else has come in his place. */
static void
forget_last(HsSession *session, int option)
{
    char *key = memory_key(hs_session_document(session), option);
    const char *kept = g_hash_table_lookup(hs_session_memory(session), key);
    char *rest = kept && strchr(kept, '\n') ? g_strdup(strchr(kept, '\n') + 1) : NULL;

    if (rest != NULL && *rest != '\0') {
        g_hash_table_replace(hs_session_memory(session), key, rest);
        return;
    }
    g_hash_table_remove(hs_session_memory(session), key);
    g_free(rest);
    g_free(key);
}

/* ---- one more ------------------------------------------------------------------------------- */

/* Who was taken off last comes back; else the free grip that makes the greatest share smallest. NULL: no grip is free. */
static hs_edit *
best_edit(HsSession *session, int option, char **ret_grip, double *ret_share_N)
{
    hs_document *document = hs_session_document(session);
    hs_edit *best = return_edit(session, option, ret_grip);
    int n = hs_field_length(document, "load.grips");

    *ret_share_N = best != NULL
                       ? share_after_N(document, hs_session_limits(session), option, best)
                       : INFINITY;
    if (best != NULL)
        return best;
    for (int i = 0; i < n; i++) {
        g_autofree char *path = g_strdup_printf("load.grips[%d].id", i);
        const char *grip = hs_field_text(document, path);
        if (grip == NULL || is_grip_used(document, option, grip))
            continue;
        hs_edit *edit = hs_edit_new(_("Add a bearer"));
        insert_bearer(document, option, grip, edit);
        double share_N = share_after_N(document, hs_session_limits(session), option, edit);
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

    if (option < 0 || hs_crew_count(session) >= HS_CREW_MOST)
        return NULL;
    hs_edit *edit = best_edit(session, option, &grip, &share_N);
    if (edit == NULL)
        return NULL;
    hs_edit_free(edit);
    g_autofree char *share = hs_quantity_text(share_N, "N", hs_look_units());
    return g_strdup_printf(_("The next bearer takes grip %s; the greatest share is then %s."),
                           grip, share);
}

void
hs_crew_show_next(HsSession *session, gboolean show)
{
    int option = hs_change_edited(session);
    g_autofree char *grip = NULL;
    double share_N;
    g_autoptr(hs_edit) edit = show && option >= 0 && hs_crew_count(session) < HS_CREW_MOST
                                  ? best_edit(session, option, &grip, &share_N)
                                  : NULL;

    hs_session_set_ghost(session, HS_GHOST_BEARER, edit);
}

/* ---- a grip more ---------------------------------------------------------------------------- */

#define APART_m                                                                                \
    0.12 /* a new grip keeps away from the others: a hand's breadth and a little; our choice */

static void
outline_of(const hs_task *task, hs_vec3 *least, hs_vec3 *most)
{
    *least = (hs_vec3){-0.3, -0.3, 0.0};
    *most = (hs_vec3){0.3, 0.3, 0.3};
    for (int i = 0; i < task->load.n_parts; i++) {
        hs_vec3 a, b;
        hs_part_box(&task->load.parts[i], &a, &b);
        *least =
            i == 0 ? a : (hs_vec3){MIN(least->x, a.x), MIN(least->y, a.y), MIN(least->z, a.z)};
        *most = i == 0 ? b : (hs_vec3){MAX(most->x, b.x), MAX(most->y, b.y), MAX(most->z, b.z)};
    }
}

static gboolean
is_free_place(const hs_task *task, hs_vec3 at_m)
{
    for (int i = 0; i < task->load.n_grips; i++) {
        hs_vec3 grip_m = task->load.grips[i].at_m;
        if (hypot(grip_m.x - at_m.x, grip_m.y - at_m.y) < APART_m)
            return FALSE;
    }
    return TRUE;
}

static hs_edit *
edit_with_new_grip(const hs_document *document, int option, hs_vec3 at_m)
{
    int n = hs_field_length(document, "load.grips");
    g_autofree char *id = hs_free_id(document, "load.grips", "grip");
    g_autofree char *path = g_strdup_printf("load.grips[%d]", n);
    g_autofree char *x = hs_number_text(round(at_m.x * 100.0) / 100.0);
    g_autofree char *y = hs_number_text(round(at_m.y * 100.0) / 100.0);
    g_autofree char *z = hs_number_text(round(at_m.z * 100.0) / 100.0);
    g_autofree char *json = g_strdup_printf(
        "{\"id\": \"%s\", \"at_m\": [%s, %s, %s], \"kind\": \"handle\", \"hands\": 2}", id, x,
        y, z);
    hs_edit *edit = hs_edit_new(_("Add a grip and a bearer"));

    hs_edit_insert(edit, path, hs_change_node(json));
    insert_bearer(document, option, id, edit);
    return edit;
}

/* Round the outline, at the height of the other grips: where it makes the greatest share smallest. */
static void
on_add_grip(GtkWidget *from, gpointer data)
{
    HsSession *session = data;
    hs_document *document = hs_session_document(session);
    const hs_task *task = hs_field_task(session);
    int option = hs_change_edited(session);
    hs_vec3 least, most;
    hs_edit *best = NULL;
    double best_N = INFINITY, z_m = 0.0;

    if (task == NULL || option < 0)
        return;
    outline_of(task, &least, &most);
    for (int i = 0; i < task->load.n_grips; i++)
        z_m += task->load.grips[i].at_m.z / task->load.n_grips;
    for (int i = 0; i < 9; i++) {
        hs_vec3 at_m = {least.x + (most.x - least.x) * (i % 3) / 2.0,
                        least.y + (most.y - least.y) * (i / 3) / 2.0, z_m};
        if (i == 4 || !is_free_place(task, at_m))
            continue;
        hs_edit *edit = edit_with_new_grip(document, option, at_m);
        double share_N = share_after_N(document, hs_session_limits(session), option, edit);
        if (share_N < best_N) {
            g_clear_pointer(&best, hs_edit_free);
            best = g_steal_pointer(&edit);
            best_N = share_N;
        }
        g_clear_pointer(&edit, hs_edit_free);
    }
    if (best != NULL)
        hs_change_option(from, session, option, best);
    else
        hs_notice_say(from, _("There is no room for another grip round the load."));
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
    forget_last(session, option);
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

    remember(session, option, path);
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
