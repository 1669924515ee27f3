/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the person enter what is asked?
 * Answer:    the brief: sections with a one-line summary each, opened one at a time or several.
 * Not here:  what a section holds (brief_*.c). */
#include "brief.h"

#include "look.h"
#include "shell.h"

#include <glib/gi18n-lib.h>
#include <math.h>

enum {
    FRAMES_STILL = 8, /* so long nothing may move before the scrolling is done */
    FRAMES_MOST = 180
};

typedef struct {
    const hs_brief_part *part;
    GtkWidget *head, *content;
    GtkLabel *summary;
    GtkRevealer *revealer;
    char *shape; /* of the rows that are there; NULL: none built */
} section;

struct _HsBrief {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    GtkBox *list;
    GtkScrolledWindow *scroller;
    GPtrArray *sections;
    guint idle;
    guint scrolling; /* tick callback that brings a head to the top; 0: none */
    int frames, frames_still;
};
G_DEFINE_FINAL_TYPE(HsBrief, hs_brief, GTK_TYPE_WIDGET)

static const hs_brief_part *const parts[] = {
    &hs_brief_about, &hs_brief_load, &hs_brief_site,   &hs_brief_route, &hs_brief_bearers,
    &hs_brief_suit,  &hs_brief_work, &hs_brief_checks, &hs_brief_ways,
};

static void
section_free(gpointer data)
{
    section *one = data;

    g_free(one->shape);
    g_free(one);
}

static gboolean
is_open(const section *one)
{
    return gtk_toggle_button_get_active(GTK_TOGGLE_BUTTON(one->head));
}

static void
empty(GtkWidget *box)
{
    GtkWidget *child;

    while ((child = gtk_widget_get_first_child(box)) != NULL)
        gtk_box_remove(GTK_BOX(box), child);
}

/* Rows are built when their section is first opened, and again when other rows are needed. */
static void
build_rows(HsBrief *self, section *one)
{
    g_autofree char *shape = one->part->shape ? one->part->shape(self->session) : g_strdup("");

    if (!is_open(one) || g_strcmp0(shape, one->shape) == 0)
        return;
    empty(one->content);
    g_free(one->shape);
    one->shape = g_steal_pointer(&shape);
    one->part->build(self->session, GTK_BOX(one->content));
}

static void
show_section(HsBrief *self, section *one)
{
    g_autofree char *summary = one->part->summary(self->session);

    gtk_label_set_text(one->summary, summary ? summary : "");
    build_rows(self, one);
}

static gboolean
refresh(gpointer data)
{
    HsBrief *self = data;

    self->idle = 0;
    for (guint i = 0; i < self->sections->len; i++)
        show_section(self, self->sections->pdata[i]);
    return G_SOURCE_REMOVE;
}

static void
on_changed(HsBrief *self, guint mask)
{
    if ((mask & (HS_CHANGED_DOCUMENT | HS_CHANGED_RESULTS | HS_CHANGED_CHOICE)) &&
        self->idle == 0)
        self->idle = g_idle_add_full(G_PRIORITY_HIGH_IDLE + 30, refresh, self, NULL);
}

static void
on_toggled(GtkToggleButton *head, HsBrief *self)
{
    section *one = g_object_get_data(G_OBJECT(head), "hs-section");

    gtk_accessible_update_state(GTK_ACCESSIBLE(head), GTK_ACCESSIBLE_STATE_EXPANDED,
                                is_open(one), -1);
    build_rows(self, one);
    gtk_revealer_set_reveal_child(one->revealer, is_open(one));
    if (is_open(one))
        gtk_widget_set_state_flags(one->head, GTK_STATE_FLAG_CHECKED, FALSE);
}

static GtkWidget *
build_head(HsBrief *self, section *one)
{
    GtkWidget *head = gtk_toggle_button_new();
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 8);
    GtkWidget *arrow = gtk_image_new_from_icon_name("pan-end-symbolic");
    GtkWidget *title = gtk_label_new(_(one->part->title));

    one->summary = GTK_LABEL(gtk_label_new(NULL));
    gtk_label_set_ellipsize(one->summary, PANGO_ELLIPSIZE_END);
    gtk_label_set_xalign(one->summary, 1.0f);
    gtk_widget_set_hexpand(GTK_WIDGET(one->summary), TRUE);
    gtk_widget_add_css_class(GTK_WIDGET(one->summary), "soft");
    gtk_widget_add_css_class(title, "section-title");
    gtk_widget_add_css_class(arrow, "section-arrow");
    gtk_box_append(GTK_BOX(box), arrow);
    gtk_box_append(GTK_BOX(box), title);
    gtk_box_append(GTK_BOX(box), GTK_WIDGET(one->summary));
    gtk_button_set_child(GTK_BUTTON(head), box);
    gtk_widget_add_css_class(head, "section-head");
    g_object_set_data(G_OBJECT(head), "hs-section", one);
    hs_look_name(head, _(one->part->title));
    g_signal_connect(head, "toggled", G_CALLBACK(on_toggled), self);
    return head;
}

static void
add_section(HsBrief *self, const hs_brief_part *part)
{
    section *one = g_new0(section, 1);
    GtkWidget *revealer = gtk_revealer_new();

    one->part = part;
    one->head = build_head(self, one);
    one->content = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
    gtk_widget_add_css_class(one->content, "section-content");
    one->revealer = GTK_REVEALER(revealer);
    gtk_revealer_set_transition_duration(one->revealer, 0);
    gtk_revealer_set_child(one->revealer, one->content);
    gtk_box_append(self->list, one->head);
    gtk_box_append(self->list, revealer);
    g_ptr_array_add(self->sections, one);
}

static section *
find_section(HsBrief *self, const char *id)
{
    for (guint i = 0; i < self->sections->len; i++) {
        section *one = self->sections->pdata[i];
        if (g_str_equal(one->part->id, id))
            return one;
    }
    return NULL;
}

static void
stop_scrolling(HsBrief *self)
{
    if (self->scrolling != 0)
        gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->scrolling);
    self->scrolling = 0;
    self->frames = self->frames_still = 0;
}

/* Nothing folds or is built any more, and every section has its place. */
static gboolean
is_at_rest(HsBrief *self)
{
    if (self->idle != 0 || !gtk_widget_get_mapped(GTK_WIDGET(self)))
        return FALSE;
    for (guint i = 0; i < self->sections->len; i++) {
        const section *one = self->sections->pdata[i];
        if (gtk_revealer_get_child_revealed(one->revealer) !=
            gtk_revealer_get_reveal_child(one->revealer))
            return FALSE;
    }
    return TRUE;
}

/* At each frame the head to the top of what is seen, until it has stayed there for some frames without a push: rows above it
 * may still be built or take their height. */
static gboolean
keep_at_top(GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
    HsBrief *self = HS_BRIEF(widget);
    GtkAdjustment *way = gtk_scrolled_window_get_vadjustment(self->scroller);
    GtkWidget *head = data, *view = gtk_scrolled_window_get_child(self->scroller);
    graphene_rect_t at;

    (void)clock;
    self->frames++;
    if (!is_at_rest(self) || !gtk_widget_compute_bounds(head, view, &at)) {
        self->frames_still = 0;
    } else {
        double before = gtk_adjustment_get_value(way);
        gtk_adjustment_set_value(way, before + (double)at.origin.y);
        gboolean moved = fabs(gtk_adjustment_get_value(way) - before) > 0.5;
        self->frames_still = moved ? 0 : self->frames_still + 1;
    }
    if (self->frames_still < FRAMES_STILL && self->frames < FRAMES_MOST)
        return G_SOURCE_CONTINUE;
    self->scrolling = 0;
    /* Not before: a list that closes gives the focus back to the button it came from. */
    if (!(gtk_widget_get_state_flags(widget) & GTK_STATE_FLAG_FOCUS_WITHIN))
        gtk_widget_grab_focus(head);
    return G_SOURCE_REMOVE;
}

void
hs_brief_open(HsBrief *self, const char *id)
{
    section *one = find_section(self, id);

    if (one == NULL)
        return;
    gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(one->head), TRUE);
    stop_scrolling(self);
    self->scrolling = gtk_widget_add_tick_callback(GTK_WIDGET(self), keep_at_top,
                                                   g_object_ref(one->head), g_object_unref);
}

void
hs_brief_show_path(HsBrief *self, const char *path)
{
    static const struct {
        const char *stem, *id;
    } table[] = {
        {"about", "about"},      {"load", "load"},        {"site", "site"},
        {"route", "route"},      {"options", "bearers"},  {"workers", "bearers"},
        {"suits", "suit"},       {"work", "work"},        {"roles", "work"},
        {"gates", "ways"},       {"better_ways", "ways"}, {"consulted", "ways"},
        {"criteria", "checks"},  {"policy", "checks"},    {"doubt", "checks"},
        {"signatures", "about"}, {"trial", "work"},       {"revisions", "about"},
    };

    for (guint i = 0; i < G_N_ELEMENTS(table); i++) {
        if (g_str_has_prefix(path, table[i].stem)) {
            hs_brief_open(self, table[i].id);
            return;
        }
    }
}

static void
dispose(GObject *object)
{
    HsBrief *self = HS_BRIEF(object);

    g_clear_handle_id(&self->idle, g_source_remove);
    stop_scrolling(self);
    hs_shell_leave(GTK_WIDGET(self), &self->session, &self->watch);
    g_clear_pointer(&self->sections, g_ptr_array_unref);
    G_OBJECT_CLASS(hs_brief_parent_class)->dispose(object);
}

static void
hs_brief_class_init(HsBriefClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    hs_shell_class(widget_class, "brief.ui", "brief", GTK_ACCESSIBLE_ROLE_REGION);
    gtk_widget_class_bind_template_child(widget_class, HsBrief, list);
    gtk_widget_class_bind_template_child(widget_class, HsBrief, scroller);
}

static void
hs_brief_init(HsBrief *self)
{
    gtk_widget_init_template(GTK_WIDGET(self));
    self->sections = g_ptr_array_new_with_free_func(section_free);
    hs_look_name(self, _("Brief"));
    hs_look_name_scroller(GTK_WIDGET(self->scroller), _("Sections of the brief"));
}

GtkWidget *
hs_brief_new(HsSession *session)
{
    HsBrief *self = g_object_new(HS_TYPE_BRIEF, NULL);

    self->session = g_object_ref(session);
    for (guint i = 0; i < G_N_ELEMENTS(parts); i++)
        add_section(self, parts[i]);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(find_section(self, "load")->head), TRUE);
    gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(find_section(self, "bearers")->head), TRUE);
    refresh(self);
    return GTK_WIDGET(self);
}
