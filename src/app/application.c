/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the window start?
 * Answer:    hs_app_run(): the GTK application, its options, accelerators and style.
 * Not here:  the command line without a window (cli/). */
#include "application.h"

#include "look.h"
#include "notice.h"
#include "preferences.h"
#include "site_sets.h"
#include "window.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

/* The picture that is asked for instead of a window to work in. */
typedef struct {
    char *out, *size, *page, *select, *option, *limits, *open;
    double moment_s;
    gboolean dark, power_off;
    int status, tries;
} picture_wish;

enum {
    FRAMES_BEFORE_PICTURE = 3,
    PICTURE_WAIT_ms = 700,
    MOST_PICTURE_TRIES = 60
};

static picture_wish wish = {.moment_s = -1.0};

static const GOptionEntry options[] = {
    {"window-picture", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_FILENAME, &wish.out, "",
     "OUT.png"},
    {"size", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, &wish.size, "", "WxH"},
    {"page", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, &wish.page, "", "start|work|lesson"},
    {"select", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, &wish.select, "", "CHECK"},
    {"moment", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_DOUBLE, &wish.moment_s, "", "SECONDS"},
    {"power-off", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_NONE, &wish.power_off, "", NULL},
    {"limits", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_FILENAME, &wish.limits, "", "SET.json"},
    {"open", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, &wish.open, "", "SECTION"},
    {"dark", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_NONE, &wish.dark, "", NULL},
    {NULL, 0, 0, 0, NULL, NULL, NULL},
};

/* ---- picture ------------------------------------------------------------------------------- */

static void
select_finding(HsWindow *window)
{
    HsSession *session = hs_window_session(window);
    int option =
        hs_session_right(session) >= 0 ? hs_session_right(session) : hs_session_left(session);

    for (int i = 0; wish.select != NULL && i < HS_N_CHECKS; i++) {
        if (g_str_equal(hs_words_check_id((hs_check_id)i), wish.select))
            hs_session_choose_finding(session, option, i);
    }
    if (wish.moment_s >= 0.0)
        hs_session_set_moment_s(session, wish.moment_s);
    if (wish.power_off)
        hs_session_set_power_off(session, TRUE);
}

/* On a busy machine the first frames come late: some have to be through, and the page's figures with them. */
static gboolean
is_drawn(HsWindow *window)
{
    GdkFrameClock *clock = gtk_widget_get_frame_clock(GTK_WIDGET(window));

    return gtk_widget_get_mapped(GTK_WIDGET(window)) &&
           gtk_widget_get_width(GTK_WIDGET(window)) > 0 && clock != NULL &&
           gdk_frame_clock_get_frame_counter(clock) >= FRAMES_BEFORE_PICTURE;
}

static gboolean
take_picture(gpointer data)
{
    HsWindow *window = data;
    g_autoptr(GError) error = NULL;

    if (!is_drawn(window) && wish.tries++ < MOST_PICTURE_TRIES) {
        gtk_widget_queue_draw(GTK_WIDGET(window));
        return G_SOURCE_CONTINUE;
    }
    if (hs_session_is_pending(hs_window_session(window)) &&
        g_str_equal(hs_window_page(window), "work"))
        return G_SOURCE_CONTINUE;
    if (!hs_window_save_picture(window, wish.out, &error)) {
        fprintf(stderr, "handspike: %s\n", error->message);
        wish.status = 4;
    }
    gtk_window_destroy(GTK_WINDOW(window));
    return G_SOURCE_REMOVE;
}

static void
arrange_picture(HsWindow *window)
{
    int width = 1600, height = 1000;

    if (wish.size != NULL && sscanf(wish.size, "%dx%d", &width, &height) != 2)
        fprintf(stderr, "handspike: --size %s: a size is written 1600x1000\n", wish.size);
    gtk_window_set_default_size(GTK_WINDOW(window), width, height);
    if (wish.dark)
        g_object_set(gtk_settings_get_default(), "gtk-application-prefer-dark-theme", TRUE,
                     NULL);
    if (wish.page != NULL)
        hs_window_show_page(window, wish.page);
    if (wish.open != NULL)
        hs_window_open_section(window, wish.open);
    select_finding(window);
    g_timeout_add(PICTURE_WAIT_ms, take_picture, window);
}

/* ---- actions ------------------------------------------------------------------------------- */

static void
on_about(GSimpleAction *action, GVariant *argument, gpointer application)
{
    (void)action, (void)argument;
    gtk_show_about_dialog(
        gtk_application_get_active_window(application), "program-name", "Handspike", "version",
        HS_VERSION, "logo-icon-name", "io.handspike.Handspike", "license-type",
        GTK_LICENSE_GPL_3_0, "comments",
        _("Can a lift that a crew does today be done by one worker in an assist suit, and "
          "under which "
          "conditions? The program supports a competent person and does not replace one."),
        NULL);
}

static void
on_us_units(GSimpleAction *action, GVariant *value, gpointer application)
{
    gboolean us = g_variant_get_boolean(value);

    g_simple_action_set_state(action, value);
    hs_look_set_units(us ? HS_UNITS_US : HS_UNITS_SI);
    hs_preferences_save();
    for (GList *each = gtk_application_get_windows(application); each != NULL;
         each = each->next) {
        if (HS_IS_WINDOW(each->data))
            g_signal_emit_by_name(hs_window_session(each->data), "changed",
                                  HS_CHANGED_DOCUMENT | HS_CHANGED_RESULTS | HS_CHANGED_CHOICE |
                                      HS_CHANGED_MOMENT);
    }
}

static void
on_quit(GSimpleAction *action, GVariant *argument, gpointer application)
{
    g_autoptr(GList) all = g_list_copy(gtk_application_get_windows(application));

    (void)action, (void)argument;
    for (GList *each = all; each != NULL; each = each->next)
        gtk_window_close(each->data);
}

static void
add_accelerators(GtkApplication *application)
{
    /* Application accelerators come before the focused widget: a text field would swallow Ctrl+Z. */
    static const struct {
        const char *action, *keys[3];
    } table[] = {
        {"win.undo", {"<Control>z"}},
        {"win.redo", {"<Control><Shift>z", "<Control>y"}},
        {"win.save", {"<Control>s"}},
        {"win.save-as", {"<Control><Shift>s"}},
        {"win.open", {"<Control>o"}},
        {"win.new", {"<Control>n"}},
        {"win.print", {"<Control>p"}},
        {"win.toggle-brief", {"F9"}},
        {"win.lesson", {"F5"}},
        {"app.quit", {"<Control>q"}},
        {"win.export-sheet", {"<Control>e"}},
    };

    for (guint i = 0; i < G_N_ELEMENTS(table); i++)
        gtk_application_set_accels_for_action(application, table[i].action, table[i].keys);
}

static void
on_startup(GtkApplication *application)
{
    static const GActionEntry actions[] = {
        {"about", on_about, NULL, NULL, NULL, {0}},
        {"quit", on_quit, NULL, NULL, NULL, {0}},
    };
    g_autoptr(GtkCssProvider) css = gtk_css_provider_new();

    gtk_css_provider_load_from_resource(css, "/io/handspike/Handspike/style.css");
    gtk_style_context_add_provider_for_display(gdk_display_get_default(),
                                               GTK_STYLE_PROVIDER(css),
                                               GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
    gtk_icon_theme_add_resource_path(gtk_icon_theme_get_for_display(gdk_display_get_default()),
                                     "/io/handspike/Handspike/icons");
    hs_preferences_load();
    g_action_map_add_action_entries(G_ACTION_MAP(application), actions, G_N_ELEMENTS(actions),
                                    application);
    GSimpleAction *units = g_simple_action_new_stateful(
        "us-units", NULL, g_variant_new_boolean(hs_look_units() == HS_UNITS_US));
    g_signal_connect(units, "change-state", G_CALLBACK(on_us_units), application);
    g_action_map_add_action(G_ACTION_MAP(application), G_ACTION(units));
    g_object_unref(units);
    add_accelerators(application);
    if (wish.out == NULL)
        hs_look_follow_desktop();
}

static void
take_limits(HsWindow *window)
{
    /* A picture is of what was asked for, whatever was chosen yesterday. */
    const char *name = wish.out != NULL ? wish.limits : hs_preferences_limits();
    g_autofree char *trouble = NULL;
    hs_site_set *set = name != NULL ? hs_site_set_load_or_say(name, &trouble) : NULL;

    if (set != NULL)
        hs_session_set_limits(hs_window_session(window), set);
    else if (trouble != NULL)
        hs_notice_say(GTK_WIDGET(window), trouble);
    hs_site_set_unref(set);
}

static HsWindow *
new_window(GtkApplication *application)
{
    HsWindow *window = hs_window_new(application);

    take_limits(window);
    gtk_window_present(GTK_WINDOW(window));
    return window;
}

static void
on_activate(GtkApplication *application)
{
    HsWindow *window = new_window(application);

    if (wish.out != NULL)
        arrange_picture(window);
}

static void
on_open(GtkApplication *application, GFile **files, int n_files, const char *hint)
{
    (void)hint;
    for (int i = 0; i < n_files; i++) {
        g_autofree char *path = g_file_get_path(files[i]);
        HsWindow *window = new_window(application);
        if (path != NULL)
            hs_window_open(window, path);
        if (wish.out != NULL)
            arrange_picture(window);
    }
}

int
hs_app_run(int argc, char **argv)
{
    g_autoptr(GtkApplication) application = gtk_application_new(
        "io.handspike.Handspike", G_APPLICATION_HANDLES_OPEN | G_APPLICATION_NON_UNIQUE);

    g_set_application_name("Handspike");
    g_application_set_resource_base_path(G_APPLICATION(application), "/io/handspike/Handspike");
    g_application_add_main_option_entries(G_APPLICATION(application), options);
    g_signal_connect(application, "startup", G_CALLBACK(on_startup), NULL);
    g_signal_connect(application, "activate", G_CALLBACK(on_activate), NULL);
    g_signal_connect(application, "open", G_CALLBACK(on_open), NULL);
    int status = g_application_run(G_APPLICATION(application), argc, argv);
    return status != 0 ? status : wish.status;
}
