/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does it hold for every worked scenario?
 * Answer:    the files of data/examples, one after the other.
 * Not here:  what has to hold. */
#include "examples.h"

#include <glib.h>

void
hs_each_example(void (*visit)(const char *path, const char *name))
{
    g_autoptr(GDir) dir = g_dir_open(HS_SOURCE_ROOT "/data/examples", 0, NULL);
    const char *name;
    int n = 0;

    g_assert_nonnull(dir);
    while ((name = g_dir_read_name(dir)) != NULL) {
        g_autofree char *path = g_build_filename(HS_SOURCE_ROOT "/data/examples", name, NULL);

        if (!g_str_has_suffix(name, ".handspike.json"))
            continue;
        visit(path, name);
        n++;
    }
    g_assert_cmpint(n, >=, 14);
}
