/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what could happen to a file?
 * Answer:    changes of bytes; changes of a JSON tree.
 * Not here:  what must be answered (test_mutated.c). */
#include "mutate.h"

#include <math.h>
#include <string.h>

static void
change_bytes(GRand *rand, GString *text)
{
    static const char likely[] = "{}[]\",:-0123456789eE.tfn\\u \n\t\0\xff\xc3";
    guint at = (guint)g_rand_int_range(rand, 0, (gint32)text->len + 1);
    guint some = (guint)g_rand_int_range(rand, 1, 40);
    char one = likely[g_rand_int_range(rand, 0, sizeof likely - 1)];

    switch (g_rand_int_range(rand, 0, 5)) {
    case 0:
        if (at < text->len)
            text->str[at] = one;
        break;
    case 1:
        g_string_insert_c(text, at, one);
        break;
    case 2:
        g_string_erase(text, at, MIN(some, text->len - at));
        break;
    case 3: {
        g_autofree char *slice = g_strndup(text->str + at, MIN(some, text->len - at));

        g_string_insert(text, at, slice);
        break;
    }
    default:
        if (g_rand_int_range(rand, 0, 8) == 0)
            g_string_truncate(text, at);
        else if (at < text->len)
            text->str[at] = (char)g_rand_int_range(rand, 0, 256);
    }
}

GString *
hs_mutate_bytes(GRand *rand, const char *text, gsize length)
{
    GString *changed = g_string_new_len(text, (gssize)length);

    for (int i = 0, n = g_rand_int_range(rand, 1, 5); i < n; i++)
        change_bytes(rand, changed);
    return changed;
}

static double
odd_number(GRand *rand, double from)
{
    static const double odd[] = {
        0,      -0.0, 1,    -1,   1e-9,  -1e-9,  1e-300,
        5e-324, 1e9,  -1e9, 1e18, 1e300, -1e300, 1.7976931348623157e308,
        0.001,  0.5,  1000, 3600, 90,    180,    360,
        2};

    switch (g_rand_int_range(rand, 0, 4)) {
    case 0:
        return -from;
    case 1:
        return from * pow(10.0, g_rand_int_range(rand, -4, 5));
    case 2:
        return from * g_rand_double_range(rand, 0.5, 2.0);
    default:
        return odd[g_rand_int_range(rand, 0, G_N_ELEMENTS(odd))];
    }
}

static JsonNode *
odd_node(GRand *rand)
{
    JsonNode *node = NULL;

    switch (g_rand_int_range(rand, 0, 7)) {
    case 0:
        return json_node_new(JSON_NODE_NULL);
    case 1:
        return json_node_init_boolean(json_node_alloc(), TRUE);
    case 2:
        return json_node_init_string(json_node_alloc(), "");
    case 3:
        return json_node_init_string(json_node_alloc(), "box");
    case 4:
        node = json_node_new(JSON_NODE_ARRAY);
        json_node_take_array(node, json_array_new());
        return node;
    case 5:
        node = json_node_new(JSON_NODE_OBJECT);
        json_node_take_object(node, json_object_new());
        return node;
    default:
        return json_node_init_double(json_node_alloc(), odd_number(rand, 1.0));
    }
}

/* What a value becomes: mostly another number where it is one, else something of another type. */
static JsonNode *
changed_node(GRand *rand, JsonNode *from)
{
    GType type = JSON_NODE_HOLDS_VALUE(from) ? json_node_get_value_type(from) : G_TYPE_INVALID;

    if ((type == G_TYPE_DOUBLE || type == G_TYPE_INT64) && g_rand_int_range(rand, 0, 6) > 0)
        return json_node_init_double(json_node_alloc(),
                                     odd_number(rand, json_node_get_double(from)));
    if (type == G_TYPE_BOOLEAN && g_rand_boolean(rand))
        return json_node_init_boolean(json_node_alloc(), !json_node_get_boolean(from));
    return odd_node(rand);
}

static void
change_object(GRand *rand, JsonObject *object)
{
    GList *keys = json_object_get_members(object);
    guint n = g_list_length(keys);
    const char *key =
        n > 0 ? g_list_nth_data(keys, (guint)g_rand_int_range(rand, 0, (gint32)n)) : NULL;

    if (key != NULL && g_rand_int_range(rand, 0, 4) == 0)
        json_object_remove_member(object, key);
    else if (key != NULL)
        json_object_set_member(object, key,
                               changed_node(rand, json_object_get_member(object, key)));
    g_list_free(keys);
}

static void
change_array(GRand *rand, JsonArray *array)
{
    guint n = json_array_get_length(array), at;

    if (n == 0)
        return;
    at = (guint)g_rand_int_range(rand, 0, (gint32)n);
    if (g_rand_int_range(rand, 0, 3) == 0) {
        json_array_remove_element(array, at);
    } else if (g_rand_int_range(rand, 0, 2) == 0) {
        json_array_add_element(array, json_node_copy(json_array_get_element(array, at)));
    } else {
        JsonNode *last = changed_node(rand, json_array_get_element(array, at));

        json_array_remove_element(array, at);
        json_array_add_element(array, last);
    }
}

static void
collect(JsonNode *node, GPtrArray *inner)
{
    if (JSON_NODE_HOLDS_OBJECT(node)) {
        GList *values = json_object_get_values(json_node_get_object(node));

        g_ptr_array_add(inner, node);
        for (GList *l = values; l != NULL; l = l->next)
            collect(l->data, inner);
        g_list_free(values);
    } else if (JSON_NODE_HOLDS_ARRAY(node)) {
        g_ptr_array_add(inner, node);
        for (guint i = 0; i < json_array_get_length(json_node_get_array(node)); i++)
            collect(json_array_get_element(json_node_get_array(node), i), inner);
    }
}

GString *
hs_mutate_tree(GRand *rand, const char *json)
{
    g_autoptr(JsonNode) tree = json_from_string(json, NULL);
    g_autofree char *text = NULL;
    GString *out;
    char *twice;

    for (int i = 0, n = g_rand_int_range(rand, 1, 3); i < n; i++) {
        g_autoptr(GPtrArray) inner = g_ptr_array_new();
        JsonNode *node;

        collect(tree, inner);
        node = inner->pdata[g_rand_int_range(rand, 0, (gint32)inner->len)];
        if (JSON_NODE_HOLDS_OBJECT(node))
            change_object(rand, json_node_get_object(node));
        else
            change_array(rand, json_node_get_array(node));
    }
    text = json_to_string(tree, FALSE);
    out = g_string_new(text);
    twice = g_rand_int_range(rand, 0, 25) == 0 ? strstr(out->str, "\"route\":") : NULL;
    if (twice != NULL)
        g_string_insert(out, twice - out->str, "\"route\":{},");
    return out;
}
