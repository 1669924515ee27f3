/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which option does this side of the stage show, and is it the one that is edited?
 * Answer:    HsHeading: the option's name as a tab, its edit mark, a menu of options and of new ones.
 * Not here:  the picture (side_view.c), what a new option holds (options.c). */
#include "heading.h"

#include "change.h"
#include "field.h"
#include "look.h"
#include "options.h"
#include "rows.h"
#include "shell.h"

#include <glib/gi18n-lib.h>

struct _HsHeading {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    gboolean is_right;
    GtkWidget *tab, *add;
    GtkMenuButton *pick;
    GtkLabel *name, *about;
    GtkImage *mark;
};
G_DEFINE_FINAL_TYPE(HsHeading, hs_heading, GTK_TYPE_WIDGET)

static int
shown(HsHeading *self)
{
    return self->is_right ? hs_session_right(self->session) : hs_session_left(self->session);
}

static const char *
count_words(int n_bearers)
{
    static const char *const words[] = {
        N_("nobody"),        N_("one bearer"),    N_("two bearers"),
        N_("three bearers"), N_("four bearers"),  N_("five bearers"),
        N_("six bearers"),   N_("seven bearers"), N_("eight bearers")};

    return n_bearers <= 8 ? _(words[n_bearers]) : _("more than eight bearers");
}

static const char *
suit_words(const hs_task *task, const hs_option *option)
{
    int suited = 0;
    hs_suit_kind kind = 0;

    for (int i = 0; i < option->n_bearers; i++) {
        if (option->bearers[i].suit >= 0) {
            suited++;
            kind = task->suits[option->bearers[i].suit].kind;
        }
    }
    if (suited == 0)
        return _("no suit");
    if (suited < option->n_bearers)
        return _("not all in a suit");
    return hs_words_suit_kind(kind);
}

char *
hs_heading_describe(HsSession *session, int option)
{
    const hs_results *results = hs_session_results(session);
    const hs_task *task = hs_field_task(session);

    if (results == NULL || task == NULL || option < 0 || option >= results->n_options)
        return g_strdup("");
    const hs_option *asked = results->options[option].asked;
    /* Translators: "two bearers, no suit" */
    return g_strdup_printf(_("%s, %s"), count_words(asked->n_bearers), suit_words(task, asked));
}

static void
show(HsHeading *self)
{
    const hs_results *results = hs_session_results(self->session);
    int option = shown(self);
    gboolean has = results != NULL && option >= 0 && option < results->n_options;
    gboolean is_edited = has && option == hs_session_edited(self->session);
    g_autofree char *about = hs_heading_describe(self->session, option);

    gtk_label_set_text(self->name, has ? results->options[option].name : "");
    gtk_label_set_text(self->about, about);
    gtk_widget_set_visible(GTK_WIDGET(self->mark), is_edited);
    gtk_widget_set_visible(self->add, self->is_right || hs_session_right(self->session) < 0);
    hs_look_tip(self->tab,
                is_edited ? _("This option is being edited") : _("Edit this option"));
    if (is_edited)
        gtk_widget_add_css_class(self->tab, "edited");
    else
        gtk_widget_remove_css_class(self->tab, "edited");
    g_autofree char *spoken =
        !has        ? g_strdup(_("No option"))
        : is_edited ? g_strdup_printf(_("%s, being edited"), results->options[option].name)
                    : g_strdup_printf(_("Edit %s"), results->options[option].name);
    hs_look_name(self->tab, spoken);
}

static void
on_changed(HsHeading *self, guint mask)
{
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE))
        show(self);
}

static void
on_tab(HsHeading *self)
{
    int option = shown(self);

    if (option >= 0)
        hs_session_edit_option(self->session, option);
}

static void
on_pick(GtkButton *row, HsHeading *self)
{
    int option = GPOINTER_TO_INT(g_object_get_data(G_OBJECT(row), "hs-option"));

    gtk_menu_button_popdown(self->pick);
    if (self->is_right)
        hs_session_show(self->session, hs_session_left(self->session), option);
    else
        hs_session_show(self->session, option, hs_session_right(self->session));
}

/* The list of options, made when it is opened. */
static void
fill_pick(GtkMenuButton *button, gpointer data)
{
    HsHeading *self = data;
    const hs_results *results = hs_session_results(self->session);
    GtkWidget *popover = gtk_popover_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 2);

    for (int i = 0; results != NULL && i < results->n_options; i++) {
        GtkWidget *row = gtk_button_new_with_label(results->options[i].name);
        gtk_widget_add_css_class(row, "flat");
        gtk_widget_set_halign(gtk_button_get_child(GTK_BUTTON(row)), GTK_ALIGN_START);
        g_object_set_data(G_OBJECT(row), "hs-option", GINT_TO_POINTER(i));
        hs_look_name(row, results->options[i].name);
        g_signal_connect(row, "clicked", G_CALLBACK(on_pick), self);
        gtk_box_append(GTK_BOX(box), row);
    }
    gtk_popover_set_child(GTK_POPOVER(popover), box);
    hs_look_name(popover, _("Options"));
    gtk_menu_button_set_popover(button, popover);
}

static GtkWidget *
build_tab(HsHeading *self)
{
    GtkWidget *lines = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0),
              *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);

    self->tab = gtk_button_new();
    self->name = GTK_LABEL(gtk_label_new(NULL));
    self->about = GTK_LABEL(gtk_label_new(NULL));
    self->mark = GTK_IMAGE(gtk_image_new_from_icon_name("document-edit-symbolic"));
    gtk_label_set_ellipsize(self->name, PANGO_ELLIPSIZE_END);
    gtk_label_set_ellipsize(self->about, PANGO_ELLIPSIZE_END);
    gtk_label_set_xalign(self->name, 0.0f);
    gtk_label_set_xalign(self->about, 0.0f);
    gtk_widget_add_css_class(GTK_WIDGET(self->name), "option-name");
    gtk_widget_add_css_class(GTK_WIDGET(self->about), "soft");
    gtk_box_append(GTK_BOX(line), GTK_WIDGET(self->name));
    gtk_box_append(GTK_BOX(line), GTK_WIDGET(self->mark));
    gtk_box_append(GTK_BOX(lines), line);
    gtk_box_append(GTK_BOX(lines), GTK_WIDGET(self->about));
    gtk_button_set_child(GTK_BUTTON(self->tab), lines);
    gtk_widget_add_css_class(self->tab, "option-tab");
    g_signal_connect_swapped(self->tab, "clicked", G_CALLBACK(on_tab), self);
    return self->tab;
}

static void
dispose(GObject *object)
{
    HsHeading *self = HS_HEADING(object);

    hs_shell_leave(GTK_WIDGET(self), &self->session, &self->watch);
    G_OBJECT_CLASS(hs_heading_parent_class)->dispose(object);
}

static void
hs_heading_class_init(HsHeadingClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    hs_shell_class(widget_class, NULL, "heading", GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
hs_heading_init(HsHeading *self)
{
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 4),
              *space = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 0);

    gtk_widget_set_parent(box, GTK_WIDGET(self));
    gtk_box_append(GTK_BOX(box), build_tab(self));
    self->pick = GTK_MENU_BUTTON(gtk_menu_button_new());
    gtk_menu_button_set_icon_name(self->pick, "pan-down-symbolic");
    gtk_menu_button_set_has_frame(self->pick, FALSE);
    gtk_widget_set_valign(GTK_WIDGET(self->pick), GTK_ALIGN_CENTER);
    gtk_widget_set_tooltip_text(GTK_WIDGET(self->pick), _("Show another option here"));
    gtk_menu_button_set_create_popup_func(self->pick, fill_pick, self, NULL);
    gtk_box_append(GTK_BOX(box), GTK_WIDGET(self->pick));
    gtk_widget_set_hexpand(space, TRUE);
    gtk_box_append(GTK_BOX(box), space);
    self->add = gtk_menu_button_new();
    gtk_menu_button_set_icon_name(GTK_MENU_BUTTON(self->add), "list-add-symbolic");
    gtk_menu_button_set_has_frame(GTK_MENU_BUTTON(self->add), FALSE);
    gtk_widget_set_valign(self->add, GTK_ALIGN_CENTER);
    gtk_widget_set_tooltip_text(self->add, _("Another way of doing the lift"));
    gtk_box_append(GTK_BOX(box), self->add);
}

GtkWidget *
hs_heading_new(HsSession *session, gboolean is_right)
{
    HsHeading *self = g_object_new(HS_TYPE_HEADING, NULL);

    self->session = g_object_ref(session);
    self->is_right = is_right;
    hs_look_name(self, is_right ? _("Right side") : _("Left side"));
    hs_row_name_button(GTK_WIDGET(self->pick), is_right ? _("Show another option on the right")
                                                        : _("Show another option on the left"));
    hs_row_name_button(self->add, _("Add an option"));
    hs_options_fill_menu(GTK_MENU_BUTTON(self->add), session);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    show(self);
    return GTK_WIDGET(self);
}
