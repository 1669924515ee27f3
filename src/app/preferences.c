/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the program remember from one day to the next?
 * Answer:    units and the chosen set of limits, in a key file of the user's configuration folder.
 * Not here:  documents and their recovery (model/). */
#include "preferences.h"

#include "look.h"

#include <glib/gstdio.h>

static char *limits; /* of the whole program: a new window begins with it */

static char *
file_name(void)
{
    return g_build_filename(g_get_user_config_dir(), "handspike", "preferences.ini", NULL);
}

void
hs_preferences_load(void)
{
    g_autoptr(GKeyFile) keys = g_key_file_new();
    g_autofree char *path = file_name();

    if (!g_key_file_load_from_file(keys, path, G_KEY_FILE_NONE, NULL))
        return;
    g_autofree char *units = g_key_file_get_string(keys, "reading", "units", NULL);
    hs_look_set_units(g_strcmp0(units, "us") == 0 ? HS_UNITS_US : HS_UNITS_SI);
    g_free(limits);
    limits = g_key_file_get_string(keys, "limits", "set", NULL);
}

const char *
hs_preferences_limits(void)
{
    return limits;
}

void
hs_preferences_set_limits(const char *name)
{
    char *old = limits; /* name may be it */

    limits = g_strdup(name);
    g_free(old);
    hs_preferences_save();
}

/* A preference that cannot be kept is no reason to disturb anybody. */
void
hs_preferences_save(void)
{
    g_autoptr(GKeyFile) keys = g_key_file_new();
    g_autofree char *path = file_name();
    g_autofree char *folder = g_path_get_dirname(path);

    g_key_file_load_from_file(keys, path, G_KEY_FILE_KEEP_COMMENTS, NULL);
    g_key_file_set_string(keys, "reading", "units",
                          hs_look_units() == HS_UNITS_US ? "us" : "si");
    if (limits != NULL)
        g_key_file_set_string(keys, "limits", "set", limits);
    else
        g_key_file_remove_key(keys, "limits", "set", NULL);
    if (g_mkdir_with_parents(folder, 0755) == 0)
        g_key_file_save_to_file(keys, path, NULL);
}
