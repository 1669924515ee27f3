/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a JSON tree become a task?
 * Answer:    one walk over the tables of fields.c; nothing stops at the first fault.
 * Not here:  rules across fields (rules.c), strict JSON (strict.c). */
#include "reader.h"

#include "allowed.h"
#include "faults.h"
#include "translate.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

typedef struct {
    hs_arena *arena;
    GPtrArray *faults;
    GString *path;
    hs_task *task;
    const hs_suit *suit; /* of the bearer being read, for its effector */
    gboolean
        is_suit_unknown; /* it names a suit that is not there: its effector cannot be looked up */
} reading;

#define AT(type, base, at) ((type *)(void *)((char *)(base) + (at)))

static void read_object(reading *r, JsonObject *object, const hs_object *type, void *into);

static void
fault(reading *r, char *text)
{
    hs_faults_add(r->faults, r->path->str, text, FALSE);
}

/* What stands there, and what may. */
static void
refuse(reading *r, JsonNode *node, const hs_field *field)
{
    g_autofree char *is = hs_fault_value(node), *allowed = hs_allowed_text(field);

    fault(r, g_strdup_printf(_("is %s; allowed: %s"), is, allowed));
}

static void
missing(reading *r, const hs_field *field)
{
    g_autofree char *allowed = hs_allowed_text(field);

    fault(r, g_strdup_printf(_("is missing; needed: %s"), allowed));
}

static gsize
enter(reading *r, const char *key)
{
    gsize before = r->path->len;

    hs_path_add_key(r->path, key);
    return before;
}

static gsize
enter_item(reading *r, guint index)
{
    gsize before = r->path->len;

    hs_path_add_index(r->path, index);
    return before;
}

static void
leave(reading *r, gsize before)
{
    g_string_truncate(r->path, before);
}

static gboolean
is_number(JsonNode *node)
{
    return JSON_NODE_HOLDS_VALUE(node) && (json_node_get_value_type(node) == G_TYPE_INT64 ||
                                           json_node_get_value_type(node) == G_TYPE_DOUBLE);
}

static gboolean
is_type(JsonNode *node, GType type)
{
    return JSON_NODE_HOLDS_VALUE(node) && json_node_get_value_type(node) == type;
}

static gboolean
read_number(reading *r, JsonNode *node, const hs_field *field, double *ret)
{
    double value = is_number(node) ? json_node_get_double(node) : (double)NAN;

    if (!(field->above ? value > field->least : value >= field->least) ||
        !(value <= field->most) ||
        ((field->is_whole || field->kind == HS_KIND_INT) && value != floor(value))) {
        refuse(r, node, field);
        return FALSE;
    }
    *ret = value;
    return TRUE;
}

static int
word_of(JsonNode *node, const char *const *words)
{
    if (is_type(node, G_TYPE_STRING))
        for (int i = 0; words[i] != NULL; i++)
            if (strcmp(words[i], json_node_get_string(node)) == 0)
                return i + 1;
    return 0;
}

static int
read_word(reading *r, JsonNode *node, const hs_field *field)
{
    int found = word_of(node, field->words);

    if (found == 0)
        refuse(r, node, field);
    return found;
}

/* The list in a node, when it has so many entries; else a fault. */
static JsonArray *
list_of(reading *r, JsonNode *node, const hs_field *field, double least, double most)
{
    JsonArray *array = JSON_NODE_HOLDS_ARRAY(node) ? json_node_get_array(node) : NULL;
    g_autofree char *allowed = NULL;
    guint n;

    if (array == NULL) {
        refuse(r, node, field);
        return NULL;
    }
    n = json_array_get_length(array);
    if (n >= least && n <= most)
        return array;
    allowed = hs_allowed_text(field);
    fault(r, g_strdup_printf(_("is a list of %u; allowed: %s"), n, allowed));
    return NULL;
}

/* A list of exactly n numbers. */
static gboolean
read_numbers(reading *r, JsonNode *node, guint n, const hs_field *field, double *ret)
{
    JsonArray *array = list_of(r, node, field, n, n);
    gboolean good = array != NULL;

    for (guint i = 0; array != NULL && i < n; i++) {
        gsize before = enter_item(r, i);

        if (!read_number(r, json_array_get_element(array, i), field, &ret[i]))
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
read_list(reading *r, JsonNode *node, const hs_field *field, void *into)
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
        gsize before = enter_item(r, i);

        if (JSON_NODE_HOLDS_OBJECT(item)) {
            read_object(r, json_node_get_object(item), field->object, items + i * size);
        } else {
            g_autofree char *is = hs_fault_value(item);

            fault(r, g_strdup_printf(_("is %s; allowed: an object"), is));
        }
        leave(r, before);
    }
}

static void
read_strings(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array = list_of(r, node, field, field->least, field->most);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    const char **items = HS_NEW(r->arena, const char *, n);

    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(array, i);
        gsize before = enter_item(r, i);
        int word = word_of(item, field->words);

        items[i] = word > 0 ? field->words[word - 1] : "";
        if (word == 0) {
            g_autofree char *is = hs_fault_value(item),
                            *all = g_strjoinv(", ", (char **)(guintptr)field->words);

            fault(r, g_strdup_printf(_("is %s; allowed: one of %s"), is, all));
        }
        leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

static void
read_places(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    static const hs_field place = {"",    HS_KIND_PAIR, 0,     0,    -10000,
                                   10000, FALSE,        FALSE, NULL, NULL};
    JsonArray *array = list_of(r, node, field, 0, HS_PLACES_MOST);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    hs_vec2 *items = HS_NEW(r->arena, hs_vec2, n);

    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);
        double at[2] = {HS_ABSENT, HS_ABSENT};

        read_numbers(r, json_array_get_element(array, i), 2, &place, at);
        items[i] = (hs_vec2){at[0], at[1]};
        leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = (int)n;
}

typedef struct {
    const char *path; /* of the list */
    int n;
    gsize size; /* of an entry; its id is at offset `at` */
    gsize at;
    const void *items;
} id_list;

#define IDS(path, list, count, type)                                                           \
    ((id_list){path, count, sizeof(type), offsetof(type, id), list})

static id_list
ids_of(const reading *r, const char *list)
{
    const hs_task *task = r->task;

    if (strcmp(list, "workers") == 0)
        return IDS("workers", task->workers, task->n_workers, hs_worker);
    if (strcmp(list, "suits") == 0)
        return IDS("suits", task->suits, task->n_suits, hs_suit);
    if (strcmp(list, "grips") == 0)
        return IDS("load.grips", task->load.grips, task->load.n_grips, hs_grip);
    if (r->suit == NULL)
        return IDS("effectors", NULL, 0, hs_effector);
    return IDS("effectors", r->suit->effectors, r->suit->n_effectors, hs_effector);
}

static const char *
id_at(const id_list *list, int i)
{
    return *(const char *const *)(const void *)((const char *)list->items +
                                                (gsize)i * list->size + list->at);
}

static void
unknown_id(reading *r, const id_list *list, const char *id)
{
    GString *known = g_string_new(NULL);
    g_autofree char *all = NULL;
    g_autoptr(JsonNode) node = json_node_init_string(json_node_alloc(), id);
    g_autofree char *is = hs_fault_value(node);

    for (int i = 0; i < list->n && known->len < 200; i++)
        if (id_at(list, i) != NULL)
            g_string_append_printf(known, "%s%s", known->len > 0 ? ", " : "", id_at(list, i));
    all = g_string_free(known, FALSE);
    if (all[0] == '\0')
        fault(r, g_strdup_printf(_("is %s, but %s has no entry with an id"), is, list->path));
    else
        fault(r, g_strdup_printf(_("is %s, which is no id of %s; allowed: one of %s"), is,
                                 list->path, all));
}

/* The list itself could not be read, which was said there: no second sentence at every reference to it. */
static gboolean
is_passed_over(const reading *r, const id_list *list)
{
    if (strcmp(list->path, "effectors") == 0)
        return r->is_suit_unknown;
    return list->n == 0 &&
           (hs_faults_has(r->faults, list->path) ||
            (g_str_has_prefix(list->path, "load") && hs_faults_stands(r->faults, "load")));
}

/* Index of an id in the list that a reference means; -1 with a fault. */
static int
find_id(reading *r, JsonNode *node, const hs_field *field)
{
    id_list list = ids_of(r, field->words[0]);

    if (!is_type(node, G_TYPE_STRING)) {
        g_autofree char *is = hs_fault_value(node);

        fault(r, g_strdup_printf(_("is %s; allowed: an id of %s"), is, list.path));
        return -1;
    }
    for (int i = 0; i < list.n; i++)
        if (g_strcmp0(id_at(&list, i), json_node_get_string(node)) == 0)
            return i;
    if (is_passed_over(r, &list))
        return -1;
    if (strcmp(list.path, "effectors") == 0 && r->suit == NULL)
        fault(r, g_strdup(_("an effector without a suit; needed: the bearer's suit too")));
    else
        unknown_id(r, &list, json_node_get_string(node));
    return -1;
}

static void
read_refs(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    JsonArray *array = list_of(r, node, field, field->least, field->most);
    guint n = array != NULL ? json_array_get_length(array) : 0;
    int *items = HS_NEW(r->arena, int, n);
    int found = 0;

    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);
        int at = find_id(r, json_array_get_element(array, i), field);

        leave(r, before);
        if (at >= 0)
            items[found++] = at;
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = found;
}

/* A list with one entry for each route point; NULL with a fault. */
static JsonArray *
list_of_points(reading *r, JsonNode *node)
{
    JsonArray *array = json_node_get_array(node);
    guint n = json_array_get_length(array), n_points = (guint)r->task->route.n_points;

    if (n == n_points)
        return array;
    if (n_points > 0)
        fault(r, g_strdup_printf(
                     _("is a list of %u; allowed: %u entries, one for each route point"), n,
                     n_points));
    return NULL;
}

/* reach_m of an option: a number, or a list with a number or null for each point. */
static void
read_each(reading *r, JsonNode *node, const hs_field *field, void *into)
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
        gsize before = enter_item(r, i);

        items[i] = HS_ABSENT;
        if (!JSON_NODE_HOLDS_NULL(item))
            read_number(r, item, field, &items[i]);
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
        option->stance = (hs_stance_kind)read_word(r, node, field);
        return;
    }
    array = list_of_points(r, node);
    n = array != NULL ? json_array_get_length(array) : 0;
    items = HS_NEW(r->arena, hs_stance_kind, n);
    for (guint i = 0; i < n; i++) {
        gsize before = enter_item(r, i);

        items[i] = (hs_stance_kind)read_word(r, json_array_get_element(array, i), field);
        leave(r, before);
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
warn(reading *r, const char *text)
{
    hs_faults_add(r->faults, r->path->str, g_strdup(text), TRUE);
}

static void
read_map(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    g_autoptr(GList) keys = NULL;
    hs_site_limit *items;
    int n = 0;

    if (!JSON_NODE_HOLDS_OBJECT(node)) {
        refuse(r, node, field);
        return;
    }
    keys = json_object_get_members(json_node_get_object(node));
    items = HS_NEW(r->arena, hs_site_limit, g_list_length(keys));
    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before = enter(r, at->data);
        JsonNode *figure = json_object_get_member(json_node_get_object(node), at->data);

        if (!is_check(at->data))
            warn(r, _("is no check of this program; the figure is kept and not used"));
        if (!is_number(figure) || !(json_node_get_double(figure) > field->least) ||
            !(json_node_get_double(figure) <= field->most)) {
            g_autofree char *is = hs_fault_value(figure);

            fault(r, g_strdup_printf(_("is %s; allowed: a number above 0"), is));
        } else {
            items[n].figure = json_node_get_double(figure);
            items[n++].id = hs_arena_strdup(r->arena, at->data);
        }
        leave(r, before);
    }
    *AT(const void *, into, field->offset) = items;
    *AT(int, into, field->aux) = n;
}

static void
read_string(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    if (!is_type(node, G_TYPE_STRING) ||
        (strcmp(field->key, "id") == 0 && json_node_get_string(node)[0] == '\0'))
        refuse(r, node, field);
    else
        *AT(const char *, into, field->offset) =
            hs_arena_strdup(r->arena, json_node_get_string(node));
}

static void
read_bool(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    gboolean value;

    if (!is_type(node, G_TYPE_BOOLEAN)) {
        refuse(r, node, field);
        return;
    }
    value = json_node_get_boolean(node);
    if (field->kind == HS_KIND_BOOL)
        *AT(hs_tri, into, field->offset) = value ? HS_YES : HS_NO;
    else
        *AT(bool, into, field->offset) = value;
}

static void
read_plain(reading *r, JsonNode *node, const hs_field *field, void *into)
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
read_field(reading *r, JsonNode *node, const hs_field *field, void *into)
{
    switch (field->kind) {
    case HS_KIND_OBJECT:
    case HS_KIND_INLINE:
        if (!JSON_NODE_HOLDS_OBJECT(node)) {
            refuse(r, node, field);
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
warn_unknown(reading *r, JsonObject *object, const hs_object *type)
{
    g_autoptr(GList) keys = json_object_get_members(object);

    for (GList *at = keys; at != NULL; at = at->next) {
        gsize before;

        if (hs_object_knows(type, at->data))
            continue;
        before = enter(r, at->data);
        warn(r, _("unknown key; it is kept and not used"));
        leave(r, before);
    }
}

static void
read_object(reading *r, JsonObject *object, const hs_object *type, void *into)
{
    if (strcmp(type->name, "bearer") == 0) {
        r->suit = NULL;
        r->is_suit_unknown = FALSE;
    }
    for (const hs_field *field = type->fields; field->key != NULL; field++) {
        gsize before = enter(r, field->key);

        if (json_object_has_member(object, field->key))
            read_field(r, json_object_get_member(object, field->key), field, into);
        else if (field->required)
            missing(r, field);
        else if (field->is_told)
            warn(r, _("is missing; 0 is taken"));
        leave(r, before);
    }
    warn_unknown(r, object, type);
}

static void
read_head(reading *r, JsonObject *object)
{
    JsonNode *format = json_object_get_member(object, "format"),
             *version = json_object_get_member(object, "version");
    g_autofree char *is_format = format != NULL ? hs_fault_value(format) : NULL;
    g_autofree char *is_version = version != NULL ? hs_fault_value(version) : NULL;
    gsize before = enter(r, "format");

    if (format == NULL)
        fault(r, g_strdup(_("is missing; needed: \"handspike-assessment\"")));
    else if (!is_type(format, G_TYPE_STRING) ||
             strcmp(json_node_get_string(format), "handspike-assessment") != 0)
        fault(r, g_strdup_printf(_("is %s; allowed: \"handspike-assessment\""), is_format));
    leave(r, before);
    before = enter(r, "version");
    if (version == NULL)
        fault(r, g_strdup(_("is missing; needed: 1")));
    else if (is_number(version) && json_node_get_double(version) > 1.0)
        fault(r, g_strdup_printf(_("is %s, newer than this program reads; allowed: 1"),
                                 is_version));
    else if (!is_number(version) || json_node_get_double(version) != 1.0)
        fault(r, g_strdup_printf(_("is %s; allowed: 1"), is_version));
    leave(r, before);
}

hs_task *
hs_reader_task(JsonNode *root, hs_arena *arena, GPtrArray *faults)
{
    reading r = {arena, faults, g_string_new(NULL), HS_NEW(arena, hs_task, 1), NULL};
    JsonObject *object;

    prepare(&hs_object_document, r.task);
    if (!JSON_NODE_HOLDS_OBJECT(root)) {
        g_autofree char *is = hs_fault_value(root);

        g_string_assign(r.path, "$");
        fault(&r, g_strdup_printf(_("is %s; allowed: an object"), is));
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
