/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a fault of a document kept and where does it say that it stands?
 * Answer:    path, sentence, and a list that stops growing before it drowns the reader.
 * Not here:  what is a fault (strict.c, reader.c, rules.c). */
#include "faults.h"

#include "digest.h"
#include "translate.h"

#include <string.h>

#define VALUE_MOST 60 /* characters of a value that a fault shows */

hs_fault *
hs_fault_new(const char *path, char *text, gboolean is_warning)
{
    hs_fault *fault = g_new0(hs_fault, 1);

    fault->path = g_strdup(path);
    fault->text = text;
    fault->is_warning = is_warning;
    return fault;
}

void
hs_fault_free(hs_fault *fault)
{
    if (fault == NULL)
        return;
    g_free(fault->path);
    g_free(fault->text);
    g_free(fault);
}

void
hs_faults_add(GPtrArray *faults, const char *path, char *text, gboolean is_warning)
{
    if (faults->len < HS_FAULTS_MOST) {
        g_ptr_array_add(faults, hs_fault_new(path, text, is_warning));
        return;
    }
    g_free(text);
    /* The last line is an error, so that a document with an unseen error is never taken for a good one. */
    if (faults->len == HS_FAULTS_MOST)
        g_ptr_array_add(
            faults,
            hs_fault_new(
                "$",
                g_strdup(_("there are more faults than are listed here; correct these first")),
                FALSE));
}

gboolean
hs_faults_has(const GPtrArray *faults, const char *path)
{
    gsize n = strlen(path);

    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *fault = faults->pdata[i];
        char next = strncmp(fault->path, path, n) == 0 ? fault->path[n] : 'x';

        if (!fault->is_warning && (next == '\0' || next == '.' || next == '['))
            return TRUE;
    }
    return FALSE;
}

gboolean
hs_faults_stands(const GPtrArray *faults, const char *path)
{
    for (guint i = 0; i < faults->len; i++)
        if (strcmp(((const hs_fault *)faults->pdata[i])->path, path) == 0)
            return TRUE;
    return FALSE;
}

guint
hs_faults_errors(const GPtrArray *faults)
{
    guint n = 0;

    for (guint i = 0; i < faults->len; i++)
        n += !((const hs_fault *)faults->pdata[i])->is_warning;
    return n;
}

static gboolean
is_plain(const char *key)
{
    if (!g_ascii_isalpha(*key) && *key != '_')
        return FALSE;
    for (const char *p = key; *p != '\0'; p++)
        if (!g_ascii_isalnum(*p) && *p != '_' && *p != '-')
            return FALSE;
    return TRUE;
}

void
hs_path_add_key(GString *path, const char *key)
{
    g_autoptr(JsonNode) node = NULL;
    g_autofree char *quoted = NULL;

    if (is_plain(key)) {
        g_string_append_printf(path, "%s%s", path->len > 0 ? "." : "", key);
        return;
    }
    node = json_node_init_string(json_node_alloc(), key);
    quoted = hs_canonical_text(node, NULL);
    g_string_append_printf(path, "[%s]", quoted);
}

void
hs_path_add_index(GString *path, guint index)
{
    g_string_append_printf(path, "[%u]", index);
}

char *
hs_fault_value(JsonNode *node)
{
    g_autofree char *all = NULL, *cut = NULL;

    if (JSON_NODE_HOLDS_OBJECT(node))
        return g_strdup(json_object_get_size(json_node_get_object(node)) > 0 ? "{...}" : "{}");
    if (JSON_NODE_HOLDS_ARRAY(node))
        return g_strdup(json_array_get_length(json_node_get_array(node)) > 0 ? "[...]" : "[]");
    all = hs_canonical_text(node, NULL);
    if (g_utf8_strlen(all, -1) <= VALUE_MOST)
        return g_steal_pointer(&all);
    cut = g_utf8_substring(all, 0, VALUE_MOST - 1);
    return g_strconcat(cut, "...", NULL);
}
