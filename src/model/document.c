/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the document say?
 * Answer:    an immutable version: tree, task, digest, faults.
 * Not here:  reading and faults (reader.c, rules.c), changing (edit.c), history (history.c). */
#include "document.h"

#include "digest.h"
#include "reader.h"
#include "strict.h"
#include "translate.h"
#include "writer.h"

#include <string.h>
#include <unistd.h>

struct hs_document {
    gatomicrefcount references;
    JsonNode *root; /* sealed */
    hs_arena *arena;
    const hs_task *task; /* NULL while there are faults */
    GPtrArray *faults;
    gboolean is_read_only;
    char *digest; /* made when first asked, by compare and exchange */
};

#define BYTES_MOST ((gsize)64 * 1024 * 1024)

hs_document *
hs_document_ref(hs_document *document)
{
    g_atomic_ref_count_inc(&document->references);
    return document;
}

void
hs_document_unref(hs_document *document)
{
    if (document == NULL || !g_atomic_ref_count_dec(&document->references))
        return;
    json_node_unref(document->root);
    hs_arena_free(document->arena);
    g_ptr_array_unref(document->faults);
    g_free(document->digest);
    g_free(document);
}

JsonNode *
hs_document_root(const hs_document *document)
{
    return document->root;
}

const hs_task *
hs_document_task(const hs_document *document)
{
    return document->task;
}

const GPtrArray *
hs_document_faults(const hs_document *document)
{
    return document->faults;
}

gboolean
hs_document_is_read_only(const hs_document *document)
{
    return document->is_read_only;
}

const char *
hs_document_digest(const hs_document *document)
{
    /* The one member that is filled late: every thread would write the same text, the first one stays. */
    hs_document *own = (hs_document *)(guintptr)document;
    char *made;

    if (g_atomic_pointer_get(&own->digest) == NULL) {
        made = hs_digest_of(document->root);
        if (!g_atomic_pointer_compare_and_exchange(&own->digest, (char *)NULL, made))
            g_free(made);
    }
    return g_atomic_pointer_get(&own->digest);
}

static guint
count_errors(const GPtrArray *faults)
{
    guint n = 0;

    for (guint i = 0; i < faults->len; i++)
        n += !((const hs_fault *)faults->pdata[i])->is_warning;
    return n;
}

static gboolean
is_newer(JsonNode *root)
{
    JsonNode *version;

    if (!JSON_NODE_HOLDS_OBJECT(root))
        return FALSE;
    version = json_object_get_member(json_node_get_object(root), "version");
    return version != NULL && JSON_NODE_HOLDS_VALUE(version) && json_node_get_value_type(version) != G_TYPE_STRING &&
           json_node_get_value_type(version) != G_TYPE_BOOLEAN && json_node_get_double(version) > 1;
}

static void
copy_faults(const GPtrArray *from, GPtrArray *to)
{
    for (guint i = 0; i < from->len; i++) {
        const hs_fault *fault = from->pdata[i];

        g_ptr_array_add(to, hs_fault_new(fault->path, g_strdup(fault->text), fault->is_warning));
    }
}

hs_document *
hs_document_from_node(JsonNode *root, gboolean keep_faulty, GPtrArray *faults)
{
    hs_document *document = g_new0(hs_document, 1);
    guint n_errors;
    const hs_task *task;

    g_atomic_ref_count_init(&document->references);
    document->root = json_node_ref(root);
    json_node_seal(document->root);
    document->arena = hs_arena_new();
    document->faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    document->is_read_only = is_newer(root);
    task = hs_reader_task(root, document->arena, document->faults);
    n_errors = count_errors(document->faults) - document->is_read_only;
    if (n_errors == 0) {
        hs_rules_check(task, document->faults);
        n_errors = count_errors(document->faults) - document->is_read_only;
    }
    copy_faults(document->faults, faults);
    if (n_errors == 0)
        document->task = task;
    else if (!keep_faulty)
        g_clear_pointer(&document, hs_document_unref);
    return document;
}

hs_document *
hs_document_from_bytes(const char *text, gsize length, GPtrArray *faults)
{
    g_autoptr(JsonParser) parser = NULL;
    g_autoptr(GError) error = NULL;

    if (length > BYTES_MOST) {
        g_ptr_array_add(faults, hs_fault_new("$", g_strdup(_("the document is longer than 64 MiB")), FALSE));
        return NULL;
    }
    if (!hs_strict_scan(text, length, faults))
        return NULL;
    parser = json_parser_new_immutable();
    if (!json_parser_load_from_data(parser, text, (gssize)length, &error)) {
        g_ptr_array_add(faults, hs_fault_new("$", g_strdup(error->message), FALSE));
        return NULL;
    }
    return hs_document_from_node(json_parser_get_root(parser), FALSE, faults);
}

static gboolean
read_all(const char *path, char **ret_text, gsize *ret_length, GError **error)
{
    GByteArray *all;
    guint8 block[65536];
    gssize got;

    if (strcmp(path, "-") != 0)
        return g_file_get_contents(path, ret_text, ret_length, error);
    all = g_byte_array_new();
    while ((got = read(STDIN_FILENO, block, sizeof block)) > 0 && all->len <= BYTES_MOST)
        g_byte_array_append(all, block, (guint)got);
    if (got < 0) {
        g_byte_array_unref(all);
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_FAILED, _("standard input cannot be read"));
        return FALSE;
    }
    *ret_length = all->len;
    g_byte_array_append(all, (const guint8 *)"", 1);
    *ret_text = (char *)g_byte_array_free(all, FALSE);
    return TRUE;
}

hs_document *
hs_document_load(const char *path, GPtrArray *faults, GError **error)
{
    g_autofree char *text = NULL;
    gsize length = 0;

    if (!read_all(path, &text, &length, error))
        return NULL;
    return hs_document_from_bytes(text, length, faults);
}

char *
hs_document_to_text(const hs_document *document, gsize *ret_length)
{
    char *text = hs_writer_text(document->root);

    if (ret_length != NULL)
        *ret_length = strlen(text);
    return text;
}

gboolean
hs_document_save(const hs_document *document, const char *path, GError **error)
{
    gsize length;
    g_autofree char *text = hs_document_to_text(document, &length);

    if (document->is_read_only) {
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_READ_ONLY,
                    _("this document was written by a newer version of the program and is not changed by this one"));
        return FALSE;
    }
    return g_file_set_contents_full(path, text, (gssize)length, G_FILE_SET_CONTENTS_CONSISTENT, 0666, error);
}

hs_document *
hs_document_new_blank(void)
{
    static const char blank[] =
        "{\"format\":\"handspike-assessment\",\"version\":1,\"about\":{},"
        "\"load\":{\"parts\":[{\"id\":\"box\",\"name\":\"box\",\"shape\":\"box\",\"size_m\":[0.4,0.3,0.3],"
        "\"centre_m\":[0,0,0.15],\"mass_kg\":10,\"known\":\"estimated\"}],"
        "\"grips\":[{\"id\":\"left\",\"at_m\":[0,0.15,0.2],\"kind\":\"handle\",\"hands\":1,\"coupling\":\"fair\"},"
        "{\"id\":\"right\",\"at_m\":[0,-0.15,0.2],\"kind\":\"handle\",\"hands\":1,\"coupling\":\"fair\"}]},"
        "\"site\":{},\"route\":{\"points\":[{\"x_m\":0,\"z_m\":0.3,\"move\":\"start\",\"set_down\":true},"
        "{\"x_m\":0,\"z_m\":0.75,\"move\":\"lift\"},{\"x_m\":3,\"z_m\":0.75,\"move\":\"carry\"},"
        "{\"x_m\":3,\"z_m\":0.3,\"move\":\"lower\",\"set_down\":true}]},"
        "\"work\":{\"cycles_per_hour\":6,\"hours\":1,\"recovery_h\":1},"
        "\"workers\":[{\"id\":\"w1\",\"name\":\"Worker 1\",\"sex\":\"male\",\"stature_m\":1.756,\"mass_kg\":85.5,\"age_years\":40}],"
        "\"suits\":[],\"options\":[{\"id\":\"today\",\"name\":\"Today\",\"baseline\":true,"
        "\"bearers\":[{\"id\":\"A\",\"worker\":\"w1\",\"grips\":[\"left\",\"right\"]}]}],\"roles\":[]}";
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);

    return hs_document_from_bytes(blank, sizeof blank - 1, faults);
}
