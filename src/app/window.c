/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what holds everything together on the screen?
 * Answer:    HsWindow: one document, header, start page, the three zones, the lesson.
 * Not here:  what the actions do (window_actions.c). */
#include "window_private.h"

#include "field.h"
#include "findings.h"
#include "gallery_view.h"
#include "lesson.h"
#include "look.h"
#include "notice.h"
#include "recover.h"
#include "rows.h"
#include "scene.h"
#include "sign_off.h"

#include <glib/gi18n-lib.h>

G_DEFINE_FINAL_TYPE(HsWindow, hs_window, GTK_TYPE_APPLICATION_WINDOW)

/* ---- header -------------------------------------------------------------------------------- */

static void
show_title(HsWindow *self)
{
    const hs_document *document = hs_session_document(self->session);
    const char *title = hs_field_text(document, "about.title");
    const char *place = hs_field_text(document, "about.place");
    gboolean is_work = g_str_equal(hs_window_page(self), "work");
    gboolean is_unsaved = is_work && hs_session_is_unsaved(self->session);
    int revisions = hs_field_length(document, "revisions"),
        signatures = hs_field_length(document, "signatures");

    if (!is_work && g_str_equal(hs_window_page(self), "start")) {
        gtk_label_set_text(self->title_label, _("Handspike"));
        gtk_label_set_text(self->subtitle_label, _("can one suited worker do this lift?"));
        gtk_window_set_title(GTK_WINDOW(self), _("Handspike"));
        return;
    }
    g_autofree char *shown = g_strdup_printf("%s%s", is_unsaved ? "• " : "",
                                             title && *title ? title : _("Untitled"));
    GString *under = g_string_new(place ? place : "");
    if (revisions > 0)
        g_string_append_printf(under, _("%srevision %d"), under->len ? " · " : "", revisions);
    g_string_append_printf(under, "%s%s", under->len ? " · " : "",
                           signatures > 0 ? _("signed") : _("not signed"));
    if (is_unsaved)
        g_string_append_printf(under, " · %s", _("not saved"));
    gtk_label_set_text(self->title_label, shown);
    gtk_label_set_text(self->subtitle_label, under->str);
    gtk_window_set_title(GTK_WINDOW(self), shown);
    g_string_free(under, TRUE);
}

/* ---- the life of a change ------------------------------------------------------------------ */

/* Once a frame, however many changes came in between. */
static gboolean
on_frame(GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
    HsWindow *self = HS_WINDOW(widget);

    (void)clock, (void)data;
    self->refresh = 0;
    hs_session_refresh(self->session);
    return G_SOURCE_REMOVE;
}

static void
on_changed(HsWindow *self, guint mask)
{
    if ((mask & HS_CHANGED_DOCUMENT) && self->refresh == 0)
        self->refresh = gtk_widget_add_tick_callback(GTK_WIDGET(self), on_frame, NULL, NULL);
    if (mask & (HS_CHANGED_DOCUMENT | HS_CHANGED_FILE)) {
        show_title(self);
        hs_window_show_actions(self);
    }
}

static void
on_kind_changed(HsWindow *self)
{
    hs_zones_kind kind = hs_zones_get_kind(self->zones);

    hs_stage_set_single(self->stage, kind == HS_ZONES_ONE_VIEW);
    hs_strip_set_small(self->strip, kind != HS_ZONES_WIDE);
}

/* ---- pages --------------------------------------------------------------------------------- */

const char *
hs_window_page(HsWindow *self)
{
    const char *page = gtk_stack_get_visible_child_name(self->pages);
    return page ? page : "start";
}

void
hs_window_show_page(HsWindow *self, const char *page)
{
    gboolean is_lesson = g_str_equal(page, "lesson"), is_start = g_str_equal(page, "start");

    gtk_stack_set_visible_child_name(self->pages, page);
    hs_lesson_set_running(HS_LESSON(self->lesson), is_lesson);
    gtk_button_set_label(self->lesson_button, is_lesson ? _("End lesson") : _("Lesson"));
    gtk_widget_set_visible(GTK_WIDGET(self->lesson_button), !is_start);
    gtk_widget_set_visible(GTK_WIDGET(self->sheet_button), !is_start && !is_lesson);
    gtk_widget_set_visible(GTK_WIDGET(self->save_button), !is_start && !is_lesson);
    gtk_widget_set_visible(GTK_WIDGET(self->undo_button), !is_start && !is_lesson);
    gtk_widget_set_visible(GTK_WIDGET(self->redo_button), !is_start && !is_lesson);
    show_title(self);
    hs_window_show_actions(self);
}

static char *
list_faults(GPtrArray *faults, const char *path)
{
    GString *text = g_string_new(NULL);
    g_autofree char *name = g_path_get_basename(path);
    guint n = 0;

    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *fault = faults->pdata[i];
        if (fault->is_warning)
            continue;
        if (n++ < 3)
            g_string_append_printf(text, "%s%s: %s", text->len ? "\n" : "", fault->path,
                                   fault->text);
    }
    if (n > 3)
        g_string_append_printf(
            text, g_dngettext(GETTEXT_PACKAGE, "\nand %u more", "\nand %u more", n - 3), n - 3);
    g_autofree char *list = g_string_free(text, FALSE);
    return g_strdup_printf(_("%s cannot be opened.\n%s"), name, list);
}

gboolean
hs_window_open(HsWindow *self, const char *path)
{
    g_autoptr(GError) error = NULL;
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    hs_document *document = hs_document_load(path, faults, &error);

    if (document == NULL) {
        g_autofree char *text = error ? g_strdup(error->message) : list_faults(faults, path);
        hs_notice_say(GTK_WIDGET(self), text);
        return FALSE;
    }
    hs_session_take(self->session, document, path);
    hs_session_set_layers(self->session, hs_layers_default());
    hs_document_unref(document);
    hs_session_refresh(self->session);
    hs_window_show_page(self, "work");
    if (faults->len > 0) {
        g_autofree char *text = g_strdup_printf(
            g_dngettext(GETTEXT_PACKAGE, "%u key of the file is not known here; it is kept.",
                        "%u keys of the file are not known here; they are kept.", faults->len),
            faults->len);
        hs_notice_say(GTK_WIDGET(self), text);
    } else if (hs_document_is_read_only(document)) {
        hs_notice_say(
            GTK_WIDGET(self),
            _("This file is of a newer version: it can be looked at and not changed."));
    } else {
        hs_notice_hide(GTK_WIDGET(self));
    }
    return TRUE;
}

void
hs_window_open_document(HsWindow *self, hs_document *document)
{
    hs_session_take(self->session, document, NULL);
    hs_session_set_layers(self->session, hs_layers_default());
    hs_session_refresh(self->session);
    hs_notice_hide(GTK_WIDGET(self));
    hs_window_show_page(self, "work");
}

HsSession *
hs_window_session(HsWindow *self)
{
    return self->session;
}

/* ---- picture ------------------------------------------------------------------------------- */

void
hs_window_open_section(HsWindow *self, const char *id)
{
    hs_brief_open(self->brief, id);
}

gboolean
hs_window_save_picture(HsWindow *self, const char *path, GError **error)
{
    GtkWidget *widget = GTK_WIDGET(self);
    int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
    g_autoptr(GdkPaintable) paintable = gtk_widget_paintable_new(widget);
    GtkSnapshot *snapshot = gtk_snapshot_new();

    gdk_paintable_snapshot(paintable, snapshot, width, height);
    g_autoptr(GskRenderNode) node = gtk_snapshot_free_to_node(snapshot);
    GskRenderer *renderer = gtk_native_get_renderer(GTK_NATIVE(self));
    if (node == NULL || renderer == NULL) {
        g_set_error(error, G_IO_ERROR, G_IO_ERROR_FAILED, "%s: %s", path,
                    _("nothing is drawn yet"));
        return FALSE;
    }
    g_autoptr(GdkTexture) texture = gsk_renderer_render_texture(
        renderer, node, &GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height));
    if (gdk_texture_save_to_png(texture, path))
        return TRUE;
    g_set_error(error, G_IO_ERROR, G_IO_ERROR_FAILED, "%s: %s", path, _("cannot be written"));
    return FALSE;
}

/* ---- construction -------------------------------------------------------------------------- */

static gboolean
close_request(GtkWindow *window)
{
    HsWindow *self = HS_WINDOW(window);

    if (!self->may_close &&
        !hs_window_may_leave(self, (void (*)(HsWindow *))gtk_window_destroy))
        return TRUE;
    return GTK_WINDOW_CLASS(hs_window_parent_class)->close_request(window);
}

static void
dispose(GObject *object)
{
    HsWindow *self = HS_WINDOW(object);

    if (self->refresh != 0)
        gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->refresh);
    self->refresh = 0;
    if (self->session != NULL)
        g_clear_signal_handler(&self->watch, self->session);
    G_OBJECT_CLASS(hs_window_parent_class)->dispose(object);
    g_clear_object(&self->session);
}

static void
hs_window_class_init(HsWindowClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    GTK_WINDOW_CLASS(class)->close_request = close_request;
    gtk_widget_class_set_template_from_resource(widget_class,
                                                "/io/handspike/Handspike/window.ui");
    gtk_widget_class_bind_template_child(widget_class, HsWindow, content);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, pages);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, title_label);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, subtitle_label);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, undo_button);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, redo_button);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, save_button);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, lesson_button);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, sheet_button);
    gtk_widget_class_bind_template_child(widget_class, HsWindow, menu_button);
    hs_window_install_actions(widget_class);
}

static GtkWidget *
build_rail(void)
{
    GtkWidget *rail = gtk_button_new_from_icon_name("view-list-symbolic");

    gtk_widget_set_tooltip_text(rail, _("Brief (F9)"));
    gtk_widget_add_css_class(rail, "rail");
    gtk_actionable_set_action_name(GTK_ACTIONABLE(rail), "win.toggle-brief");
    hs_look_name(rail, _("Brief"));
    return rail;
}

static void
build_pages(HsWindow *self)
{
    GtkWidget *centre = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);

    self->stage = HS_STAGE(hs_stage_new(self->session));
    self->strip = HS_STRIP(hs_strip_new(self->session));
    self->brief = HS_BRIEF(hs_brief_new(self->session));
    gtk_widget_set_vexpand(GTK_WIDGET(self->stage), TRUE);
    gtk_box_append(GTK_BOX(centre), GTK_WIDGET(self->stage));
    gtk_box_append(GTK_BOX(centre), GTK_WIDGET(self->strip));
    self->zones = HS_ZONES(hs_zones_new(build_rail(), GTK_WIDGET(self->brief), centre,
                                        hs_findings_new(self->session)));
    g_signal_connect_swapped(self->zones, "kind-changed", G_CALLBACK(on_kind_changed), self);
    self->gallery = hs_gallery_view_new();
    self->lesson = hs_lesson_new(self->session);
    hs_look_name(gtk_stack_add_named(self->pages, self->gallery, "start"), _("Start page"));
    hs_look_name(gtk_stack_add_named(self->pages, GTK_WIDGET(self->zones), "work"),
                 _("Assessment"));
    hs_look_name(gtk_stack_add_named(self->pages, self->lesson, "lesson"), _("Lesson"));
}

static void
hs_window_init(HsWindow *self)
{
    gtk_widget_init_template(GTK_WIDGET(self));
    self->session = hs_session_new();
    hs_session_set_layers(self->session, hs_layers_default());
    gtk_box_prepend(self->content, hs_notice_new());
    build_pages(self);
    hs_row_name_button(GTK_WIDGET(self->menu_button), _("Menu"));
    hs_sign_off_attach(self->sheet_button, self->session, self->brief);
    self->watch =
        g_signal_connect_swapped(self->session, "changed", G_CALLBACK(on_changed), self);
    hs_window_show_page(self, "start");
}

HsWindow *
hs_window_new(GtkApplication *application)
{
    HsWindow *self = g_object_new(HS_TYPE_WINDOW, "application", application, NULL);

    hs_recover_ask(GTK_WIDGET(self), self->session);
    return self;
}
