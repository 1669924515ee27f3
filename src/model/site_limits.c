/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which limits does a site set for itself?
 * Answer:    the set's file, read with every fault told, and its figures laid under those of a document.
 * Not here:  the document (document.c), the checks (core). */
#include "site_limits.h"

#include "check.h"
#include "digest.h"
#include "figures.h"
#include "quantity.h"
#include "site_when.h"
#include "strict.h"
#include "translate.h"
#include "words.h"

#include <string.h>

#define CODE_LENGTH 12 /* of the digest, as the reports print it */

struct hs_site_set {
    gatomicrefcount refs;
    char *id, *title, *edition, *wording, *digest;
    GArray *limits; /* of hs_site_figure */
    gboolean is_shipped;
};

typedef struct {
    GPtrArray *faults;
    GString *path;
} reading;

static void
limit_clear(gpointer data)
{
    hs_site_figure *limit = data;

    g_free(limit->wording);
    g_free(limit->source);
}

hs_site_set *
hs_site_set_ref(hs_site_set *set)
{
    g_atomic_ref_count_inc(&set->refs);
    return set;
}

void
hs_site_set_unref(hs_site_set *set)
{
    if (set == NULL || !g_atomic_ref_count_dec(&set->refs))
        return;
    g_free(set->id);
    g_free(set->title);
    g_free(set->edition);
    g_free(set->wording);
    g_free(set->digest);
    g_array_unref(set->limits);
    g_free(set);
}

const char *
hs_site_set_id(const hs_site_set *set)
{
    return set->id;
}

/* Titles and wordings of the sets that ship are sentences of the program too (words_national.h); a site's own stay as they are. */
const char *
hs_site_set_name(const hs_site_set *set)
{
    return set->title != NULL ? dgettext(GETTEXT_PACKAGE, set->title) : set->id;
}

void
hs_site_set_mark_shipped(hs_site_set *set)
{
    set->is_shipped = TRUE;
}

gboolean
hs_site_set_is_shipped(const hs_site_set *set)
{
    return set->is_shipped;
}

const char *
hs_site_set_edition(const hs_site_set *set)
{
    return set->edition;
}

const char *
hs_site_set_wording(const hs_site_set *set)
{
    return dgettext(GETTEXT_PACKAGE, set->wording);
}

const char *
hs_site_set_digest(const hs_site_set *set)
{
    return set->digest;
}

int
hs_site_set_count(const hs_site_set *set)
{
    return (int)set->limits->len;
}

const hs_site_figure *
hs_site_set_figure(const hs_site_set *set, int i)
{
    return &g_array_index(set->limits, hs_site_figure, i);
}

/* A fault at the path's key; text is taken over. */
static void
fault_at(reading *r, const char *key, char *text, gboolean is_warning)
{
    gsize before = r->path->len;

    hs_path_add_key(r->path, key);
    hs_faults_add(r->faults, r->path->str, text, is_warning);
    g_string_truncate(r->path, before);
}

static void
wrong(reading *r, JsonObject *object, const char *key, const char *allowed)
{
    JsonNode *node = json_object_get_member(object, key);
    g_autofree char *is = node != NULL ? hs_fault_value(node) : NULL;

    fault_at(r, key,
             is != NULL ? g_strdup_printf(_("is %s; allowed: %s"), is, allowed)
                        : g_strdup_printf(_("is missing; allowed: %s"), allowed),
             FALSE);
}

static GType
type_of(JsonObject *object, const char *key)
{
    JsonNode *node = json_object_get_member(object, key);

    return node != NULL && JSON_NODE_HOLDS_VALUE(node) ? json_node_get_value_type(node)
                                                       : G_TYPE_INVALID;
}

/* A text that is not empty; NULL and a fault otherwise. */
static char *
read_text(reading *r, JsonObject *object, const char *key)
{
    if (type_of(object, key) == G_TYPE_STRING &&
        *json_object_get_string_member(object, key) != '\0')
        return g_strdup(json_object_get_string_member(object, key));
    wrong(r, object, key, _("a text that is not empty"));
    return NULL;
}

static void
warn_unknown(reading *r, JsonObject *object, const char *const *known)
{
    JsonObjectIter iter;
    const char *key;

    json_object_iter_init_ordered(&iter, object);
    while (json_object_iter_next_ordered(&iter, &key, NULL))
        if (!g_strv_contains(known, key))
            fault_at(r, key, g_strdup(_("is not known and not used")), TRUE);
}

static char *
all_checks(void)
{
    g_autoptr(GString) text = g_string_new(NULL);

    for (int i = 0; i < HS_N_CHECKS; i++)
        if (hs_limit_takes_own((hs_check_id)i))
            g_string_append_printf(text, "%s%s", text->len > 0 ? ", " : "",
                                   hs_check_get((hs_check_id)i)->id);
    return g_string_free(g_steal_pointer(&text), FALSE);
}

static void
say_when(const char *key, char *text, gboolean is_warning, gpointer data)
{
    fault_at(data, key, text, is_warning);
}

static void
read_when(reading *r, JsonObject *object, hs_site_figure *limit)
{
    JsonNode *node = json_object_get_member(object, "when");
    gsize before = r->path->len;

    if (node == NULL)
        return;
    if (!JSON_NODE_HOLDS_OBJECT(node)) {
        wrong(r, object, "when", _("an object"));
        return;
    }
    hs_path_add_key(r->path, "when");
    hs_site_when_read(json_node_get_object(node), hs_limit_own_by(limit->check), &limit->when,
                      say_when, r);
    g_string_truncate(r->path, before);
}

/* Exactly one of the two: the site's own word, or how a publication's figure is known. */
static void
read_known(reading *r, JsonObject *object, hs_site_figure *limit)
{
    gboolean is_published = json_object_has_member(object, "known");
    const char *known = type_of(object, "known") == G_TYPE_STRING
                            ? json_object_get_string_member(object, "known")
                            : "";

    if (is_published && json_object_has_member(object, "confirmed"))
        fault_at(r, "known",
                 g_strdup(_("stands beside “confirmed”: a figure is the site's own or that of "
                            "a publication")),
                 FALSE);
    else if (is_published && strcmp(known, "seen") != 0 && strcmp(known, "memory") != 0)
        wrong(r, object, "known", "seen, memory");
    else if (is_published)
        limit->known = strcmp(known, "seen") == 0 ? HS_SITE_READ : HS_SITE_REMEMBERED;
    else if (type_of(object, "confirmed") != G_TYPE_BOOLEAN)
        wrong(r, object, "confirmed", _("true or false"));
    else
        limit->known = json_object_get_boolean_member(object, "confirmed")
                           ? HS_SITE_CONFIRMED
                           : HS_SITE_UNCONFIRMED;
}

static void
read_unit(reading *r, JsonObject *object, hs_site_figure *limit)
{
    const char *unit = hs_check_get(limit->check)->unit;
    const char *is = type_of(object, "unit") == G_TYPE_STRING
                         ? json_object_get_string_member(object, "unit")
                         : NULL;
    g_autofree char *allowed = NULL;

    limit->by_body_mass =
        hs_limit_own_by(limit->check) == HS_OWN_BY_LEG && g_strcmp0(is, "kg/kg") == 0;
    if (limit->by_body_mass || g_strcmp0(is, unit) == 0)
        return;
    allowed = hs_limit_own_by(limit->check) == HS_OWN_BY_LEG
                  ? g_strdup_printf("\"%s\", \"kg/kg\"", unit)
                  : g_strdup_printf("\"%s\"", unit);
    wrong(r, object, "unit", allowed);
}

static void
read_limit(reading *r, JsonObject *object, int check, hs_site_set *set)
{
    static const char *const known[] = {"figure",    "unit",  "wording", "source",
                                        "confirmed", "known", "when",    NULL};
    hs_site_figure limit = {.check = (hs_check_id)check};
    GType type = type_of(object, "figure");

    if ((type != G_TYPE_INT64 && type != G_TYPE_DOUBLE) ||
        !(json_object_get_double_member(object, "figure") > 0.0))
        wrong(r, object, "figure", _("a number above 0"));
    else
        limit.figure = json_object_get_double_member(object, "figure");
    read_unit(r, object, &limit);
    limit.wording = read_text(r, object, "wording");
    limit.source = read_text(r, object, "source");
    read_known(r, object, &limit);
    read_when(r, object, &limit);
    warn_unknown(r, object, known);
    g_array_append_val(set->limits, limit);
}

/* Several figures for one check, each for other people or handling. */
static void
read_several(reading *r, JsonArray *list, int check, hs_site_set *set)
{
    guint n = json_array_get_length(list);

    for (guint i = 0; i < n; i++) {
        JsonNode *node = json_array_get_element(list, i);
        gsize before = r->path->len;

        hs_path_add_index(r->path, i);
        if (JSON_NODE_HOLDS_OBJECT(node))
            read_limit(r, json_node_get_object(node), check, set);
        else
            hs_faults_add(r->faults, r->path->str, g_strdup(_("is no object")), FALSE);
        g_string_truncate(r->path, before);
    }
}

static gboolean
is_list_for(JsonNode *node, int check)
{
    return JSON_NODE_HOLDS_ARRAY(node) &&
           json_array_get_length(json_node_get_array(node)) > 0 &&
           hs_limit_own_by((hs_check_id)check) >= HS_OWN_BY_PERSON;
}

static void
read_limits(reading *r, JsonObject *root, hs_site_set *set)
{
    JsonNode *node = json_object_get_member(root, "limits"), *member;
    JsonObjectIter iter;
    const char *key;

    if (node == NULL || !JSON_NODE_HOLDS_OBJECT(node) ||
        json_object_get_size(json_node_get_object(node)) == 0) {
        wrong(r, root, "limits", _("an object with one entry or more, by check"));
        return;
    }
    g_string_append(r->path, "limits");
    json_object_iter_init_ordered(&iter, json_node_get_object(node));
    while (json_object_iter_next_ordered(&iter, &key, &member)) {
        int check = hs_check_find(key);
        gsize before = r->path->len;
        g_autofree char *all = NULL;

        if (check < 0 || !hs_limit_takes_own((hs_check_id)check)) {
            all = all_checks();
            fault_at(r, key,
                     g_strdup_printf(_("takes no figure of the site; allowed: %s"), all),
                     FALSE);
        } else if (is_list_for(member, check)) {
            hs_path_add_key(r->path, key);
            read_several(r, json_node_get_array(member), check, set);
        } else if (!JSON_NODE_HOLDS_OBJECT(member)) {
            wrong(r, json_node_get_object(node), key, _("an object"));
        } else {
            hs_path_add_key(r->path, key);
            read_limit(r, json_node_get_object(member), check, set);
        }
        g_string_truncate(r->path, before);
    }
    g_string_truncate(r->path, 0);
}

static hs_site_set *
read_set(JsonNode *root, GPtrArray *faults)
{
    static const char *const known[] = {"format",  "version", "id",     "title",
                                        "edition", "wording", "limits", NULL};
    g_autoptr(hs_site_set) set = g_new0(hs_site_set, 1);
    reading r = {faults, g_string_new(NULL)};
    guint before = hs_faults_errors(faults);
    JsonObject *object;

    g_atomic_ref_count_init(&set->refs);
    set->limits = g_array_new(FALSE, FALSE, sizeof(hs_site_figure));
    g_array_set_clear_func(set->limits, limit_clear);
    if (!JSON_NODE_HOLDS_OBJECT(root)) {
        hs_faults_add(faults, "$", g_strdup(_("is no object")), FALSE);
    } else {
        object = json_node_get_object(root);
        if (type_of(object, "format") != G_TYPE_STRING ||
            strcmp(json_object_get_string_member(object, "format"), "handspike-limits") != 0)
            wrong(&r, object, "format", "\"handspike-limits\"");
        if (type_of(object, "version") != G_TYPE_INT64 ||
            json_object_get_int_member(object, "version") != 1)
            wrong(&r, object, "version", "1");
        set->id = read_text(&r, object, "id");
        set->edition = read_text(&r, object, "edition");
        set->wording = read_text(&r, object, "wording");
        if (json_object_has_member(object, "title"))
            set->title = read_text(&r, object, "title");
        read_limits(&r, object, set);
        warn_unknown(&r, object, known);
        set->digest = hs_digest_of(root);
    }
    g_string_free(r.path, TRUE);
    return hs_faults_errors(faults) == before ? g_steal_pointer(&set) : NULL;
}

hs_site_set *
hs_site_set_from_bytes(const char *text, gsize length, GPtrArray *faults)
{
    g_autoptr(JsonNode) root = hs_strict_parse(text, length, faults);

    return root != NULL ? read_set(root, faults) : NULL;
}

gboolean
hs_site_figure_is_used(const hs_site_figure *figure, const hs_task *task)
{
    return !hs_has(hs_site_limit_of(task, hs_check_get(figure->check)->id));
}

const char *
hs_site_figure_known(const hs_site_figure *figure, const hs_task *task)
{
    if (task != NULL && !hs_site_figure_is_used(figure, task))
        return _("not used: the document has its own figure");
    switch (figure->known) {
    case HS_SITE_CONFIRMED:
        return _("confirmed by the site");
    case HS_SITE_READ:
        return _("read in a publication");
    case HS_SITE_UNCONFIRMED:
    case HS_SITE_REMEMBERED:
    default:
        return _("unconfirmed");
    }
}

gboolean
hs_site_figure_is_unconfirmed(const hs_site_figure *figure)
{
    return figure->known == HS_SITE_UNCONFIRMED || figure->known == HS_SITE_REMEMBERED;
}

char *
hs_site_figure_text(const hs_site_figure *figure, hs_units units)
{
    g_autofree char *share = NULL;

    if (!figure->by_body_mass)
        return hs_quantity_text(figure->figure, hs_check_get(figure->check)->unit, units);
    share = hs_number_text(100.0 * figure->figure);
    return g_strdup_printf(_("%s %% of the worker's own mass"), share);
}

char *
hs_site_set_headline(const hs_site_set *set)
{
    g_autofree char *code = g_strndup(set->digest, CODE_LENGTH);

    return g_strdup_printf(_("%s, edition %s, set code %s"), hs_site_set_name(set),
                           set->edition, code);
}

/* Copied: the set need not outlive the results. */
static hs_site_limit
item_of(const hs_site_set *set, const hs_site_figure *limit, hs_arena *arena)
{
    hs_site_limit item = {.id = hs_check_get(limit->check)->id,
                          .figure = limit->figure,
                          .by_body_mass = limit->by_body_mass,
                          .is_unconfirmed = hs_site_figure_is_unconfirmed(limit),
                          .is_published = limit->known >= HS_SITE_READ,
                          .set = hs_arena_strdup(arena, hs_site_set_name(set)),
                          .wording = hs_arena_strdup(arena, limit->wording)};

    if (hs_site_when_asks(&limit->when)) {
        hs_site_when *when = HS_NEW(arena, hs_site_when, 1);

        *when = limit->when;
        item.when = when;
    }
    return item;
}

const hs_task *
hs_site_set_apply(const hs_site_set *set, const hs_task *task, hs_arena *arena)
{
    hs_task *copy;
    hs_site_limit *items;
    int n = task->policy.n_site_limits;

    if (set == NULL)
        return task;
    copy = HS_NEW(arena, hs_task, 1);
    items = HS_NEW(arena, hs_site_limit, n + hs_site_set_count(set));
    *copy = *task;
    for (int i = 0; i < n; i++)
        items[i] = task->policy.site_limits[i];
    for (int i = 0; i < hs_site_set_count(set); i++) {
        const hs_site_figure *limit = hs_site_set_figure(set, i);

        if (hs_site_figure_is_used(limit, task))
            items[n++] = item_of(set, limit, arena);
    }
    copy->policy.site_limits = items;
    copy->policy.n_site_limits = n;
    return copy;
}

/* The site's own: "Lift, guidance figures: 18 kg, confirmed by the site (source). Wording." A publication's, of which a check may
 * have many: "men 20-35: 25 kg, read in a publication", before the first of a check what it stands for, after the last of a
 * source the source. */
char *
hs_site_set_line(const hs_site_set *set, int i, const hs_task *task, hs_units units)
{
    const hs_site_figure *at = hs_site_set_figure(set, i);
    const hs_site_figure *before = i > 0 ? hs_site_set_figure(set, i - 1) : NULL;
    const hs_site_figure *after =
        i + 1 < hs_site_set_count(set) ? hs_site_set_figure(set, i + 1) : NULL;
    g_autofree char *figure = hs_site_figure_text(at, units);
    const char *known = hs_site_figure_known(at, task);
    GString *out;

    if (at->known < HS_SITE_READ)
        return g_strdup_printf("%s: %s, %s (%s). %s", hs_words_check(at->check), figure, known,
                               at->source, at->wording);
    out = g_string_new(NULL);
    if (before == NULL || before->check != at->check)
        g_string_append_printf(out, _("In place of “%s”: "), hs_words_check(at->check));
    g_string_append_printf(out, "%s: %s, %s", at->wording, figure, known);
    if (after == NULL || after->check != at->check || strcmp(after->source, at->source) != 0)
        g_string_append_printf(out, " (%s)", at->source);
    g_string_append_c(out, '.');
    return g_string_free(out, FALSE);
}

char *
hs_site_set_to_text(const hs_site_set *set, const hs_task *task, hs_units units)
{
    GString *out = g_string_new(NULL);
    g_autofree char *head = hs_site_set_headline(set);

    g_string_append_printf(out, "%s\n%s\n", head, set->wording);
    for (int i = 0; i < hs_site_set_count(set); i++) {
        g_autofree char *line = hs_site_set_line(set, i, task, units);

        g_string_append_printf(out, "%s\n", line);
    }
    return g_string_free(out, FALSE);
}
