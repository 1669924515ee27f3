/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a document changed?
 * Answer:    steps by path; the objects and lists on the way are made new, everything beside them is shared.
 * Not here:  undo (history.c), the open document (session.c). */
#include "edit.h"

#include "faults.h"
#include "strict.h"
#include "translate.h"

#include <math.h>
#include <string.h>

typedef enum {
    STEP_SET,
    STEP_UNSET,
    STEP_INSERT,
    STEP_REMOVE,
    STEP_MOVE
} step_kind;

typedef struct {
    step_kind kind;
    char *path;
    JsonNode *value;
    int to;
} step;

struct hs_edit {
    char *label;
    GPtrArray *steps;
};

typedef struct {
    char *key; /* NULL: an index */
    guint index;
} token;

static void
step_free(gpointer data)
{
    step *s = data;

    g_free(s->path);
    g_clear_pointer(&s->value, json_node_unref);
    g_free(s);
}

hs_edit *
hs_edit_new(const char *label)
{
    hs_edit *edit = g_new0(hs_edit, 1);

    edit->label = g_strdup(label);
    edit->steps = g_ptr_array_new_with_free_func(step_free);
    return edit;
}

void
hs_edit_free(hs_edit *edit)
{
    if (edit == NULL)
        return;
    g_free(edit->label);
    g_ptr_array_unref(edit->steps);
    g_free(edit);
}

const char *
hs_edit_label(const hs_edit *edit)
{
    return edit->label;
}

static void
add_step(hs_edit *edit, step_kind kind, const char *path, JsonNode *value, int to)
{
    step *s = g_new0(step, 1);

    *s = (step){kind, g_strdup(path), value, to};
    g_ptr_array_add(edit->steps, s);
}

void
hs_edit_set(hs_edit *edit, const char *path, JsonNode *value)
{
    add_step(edit, STEP_SET, path, value, 0);
}

void
hs_edit_set_number(hs_edit *edit, const char *path, double value)
{
    /* Whole numbers are written without a point, as a person would. */
    if (value == floor(value) && fabs(value) < 1e15)
        hs_edit_set(edit, path, json_node_init_int(json_node_alloc(), (gint64)value));
    else
        hs_edit_set(edit, path, json_node_init_double(json_node_alloc(), value));
}

void
hs_edit_set_string(hs_edit *edit, const char *path, const char *value)
{
    hs_edit_set(edit, path, json_node_init_string(json_node_alloc(), value));
}

void
hs_edit_set_bool(hs_edit *edit, const char *path, gboolean value)
{
    hs_edit_set(edit, path, json_node_init_boolean(json_node_alloc(), value));
}

void
hs_edit_unset(hs_edit *edit, const char *path)
{
    add_step(edit, STEP_UNSET, path, NULL, 0);
}

void
hs_edit_insert(hs_edit *edit, const char *path, JsonNode *value)
{
    add_step(edit, STEP_INSERT, path, value, 0);
}

void
hs_edit_remove(hs_edit *edit, const char *path)
{
    add_step(edit, STEP_REMOVE, path, NULL, 0);
}

void
hs_edit_move(hs_edit *edit, const char *path, int to)
{
    add_step(edit, STEP_MOVE, path, NULL, to);
}

void
hs_edit_move_point(hs_edit *edit, int point, double x_m, double z_m)
{
    g_autofree char *x = g_strdup_printf("route.points[%d].x_m", point);
    g_autofree char *z = g_strdup_printf("route.points[%d].z_m", point);

    hs_edit_set_number(edit, x, round(x_m * 1000.0) / 1000.0);
    hs_edit_set_number(edit, z, round(z_m * 1000.0) / 1000.0);
}

static void
token_clear(gpointer data)
{
    g_free(((token *)data)->key);
}

/* A key as faults write an odd one, ["day.mass"]; *at moves behind it; NULL when it is none. */
static char *
quoted_key(const char **at)
{
    const char *end = *at + 2;
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(JsonNode) node = NULL;

    while (*end != '\0' && *end != '"')
        end += *end == '\\' && end[1] != '\0' ? 2 : 1;
    if (*end != '"' || end[1] != ']')
        return NULL;
    node = hs_strict_parse(*at + 1, (gsize)(end - *at), faults);
    *at = end + 2;
    return node != NULL ? json_node_dup_string(node) : NULL;
}

/* "route.points[3].x_m" as tokens; NULL when it is no path. */
static GArray *
tokens_of(const char *path)
{
    GArray *tokens = g_array_new(FALSE, TRUE, sizeof(token));
    const char *at = path;

    g_array_set_clear_func(tokens, token_clear);
    while (*at != '\0') {
        token made = {NULL, 0};

        if (g_str_has_prefix(at, "[\"")) {
            made.key = quoted_key(&at);
            if (made.key == NULL)
                goto bad;
        } else if (*at == '[') {
            char *end;
            guint64 index = g_ascii_strtoull(at + 1, &end, 10);

            if (end == at + 1 || *end != ']' || index > 100000)
                goto bad;
            made.index = (guint)index;
            at = end + 1;
        } else {
            gsize n = strcspn(at, ".[");

            if (n == 0)
                goto bad;
            made.key = g_strndup(at, n);
            at += n;
        }
        g_array_append_val(tokens, made);
        if (*at == '.' && (at[1] == '\0' || at[1] == '.' || at[1] == '['))
            goto bad;
        if (*at == '.')
            at++;
        else if (*at != '\0' && *at != '[')
            goto bad;
    }
    if (tokens->len > 0)
        return tokens;
bad:
    g_array_unref(tokens);
    return NULL;
}

static JsonNode *apply_at(JsonNode *node, const GArray *tokens, guint depth, const step *s);

/* What a missing member on the way becomes. */
static JsonNode *
make_missing(const GArray *tokens, guint depth, const step *s)
{
    JsonNode *made, *result;

    if (depth < tokens->len && g_array_index(tokens, token, depth).key == NULL)
        made = json_node_init_array(json_node_alloc(), json_array_new());
    else
        made = json_node_init_object(json_node_alloc(), json_object_new());
    result = apply_at(made, tokens, depth, s);
    json_node_unref(made);
    return result;
}

static JsonNode *
apply_object(JsonObject *object, const GArray *tokens, guint depth, const step *s)
{
    const token *at = &g_array_index(tokens, token, depth);
    g_autoptr(GList) keys = json_object_get_members(object);
    JsonObject *made = json_object_new();
    JsonNode *child = json_object_get_member(object, at->key), *next = NULL, *node;
    gboolean is_last = depth + 1 == tokens->len;

    if (is_last && s->kind == STEP_SET)
        next = json_node_ref(s->value);
    else if (!is_last && child != NULL)
        next = apply_at(child, tokens, depth + 1, s);
    else if (!is_last && s->kind != STEP_UNSET)
        next = make_missing(tokens, depth + 1, s);
    /* Only unset may go on without a value: the member is taken away, or its parent was not there. */
    if (next == NULL && (s->kind != STEP_UNSET || (!is_last && child != NULL))) {
        json_object_unref(made);
        return NULL;
    }
    for (GList *key = keys; key != NULL; key = key->next) {
        if (strcmp(key->data, at->key) != 0)
            json_object_set_member(made, key->data,
                                   json_node_ref(json_object_get_member(object, key->data)));
        else if (next != NULL)
            json_object_set_member(made, key->data, json_node_ref(next));
    }
    if (next != NULL && child == NULL)
        json_object_set_member(made, at->key, json_node_ref(next));
    g_clear_pointer(&next, json_node_unref);
    node = json_node_init_object(json_node_alloc(), made);
    json_object_unref(made);
    return node;
}

static void
append(JsonArray *array, JsonNode *node)
{
    json_array_add_element(array, json_node_ref(node));
}

static gboolean
fill_array(JsonArray *from, JsonArray *made, const GArray *tokens, guint depth, const step *s)
{
    guint index = g_array_index(tokens, token, depth).index, n = json_array_get_length(from);
    gboolean is_last = depth + 1 == tokens->len;
    guint to = (guint)MAX(s->to, 0);

    if (index > n || (index == n && !(is_last && s->kind == STEP_INSERT)))
        return FALSE;
    if (is_last && s->kind == STEP_MOVE && to >= n)
        return FALSE;
    for (guint i = 0; i < n; i++) {
        JsonNode *item = json_array_get_element(from, i);

        if (is_last && s->kind == STEP_MOVE) {
            /* Item i of the new list: the moved one at `to`, the others in their order. */
            guint source = i == to ? index : i < to ? i + (i >= index) : i - (i <= index);

            append(made, json_array_get_element(from, source));
        } else if (i != index) {
            append(made, item);
        } else if (!is_last) {
            JsonNode *next = apply_at(item, tokens, depth + 1, s);

            if (next == NULL)
                return FALSE;
            json_array_add_element(made, next);
        } else if (s->kind == STEP_SET) {
            append(made, s->value);
        } else if (s->kind == STEP_INSERT) {
            append(made, s->value);
            append(made, item);
        }
    }
    if (index == n)
        append(made, s->value);
    return TRUE;
}

static JsonNode *
apply_at(JsonNode *node, const GArray *tokens, guint depth, const step *s)
{
    const token *at = &g_array_index(tokens, token, depth);
    JsonArray *made;
    JsonNode *result;

    if (at->key != NULL)
        return JSON_NODE_HOLDS_OBJECT(node)
                   ? apply_object(json_node_get_object(node), tokens, depth, s)
                   : NULL;
    if (!JSON_NODE_HOLDS_ARRAY(node))
        return NULL;
    made = json_array_new();
    if (!fill_array(json_node_get_array(node), made, tokens, depth, s)) {
        json_array_unref(made);
        return NULL;
    }
    result = json_node_init_array(json_node_alloc(), made);
    json_array_unref(made);
    return result;
}

static JsonNode *
apply_step(JsonNode *root, const step *s, hs_fault **ret_fault)
{
    g_autoptr(GArray) tokens = tokens_of(s->path);
    JsonNode *next = tokens != NULL ? apply_at(root, tokens, 0, s) : NULL;

    if (next == NULL && ret_fault != NULL)
        *ret_fault =
            hs_fault_new(s->path, g_strdup(_("there is no such place in the document")), FALSE);
    return next;
}

hs_document *
hs_document_apply(hs_document *document,
                  const hs_edit *edit,
                  gboolean keep_faulty,
                  hs_fault **ret_fault)
{
    g_autoptr(JsonNode) root = json_node_ref(hs_document_root(document));
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    hs_document *made;

    if (hs_document_is_read_only(document)) {
        if (ret_fault != NULL)
            *ret_fault = hs_fault_new(
                "version",
                g_strdup(_("written by a newer program: it can be looked at, not changed")),
                FALSE);
        return NULL;
    }
    for (guint i = 0; i < edit->steps->len; i++) {
        JsonNode *next = apply_step(root, edit->steps->pdata[i], ret_fault);

        if (next == NULL)
            return NULL;
        json_node_unref(root);
        root = next;
    }
    made = hs_document_from_node(root, keep_faulty, faults);
    for (guint i = 0;
         made == NULL && ret_fault != NULL && *ret_fault == NULL && i < faults->len; i++) {
        const hs_fault *fault = faults->pdata[i];

        if (!fault->is_warning)
            *ret_fault = hs_fault_new(fault->path, g_strdup(fault->text), FALSE);
    }
    return made;
}

static JsonNode *
node_at(JsonNode *root, const char *path)
{
    g_autoptr(GArray) tokens = tokens_of(path);
    JsonNode *node = root;

    for (guint i = 0; tokens != NULL && node != NULL && i < tokens->len; i++) {
        const token *at = &g_array_index(tokens, token, i);

        if (at->key != NULL)
            node = JSON_NODE_HOLDS_OBJECT(node)
                       ? json_object_get_member(json_node_get_object(node), at->key)
                       : NULL;
        else if (JSON_NODE_HOLDS_ARRAY(node) &&
                 at->index < json_array_get_length(json_node_get_array(node)))
            node = json_array_get_element(json_node_get_array(node), at->index);
        else
            node = NULL;
    }
    return node;
}

static gboolean
has_id(JsonNode *list, const char *id)
{
    JsonArray *array;

    if (list == NULL || !JSON_NODE_HOLDS_ARRAY(list))
        return FALSE;
    array = json_node_get_array(list);
    for (guint i = 0; i < json_array_get_length(array); i++) {
        JsonNode *item = json_array_get_element(array, i), *own;

        if (!JSON_NODE_HOLDS_OBJECT(item))
            continue;
        own = json_object_get_member(json_node_get_object(item), "id");
        if (own != NULL && JSON_NODE_HOLDS_VALUE(own) &&
            json_node_get_value_type(own) == G_TYPE_STRING &&
            strcmp(json_node_get_string(own), id) == 0)
            return TRUE;
    }
    return FALSE;
}

char *
hs_free_id(const hs_document *document, const char *list_path, const char *stem)
{
    JsonNode *list = node_at(hs_document_root(document), list_path);

    for (guint i = 1;; i++) {
        char *id = i == 1 ? g_strdup(stem) : g_strdup_printf("%s-%u", stem, i);

        if (!has_id(list, id))
            return id;
        g_free(id);
    }
}
