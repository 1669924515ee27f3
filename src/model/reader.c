/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a JSON tree become a task?
 * Answer:    one walk over the tables of fields.c; nothing stops at the first fault.
 * Not here:  rules across fields (rules.c), strict JSON (strict.c). */
#include "reader.h"

#include "allowed.h"
#include "faults.h"
#include "ids.h"
#include "translate.h"
#include "walk.h"

#include <math.h>
#include <string.h>

#define AT(type, base, at) ((type *)(void *)((char *)(base) + (at)))

static void read_object(hs_walk *r, JsonObject *object, const hs_object *type, void *into);

static gboolean
read_number(hs_walk *r, JsonNode *node, const hs_field *field, double *ret)
{
    double value = hs_walk_is_number(node) ? json_node_get_double(node) : (double)NAN;

    if (!(field->above ? value > field->least : value >= field->least) ||
        !(value <= field->most) ||
        ((field->is_whole || field->kind == HS_KIND_INT) && value != floor(value))) {
        hs_walk_refuse(r, node, field);
        return FALSE;
    }
    *ret = value;
    return TRUE;
}

static int
word_of(JsonNode *node, const char *const *words)
{
    if (hs_walk_is_type(node, G_TYPE_STRING))
        for (int i = 0; words[i] != NULL; i++)
            if (strcmp(words[i], json_node_get_string(node)) == 0)
                return i + 1;
    return 0;
}

static int
read_word(hs_walk *r, JsonNode *node, const hs_field *field)
{
    int found = word_of(node, field->words);

    if (found == 0)
        hs_walk_refuse(r, node, field);
    return found;
}

/* The list in a node, when it has so many entries; else a fault. */
static JsonArray *
list_of(hs_walk *r, JsonNode *node, const hs_field *field, double least, double most)
{
    JsonArray *array = JSON_NODE_HOLDS_ARRAY(node) ? json_node_get_array(node) : NULL;
    g_autofree char *allowed = NULL;
    guint n;

    if (array == NULL) {
        hs_walk_refuse(r, node, field);
        return NULL;
    }
    n = json_array_get_length(array);
    if (n >= least && n <= most)
        return array;
    allowed = hs_allowed_text(field);
    hs_walk_fault(r, g_strdup_printf(_("is a list of %u; allowed: %s"), n, allowed));
    return NULL;
}

/* A list of exactly n numbers. */
static gboolean
read_numbers(hs_walk *r, JsonNode *node, guint n, const hs_field *field, double *ret)
{
    JsonArray *array = list_of(r, node, field, n, n);
    gboolean good = array != NULL;

    for (guint i = 0; array != NULL && i < n; i++) {
        gsize before = hs_walk_enter_item(r, i);

        if (!read_number(r, json_array_get_element(array, i), field, &ret[i]))
            good = FALSE;
        hs_walk_leave(r, before);
    }
    return good;
}

static void
prepare(const hs_object *type, void *into)
{
    for (const hs_field *field = type->fields; field->key != NULL; field++)
        switch (field->kind) {
        case HS_KIND_NUMBER:
            *AT(double, into, field->offset) = field->is_zero ? 0.0 : HS_ABSENT;
            break;
        case HS_KIND_EACH:
            *AT(double, into, field->offset) = HS_ABSENT;
            break;
        case HS_KIND_WORD:
            *AT(int, into, field->offset) = field->otherwise;
            break;
        case HS_KIND_PAIR:
            AT(double, into, field->offset)[0] = AT(double, into, field->offset)[1] = HS_ABSENT;
            break;
        case HS_KIND_REF:
            *AT(int, into, field->offset) = -1;
            break;
        case HS_KIND_OBJECT:
            prepare(field->object, AT(void, into, field->offset));
            break;
        case HS_KIND_INLINE:
            prepare(field->object, into);
            break;
        default:
            break;
        }
}

static void
read_list(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array = list_of(r, node, field, field->least, field->most);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    gsize size = field->object->size;
    char *items = hs_arena_alloc(r->arena, n, size);

    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
    for (guint i = 0; i < n; i++)
        prepare(field->object, items + i * size);
    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = hs_walk_enter_item(r, i);

        if (JSON_NODE_HOLDS_OBJECT(item)) {
            read_object(r, json_node_get_object(item), field->object, items + i * size);
        } else {
            g_autofree char *is = hs_fault_value(item);

            hs_walk_fault(r, g_strdup_printf(_("is %s; allowed: an object"), is));
        }
        hs_walk_leave(r, before);
    }
}

static void
read_strings(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array = list_of(r, node, field, field->least, field->most);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    const char **items = HS_NEW(r->arena, const char *, n);

    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = hs_walk_enter_item(r, i);
        int word = word_of(item, field->words);

        items[i] = word > 0 ? field->words[word - 1] : "";
        if (word == 0) {
            g_autofree char *is = hs_fault_value(item),
                            *all = g_strjoinv(", ", (char **)(guintptr)field->words);

            hs_walk_fault(r, g_strdup_printf(_("is %s; allowed: one of %s"), is, all));
        }
        hs_walk_leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

static void
read_places(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    static const hs_field place = {"",    HS_KIND_PAIR, 0,     0,    -10000,
                                   10000, FALSE,        FALSE, NULL, NULL};
    JsonArray *array = list_of(r, node, field, 0, HS_PLACES_MOST);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    hs_vec2 *items = HS_NEW(r->arena, hs_vec2, n);

    for (guint i = 0; i < n; i++) {
        gsize before = hs_walk_enter_item(r, i);
        double at[2] = {HS_ABSENT, HS_ABSENT};

        read_numbers(r, json_array_get_element(array, i), 2, &place, at);
        items[i] = (hs_vec2){at[0], at[1]};
        hs_walk_leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

static void
unknown_id(hs_walk *r, const hs_ids *list, JsonNode *node)
{
    g_autofree char *is = hs_fault_value(node), *all = hs_ids_text(list);

    if (*all == '\0')
        hs_walk_fault(
            r, g_strdup_printf(_("is %s, but %s has no entry with an id"), is, list->path));
    else
        hs_walk_fault(r, g_strdup_printf(_("is %s, which is no id of %s; allowed: one of %s"),
                                         is, list->path, all));
}

/* The list itself could not be read, which was said there: no second sentence at every reference to it. */
static gboolean
is_passed_over(const hs_walk *r, const hs_ids *list)
{
    if (strcmp(list->path, "effectors") == 0)
        return r->is_suit_unknown;
    return list->n == 0 &&
           (hs_faults_has(r->faults, list->path) ||
            (g_str_has_prefix(list->path, "load") && hs_faults_stands(r->faults, "load")));
}

/* Index of an id in the list that a reference means; -1 with a fault. */
static int
find_id(hs_walk *r, JsonNode *node, const hs_field *field)
{
    hs_ids list = hs_ids_of(r->task, r->suit, field->words[0]);
    int found;

    if (!hs_walk_is_type(node, G_TYPE_STRING)) {
        g_autofree char *is = hs_fault_value(node);

        hs_walk_fault(r, g_strdup_printf(_("is %s; allowed: an id of %s"), is, list.path));
        return -1;
    }
    found = hs_ids_find(&list, json_node_get_string(node));
    if (found >= 0 || is_passed_over(r, &list))
        return found;
    if (strcmp(list.path, "effectors") == 0 && r->suit == NULL)
        hs_walk_fault(r,
                      g_strdup(_("an effector without a suit; needed: the bearer's suit too")));
    else
        unknown_id(r, &list, node);
    return -1;
}

static void
read_refs(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array = list_of(r, node, field, field->least, field->most);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    int *items = HS_NEW(r->arena, int, n);
    int found = 0;

    for (guint i = 0; i < n; i++) {
        gsize before = hs_walk_enter_item(r, i);
        int at = find_id(r, json_array_get_element(array, i), field);

        hs_walk_leave(r, before);
        if (at >= 0)
            items[found++] = at;
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = found;
}

/* A list with one entry for each route point; NULL with a fault. */
static JsonArray *
list_of_points(hs_walk *r, JsonNode *node)
{
    JsonArray *array = json_node_get_array(node);
    guint n = json_array_get_length(array), n_points = (guint)r->task->route.n_points;

    if (n == n_points)
        return array;
    if (n_points > 0)
        hs_walk_fault(
            r,
            g_strdup_printf(_("is a list of %u; allowed: %u entries, one for each route point"),
                            n, n_points));
    return NULL;
}

/* reach_m of an option: a number, or a list with a number or null for each point. */
static void
read_each(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array;
    guint n;
    double *items;

    if (!JSON_NODE_HOLDS_ARRAY(node)) {
        read_number(r, node, field, AT(double, into, field->offset));
        return;
    }
    array = list_of_points(r, node);
    n = array != NULL ? json_array_get_length(array) : 0;
    items = HS_NEW(r->arena, double, n);
    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = hs_walk_enter_item(r, i);

        items[i] = HS_ABSENT;
        if (!JSON_NODE_HOLDS_NULL(item))
            read_number(r, item, field, &items[i]);
        hs_walk_leave(r, before);
    }
    AT(hs_option, into, 0)->reach_each_m = items;
    AT(hs_option, into, 0)->n_reach = (int)n;
}

static void
read_stances(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    hs_option *option = into;
    JsonArray *array;
    guint n;
    hs_stance_kind *items;

    if (!JSON_NODE_HOLDS_ARRAY(node)) {
        option->stance = (hs_stance_kind)read_word(r, node, field);
        return;
    }
    array = list_of_points(r, node);
    n = array != NULL ? json_array_get_length(array) : 0;
    items = HS_NEW(r->arena, hs_stance_kind, n);
    for (guint i = 0; i < n; i++) {
        gsize before = hs_walk_enter_item(r, i);

        items[i] = (hs_stance_kind)read_word(r, json_array_get_element(array, i), field);
        hs_walk_leave(r, before);
    }
    option->stance_each = items;
    option->n_stance = (int)n;
}

static gboolean
is_check(const char *id)
{
    static const char *const ids[] = {
#define CHECK(name, text, unit, function) text,
#include "lists/checks.def"
#undef CHECK
    };

    for (guint i = 0; i < G_N_ELEMENTS(ids); i++)
        if (strcmp(ids[i], id) == 0)
            return TRUE;
    return FALSE;
}

static void
read_map(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    g_autoptr(GList) keys = NULL;
    hs_site_limit *items;
    int n = 0;

    if (!JSON_NODE_HOLDS_OBJECT(node)) {
        hs_walk_refuse(r, node, field);
        return;
    }
    keys = json_object_get_members(json_node_get_object(node));
    items = HS_NEW(r->arena, hs_site_limit, g_list_length(keys));
    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before = hs_walk_enter(r, at->data);
        JsonNode *figure = json_object_get_member(json_node_get_object(node), at->data);

        if (!is_check(at->data))
            hs_walk_warn(r, _("is no check of this program; the figure is kept and not used"));
        if (!hs_walk_is_number(figure) || !(json_node_get_double(figure) > field->least) ||
            !(json_node_get_double(figure) <= field->most)) {
            g_autofree char *is = hs_fault_value(figure);

            hs_walk_fault(r, g_strdup_printf(_("is %s; allowed: a number above 0"), is));
        } else {
            items[n].figure = json_node_get_double(figure);
            items[n++].id = hs_arena_strdup(r->arena, at->data);
        }
        hs_walk_leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = n;
}

static void
read_string(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    if (!hs_walk_is_type(node, G_TYPE_STRING) ||
        (strcmp(field->key, "id") == 0 && json_node_get_string(node)[0] == '\0'))
        hs_walk_refuse(r, node, field);
    else
        *AT(const char *, into, field->offset) =
            hs_arena_strdup(r->arena, json_node_get_string(node));
}

static void
read_bool(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    gboolean value;

    if (!hs_walk_is_type(node, G_TYPE_BOOLEAN)) {
        hs_walk_refuse(r, node, field);
        return;
    }
    value = json_node_get_boolean(node);
    if (field->kind == HS_KIND_BOOL)
        *AT(hs_tri, into, field->offset) = value ? HS_YES : HS_NO;
    else
        *AT(bool, into, field->offset) = value;
}

static void
read_plain(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    double three[3];

    switch (field->kind) {
    case HS_KIND_NUMBER:
        read_number(r, node, field, AT(double, into, field->offset));
        return;
    case HS_KIND_INT:
        if (read_number(r, node, field, three))
            *AT(int, into, field->offset) = (int)three[0];
        return;
    case HS_KIND_PAIR:
        if (read_numbers(r, node, 2, field, three))
            memcpy(AT(double, into, field->offset), three, 2 * sizeof(double));
        return;
    case HS_KIND_VECTOR:
        if (read_numbers(r, node, 3, field, three)) {
            *AT(hs_vec3, into, field->offset) = (hs_vec3){three[0], three[1], three[2]};
            if (field->aux != 0)
                *AT(bool, into, field->aux) = true;
        }
        return;
    case HS_KIND_STRING:
        read_string(r, node, field, into);
        return;
    case HS_KIND_BOOL:
    case HS_KIND_FLAG:
        read_bool(r, node, field, into);
        return;
    case HS_KIND_WORD:
        *AT(int, into, field->offset) = read_word(r, node, field);
        return;
    default:
        g_assert_not_reached();
    }
}

static void
read_field(hs_walk *r, JsonNode *node, const hs_field *field, void *into)
{
    switch (field->kind) {
    case HS_KIND_OBJECT:
    case HS_KIND_INLINE:
        if (!JSON_NODE_HOLDS_OBJECT(node)) {
            hs_walk_refuse(r, node, field);
            return;
        }
        if (field->kind == HS_KIND_INLINE && field->aux != 0)
            *AT(bool, into, field->aux) = true;
        read_object(r, json_node_get_object(node), field->object,
                    AT(void, into, field->offset));
        return;
    case HS_KIND_LIST:
        read_list(r, node, field, into);
        return;
    case HS_KIND_STRINGS:
        read_strings(r, node, field, into);
        return;
    case HS_KIND_PLACES:
        read_places(r, node, field, into);
        return;
    case HS_KIND_REF:
        *AT(int, into, field->offset) = find_id(r, node, field);
        if (strcmp(field->words[0], "suits") == 0) {
            r->is_suit_unknown = *AT(int, into, field->offset) < 0;
            r->suit =
                r->is_suit_unknown ? NULL : &r->task->suits[*AT(int, into, field->offset)];
        }
        return;
    case HS_KIND_REFS:
        read_refs(r, node, field, into);
        return;
    case HS_KIND_EACH:
        read_each(r, node, field, into);
        return;
    case HS_KIND_STANCES:
        read_stances(r, node, field, into);
        return;
    case HS_KIND_MAP:
        read_map(r, node, field, into);
        return;
    default:
        read_plain(r, node, field, into);
        return;
    }
}

static void
warn_unknown(hs_walk *r, JsonObject *object, const hs_object *type)
{
    g_autoptr(GList) keys = json_object_get_members(object);

    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before;

        if (hs_object_knows(type, at->data))
            continue;
        before = hs_walk_enter(r, at->data);
        hs_walk_warn(r, _("unknown key; it is kept and not used"));
        hs_walk_leave(r, before);
    }
}

static void
read_object(hs_walk *r, JsonObject *object, const hs_object *type, void *into)
{
    if (strcmp(type->name, "bearer") == 0) {
        r->suit = NULL;
        r->is_suit_unknown = FALSE;
    }
    for (const hs_field *field = type->fields; field->key != NULL; field++) {
        gsize before = hs_walk_enter(r, field->key);

        if (json_object_has_member(object, field->key))
            read_field(r, json_object_get_member(object, field->key), field, into);
        else if (field->required)
            hs_walk_missing(r, field);
        else if (field->is_told)
            hs_walk_warn(r, _("is missing; 0 is taken"));
        hs_walk_leave(r, before);
    }
    warn_unknown(r, object, type);
}

static void
read_head(hs_walk *r, JsonObject *object)
{
    JsonNode *format = json_object_get_member(object, "format"),
             *version = json_object_get_member(object, "version");
    g_autofree char *is_format = format != NULL ? hs_fault_value(format) : NULL;
    g_autofree char *is_version = version != NULL ? hs_fault_value(version) : NULL;
    gsize before = hs_walk_enter(r, "format");

    if (format == NULL)
        hs_walk_fault(r, g_strdup(_("is missing; needed: \"handspike-assessment\"")));
    else if (!hs_walk_is_type(format, G_TYPE_STRING) ||
             strcmp(json_node_get_string(format), "handspike-assessment") != 0)
        hs_walk_fault(
            r, g_strdup_printf(_("is %s; allowed: \"handspike-assessment\""), is_format));
    hs_walk_leave(r, before);
    before = hs_walk_enter(r, "version");
    if (version == NULL)
        hs_walk_fault(r, g_strdup(_("is missing; needed: 1")));
    else if (hs_walk_is_number(version) && json_node_get_double(version) > 1.0)
        hs_walk_fault(r, g_strdup_printf(_("is %s, newer than this program reads; allowed: 1"),
                                         is_version));
    else if (!hs_walk_is_number(version) || json_node_get_double(version) != 1.0)
        hs_walk_fault(r, g_strdup_printf(_("is %s; allowed: 1"), is_version));
    hs_walk_leave(r, before);
}

hs_task *
hs_reader_task(JsonNode *root, hs_arena *arena, GPtrArray *faults)
{
    hs_walk r = {arena, faults, g_string_new(NULL), HS_NEW(arena, hs_task, 1), NULL};
    JsonObject *object;

    prepare(&hs_object_document, r.task);
    if (!JSON_NODE_HOLDS_OBJECT(root)) {
        g_autofree char *is = hs_fault_value(root);

        g_string_assign(r.path, "$");
        hs_walk_fault(&r, g_strdup_printf(_("is %s; allowed: an object"), is));
    } else {
        object = json_node_get_object(root);
        read_head(&r, object);
        read_object(&r, object, &hs_object_document, r.task);
        r.task->has_roles = json_object_has_member(object, "roles");
        r.task->has_criteria = json_object_has_member(object, "criteria");
    }
    g_string_free(r.path, TRUE);
    return r.task;
}
