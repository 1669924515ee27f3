/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which suits can be picked, and how do they come into the document?
 * Answer:    the document's own, and three invented ones to practise with, read from data/suits.json.
 * Not here:  their figures' meaning (core/forces/suit/). */
#include "suits.h"

#include "change.h"
#include "field.h"

#include <gio/gio.h>

static JsonArray *
examples(void)
{
    static JsonArray *list;

    if (list == NULL) {
        g_autoptr(GBytes) bytes = g_resources_lookup_data("/io/handspike/Handspike/suits.json",
                                                          G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
        g_autofree char *text =
            g_strndup(g_bytes_get_data(bytes, NULL), g_bytes_get_size(bytes));
        JsonNode *node = hs_change_node(text);
        list = json_node_dup_array(node);
        json_node_unref(node);
    }
    return list;
}

JsonNode *
hs_suits_example(int n)
{
    return n < (int)json_array_get_length(examples())
               ? json_array_get_element(examples(), (guint)n)
               : NULL;
}

const char *
hs_suits_example_name(int n)
{
    JsonNode *node = hs_suits_example(n);

    return node != NULL ? json_object_get_string_member(json_node_get_object(node), "name")
                        : NULL;
}

char *
hs_suits_add(HsSession *session, hs_edit *edit, int example)
{
    const hs_document *document = hs_session_document(session);
    int n = hs_field_length(document, "suits");
    char *id = hs_free_id(document, "suits", "suit");
    g_autofree char *path = g_strdup_printf("suits[%d]", n);
    g_autofree char *text = json_to_string(hs_suits_example(example), FALSE);
    JsonNode *own = hs_change_node(text);

    json_object_set_string_member(json_node_get_object(own), "id", id);
    if (hs_field_node(document, "suits") == NULL)
        hs_edit_set(edit, "suits", hs_change_node("[]"));
    hs_edit_insert(edit, path, own);
    return id;
}

char *
hs_suits_first_or_new(HsSession *session, hs_edit *edit)
{
    const char *id = hs_field_text(hs_session_document(session), "suits[0].id");

    return id != NULL ? g_strdup(id) : hs_suits_add(session, edit, 0);
}
