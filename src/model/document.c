/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the document say?
 * Answer:    an immutable version: tree, task, digest, faults.
 * Not here:  reading and faults (reader.c, rules.c), changing (edit.c), history (history.c). */
#include "document.h"

#include "digest.h"
#include "faults.h"
#include "reader.h"
#include "strict.h"
#include "translate.h"
#include "writer.h"

#include <errno.h>
#include <fcntl.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
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
    g_clear_pointer(&document->root, json_node_unref);
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

static gboolean
is_newer(JsonNode *root)
{
    JsonNode *version;

    if (!JSON_NODE_HOLDS_OBJECT(root))
        return FALSE;
    version = json_object_get_member(json_node_get_object(root), "version");
    return version != NULL && JSON_NODE_HOLDS_VALUE(version) &&
           json_node_get_value_type(version) != G_TYPE_STRING &&
           json_node_get_value_type(version) != G_TYPE_BOOLEAN &&
           json_node_get_double(version) > 1;
}

static void
copy_faults(const GPtrArray *from, GPtrArray *to)
{
    for (guint i = 0; i < from->len; i++) {
        const hs_fault *fault = from->pdata[i];

        hs_faults_add(to, fault->path, g_strdup(fault->text), fault->is_warning);
    }
}

/* What a text could not have held: a tree from inside the program may be too deep or hold no figure. */
static void
check_tree(JsonNode *node, int depth, GPtrArray *faults)
{
    if (depth > HS_STRICT_DEPTH) {
        if (!hs_faults_has(faults, "$"))
            hs_faults_add(faults, "$",
                          g_strdup_printf(_("nested deeper than %d"), HS_STRICT_DEPTH), FALSE);
    } else if (JSON_NODE_HOLDS_OBJECT(node)) {
        JsonObjectIter iter;
        JsonNode *member;

        json_object_iter_init(&iter, json_node_get_object(node));
        while (json_object_iter_next(&iter, NULL, &member))
            check_tree(member, depth + 1, faults);
    } else if (JSON_NODE_HOLDS_ARRAY(node)) {
        for (guint i = 0; i < json_array_get_length(json_node_get_array(node)); i++)
            check_tree(json_array_get_element(json_node_get_array(node), i), depth + 1, faults);
    } else if (JSON_NODE_HOLDS_VALUE(node) && json_node_get_value_type(node) == G_TYPE_DOUBLE &&
               !isfinite(json_node_get_double(node)) && !hs_faults_has(faults, "$")) {
        hs_faults_add(faults, "$", g_strdup(_("a number is not finite")), FALSE);
    }
}

hs_document *
hs_document_from_node(JsonNode *root, gboolean keep_faulty, GPtrArray *faults)
{
    hs_document *document = g_new0(hs_document, 1);
    guint n_errors;
    const hs_task *task;

    g_atomic_ref_count_init(&document->references);
    document->faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    document->arena = hs_arena_new();
    check_tree(root, 0, document->faults);
    if (document->faults->len > 0) {
        copy_faults(document->faults, faults);
        hs_document_unref(document);
        return NULL;
    }
    document->root = json_node_ref(root);
    json_node_seal(document->root);
    document->is_read_only = is_newer(root);
    task = hs_reader_task(root, document->arena, document->faults);
    hs_rules_check(task, document->faults);
    n_errors = hs_faults_errors(document->faults) - (document->is_read_only ? 1 : 0);
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
    g_autoptr(JsonNode) root = NULL;

    if (length > BYTES_MOST) {
        hs_faults_add(faults, "$", g_strdup(_("the document is longer than 64 MiB")), FALSE);
        return NULL;
    }
    root = hs_strict_parse(text, length, faults);
    return root != NULL ? hs_document_from_node(root, FALSE, faults) : NULL;
}

/* Everything that a file or pipe gives, up to one byte more than is allowed: an endless one must not fill the memory. */
static char *
read_all(int file, gsize *ret_length)
{
    GByteArray *all = g_byte_array_new();
    guint8 block[65536];
    gssize got = 1;

    while (got != 0 && all->len <= BYTES_MOST) {
        got = read(file, block, sizeof block);
        if (got > 0)
            g_byte_array_append(all, block, (guint)got);
        else if (got < 0 && errno != EINTR)
            break;
    }
    if (got < 0) {
        int kept = errno;

        g_byte_array_unref(all);
        errno = kept;
        return NULL;
    }
    *ret_length = all->len;
    g_byte_array_append(all, (const guint8 *)"", 1);
    return (char *)g_byte_array_free(all, FALSE);
}

static void
set_error(GError **error, const char *path)
{
    int kept = errno;
    g_autofree char *name = g_filename_display_name(path);

    g_set_error(error, G_IO_ERROR, (gint)g_io_error_from_errno(kept),
                _("%s cannot be read: %s"), name, g_strerror(kept));
}

hs_document *
hs_document_load(const char *path, GPtrArray *faults, GError **error)
{
    gboolean is_stdin = strcmp(path, "-") == 0;
    int file = is_stdin ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC);
    g_autofree char *text = NULL;
    gsize length = 0;

    if (file >= 0)
        text = read_all(file, &length);
    if (text == NULL)
        set_error(error, is_stdin ? _("standard input") : path);
    if (file >= 0 && !is_stdin)
        close(file);
    return text != NULL ? hs_document_from_bytes(text, length, faults) : NULL;
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
    /* A link stays a link, and a file keeps who may read it. */
    char *real = realpath(path, NULL);
    struct stat state;
    int mode = 0666;
    gboolean good;

    if (document->is_read_only) {
        free(real);
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_READ_ONLY,
                    _("this document was written by a newer version of the program and is not "
                      "changed by this one"));
        return FALSE;
    }
    if (real != NULL && stat(real, &state) == 0)
        mode = (int)(state.st_mode & 0777);
    good = g_file_set_contents_full(
        real != NULL ? real : path, text, (gssize)length,
        G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, mode, error);
    free(real);
    return good;
}

hs_document *
hs_document_new_blank(void)
{
    static const char blank[] =
        "{\"format\":\"handspike-assessment\",\"version\":1,\"about\":{},"
        "\"load\":{\"parts\":[{\"id\":\"box\",\"name\":\"box\",\"shape\":\"box\",\"size_m\":[0."
        "4,0.3,0.3],"
        "\"centre_m\":[0,0,0.15],\"mass_kg\":10,\"known\":\"estimated\"}],"
        "\"grips\":[{\"id\":\"left\",\"at_m\":[0,0.15,0.2],\"kind\":\"handle\",\"hands\":1,"
        "\"coupling\":\"fair\"},"
        "{\"id\":\"right\",\"at_m\":[0,-0.15,0.2],\"kind\":\"handle\",\"hands\":1,\"coupling\":"
        "\"fair\"}]},"
        "\"site\":{},\"route\":{\"points\":[{\"x_m\":0,\"z_m\":0.3,\"move\":\"start\",\"set_"
        "down\":true},"
        "{\"x_m\":0,\"z_m\":0.75,\"move\":\"lift\"},{\"x_m\":3,\"z_m\":0.75,\"move\":\"carry\"}"
        ","
        "{\"x_m\":3,\"z_m\":0.3,\"move\":\"lower\",\"set_down\":true}]},"
        "\"work\":{\"cycles_per_hour\":6,\"hours\":1,\"recovery_h\":1},"
        "\"workers\":[{\"id\":\"w1\",\"name\":\"Worker "
        "1\",\"sex\":\"male\",\"stature_m\":1.756,\"mass_kg\":85.5,\"age_years\":40}],"
        "\"suits\":[],\"options\":[{\"id\":\"today\",\"name\":\"Today\",\"baseline\":true,"
        "\"bearers\":[{\"id\":\"A\",\"worker\":\"w1\",\"grips\":[\"left\",\"right\"]}]}],"
        "\"roles\":[]}";
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);

    return hs_document_from_bytes(blank, sizeof blank - 1, faults);
}
