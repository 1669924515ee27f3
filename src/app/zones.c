/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the zones share the window's width?
 * Answer:    HsZones: brief, centre, findings side by side; in narrow windows the brief is a rail that opens over the stage.
 * Not here:  what the zones hold. */
#include "zones.h"

#include "look.h"

#include <glib/gi18n-lib.h>

#define WIDE_px     1500 /* from here on the brief has its own column */
#define TWO_VIEW_px 1200 /* under this the stage shows one view */
#define BRIEF_px    312
#define RAIL_px     40

struct _HsZones {
    GtkWidget parent;
    GtkWidget *rail, *brief, *centre, *findings;
    hs_zones_kind kind;
    gboolean is_open;
    guint idle;
};
G_DEFINE_FINAL_TYPE(HsZones, hs_zones, GTK_TYPE_WIDGET)

enum {
    KIND_CHANGED,
    N_SIGNALS
};
static guint signals[N_SIGNALS];

static int
natural_width(GtkWidget *child, int wanted)
{
    int least, natural;

    gtk_widget_measure(child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL, NULL);
    return MAX(least, wanted);
}

static void
place(GtkWidget *child, int x, int width, int height)
{
    int least, natural;

    if (!gtk_widget_should_layout(child))
        return;
    width = natural_width(child, width);
    gtk_widget_measure(child, GTK_ORIENTATION_VERTICAL, width, &least, &natural, NULL, NULL);
    GtkAllocation at = {x, 0, width, MAX(height, least)};
    gtk_widget_size_allocate(child, &at, -1);
}

static gboolean
tell_kind(gpointer data)
{
    HsZones *self = data;
    gboolean is_wide = self->kind == HS_ZONES_WIDE;

    self->idle = 0;
    gtk_widget_set_visible(self->rail, !is_wide);
    gtk_widget_set_visible(self->brief, is_wide || self->is_open);
    if (is_wide)
        gtk_widget_remove_css_class(self->brief, "over");
    else
        gtk_widget_add_css_class(self->brief, "over");
    g_signal_emit(self, signals[KIND_CHANGED], 0);
    gtk_widget_queue_resize(GTK_WIDGET(self));
    return G_SOURCE_REMOVE;
}

static void
size_allocate(GtkWidget *widget, int width, int height, int baseline)
{
    HsZones *self = HS_ZONES(widget);
    hs_zones_kind kind = width >= WIDE_px - 20       ? HS_ZONES_WIDE
                         : width >= TWO_VIEW_px - 20 ? HS_ZONES_RAIL
                                                     : HS_ZONES_ONE_VIEW;
    int left = natural_width(kind == HS_ZONES_WIDE ? self->brief : self->rail,
                             kind == HS_ZONES_WIDE ? BRIEF_px : RAIL_px);
    int right = natural_width(self->findings, kind == HS_ZONES_WIDE   ? 376
                                              : kind == HS_ZONES_RAIL ? 340
                                                                      : 320);

    (void)baseline;
    if (kind != self->kind) {
        self->kind = kind;
        if (self->idle == 0)
            self->idle = g_idle_add_full(G_PRIORITY_HIGH_IDLE, tell_kind, self, NULL);
    }
    place(self->centre, left, width - left - right, height);
    place(self->findings, width - right, right, height);
    place(self->rail, 0, RAIL_px, height);
    place(self->brief, kind == HS_ZONES_WIDE ? 0 : left,
          kind == HS_ZONES_WIDE ? left : BRIEF_px, height);
}

static void
measure(GtkWidget *widget,
        GtkOrientation orientation,
        int for_size,
        int *least,
        int *natural,
        int *least_base,
        int *natural_base)
{
    HsZones *self = HS_ZONES(widget);
    GtkWidget *all[] = {self->rail, self->brief, self->centre, self->findings};
    int a, b;

    (void)for_size;
    *least = *natural = 0;
    *least_base = *natural_base = -1;
    for (guint i = 0; i < G_N_ELEMENTS(all); i++) {
        if (!gtk_widget_should_layout(all[i]))
            continue;
        gtk_widget_measure(all[i], orientation, -1, &a, &b, NULL, NULL);
        if (orientation == GTK_ORIENTATION_VERTICAL)
            *least = MAX(*least, a);
        else if (i >= 2)
            *least += a;
    }
    if (orientation == GTK_ORIENTATION_HORIZONTAL)
        *least += RAIL_px;
    *natural = MAX(*least, orientation == GTK_ORIENTATION_HORIZONTAL ? 1366 : 700);
}

static void
dispose(GObject *object)
{
    HsZones *self = HS_ZONES(object);

    g_clear_handle_id(&self->idle, g_source_remove);
    g_clear_pointer(&self->brief, gtk_widget_unparent);
    g_clear_pointer(&self->rail, gtk_widget_unparent);
    g_clear_pointer(&self->centre, gtk_widget_unparent);
    g_clear_pointer(&self->findings, gtk_widget_unparent);
    G_OBJECT_CLASS(hs_zones_parent_class)->dispose(object);
}

static void
hs_zones_class_init(HsZonesClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    widget_class->size_allocate = size_allocate;
    widget_class->measure = measure;
    signals[KIND_CHANGED] =
        g_signal_new("kind-changed", G_TYPE_FROM_CLASS(class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                     NULL, G_TYPE_NONE, 0);
    gtk_widget_class_set_css_name(widget_class, "zones");
    gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
hs_zones_init(HsZones *self)
{
    self->kind = HS_ZONES_WIDE;
    gtk_widget_set_hexpand(GTK_WIDGET(self), TRUE);
    gtk_widget_set_vexpand(GTK_WIDGET(self), TRUE);
}

GtkWidget *
hs_zones_new(GtkWidget *rail, GtkWidget *brief, GtkWidget *centre, GtkWidget *findings)
{
    HsZones *self = g_object_new(HS_TYPE_ZONES, NULL);

    self->rail = rail;
    self->brief = brief;
    self->centre = centre;
    self->findings = findings;
    /* The last child is painted above the others: the brief, when it opens over the stage. */
    gtk_widget_set_parent(rail, GTK_WIDGET(self));
    gtk_widget_set_parent(centre, GTK_WIDGET(self));
    gtk_widget_set_parent(findings, GTK_WIDGET(self));
    gtk_widget_set_parent(brief, GTK_WIDGET(self));
    gtk_widget_set_visible(rail, FALSE);
    hs_look_name(self, _("Assessment"));
    return GTK_WIDGET(self);
}

hs_zones_kind
hs_zones_get_kind(HsZones *self)
{
    return self->kind;
}

void
hs_zones_open_brief(HsZones *self, gboolean open)
{
    self->is_open = open;
    gtk_widget_set_visible(self->brief, self->kind == HS_ZONES_WIDE || open);
}

gboolean
hs_zones_is_brief_open(HsZones *self)
{
    return self->kind == HS_ZONES_WIDE || self->is_open;
}
