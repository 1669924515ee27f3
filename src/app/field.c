/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what stands at a path of the open document?
 * Answer:    hs_field_*: number, text or list by the path that edits and faults use.
 * Not here:  changing it (model/edit.c). */
#include "field.h"

static JsonNode *
step(JsonNode *node, const char *name, int index)
{
    if (node == NULL)
        return NULL;
    if (name != NULL)
        return JSON_NODE_HOLDS_OBJECT(node)
                   ? json_object_get_member(json_node_get_object(node), name)
                   : NULL;
    if (!JSON_NODE_HOLDS_ARRAY(node))
        return NULL;
    JsonArray *list = json_node_get_array(node);
    return index >= 0 && (guint)index < json_array_get_length(list)
               ? json_array_get_element(list, (guint)index)
               : NULL;
}

JsonNode *
hs_field_node(const hs_document *document, const char *path)
{
    JsonNode *node = hs_document_root(document);

    for (const char *at = path; node != NULL && *at != '\0';) {
        if (*at == '.') {
            at++;
        } else if (*at == '[') {
            node = step(node, NULL, (int)g_ascii_strtoll(at + 1, NULL, 10));
            at = strchr(at, ']') ? strchr(at, ']') + 1 : "";
        } else {
            size_t length = strcspn(at, ".[");
            g_autofree char *name = g_strndup(at, length);
            node = step(node, name, -1);
            at += length;
        }
    }
    return node;
}

double
hs_field_number(const hs_document *document, const char *path)
{
    JsonNode *node = hs_field_node(document, path);

    if (node == NULL || !JSON_NODE_HOLDS_VALUE(node))
        return HS_ABSENT;
    GType type = json_node_get_value_type(node);
    if (type == G_TYPE_INT64)
        return (double)json_node_get_int(node);
    return type == G_TYPE_DOUBLE ? json_node_get_double(node) : HS_ABSENT;
}

const char *
hs_field_text(const hs_document *document, const char *path)
{
    JsonNode *node = hs_field_node(document, path);

    if (node == NULL || !JSON_NODE_HOLDS_VALUE(node))
        return NULL;
    return json_node_get_value_type(node) == G_TYPE_STRING ? json_node_get_string(node) : NULL;
}

int
hs_field_flag(const hs_document *document, const char *path)
{
    JsonNode *node = hs_field_node(document, path);

    if (node == NULL || !JSON_NODE_HOLDS_VALUE(node) ||
        json_node_get_value_type(node) != G_TYPE_BOOLEAN)
        return -1;
    return json_node_get_boolean(node) ? 1 : 0;
}

int
hs_field_length(const hs_document *document, const char *path)
{
    JsonNode *node = hs_field_node(document, path);

    if (node == NULL || !JSON_NODE_HOLDS_ARRAY(node))
        return 0;
    return (int)json_array_get_length(json_node_get_array(node));
}

const hs_task *
hs_field_task(HsSession *session)
{
    hs_document *document = hs_session_results_document(session);

    return document != NULL ? hs_document_task(document) : NULL;
}
