/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a document written into a file?
 * Answer:    a walk over the tree with the tables of fields.c at hand for the order of keys.
 * Not here:  the canonical form (digest.c), the file itself (document.c). */
#include "writer.h"

#include "digest.h"
#include "fields.h"

#include <string.h>

#define LINE_MOST                                                                              \
    100 /* a list or object that fits into this many characters stays on one line */

static void write_node(GString *out, JsonNode *node, const hs_object *type, int level);

static void
newline(GString *out, int level)
{
    g_string_append_c(out, '\n');
    for (int i = 0; i < level; i++)
        g_string_append(out, "  ");
}

static const hs_object *
type_of(const hs_object *type, const char *key)
{
    for (const hs_field *field = type != NULL ? type->fields : NULL;
         field != NULL && field->key != NULL; field++)
        if (strcmp(field->key, key) == 0)
            return field->object;
    return NULL;
}

/* Known keys in the format's order, then the others as they came. */
static GPtrArray *
ordered_keys(JsonObject *object, const hs_object *type)
{
    static const char *const head[] = {"format", "version"};
    GPtrArray *keys = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GList) members = json_object_get_members(object);

    for (guint i = 0; i < G_N_ELEMENTS(head) && type == &hs_object_document; i++)
        if (json_object_has_member(object, head[i]))
            g_ptr_array_add(keys, g_strdup(head[i]));
    for (const hs_field *field = type != NULL ? type->fields : NULL;
         field != NULL && field->key != NULL; field++)
        if (json_object_has_member(object, field->key))
            g_ptr_array_add(keys, g_strdup(field->key));
    for (GList *at = members; at != NULL; at = at->next)
        if (!hs_object_knows(type, at->data))
            g_ptr_array_add(keys, g_strdup(at->data));
    return keys;
}

static void
write_object(GString *out, JsonObject *object, const hs_object *type, int level)
{
    g_autoptr(GPtrArray) keys = ordered_keys(object, type);
    gsize start = out->len;

    /* Once on one line; when that is too long, again on several. */
    for (int wide = level < 0 || type != &hs_object_document ? 0 : 1; wide < 2; wide++) {
        g_string_truncate(out, start);
        g_string_append_c(out, '{');
        for (guint i = 0; i < keys->len; i++) {
            g_autofree char *quoted = NULL;
            g_autoptr(JsonNode) key = json_node_init_string(json_node_alloc(), keys->pdata[i]);

            quoted = hs_canonical_text(key, NULL);
            if (i > 0)
                g_string_append_c(out, ',');
            if (wide)
                newline(out, level + 1);
            else
                g_string_append_c(out, ' ');
            g_string_append_printf(out, "%s: ", quoted);
            write_node(out, json_object_get_member(object, keys->pdata[i]),
                       type_of(type, keys->pdata[i]), wide ? level + 1 : -1);
            if (!wide && level >= 0 && out->len - start > LINE_MOST)
                break;
        }
        if (!wide && level >= 0 && out->len - start > LINE_MOST)
            continue;
        if (wide)
            newline(out, level);
        else if (keys->len > 0)
            g_string_append_c(out, ' ');
        g_string_append_c(out, '}');
        return;
    }
}

static void
write_array(GString *out, JsonArray *array, const hs_object *type, int level)
{
    guint n = json_array_get_length(array);
    gsize start = out->len;

    for (int wide = 0; wide < 2; wide++) {
        gboolean fits = TRUE;

        g_string_truncate(out, start);
        g_string_append_c(out, '[');
        for (guint i = 0; i < n && fits; i++) {
            if (i > 0)
                g_string_append(out, wide ? "," : ", ");
            if (wide)
                newline(out, level + 1);
            write_node(out, json_array_get_element(array, i), type, wide ? level + 1 : -1);
            fits = wide || level < 0 || out->len - start <= LINE_MOST;
        }
        if (!fits)
            continue;
        if (wide)
            newline(out, level);
        g_string_append_c(out, ']');
        return;
    }
}

/* level -1: everything on one line */
static void
write_node(GString *out, JsonNode *node, const hs_object *type, int level)
{
    if (JSON_NODE_HOLDS_OBJECT(node)) {
        write_object(out, json_node_get_object(node), type, level);
    } else if (JSON_NODE_HOLDS_ARRAY(node)) {
        write_array(out, json_node_get_array(node), type, level);
    } else {
        g_autofree char *plain = hs_canonical_text(node, NULL);

        g_string_append(out, plain);
    }
}

char *
hs_writer_text(JsonNode *root)
{
    GString *out = g_string_new(NULL);

    write_node(out, root, &hs_object_document, 0);
    g_string_append_c(out, '\n');
    return g_string_free(out, FALSE);
}
