/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a JSON tree become a task?
 * Answer:    one walk over the tables of fields.c; nothing stops at the first fault.
 * Not here:  rules across fields (rules.c), strict JSON (strict.c). */
#include "reader.h"

#include "fields.h"
#include "quantity.h"
#include "strict.h"
#include "translate.h"

#include <math.h>
#include <string.h>

typedef struct {
    hs_arena *arena;
    GPtrArray *faults;
    GString *path;
    hs_task *task;
    const hs_suit *suit; /* of the bearer being read, for its effector */
} reading;

#define AT(type, base, at) ((type *)(void *)((char *)(base) + (at)))

static void read_object(reading *r, JsonObject *object, const hs_object *type, void *into);

static void
fault(reading *r, char *text)
{
    g_ptr_array_add(r->faults, hs_fault_new(r->path->str, text, FALSE));
}

static gsize
enter(reading *r, const char *key)
{
    gsize before = r->path->len;

    g_string_append_printf(r->path, "%s%s", before > 0 ? "." : "", key);
    return before;
}

static gsize
enter_item(reading *r, guint index)
{
    gsize before = r->path->len;

    g_string_append_printf(r->path, "[%u]", index);
    return before;
}

static void
leave(reading *r, gsize before)
{
    g_string_truncate(r->path, before);
}

static const char *
type_name(JsonNode *node)
{
    switch (json_node_get_node_type(node)) {
    case JSON_NODE_OBJECT:
        return _("an object");
    case JSON_NODE_ARRAY:
        return _("a list");
    case JSON_NODE_NULL:
        return _("null");
    case JSON_NODE_VALUE:
    default:
        if (json_node_get_value_type(node) == G_TYPE_STRING)
            return _("a string");
        return json_node_get_value_type(node) == G_TYPE_BOOLEAN ? _("true or false") : _("a number");
    }
}

static gboolean
is_number(JsonNode *node)
{
    return JSON_NODE_HOLDS_VALUE(node) &&
           (json_node_get_value_type(node) == G_TYPE_INT64 || json_node_get_value_type(node) == G_TYPE_DOUBLE);
}

static gboolean
is_type(JsonNode *node, GType type)
{
    return JSON_NODE_HOLDS_VALUE(node) && json_node_get_value_type(node) == type;
}

static void
wrong_type(reading *r, JsonNode *node, const char *wanted)
{
    fault(r, g_strdup_printf(_("is %s, but %s is wanted"), type_name(node), wanted));
}

static gboolean
read_number(reading *r, JsonNode *node, double least, double most, gboolean above, double *ret)
{
    double value;

    if (!is_number(node)) {
        wrong_type(r, node, _("a number"));
        return FALSE;
    }
    value = json_node_get_double(node);
    if (!(above ? value > least : value >= least) || !(value <= most)) {
        g_autofree char *is = hs_number_text(value), *lo = hs_number_text(least), *hi = hs_number_text(most);

        fault(r, above ? g_strdup_printf(_("is %s; allowed is above %s, to %s"), is, lo, hi)
                       : g_strdup_printf(_("is %s; allowed is %s to %s"), is, lo, hi));
        return FALSE;
    }
    *ret = value;
    return TRUE;
}

static char *
list_words(const char *const *words)
{
    GString *all = g_string_new(words[0]);

    for (int i = 1; words[i] != NULL; i++)
        g_string_append_printf(all, ", %s", words[i]);
    return g_string_free(all, FALSE);
}

static int
read_word(reading *r, JsonNode *node, const char *const *words)
{
    g_autofree char *all = list_words(words);

    if (!is_type(node, G_TYPE_STRING)) {
        g_autofree char *wanted = g_strdup_printf(_("one of %s"), all);

        wrong_type(r, node, wanted);
        return 0;
    }
    for (int i = 0; words[i] != NULL; i++)
        if (strcmp(words[i], json_node_get_string(node)) == 0)
            return i + 1;
    fault(r, g_strdup_printf(_("is \"%.60s\"; allowed is one of %s"), json_node_get_string(node), all));
    return 0;
}

/* A list of exactly n numbers. */
static gboolean
read_numbers(reading *r, JsonNode *node, guint n, const hs_field *field, double *ret)
{
    JsonArray *array;
    gboolean good = TRUE;

    if (!JSON_NODE_HOLDS_ARRAY(node) || json_array_get_length(json_node_get_array(node)) != n) {
        fault(r, g_strdup_printf(_("a list of %u numbers is wanted"), n));
        return FALSE;
    }
    array = json_node_get_array(node);
    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);

        if (!read_number(r, json_array_get_element(array, i), field->least, field->most, field->above, &ret[i]))
            good = FALSE;
        leave(r, before);
    }
    return good;
}

static void
prepare(const hs_object *type, void *into)
{
    for (const hs_field *field = type->fields; field->key != NULL; field++)
        switch (field->kind) {
        case HS_KIND_NUMBER:
        case HS_KIND_EACH:
            *AT(double, into, field->offset) = HS_ABSENT;
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
read_list(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array;
    guint n;
    char *items;

    if (!JSON_NODE_HOLDS_ARRAY(node)) {
        wrong_type(r, node, _("a list"));
        return;
    }
    array = json_node_get_array(node);
    n = json_array_get_length(array);
    if (n < field->least || n > field->most) {
        fault(r, g_strdup_printf(_("has %u entries; allowed is %.0f to %.0f"), n, field->least, field->most));
        if (n > field->most)
            return;
    }
    items = hs_arena_alloc(r->arena, n, field->object->size);
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = enter_item(r, i);

        prepare(field->object, items + i * field->object->size);
        if (JSON_NODE_HOLDS_OBJECT(item))
            read_object(r, json_node_get_object(item), field->object, items + i * field->object->size);
        else
            wrong_type(r, item, _("an object"));
        leave(r, before);
    }
}

static void
read_strings(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array;
    guint n;
    const char **items;

    if (!JSON_NODE_HOLDS_ARRAY(node) || json_array_get_length(json_node_get_array(node)) > field->most) {
        wrong_type(r, node, _("a list of strings"));
        return;
    }
    array = json_node_get_array(node);
    n = json_array_get_length(array);
    items = HS_NEW(r->arena, const char *, n);
    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = enter_item(r, i);

        items[i] = "";
        if (is_type(item, G_TYPE_STRING))
            items[i] = hs_arena_strdup(r->arena, json_node_get_string(item));
        else
            wrong_type(r, item, _("a string"));
        leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

static void
read_places(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array;
    guint n;
    hs_vec2 *items;

    if (!JSON_NODE_HOLDS_ARRAY(node) || json_array_get_length(json_node_get_array(node)) > 2000) {
        wrong_type(r, node, _("a list of [x, z] with at most 2000 entries"));
        return;
    }
    array = json_node_get_array(node);
    n = json_array_get_length(array);
    items = HS_NEW(r->arena, hs_vec2, n);
    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);
        double at[2] = {0, 0};

        read_numbers(r, json_array_get_element(array, i), 2, field, at);
        items[i] = (hs_vec2){at[0], at[1]};
        leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

/* Index of an id in the list that a reference means; -1 with a fault. */
static int
find_id(reading *r, JsonNode *node, const char *list)
{
    const hs_task *task = r->task;
    const char *id;
    int n = 0;

    if (!is_type(node, G_TYPE_STRING)) {
        wrong_type(r, node, _("an id"));
        return -1;
    }
    id = json_node_get_string(node);
    if (strcmp(list, "workers") == 0) {
        for (n = 0; n < task->n_workers; n++)
            if (g_strcmp0(task->workers[n].id, id) == 0)
                return n;
    } else if (strcmp(list, "suits") == 0) {
        for (n = 0; n < task->n_suits; n++)
            if (g_strcmp0(task->suits[n].id, id) == 0)
                return n;
    } else if (strcmp(list, "grips") == 0) {
        for (n = 0; n < task->load.n_grips; n++)
            if (g_strcmp0(task->load.grips[n].id, id) == 0)
                return n;
    } else {
        if (r->suit == NULL) {
            fault(r, g_strdup(_("an effector without a suit; name the bearer's suit too")));
            return -1;
        }
        for (n = 0; n < r->suit->n_effectors; n++)
            if (g_strcmp0(r->suit->effectors[n].id, id) == 0)
                return n;
    }
    fault(r, g_strdup_printf(_("no entry of %s has the id \"%.60s\""), list, id));
    return -1;
}

static void
read_refs(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array;
    guint n;
    int *items;

    if (!JSON_NODE_HOLDS_ARRAY(node)) {
        wrong_type(r, node, _("a list of ids"));
        return;
    }
    array = json_node_get_array(node);
    n = json_array_get_length(array);
    if (n < field->least || n > field->most) {
        fault(r, g_strdup_printf(_("has %u grips; a bearer has one or two, with two hands in all"), n));
        return;
    }
    items = HS_NEW(r->arena, int, n);
    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);

        items[i] = find_id(r, json_array_get_element(array, i), field->words[0]);
        leave(r, before);
        if (items[i] < 0)
            return;
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

/* reach_m of an option: a number, or a list with a number or null for each point. */
static void
read_each(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array;
    guint n;
    double *items;

    if (!JSON_NODE_HOLDS_ARRAY(node)) {
        read_number(r, node, field->least, field->most, field->above, AT(double, into, field->offset));
        return;
    }
    array = json_node_get_array(node);
    n = json_array_get_length(array);
    if ((int)n != r->task->route.n_points) {
        fault(r, g_strdup_printf(_("has %u entries; one for each of the route's %d points is wanted"), n, r->task->route.n_points));
        return;
    }
    items = HS_NEW(r->arena, double, n);
    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = enter_item(r, i);

        items[i] = HS_ABSENT;
        if (!JSON_NODE_HOLDS_NULL(item))
            read_number(r, item, field->least, field->most, field->above, &items[i]);
        leave(r, before);
    }
    AT(hs_option, into, 0)->reach_each_m = items;
    AT(hs_option, into, 0)->n_reach = (int)n;
}

static void
read_stances(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    hs_option *option = into;
    JsonArray *array;
    guint n;
    hs_stance_kind *items;

    if (!JSON_NODE_HOLDS_ARRAY(node)) {
        option->stance = (hs_stance_kind)read_word(r, node, field->words);
        return;
    }
    array = json_node_get_array(node);
    n = json_array_get_length(array);
    if ((int)n != r->task->route.n_points) {
        fault(r, g_strdup_printf(_("has %u entries; one for each of the route's %d points is wanted"), n, r->task->route.n_points));
        return;
    }
    items = HS_NEW(r->arena, hs_stance_kind, n);
    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);

        if (!JSON_NODE_HOLDS_NULL(json_array_get_element(array, i)))
            items[i] = (hs_stance_kind)read_word(r, json_array_get_element(array, i), field->words);
        leave(r, before);
    }
    option->stance_each = items;
    option->n_stance = (int)n;
}

static void
read_map(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    g_autoptr(GList) keys = NULL;
    hs_site_limit *items;
    int n = 0;

    if (!JSON_NODE_HOLDS_OBJECT(node)) {
        wrong_type(r, node, _("an object"));
        return;
    }
    keys = json_object_get_members(json_node_get_object(node));
    items = HS_NEW(r->arena, hs_site_limit, g_list_length(keys));
    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before = enter(r, at->data);

        if (read_number(r, json_object_get_member(json_node_get_object(node), at->data), field->least, field->most,
                        field->above, &items[n].figure))
            items[n++].id = hs_arena_strdup(r->arena, at->data);
        leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = n;
}

static void
read_plain(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    double three[3];

    switch (field->kind) {
    case HS_KIND_NUMBER:
        read_number(r, node, field->least, field->most, field->above, AT(double, into, field->offset));
        return;
    case HS_KIND_INT:
        if (read_number(r, node, field->least, field->most, FALSE, three)) {
            if (three[0] == floor(three[0]))
                *AT(int, into, field->offset) = (int)three[0];
            else
                fault(r, g_strdup_printf(_("is no whole number; allowed is %.0f to %.0f"), field->least, field->most));
        }
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
        if (is_type(node, G_TYPE_STRING))
            *AT(const char *, into, field->offset) = hs_arena_strdup(r->arena, json_node_get_string(node));
        else
            wrong_type(r, node, _("a string"));
        return;
    case HS_KIND_BOOL:
        if (is_type(node, G_TYPE_BOOLEAN))
            *AT(hs_tri, into, field->offset) = json_node_get_boolean(node) ? HS_YES : HS_NO;
        else
            wrong_type(r, node, _("true or false"));
        return;
    case HS_KIND_FLAG:
        if (is_type(node, G_TYPE_BOOLEAN))
            *AT(bool, into, field->offset) = json_node_get_boolean(node);
        else
            wrong_type(r, node, _("true or false"));
        return;
    case HS_KIND_WORD:
        *AT(int, into, field->offset) = read_word(r, node, field->words);
        return;
    default:
        g_assert_not_reached();
    }
}

static void
read_field(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    switch (field->kind) {
    case HS_KIND_OBJECT:
    case HS_KIND_INLINE:
        if (!JSON_NODE_HOLDS_OBJECT(node)) {
            wrong_type(r, node, _("an object"));
            return;
        }
        if (field->kind == HS_KIND_INLINE && field->aux != 0)
            *AT(bool, into, field->aux) = true;
        read_object(r, json_node_get_object(node), field->object, AT(void, into, field->offset));
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
        *AT(int, into, field->offset) = find_id(r, node, field->words[0]);
        if (strcmp(field->words[0], "suits") == 0)
            r->suit = *AT(int, into, field->offset) >= 0 ? &r->task->suits[*AT(int, into, field->offset)] : NULL;
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

static gboolean
is_known(const hs_object *type, const char *key)
{
    for (const hs_field *field = type->fields; field->key != NULL; field++)
        if (strcmp(field->key, key) == 0)
            return TRUE;
    return type == &hs_object_document && (strcmp(key, "format") == 0 || strcmp(key, "version") == 0);
}

static void
warn_unknown(reading *r, JsonObject *object, const hs_object *type)
{
    g_autoptr(GList) keys = json_object_get_members(object);

    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before;

        if (is_known(type, at->data))
            continue;
        before = enter(r, at->data);
        g_ptr_array_add(r->faults, hs_fault_new(r->path->str, g_strdup(_("unknown key; it is kept and not used")), TRUE));
        leave(r, before);
    }
}

static void
read_object(reading *r, JsonObject *object, const hs_object *type, void *into)
{
    if (type->size == sizeof(hs_bearer) && strcmp(type->name, "bearer") == 0)
        r->suit = NULL;
    for (const hs_field *field = type->fields; field->key != NULL; field++) {
        gsize before = enter(r, field->key);

        if (json_object_has_member(object, field->key))
            read_field(r, json_object_get_member(object, field->key), field, into);
        else if (field->required)
            fault(r, g_strdup(_("is missing and is needed")));
        leave(r, before);
    }
    warn_unknown(r, object, type);
}

static void
read_format(reading *r, JsonObject *object)
{
    JsonNode *format = json_object_get_member(object, "format"), *version = json_object_get_member(object, "version");
    gsize before = enter(r, "format");

    if (format == NULL)
        fault(r, g_strdup(_("is missing and is needed")));
    else if (!is_type(format, G_TYPE_STRING) || strcmp(json_node_get_string(format), "handspike-assessment") != 0)
        fault(r, g_strdup(_("allowed is \"handspike-assessment\"")));
    leave(r, before);
    before = enter(r, "version");
    if (version == NULL)
        fault(r, g_strdup(_("is missing and is needed")));
    else if (!is_number(version))
        wrong_type(r, version, _("a number"));
    else if (json_node_get_double(version) > 1)
        fault(r, g_strdup(_("is newer than this program understands; allowed is 1")));
    else if (json_node_get_double(version) != 1)
        fault(r, g_strdup(_("allowed is 1")));
    leave(r, before);
}

hs_task *
hs_reader_task(JsonNode *root, hs_arena *arena, GPtrArray *faults)
{
    reading r = {arena, faults, g_string_new(NULL), HS_NEW(arena, hs_task, 1), NULL};
    JsonObject *object;

    prepare(&hs_object_document, r.task);
    if (!JSON_NODE_HOLDS_OBJECT(root)) {
        g_string_assign(r.path, "$");
        wrong_type(&r, root, _("an object"));
    } else {
        object = json_node_get_object(root);
        read_format(&r, object);
        read_object(&r, object, &hs_object_document, r.task);
        r.task->has_roles = json_object_has_member(object, "roles");
        r.task->has_criteria = json_object_has_member(object, "criteria");
    }
    g_string_free(r.path, TRUE);
    return r.task;
}
