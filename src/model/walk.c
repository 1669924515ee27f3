/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does every reader of a field need?
 * Answer:    the place where it stands, and the ways to say what is wrong there.
 * Not here:  the fields (reader.c), how a fault is kept (faults.c). */
#include "walk.h"

#include "allowed.h"
#include "faults.h"
#include "translate.h"

void
hs_walk_fault(hs_walk *r, char *text)
{
    hs_faults_add(r->faults, r->path->str, text, FALSE);
}

/* What stands there, and what may. */
void
hs_walk_refuse(hs_walk *r, JsonNode *node, const hs_field *field)
{
    g_autofree char *is = hs_fault_value(node), *allowed = hs_allowed_text(field);

    hs_walk_fault(r, g_strdup_printf(_("is %s; allowed: %s"), is, allowed));
}

void
hs_walk_missing(hs_walk *r, const hs_field *field)
{
    g_autofree char *allowed = hs_allowed_text(field);

    hs_walk_fault(r, g_strdup_printf(_("is missing; needed: %s"), allowed));
}

gsize
hs_walk_enter(hs_walk *r, const char *key)
{
    gsize before = r->path->len;

    hs_path_add_key(r->path, key);
    return before;
}

gsize
hs_walk_enter_item(hs_walk *r, guint index)
{
    gsize before = r->path->len;

    hs_path_add_index(r->path, index);
    return before;
}

void
hs_walk_leave(hs_walk *r, gsize before)
{
    g_string_truncate(r->path, before);
}

void
hs_walk_warn(hs_walk *r, const char *text)
{
    hs_faults_add(r->faults, r->path->str, g_strdup(text), TRUE);
}

gboolean
hs_walk_is_number(JsonNode *node)
{
    return JSON_NODE_HOLDS_VALUE(node) && (json_node_get_value_type(node) == G_TYPE_INT64 ||
                                           json_node_get_value_type(node) == G_TYPE_DOUBLE);
}

gboolean
hs_walk_is_type(JsonNode *node, GType type)
{
    return JSON_NODE_HOLDS_VALUE(node) && json_node_get_value_type(node) == type;
}
