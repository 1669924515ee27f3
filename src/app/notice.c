/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the window say that something happened, without stopping the work?
 * Answer:    one bar under the header: a sentence, up to two buttons, a close button.
 * Not here:  the sentences. */
#include "notice.h"

#include "look.h"

#include <glib/gi18n-lib.h>

struct _HsNotice {
    GtkWidget parent;
    GtkLabel *text;
    GtkButton *answer, *other;
    hs_notice_answer on_answer, on_other;
    gpointer data;
    GDestroyNotify release;
};
G_DEFINE_FINAL_TYPE(HsNotice, hs_notice, GTK_TYPE_WIDGET)

static void
forget(HsNotice *self)
{
    if (self->release != NULL && self->data != NULL)
        self->release(self->data);
    self->data = NULL;
    self->release = NULL;
    self->on_answer = self->on_other = NULL;
}

static void
close_bar(HsNotice *self)
{
    gtk_widget_set_can_focus(GTK_WIDGET(self), FALSE);
    gtk_widget_set_visible(GTK_WIDGET(self), FALSE);
    forget(self);
}

static void
answer_with(HsNotice *self, gboolean is_other)
{
    hs_notice_answer on_answer = is_other ? self->on_other : self->on_answer;
    gpointer data = self->data;
    GDestroyNotify release = self->release;

    self->data = NULL;
    close_bar(self);
    if (on_answer != NULL)
        on_answer(GTK_WIDGET(self), data);
    if (release != NULL && data != NULL)
        release(data);
}

static void
on_answer(HsNotice *self)
{
    answer_with(self, FALSE);
}

static void
on_other(HsNotice *self)
{
    answer_with(self, TRUE);
}

static void
dispose(GObject *object)
{
    HsNotice *self = HS_NOTICE(object);
    GtkWidget *child;

    forget(self);
    while ((child = gtk_widget_get_first_child(GTK_WIDGET(self))) != NULL)
        gtk_widget_unparent(child);
    G_OBJECT_CLASS(hs_notice_parent_class)->dispose(object);
}

static GtkSizeRequestMode
get_request_mode(GtkWidget *widget)
{
    (void)widget;
    return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* The row of text and buttons is a pixel higher for a given width than without one (baselines): always ask with a width. */
static void
measure(GtkWidget *widget,
        GtkOrientation orientation,
        int for_size,
        int *least,
        int *natural,
        int *least_base,
        int *natural_base)
{
    gboolean is_height = orientation == GTK_ORIENTATION_VERTICAL;

    gtk_widget_measure(gtk_widget_get_first_child(widget), orientation,
                       is_height && for_size < 0 ? 1 << 20 : for_size, least, natural, NULL,
                       NULL);
    *least_base = *natural_base = -1;
}

static void
size_allocate(GtkWidget *widget, int width, int height, int baseline)
{
    GtkAllocation all = {0, 0, width, height};

    gtk_widget_size_allocate(gtk_widget_get_first_child(widget), &all, baseline);
}

static void
hs_notice_class_init(HsNoticeClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->measure = measure;
    widget_class->size_allocate = size_allocate;
    widget_class->get_request_mode = get_request_mode;
    gtk_widget_class_set_template_from_resource(widget_class,
                                                "/io/handspike/Handspike/notice.ui");
    gtk_widget_class_bind_template_child(widget_class, HsNotice, text);
    gtk_widget_class_bind_template_child(widget_class, HsNotice, answer);
    gtk_widget_class_bind_template_child(widget_class, HsNotice, other);
    gtk_widget_class_bind_template_callback(widget_class, on_answer);
    gtk_widget_class_bind_template_callback(widget_class, on_other);
    gtk_widget_class_bind_template_callback(widget_class, close_bar);
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
    gtk_widget_class_set_css_name(widget_class, "notice");
}

static void
hs_notice_init(HsNotice *self)
{
    gtk_widget_init_template(GTK_WIDGET(self));
    gtk_widget_set_visible(GTK_WIDGET(self), FALSE);
}

GtkWidget *
hs_notice_new(void)
{
    return g_object_new(HS_TYPE_NOTICE, NULL);
}

static HsNotice *
find_below(GtkWidget *widget)
{
    if (HS_IS_NOTICE(widget))
        return HS_NOTICE(widget);
    for (GtkWidget *child = gtk_widget_get_first_child(widget); child != NULL;
         child = gtk_widget_get_next_sibling(child)) {
        HsNotice *found = GTK_IS_BOX(child) || HS_IS_NOTICE(child) ? find_below(child) : NULL;
        if (found != NULL)
            return found;
    }
    return NULL;
}

static HsNotice *
notice_of(GtkWidget *from)
{
    GtkRoot *root = gtk_widget_get_root(from);
    return root != NULL ? find_below(GTK_WIDGET(root)) : NULL;
}

static void
label_button(GtkButton *button, const char *label)
{
    gtk_widget_set_visible(GTK_WIDGET(button), label != NULL);
    gtk_button_set_label(button, label ? label : "");
}

void
hs_notice_ask(GtkWidget *from,
              const char *text,
              const char *answer,
              hs_notice_answer then,
              const char *other_answer,
              hs_notice_answer otherwise,
              gpointer data,
              GDestroyNotify release)
{
    HsNotice *self = notice_of(from);

    if (self == NULL) {
        if (release != NULL && data != NULL)
            release(data);
        return;
    }
    forget(self);
    gtk_label_set_text(self->text, text);
    hs_look_name(self, text);
    label_button(self->answer, answer);
    label_button(self->other, other_answer);
    self->on_answer = then;
    self->on_other = otherwise;
    self->data = data;
    self->release = release;
    gtk_widget_set_can_focus(GTK_WIDGET(self), TRUE);
    gtk_widget_set_visible(GTK_WIDGET(self), TRUE);
}

void
hs_notice_say(GtkWidget *from, const char *text)
{
    hs_notice_ask(from, text, NULL, NULL, NULL, NULL, NULL, NULL);
}

void
hs_notice_hide(GtkWidget *from)
{
    HsNotice *self = notice_of(from);

    if (self != NULL)
        close_bar(self);
}
