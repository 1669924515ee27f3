/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how should a drawn widget look here: light or dark, how large is type, which units?
 * Answer:    hs_look_*: asked of the widget itself, so that theme and text scale are followed.
 * Not here:  the colours (draw/theme.c). */
#include "look.h"

static hs_units chosen_units;

gboolean
hs_look_is_dark(GtkWidget *widget)
{
    GdkRGBA ink;

    gtk_style_context_get_color(gtk_widget_get_style_context(widget), &ink);
    return 0.3 * (double)ink.red + 0.6 * (double)ink.green + 0.1 * (double)ink.blue > 0.5;
}

const hs_theme *
hs_look_theme(GtkWidget *widget)
{
    return hs_theme_get(hs_look_is_dark(widget) ? HS_THEME_DARK : HS_THEME_LIGHT);
}

double
hs_look_font_px(GtkWidget *widget)
{
    const PangoFontDescription *font =
        pango_context_get_font_description(gtk_widget_get_pango_context(widget));
    double size = (double)pango_font_description_get_size(font) / PANGO_SCALE;
    int dpi_1024 = 96 * 1024;

    if (pango_font_description_get_size_is_absolute(font))
        return size;
    g_object_get(gtk_widget_get_settings(widget), "gtk-xft-dpi", &dpi_1024, NULL);
    return size * (dpi_1024 > 0 ? (double)dpi_1024 / 1024.0 : 96.0) / 72.0;
}

hs_units
hs_look_units(void)
{
    return chosen_units;
}

void
hs_look_set_units(hs_units units)
{
    chosen_units = units;
}

void
hs_look_name(gpointer widget, const char *name)
{
    gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                   -1);
}

void
hs_look_name_scroller(GtkWidget *scroller, const char *name)
{
    hs_look_name(scroller, name);
    hs_look_name(gtk_scrolled_window_get_vscrollbar(GTK_SCROLLED_WINDOW(scroller)), name);
    hs_look_name(gtk_scrolled_window_get_hscrollbar(GTK_SCROLLED_WINDOW(scroller)), name);
}

/* The desktop says 1 for dark, 2 for light, 0 for no wish; the theme's own variant stays then. */
static void
take_wish(GVariant *value)
{
    g_autoptr(GVariant) inner = g_variant_ref(value);

    while (g_variant_is_of_type(inner, G_VARIANT_TYPE_VARIANT)) {
        GVariant *next = g_variant_get_variant(inner);
        g_variant_unref(inner);
        inner = next;
    }
    if (g_variant_is_of_type(inner, G_VARIANT_TYPE_UINT32) && g_variant_get_uint32(inner) != 0)
        g_object_set(gtk_settings_get_default(), "gtk-application-prefer-dark-theme",
                     g_variant_get_uint32(inner) == 1, NULL);
}

static void
on_setting_changed(GDBusConnection *bus,
                   const char *sender,
                   const char *path,
                   const char *interface,
                   const char *name,
                   GVariant *arguments,
                   gpointer data)
{
    const char *space, *key;
    g_autoptr(GVariant) value = NULL;

    (void)bus, (void)sender, (void)path, (void)interface, (void)name, (void)data;
    if (!g_variant_is_of_type(arguments, G_VARIANT_TYPE("(ssv)")))
        return;
    g_variant_get(arguments, "(&s&sv)", &space, &key, &value);
    if (g_str_equal(space, "org.freedesktop.appearance") && g_str_equal(key, "color-scheme"))
        take_wish(value);
}

static void
on_setting_read(GObject *bus, GAsyncResult *result, gpointer data)
{
    g_autoptr(GVariant) answer =
        g_dbus_connection_call_finish(G_DBUS_CONNECTION(bus), result, NULL);

    (void)data;
    if (answer != NULL && g_variant_n_children(answer) == 1) {
        g_autoptr(GVariant) value = g_variant_get_child_value(answer, 0);
        take_wish(value);
    }
}

static void
on_bus(GObject *source, GAsyncResult *result, gpointer data)
{
    g_autoptr(GDBusConnection) bus = g_bus_get_finish(result, NULL);

    (void)source, (void)data;
    if (bus == NULL)
        return;
    g_dbus_connection_signal_subscribe(
        bus, "org.freedesktop.portal.Desktop", "org.freedesktop.portal.Settings",
        "SettingChanged", "/org/freedesktop/portal/desktop", NULL, G_DBUS_SIGNAL_FLAGS_NONE,
        on_setting_changed, NULL, NULL);
    g_dbus_connection_call(
        bus, "org.freedesktop.portal.Desktop", "/org/freedesktop/portal/desktop",
        "org.freedesktop.portal.Settings", "Read",
        g_variant_new("(ss)", "org.freedesktop.appearance", "color-scheme"), NULL,
        G_DBUS_CALL_FLAGS_NO_AUTO_START, 1000, NULL, on_setting_read, NULL);
}

void
hs_look_follow_desktop(void)
{
    /* A theme named by hand wins over the desktop's wish. */
    if (g_getenv("GTK_THEME") == NULL)
        g_bus_get(G_BUS_TYPE_SESSION, NULL, on_bus, NULL);
}

void
hs_look_tip(GtkWidget *widget, const char *tip)
{
    if (g_strcmp0(tip, gtk_widget_get_tooltip_text(widget)) != 0)
        gtk_widget_set_tooltip_text(widget, tip);
}
