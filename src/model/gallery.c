/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which worked scenarios come with the program?
 * Answer:    every document in the folder "examples" of the data folder that reads without a fault.
 * Not here:  their pictures (draw). */
#include "gallery.h"

#include <string.h>

void
hs_example_free(hs_example *example)
{
    g_free(example->path);
    g_free(example->title);
    g_free(example->caption);
    hs_document_unref(example->document);
    g_free(example);
}

static char *
if_has_examples(char *folder)
{
    g_autofree char *examples = g_build_filename(folder, "examples", NULL);

    if (g_file_test(examples, G_FILE_TEST_IS_DIR))
        return folder;
    g_free(folder);
    return NULL;
}

/* A program that runs where it was built finds data/ in a folder above it. */
static char *
beside_build(void)
{
    g_autofree char *at = g_file_read_link("/proc/self/exe", NULL);
    char *found = NULL;

    for (int level = 0; at != NULL && found == NULL && level < 5; level++) {
        char *above = g_path_get_dirname(at);

        g_free(at);
        at = above;
        found = if_has_examples(g_build_filename(at, "data", NULL));
    }
    return found;
}

char *
hs_gallery_data_dir(void)
{
    const char *wanted = g_getenv("HS_DATA_DIR");
    const char *const *system = g_get_system_data_dirs();
    char *found = wanted != NULL ? if_has_examples(g_strdup(wanted)) : NULL;

    if (found == NULL)
        found = if_has_examples(g_build_filename(HS_DATADIR, "handspike", NULL));
    if (found == NULL)
        found = beside_build();
    for (int i = 0; found == NULL && system[i] != NULL; i++)
        found = if_has_examples(g_build_filename(system[i], "handspike", NULL));
    return found;
}

static hs_example *
example_of(const char *path)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);
    const hs_task *task = document != NULL ? hs_document_task(document) : NULL;
    hs_example *made;

    if (task == NULL)
        return NULL;
    made = g_new0(hs_example, 1);
    made->path = g_strdup(path);
    made->title = g_strdup(task->about.title != NULL ? task->about.title : "");
    made->caption = g_strdup(task->about.task != NULL ? task->about.task : "");
    made->document = g_steal_pointer(&document);
    return made;
}

static gint
by_path(gconstpointer a, gconstpointer b)
{
    const hs_example *const *one = a, *const *other = b;

    return strcmp((*one)->path, (*other)->path);
}

GPtrArray *
hs_gallery_list(void)
{
    GPtrArray *list = g_ptr_array_new_with_free_func((GDestroyNotify)hs_example_free);
    g_autofree char *data = hs_gallery_data_dir();
    g_autofree char *folder = data != NULL ? g_build_filename(data, "examples", NULL) : NULL;
    g_autoptr(GDir) dir = folder != NULL ? g_dir_open(folder, 0, NULL) : NULL;
    const char *name;

    while (dir != NULL && (name = g_dir_read_name(dir)) != NULL) {
        g_autofree char *path = g_build_filename(folder, name, NULL);
        hs_example *example =
            g_str_has_suffix(name, ".handspike.json") ? example_of(path) : NULL;

        if (example != NULL)
            g_ptr_array_add(list, example);
    }
    g_ptr_array_sort(list, by_path);
    return list;
}
