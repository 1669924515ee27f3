/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is left after a crash?
 * Answer:    a file for each running session, held by a lock that the system takes away when the process dies.
 * Not here:  the document's own file (document.h). */
#include "recovery.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

#define DELAY_ms 700 /* a crash loses at most the last second */
#define ENDING   ".handspike.json"

struct hs_recovery {
    char *stem;  /* folder and name without ending; NULL until there is something to keep */
    int lock_fd; /* of stem.lock, -1: none */
    guint timer;
    hs_document *document; /* waits to be written */
    char *path;
};

static char *
folder(void)
{
    return g_build_filename(g_get_user_state_dir(), "handspike", "recovery", NULL);
}

static char *
with_ending(const char *stem, const char *ending)
{
    return g_strconcat(stem, ending, NULL);
}

static void
remove_all(const char *stem)
{
    static const char *const endings[] = {ENDING, ".path", ".lock"};

    for (gsize i = 0; i < G_N_ELEMENTS(endings); i++) {
        g_autofree char *file = with_ending(stem, endings[i]);

        g_unlink(file);
    }
}

/* A name of its own and its lock. */
static gboolean
claim(hs_recovery *recovery)
{
    g_autofree char *in = folder();
    g_autofree char *random = g_uuid_string_random();
    g_autofree char *lock = NULL;

    if (recovery->lock_fd >= 0)
        return TRUE;
    if (g_mkdir_with_parents(in, 0700) != 0)
        return FALSE;
    g_free(recovery->stem);
    recovery->stem = g_build_filename(in, random, NULL);
    lock = with_ending(recovery->stem, ".lock");
    recovery->lock_fd = g_open(lock, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
    return recovery->lock_fd >= 0 && flock(recovery->lock_fd, LOCK_EX | LOCK_NB) == 0;
}

hs_recovery *
hs_recovery_new(void)
{
    hs_recovery *recovery = g_new0(hs_recovery, 1);

    recovery->lock_fd = -1;
    return recovery;
}

gboolean
hs_recovery_flush(hs_recovery *recovery)
{
    g_autoptr(hs_document) document = g_steal_pointer(&recovery->document);
    g_autofree char *file = NULL, *beside = NULL;

    g_clear_handle_id(&recovery->timer, g_source_remove);
    if (document == NULL)
        return TRUE;
    if (!claim(recovery))
        return FALSE;
    file = with_ending(recovery->stem, ENDING);
    beside = with_ending(recovery->stem, ".path");
    if (recovery->path != NULL && !g_file_set_contents(beside, recovery->path, -1, NULL))
        return FALSE;
    return hs_document_save(document, file, NULL);
}

static gboolean
on_timer(gpointer data)
{
    hs_recovery *recovery = data;

    recovery->timer = 0;
    hs_recovery_flush(recovery);
    return G_SOURCE_REMOVE;
}

void
hs_recovery_touch(hs_recovery *recovery, hs_document *document, const char *path)
{
    g_clear_pointer(&recovery->document, hs_document_unref);
    recovery->document = hs_document_ref(document);
    if (g_strcmp0(path, recovery->path) != 0) {
        g_free(recovery->path);
        recovery->path = g_strdup(path);
    }
    /* The timer is not started anew: steady work must not put the writing off. */
    if (recovery->timer == 0)
        recovery->timer = g_timeout_add(DELAY_ms, on_timer, recovery);
}

void
hs_recovery_clear(hs_recovery *recovery)
{
    g_clear_handle_id(&recovery->timer, g_source_remove);
    g_clear_pointer(&recovery->document, hs_document_unref);
    if (recovery->lock_fd < 0)
        return;
    remove_all(recovery->stem);
    close(recovery->lock_fd);
    recovery->lock_fd = -1;
}

void
hs_recovery_free(hs_recovery *recovery)
{
    if (recovery == NULL)
        return;
    hs_recovery_clear(recovery);
    g_free(recovery->stem);
    g_free(recovery->path);
    g_free(recovery);
}

void
hs_kept_free(hs_kept *kept)
{
    g_free(kept->file);
    g_free(kept->path);
    g_free(kept);
}

/* Nobody holds the lock: the session that kept it is gone. */
static gboolean
is_left_over(const char *stem)
{
    g_autofree char *lock = with_ending(stem, ".lock");
    int fd = g_open(lock, O_RDWR | O_CLOEXEC, 0);
    gboolean is_free;

    if (fd < 0)
        return errno == ENOENT;
    is_free = flock(fd, LOCK_EX | LOCK_NB) == 0;
    close(fd);
    return is_free;
}

static hs_kept *
kept_of(const char *in, const char *name)
{
    g_autofree char *file = g_build_filename(in, name, NULL);
    g_autofree char *stem = g_strndup(file, strlen(file) - strlen(ENDING));
    g_autofree char *beside = with_ending(stem, ".path");
    GStatBuf info;
    hs_kept *kept;

    if (!is_left_over(stem) || g_stat(file, &info) != 0)
        return NULL;
    kept = g_new0(hs_kept, 1);
    kept->file = g_steal_pointer(&file);
    kept->written_unix_s = info.st_mtime;
    g_file_get_contents(beside, &kept->path, NULL, NULL);
    return kept;
}

static gint
newest_first(gconstpointer a, gconstpointer b)
{
    const hs_kept *const *one = a, *const *other = b;

    return (*one)->written_unix_s < (*other)->written_unix_s ? 1
           : (*one)->written_unix_s > (*other)->written_unix_s
               ? -1
               : strcmp((*one)->file, (*other)->file);
}

GPtrArray *
hs_recovery_find(void)
{
    GPtrArray *found = g_ptr_array_new_with_free_func((GDestroyNotify)hs_kept_free);
    g_autofree char *in = folder();
    g_autoptr(GDir) dir = g_dir_open(in, 0, NULL);
    const char *name;

    while (dir != NULL && (name = g_dir_read_name(dir)) != NULL) {
        hs_kept *kept = g_str_has_suffix(name, ENDING) ? kept_of(in, name) : NULL;

        if (kept != NULL)
            g_ptr_array_add(found, kept);
    }
    g_ptr_array_sort(found, newest_first);
    return found;
}

void
hs_recovery_forget(const hs_kept *kept)
{
    g_autofree char *stem = g_strndup(kept->file, strlen(kept->file) - strlen(ENDING));

    remove_all(stem);
}
