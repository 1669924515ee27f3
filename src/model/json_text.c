/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is JSON written in the order that the file format has?
 * Answer:    straight into one string.
 * Not here:  what is written. */
#include "json_text.h"

#include "quantity.h"

#include <math.h>

static void
append_string(GString *out, const char *given)
{
    /* What is quoted from input that is no UTF-8 must not make our output no UTF-8. */
    g_autofree char *valid =
        g_utf8_validate(given, -1, NULL) ? NULL : g_utf8_make_valid(given, -1);
    const char *text = valid != NULL ? valid : given;

    g_string_append_c(out, '"');
    for (const char *s = text; *s != '\0'; s++) {
        if (*s == '"' || *s == '\\')
            g_string_append_printf(out, "\\%c", *s);
        else if (*s == '\n')
            g_string_append(out, "\\n");
        else if ((guchar)*s < 0x20)
            g_string_append_printf(out, "\\u%04x", (guint)*s);
        else
            g_string_append_c(out, *s);
    }
    g_string_append_c(out, '"');
}

static void
lead(hs_json_text *json, const char *key)
{
    if (json->follows)
        g_string_append_c(json->out, ',');
    if (key != NULL) {
        append_string(json->out, key);
        g_string_append_c(json->out, ':');
    }
    json->follows = TRUE;
}

void
hs_json_text_open(hs_json_text *json, const char *key, char bracket)
{
    lead(json, key);
    g_string_append_c(json->out, bracket);
    json->follows = FALSE;
}

void
hs_json_text_close(hs_json_text *json, char bracket)
{
    g_string_append_c(json->out, bracket);
    json->follows = TRUE;
}

void
hs_json_text_number(hs_json_text *json, const char *key, double value)
{
    g_autofree char *text = NULL;

    if (!isfinite(value))
        return;
    text = hs_number_text(value);
    lead(json, key);
    g_string_append(json->out, text);
}

void
hs_json_text_string(hs_json_text *json, const char *key, const char *text)
{
    if (text == NULL)
        return;
    lead(json, key);
    append_string(json->out, text);
}

void
hs_json_text_bool(hs_json_text *json, const char *key, gboolean value)
{
    lead(json, key);
    g_string_append(json->out, value ? "true" : "false");
}

void
hs_json_text_vec2(hs_json_text *json, const char *key, hs_vec2 at)
{
    if (!isfinite(at.x) || !isfinite(at.y))
        return;
    hs_json_text_open(json, key, '[');
    hs_json_text_number(json, NULL, at.x);
    hs_json_text_number(json, NULL, at.y);
    hs_json_text_close(json, ']');
}

void
hs_json_text_vec3(hs_json_text *json, const char *key, hs_vec3 at)
{
    if (!isfinite(at.x) || !isfinite(at.y))
        return;
    hs_json_text_open(json, key, '[');
    hs_json_text_number(json, NULL, at.x);
    hs_json_text_number(json, NULL, at.y);
    hs_json_text_number(json, NULL, at.z);
    hs_json_text_close(json, ']');
}

static void
put_value(hs_json_text *json, const char *key, JsonNode *node)
{
    switch (json_node_get_value_type(node)) {
    case G_TYPE_STRING:
        hs_json_text_string(json, key, json_node_get_string(node));
        break;
    case G_TYPE_BOOLEAN:
        hs_json_text_bool(json, key, json_node_get_boolean(node));
        break;
    default:
        hs_json_text_number(json, key, json_node_get_double(node));
        break;
    }
}

void
hs_json_text_node(hs_json_text *json, const char *key, JsonNode *node)
{
    if (JSON_NODE_HOLDS_OBJECT(node)) {
        JsonObject *object = json_node_get_object(node);
        g_autoptr(GList) members = json_object_get_members(object);

        hs_json_text_open(json, key, '{');
        for (GList *at = members; at != NULL; at = at->next)
            hs_json_text_node(json, at->data, json_object_get_member(object, at->data));
        hs_json_text_close(json, '}');
    } else if (JSON_NODE_HOLDS_ARRAY(node)) {
        JsonArray *array = json_node_get_array(node);

        hs_json_text_open(json, key, '[');
        for (guint i = 0; i < json_array_get_length(array); i++)
            hs_json_text_node(json, NULL, json_array_get_element(array, i));
        hs_json_text_close(json, ']');
    } else if (JSON_NODE_HOLDS_VALUE(node)) {
        put_value(json, key, node);
    } else {
        lead(json, key);
        g_string_append(json->out, "null");
    }
}
