/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where do sets of limits come from?
 * Answer:    from a file, or by id from the sets that ship below data/limits; both may be listed or refused in words.
 * Not here:  what stands in a set (site_limits.c). */
#include "site_sets.h"

#include "gallery.h"
#include "translate.h"

#include <string.h>

/* The folders of the sets that ship, below data/limits. */
static const char *const folders[] = {"national", "spine"};

/* NULL where the data are not found. New. */
static char *
shipped_folder(gsize i)
{
    g_autofree char *data = hs_gallery_data_dir();

    return data != NULL ? g_build_filename(data, "limits", folders[i], NULL) : NULL;
}

/* NULL where none of the folders has it. New. */
static char *
shipped_path(const char *id)
{
    g_autofree char *name = g_strconcat(id, ".json", NULL);

    for (gsize i = 0; i < G_N_ELEMENTS(folders); i++) {
        g_autofree char *folder = shipped_folder(i);
        g_autofree char *path = folder != NULL ? g_build_filename(folder, name, NULL) : NULL;

        if (path != NULL && g_file_test(path, G_FILE_TEST_IS_REGULAR))
            return g_steal_pointer(&path);
    }
    return NULL;
}

gboolean
hs_site_is_shipped(const char *id)
{
    g_autofree char *path = NULL;

    if (*id == '\0' || strpbrk(id, "/.") != NULL)
        return FALSE;
    path = shipped_path(id);
    return path != NULL;
}

hs_site_set *
hs_site_set_load(const char *path, GPtrArray *faults, GError **error)
{
    gboolean is_shipped = !g_file_test(path, G_FILE_TEST_EXISTS) && hs_site_is_shipped(path);
    g_autofree char *shipped = is_shipped ? shipped_path(path) : NULL;
    g_autofree char *text = NULL;
    hs_site_set *set;
    gsize length;

    if (!g_file_get_contents(is_shipped ? shipped : path, &text, &length, error))
        return NULL;
    set = hs_site_set_from_bytes(text, length, faults);
    if (set != NULL && is_shipped)
        hs_site_set_mark_shipped(set);
    return set;
}

/* "set.json: limits["a"].unit: is "t"; allowed: "kg" (the first of 3 faults)" */
static char *
first_fault(const char *path, const GPtrArray *faults)
{
    g_autofree char *name = g_path_get_basename(path);
    guint n = hs_faults_errors(faults);

    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *fault = g_ptr_array_index(faults, i);

        if (fault->is_warning)
            continue;
        if (n == 1)
            return g_strdup_printf("%s: %s: %s", name, fault->path, fault->text);
        return g_strdup_printf(_("%s: %s: %s (the first of %u faults; “handspike assess "
                                 "--limits” lists them all)"),
                               name, fault->path, fault->text, n);
    }
    return g_strdup(name);
}

hs_site_set *
hs_site_set_load_or_say(const char *path, char **ret_trouble)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(GError) error = NULL;
    hs_site_set *set = hs_site_set_load(path, faults, &error);

    if (set == NULL)
        *ret_trouble = error != NULL ? g_strdup(error->message) : first_fault(path, faults);
    return set;
}

static void
shipped_free(gpointer data)
{
    hs_site_shipped *at = data;

    g_free(at->id);
    g_free(at->title);
    g_free(at);
}

static gint
by_title(gconstpointer a, gconstpointer b)
{
    const hs_site_shipped *const *one = a, *const *other = b;

    return g_utf8_collate((*one)->title, (*other)->title);
}

static void
list_folder(const char *folder, GPtrArray *list)
{
    g_autoptr(GDir) dir = folder != NULL ? g_dir_open(folder, 0, NULL) : NULL;
    const char *name;

    while (dir != NULL && (name = g_dir_read_name(dir)) != NULL) {
        g_autofree char *path = g_build_filename(folder, name, NULL);
        g_autoptr(GPtrArray) faults =
            g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
        g_autoptr(hs_site_set) set =
            g_str_has_suffix(name, ".json") ? hs_site_set_load(path, faults, NULL) : NULL;
        hs_site_shipped *at;

        if (set == NULL)
            continue;
        at = g_new0(hs_site_shipped, 1);
        at->id = g_strndup(name, strlen(name) - strlen(".json"));
        at->title = g_strdup(hs_site_set_name(set));
        g_ptr_array_add(list, at);
    }
}

static GPtrArray *
read_shipped(void)
{
    GPtrArray *list = g_ptr_array_new_with_free_func(shipped_free);

    for (gsize i = 0; i < G_N_ELEMENTS(folders); i++) {
        g_autofree char *folder = shipped_folder(i);

        if (folder != NULL)
            list_folder(folder, list);
    }
    g_ptr_array_sort(list, by_title);
    return list;
}

/* What ships does not change while the program runs: the files are read once, not each time rows are built. */
GPtrArray *
hs_site_shipped_list(void)
{
    static GPtrArray *list;

    if (g_once_init_enter(&list))
        g_once_init_leave(&list, read_shipped());
    return g_ptr_array_ref(list);
}
