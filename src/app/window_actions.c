/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the window's actions do?
 * Answer:    thin functions, one an action; keys of single letters are bound to the window's class, so that a text field
 *            that has the focus gets its letters first.
 * Not here:  the accelerators with Ctrl (application.c). */
#include "window_private.h"

#include "change.h"
#include "crew.h"
#include "field.h"
#include "files.h"
#include "heading.h"
#include "lesson.h"
#include "lesson_set.h"
#include "look.h"
#include "notice.h"
#include "options.h"
#include "scene.h"

#include <glib/gi18n-lib.h>

/* ---- leaving ------------------------------------------------------------------------------- */

typedef struct {
    HsWindow *window;
    void (*then)(HsWindow *window);
} leaving;

static void
on_leave_anyway(GtkWidget *from, gpointer data)
{
    leaving *held = data;

    (void)from;
    held->window->may_close = TRUE;
    held->then(held->window);
}

static void
on_save_first(GtkWidget *from, gpointer data)
{
    leaving *held = data;

    (void)from;
    hs_files_save(GTK_WIDGET(held->window), held->window->session);
    if (!hs_session_is_unsaved(held->window->session))
        held->then(held->window);
}

gboolean
hs_window_may_leave(HsWindow *self, void (*then)(HsWindow *window))
{
    if (!hs_session_is_unsaved(self->session))
        return TRUE;
    leaving *held = g_new(leaving, 1);
    held->window = self;
    held->then = then;
    hs_notice_ask(GTK_WIDGET(self), _("There are changes that are not saved."), _("Save"),
                  on_save_first, _("Leave without saving"), on_leave_anyway, held, g_free);
    return FALSE;
}

/* ---- file ---------------------------------------------------------------------------------- */

static void
open_chosen(GtkWidget *from, const char *path)
{
    hs_window_open(HS_WINDOW(from), path);
}

static void
ask_open(HsWindow *self)
{
    self->may_close = FALSE;
    hs_files_choose_open(GTK_WIDGET(self), open_chosen);
}

static void
new_blank(HsWindow *self)
{
    hs_document *document = hs_document_new_blank();

    self->may_close = FALSE;
    hs_window_open_document(self, document);
    hs_document_unref(document);
}

static void
show_start(HsWindow *self)
{
    self->may_close = FALSE;
    hs_window_show_page(self, "start");
}

static void
act_file(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsWindow *self = HS_WINDOW(widget);
    void (*then)(HsWindow *) = g_str_equal(name, "win.open")  ? ask_open
                               : g_str_equal(name, "win.new") ? new_blank
                                                              : show_start;

    (void)argument;
    if (hs_window_may_leave(self, then))
        then(self);
}

static void
act_save(GtkWidget *widget, const char *name, GVariant *argument)
{
    (void)argument;
    if (!g_str_equal(hs_window_page(HS_WINDOW(widget)), "work"))
        return;
    if (g_str_equal(name, "win.save-as"))
        hs_files_save_as(widget, HS_WINDOW(widget)->session);
    else
        hs_files_save(widget, HS_WINDOW(widget)->session);
}

static void
act_paper(GtkWidget *widget, const char *name, GVariant *argument)
{
    (void)argument;
    if (g_str_equal(name, "win.print"))
        hs_files_print(widget, HS_WINDOW(widget)->session);
    else if (g_str_equal(name, "win.export-sheet"))
        hs_files_export_sheet(widget, HS_WINDOW(widget)->session);
    else if (g_str_equal(name, "win.export-handout"))
        hs_files_export_handout(widget, HS_WINDOW(widget)->session);
    else
        hs_files_export_view(widget, HS_WINDOW(widget)->session);
}

/* ---- history ------------------------------------------------------------------------------- */

static void
act_history(GtkWidget *widget, const char *name, GVariant *argument)
{
    (void)argument;
    if (g_str_equal(name, "win.undo"))
        hs_session_undo(HS_WINDOW(widget)->session);
    else
        hs_session_redo(HS_WINDOW(widget)->session);
}

static void
show_step(HsWindow *self,
          GtkButton *button,
          const char *action,
          gboolean can,
          const char *label,
          const char *plain,
          const char *keys)
{
    g_autofree char *text =
        can && label ? g_strdup_printf("%s: %s", plain, label) : g_strdup(plain);
    g_autofree char *tip = g_strdup_printf("%s (%s)", text, keys);

    gtk_widget_action_set_enabled(GTK_WIDGET(self), action, can);
    gtk_widget_set_tooltip_text(GTK_WIDGET(button), tip);
}

void
hs_window_show_actions(HsWindow *self)
{
    gboolean is_work = g_str_equal(hs_window_page(self), "work");

    show_step(self, self->undo_button, "win.undo",
              is_work && hs_session_can_undo(self->session),
              hs_session_undo_label(self->session), _("Undo"), "Ctrl+Z");
    show_step(self, self->redo_button, "win.redo",
              is_work && hs_session_can_redo(self->session),
              hs_session_redo_label(self->session), _("Redo"), "Ctrl+Shift+Z");
}

/* ---- looking ------------------------------------------------------------------------------- */

static void
act_look(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsWindow *self = HS_WINDOW(widget);

    (void)argument;
    if (g_str_equal(name, "win.lesson"))
        hs_window_show_page(self,
                            g_str_equal(hs_window_page(self), "lesson") ? "work" : "lesson");
    else if (!g_str_equal(hs_window_page(self), "work"))
        return;
    else if (g_str_equal(name, "win.fit"))
        hs_stage_fit(self->stage);
    else if (g_str_equal(name, "win.plan"))
        hs_stage_toggle_plan(self->stage);
    else if (g_str_equal(name, "win.unfold"))
        hs_stage_toggle_folds(self->stage);
    else if (g_str_equal(name, "win.draw-route"))
        hs_stage_set_drawing(self->stage, !hs_stage_is_drawing(self->stage));
    else if (g_str_equal(name, "win.show-brief"))
        hs_zones_open_brief(self->zones, TRUE);
    else if (g_str_equal(name, "win.toggle-brief"))
        hs_zones_open_brief(self->zones, !hs_zones_is_brief_open(self->zones));
}

static void
act_time(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsWindow *self = HS_WINDOW(widget);

    (void)argument;
    if (g_str_equal(hs_window_page(self), "start"))
        return;
    if (g_str_equal(name, "win.play"))
        hs_strip_toggle_play(self->strip);
    else if (g_str_equal(name, "win.slow"))
        hs_strip_toggle_slow(self->strip);
    else if (g_str_equal(name, "win.power-off"))
        hs_session_set_power_off(self->session, !hs_session_power_off(self->session));
    else
        hs_session_go_back(self->session);
}

static void
act_escape(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsWindow *self = HS_WINDOW(widget);

    (void)name, (void)argument;
    if (g_str_equal(hs_window_page(self), "lesson"))
        hs_window_show_page(self, "work");
    else if (hs_stage_is_drawing(self->stage))
        hs_stage_set_drawing(self->stage, FALSE);
    else if (hs_zones_get_kind(self->zones) != HS_ZONES_WIDE &&
             hs_zones_is_brief_open(self->zones))
        hs_zones_open_brief(self->zones, FALSE);
    else if (hs_session_finding_option(self->session) >= 0)
        hs_session_choose_finding(self->session, -1, -1);
}

static void
act_crew(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsWindow *self = HS_WINDOW(widget);

    (void)name;
    if (g_str_equal(hs_window_page(self), "work"))
        hs_crew_set_count(widget, self->session, g_variant_get_int32(argument));
}

/* ---- teaching ------------------------------------------------------------------------------ */

static void
act_teach(GtkWidget *widget, const char *name, GVariant *argument)
{
    HsWindow *self = HS_WINDOW(widget);
    int n = g_variant_get_int32(argument);

    (void)name;
    if (n < 0 || n >= hs_lesson_set_count() || !hs_window_may_leave(self, show_start))
        return;
    g_autoptr(hs_document) document = hs_lesson_set_document(n);
    if (document == NULL)
        return;
    hs_window_open_document(self, document);
    hs_lesson_set_arrange(n, self->session);
    hs_window_show_page(self, "lesson");
    hs_lesson_begin(HS_LESSON(self->lesson), n);
}

static void
act_next_class(GtkWidget *widget, const char *name, GVariant *argument)
{
    (void)name, (void)argument;
    if (g_str_equal(hs_window_page(HS_WINDOW(widget)), "lesson"))
        hs_lesson_reset(HS_LESSON(HS_WINDOW(widget)->lesson));
}

/* R begins anew: the route on the work page, the lesson for the next class. */
static gboolean
on_key_r(GtkWidget *widget, GVariant *arguments, gpointer data)
{
    (void)arguments, (void)data;
    return gtk_widget_activate_action(widget,
                                      g_str_equal(hs_window_page(HS_WINDOW(widget)), "lesson")
                                          ? "win.next-class"
                                          : "win.draw-route",
                                      NULL);
}

/* ---- table --------------------------------------------------------------------------------- */

void
hs_window_install_actions(GtkWidgetClass *widget_class)
{
    static const struct {
        const char *name;
        GtkWidgetActionActivateFunc act;
        guint key;
    } table[] = {
        {"win.open", act_file, 0},
        {"win.new", act_file, 0},
        {"win.start", act_file, 0},
        {"win.save", act_save, 0},
        {"win.save-as", act_save, 0},
        {"win.print", act_paper, 0},
        {"win.export-sheet", act_paper, 0},
        {"win.export-handout", act_paper, 0},
        {"win.export-view", act_paper, 0},
        {"win.undo", act_history, 0},
        {"win.redo", act_history, 0},
        {"win.lesson", act_look, 0},
        {"win.fit", act_look, GDK_KEY_f},
        {"win.plan", act_look, GDK_KEY_p},
        {"win.unfold", act_look, GDK_KEY_u},
        {"win.draw-route", act_look, 0},
        {"win.next-class", act_next_class, 0},
        {"win.toggle-brief", act_look, 0},
        {"win.show-brief", act_look, 0},
        {"win.play", act_time, GDK_KEY_space},
        {"win.slow", act_time, GDK_KEY_s},
        {"win.power-off", act_time, GDK_KEY_o},
        {"win.back", act_time, GDK_KEY_b},
        {"win.escape", act_escape, GDK_KEY_Escape},
    };

    for (guint i = 0; i < G_N_ELEMENTS(table); i++) {
        gtk_widget_class_install_action(widget_class, table[i].name, NULL, table[i].act);
        if (table[i].key != 0)
            gtk_widget_class_add_binding_action(widget_class, table[i].key, 0, table[i].name,
                                                NULL);
    }
    gtk_widget_class_add_binding(widget_class, GDK_KEY_r, 0, on_key_r, NULL);
    gtk_widget_class_install_action(widget_class, "win.teach", "i", act_teach);
    gtk_widget_class_install_action(widget_class, "win.crew", "i", act_crew);
    for (int i = 1; i <= 8; i++)
        gtk_widget_class_add_binding_action(widget_class, (guint)(GDK_KEY_0 + i), 0, "win.crew",
                                            "i", i);
}
