/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is one number shown and entered?
 * Answer:    label, entry, unit; what is typed is previewed at once, Return keeps it, Escape takes it back, arrow keys step.
 * Not here:  rounding and units (model/quantity.c), ranges (the session refuses with a sentence). */
#include "rows.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "quantity.h"
#include "shell.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _HsQuantityRow {
    GtkWidget parent;
    HsSession *session;
    char *path, *unit, *what;
    char *shown; /* the text that stands for the stored value: left alone, it changes nothing */
    double step;
    gulong watch;
    gboolean is_previewing, is_showing;
    GtkLabel *label, *unit_label, *fault;
    GtkEntry *entry;
};
G_DEFINE_FINAL_TYPE(HsQuantityRow, hs_quantity_row, GTK_TYPE_WIDGET)

static const hs_assumption *
assumed(HsQuantityRow *self)
{
    const hs_results *results = hs_session_results(self->session);

    if (results == NULL)
        return NULL;
    for (const hs_assumption *a = results->assumptions.first; a != NULL; a = a->next) {
        if (g_str_equal(a->path, self->path))
            return a;
    }
    return NULL;
}

static void
say_fault(HsQuantityRow *self, const char *text)
{
    gtk_label_set_text(self->fault, text ? text : "");
    gtk_widget_set_visible(GTK_WIDGET(self->fault), text != NULL);
    if (text != NULL)
        gtk_widget_add_css_class(GTK_WIDGET(self->entry), "refused");
    else
        gtk_widget_remove_css_class(GTK_WIDGET(self->entry), "refused");
}

static void
show_placeholder(HsQuantityRow *self, gboolean is_empty)
{
    const hs_assumption *a = is_empty ? assumed(self) : NULL;
    g_autofree char *text = NULL;

    if (a != NULL && hs_has(a->value))
        text = hs_quantity_number(a->value, self->unit, hs_look_units());
    if (g_strcmp0(text, gtk_entry_get_placeholder_text(self->entry)) != 0)
        gtk_entry_set_placeholder_text(self->entry, text);
    hs_look_tip(GTK_WIDGET(self->entry), text ? _("assumed; type to replace it") : NULL);
    gtk_label_set_text(self->unit_label, hs_quantity_unit(self->unit, hs_look_units()));
}

static void
show_value(HsQuantityRow *self)
{
    double value = hs_field_number(hs_session_document(self->session), self->path);
    g_autofree char *text =
        hs_has(value) ? hs_quantity_number(value, self->unit, hs_look_units()) : g_strdup("");

    self->is_showing = TRUE;
    if (g_strcmp0(text, gtk_editable_get_text(GTK_EDITABLE(self->entry))) != 0)
        gtk_editable_set_text(GTK_EDITABLE(self->entry), text);
    self->is_showing = FALSE;
    g_free(self->shown);
    self->shown = g_steal_pointer(&text);
    show_placeholder(self, !hs_has(value));
}

static hs_edit *
edit_for(HsQuantityRow *self, double value)
{
    hs_edit *edit = hs_edit_new(self->what);

    if (hs_has(value))
        hs_edit_set_number(edit, self->path, value);
    else
        hs_edit_unset(edit, self->path);
    if (g_str_has_prefix(self->path, "route.points[") &&
        g_str_has_suffix(self->path, "].z_m")) {
        /* What is typed is no longer sketched. */
        g_autofree char *stem = g_strndup(self->path, strlen(self->path) - strlen("z_m"));
        g_autofree char *sketched = g_strconcat(stem, "sketched", NULL);
        hs_edit_unset(edit, sketched);
    }
    return edit;
}

/* FALSE with the fault shown; *ret_value is HS_ABSENT for an emptied field. */
static gboolean
read_entry(HsQuantityRow *self, double *ret_value)
{
    const char *text = gtk_editable_get_text(GTK_EDITABLE(self->entry));
    g_autofree char *fault = NULL;

    *ret_value = HS_ABSENT;
    if (*text == '\0')
        return TRUE;
    if (hs_quantity_parse(text, self->unit, hs_look_units(), ret_value, &fault))
        return TRUE;
    say_fault(self, fault ? fault : _("This is not a number."));
    return FALSE;
}

static void
preview(HsQuantityRow *self)
{
    g_autofree char *fault = NULL;
    double value;

    if (self->is_showing || !read_entry(self, &value))
        return;
    g_autoptr(hs_edit) edit = edit_for(self, value);
    self->is_previewing = TRUE;
    gboolean done = hs_session_preview(self->session, edit, &fault);
    say_fault(self, done ? NULL : fault);
}

static void
take_back(HsQuantityRow *self)
{
    if (self->is_previewing) {
        self->is_previewing = FALSE;
        hs_session_cancel(self->session);
    }
    say_fault(self, NULL);
    show_value(self);
}

/* What is typed replaces the preview; until then the row must not show the older figure again. */
static void
commit(HsQuantityRow *self)
{
    gboolean is_same =
        g_strcmp0(gtk_editable_get_text(GTK_EDITABLE(self->entry)), self->shown) == 0;
    g_autofree char *fault = NULL;
    double value;

    if (is_same) {
        take_back(self);
        return;
    }
    if (!read_entry(self, &value))
        return;
    g_autoptr(hs_edit) edit = edit_for(self, value);
    gboolean was_previewing = self->is_previewing;
    self->is_previewing = TRUE;
    gboolean done = hs_session_commit(self->session, edit, &fault);
    if (!done && was_previewing)
        hs_session_cancel(self->session);
    self->is_previewing = FALSE;
    say_fault(self, done ? NULL : fault);
    if (done)
        show_value(self);
}

static void
on_leave(HsQuantityRow *self)
{
    commit(self);
    if (gtk_widget_get_visible(GTK_WIDGET(self->fault)))
        take_back(self);
}

static void
step_by(HsQuantityRow *self, double steps)
{
    double value = HS_ABSENT;

    if (!read_entry(self, &value))
        return;
    if (!hs_has(value)) {
        const hs_assumption *a = assumed(self);
        value = a != NULL && hs_has(a->value) ? a->value : 0.0;
    }
    value = round((value + steps * self->step) / (self->step / 10.0)) * (self->step / 10.0);
    g_autofree char *text = hs_quantity_number(value, self->unit, hs_look_units());
    gtk_editable_set_text(GTK_EDITABLE(self->entry), text);
}

static gboolean
on_key(GtkEventControllerKey *keys,
       guint key,
       guint code,
       GdkModifierType state,
       HsQuantityRow *self)
{
    double fine = state & GDK_SHIFT_MASK ? 0.1 : 1.0;

    (void)keys, (void)code;
    if (key == GDK_KEY_Escape &&
        (self->is_previewing || gtk_widget_get_visible(GTK_WIDGET(self->fault))))
        take_back(self);
    else if (key == GDK_KEY_Up)
        step_by(self, fine);
    else if (key == GDK_KEY_Down)
        step_by(self, -fine);
    else
        return GDK_EVENT_PROPAGATE;
    return GDK_EVENT_STOP;
}

static void
on_changed(HsQuantityRow *self, guint mask)
{
    gboolean is_mine = self->is_previewing;

    if (!(mask & (HS_CHANGED_DOCUMENT | HS_CHANGED_RESULTS)) || is_mine ||
        !gtk_widget_get_mapped(GTK_WIDGET(self)))
        return;
    if (gtk_widget_get_visible(GTK_WIDGET(self->fault)))
        return;
    show_value(self);
}

static void
map(GtkWidget *widget)
{
    GTK_WIDGET_CLASS(hs_quantity_row_parent_class)->map(widget);
    if (!HS_QUANTITY_ROW(widget)->is_previewing)
        show_value(HS_QUANTITY_ROW(widget));
}

static void
dispose(GObject *object)
{
    HsQuantityRow *self = HS_QUANTITY_ROW(object);
    GtkWidget *child;

    if (self->session != NULL) {
        g_clear_signal_handler(&self->watch, self->session);
        if (self->is_previewing)
            hs_session_cancel(self->session);
        self->is_previewing = FALSE;
    }
    g_clear_object(&self->session);
    while ((child = gtk_widget_get_first_child(GTK_WIDGET(self))) != NULL)
        gtk_widget_unparent(child);
    g_clear_pointer(&self->path, g_free);
    g_clear_pointer(&self->unit, g_free);
    g_clear_pointer(&self->what, g_free);
    g_clear_pointer(&self->shown, g_free);
    G_OBJECT_CLASS(hs_quantity_row_parent_class)->dispose(object);
}

static void
hs_quantity_row_class_init(HsQuantityRowClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->map = map;
    hs_shell_class(widget_class, "quantity_row.ui", "row", GTK_ACCESSIBLE_ROLE_GROUP);
    gtk_widget_class_bind_template_child(widget_class, HsQuantityRow, label);
    gtk_widget_class_bind_template_child(widget_class, HsQuantityRow, entry);
    gtk_widget_class_bind_template_child(widget_class, HsQuantityRow, unit_label);
    gtk_widget_class_bind_template_child(widget_class, HsQuantityRow, fault);
    gtk_widget_class_bind_template_callback(widget_class, commit);
    gtk_widget_class_bind_template_callback(widget_class, preview);
}

static void
hs_quantity_row_init(HsQuantityRow *self)
{
    gtk_widget_init_template(GTK_WIDGET(self));

    GtkEventController *keys = gtk_event_controller_key_new();
    gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
    g_signal_connect(keys, "key-pressed", G_CALLBACK(on_key), self);
    gtk_widget_add_controller(GTK_WIDGET(self->entry), keys);

    GtkEventController *focus = gtk_event_controller_focus_new();
    g_signal_connect_swapped(focus, "leave", G_CALLBACK(on_leave), self);
    gtk_widget_add_controller(GTK_WIDGET(self->entry), focus);
    gtk_editable_set_enable_undo(GTK_EDITABLE(self->entry), FALSE);
}

GtkWidget *
hs_quantity_row_new(HsSession *session,
                    const char *label,
                    const char *name,
                    const char *path,
                    const char *unit,
                    double step)
{
    HsQuantityRow *self = g_object_new(HS_TYPE_QUANTITY_ROW, NULL);
    const char *shown_unit = hs_quantity_unit(unit, hs_look_units());

    self->session = g_object_ref(session);
    self->path = g_strdup(path);
    self->unit = g_strdup(unit);
    self->what = g_strdup(name ? name : label);
    self->step = step;
    gtk_label_set_text(self->label, label);
    g_autofree char *spoken = *shown_unit != '\0'
                                  ? g_strdup_printf("%s, %s", self->what, shown_unit)
                                  : g_strdup(self->what);
    hs_look_name(self->entry, spoken);
    hs_look_name(self, self->what);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    show_value(self);
    return GTK_WIDGET(self);
}
