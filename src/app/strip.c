/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  when does what happen?
 * Answer:    HsStrip: the plots with play, pause, slow, the moment in words, power off here, the way back.
 * Not here:  the plots (plots.c). */
#include "strip.h"

#include "field.h"
#include "look.h"
#include "quantity.h"
#include "shell.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _HsStrip {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    GtkBox *body;
    GtkButton *play, *back;
    GtkToggleButton *slow, *power_off;
    GtkLabel *time, *where;
    HsPlots *plots;
    guint tick;
    gint64 last_us;
    gboolean is_showing;
};
G_DEFINE_FINAL_TYPE(HsStrip, hs_strip, GTK_TYPE_WIDGET)

static void
show_playing(HsStrip *self)
{
    gtk_button_set_icon_name(self->play, self->tick ? "media-playback-pause-symbolic"
                                                    : "media-playback-start-symbolic");
    hs_look_name(self->play, self->tick ? _("Pause") : _("Play"));
    hs_look_tip(GTK_WIDGET(self->play), self->tick ? _("Pause (Space)") : _("Play (Space)"));
}

static void
stop(HsStrip *self)
{
    if (self->tick != 0)
        gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->tick);
    self->tick = 0;
    show_playing(self);
}

static gboolean
on_tick(GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
    HsStrip *self = HS_STRIP(widget);
    gint64 now_us = gdk_frame_clock_get_frame_time(clock);
    double step_s = (double)(now_us - self->last_us) / 1e6;
    double total_s = hs_session_total_s(self->session);

    (void)data;
    self->last_us = now_us;
    if (gtk_toggle_button_get_active(self->slow))
        step_s *= 0.25;
    double to_s = hs_session_moment_s(self->session) + MIN(step_s, 0.2);
    hs_session_set_moment_s(self->session, MIN(to_s, total_s));
    if (to_s < total_s)
        return G_SOURCE_CONTINUE;
    self->tick = 0;
    show_playing(self);
    return G_SOURCE_REMOVE;
}

void
hs_strip_toggle_play(HsStrip *self)
{
    GdkFrameClock *clock = gtk_widget_get_frame_clock(GTK_WIDGET(self));

    if (self->tick != 0) {
        stop(self);
        return;
    }
    if (hs_session_results(self->session) == NULL || clock == NULL)
        return;
    if (hs_session_moment_s(self->session) >= hs_session_total_s(self->session) - 1e-6)
        hs_session_set_moment_s(self->session, 0.0);
    self->last_us = gdk_frame_clock_get_frame_time(clock);
    self->tick = gtk_widget_add_tick_callback(GTK_WIDGET(self), on_tick, NULL, NULL);
    show_playing(self);
}

void
hs_strip_toggle_slow(HsStrip *self)
{
    gtk_toggle_button_set_active(self->slow, !gtk_toggle_button_get_active(self->slow));
}

static const char *
doing(const hs_sample *sample, const hs_task *task)
{
    static const char *const words[] = {"",
                                        N_("at the start"),
                                        N_("lifting"),
                                        N_("carrying"),
                                        N_("lowering"),
                                        N_("sliding"),
                                        N_("holding")};

    if (sample->in_hold)
        return _("holding");
    if (sample->leg < 0 || sample->leg >= task->route.n_points)
        return "";
    hs_move move = task->route.points[sample->leg].move;
    return move ? _(words[move]) : "";
}

static void
show_where(HsStrip *self)
{
    const hs_results *results = hs_session_results(self->session);
    const hs_task *task = hs_field_task(self->session);
    int left = hs_session_left(self->session);
    g_autofree char *time =
        hs_quantity_text(hs_session_moment_s(self->session), "s", hs_look_units());
    g_autofree char *where = NULL;

    gtk_label_set_text(self->time, time);
    if (results == NULL || task == NULL || left < 0 || results->options[left].n_samples == 0) {
        gtk_label_set_text(self->where, "");
        return;
    }
    const hs_sample *sample =
        &results->options[left].samples[hs_session_sample(self->session, left)];
    double at = sample->route;
    if (fabs(at - round(at)) < 0.01)
        where = g_strdup_printf(_("at point %d, %s"), (int)round(at), doing(sample, task));
    else
        where = g_strdup_printf(_("between %d and %d, %s"), (int)floor(at), (int)floor(at) + 1,
                                doing(sample, task));
    gtk_label_set_text(self->where, where);
}

static void
show_choice(HsStrip *self)
{
    double back_s = hs_session_back_s(self->session);

    gtk_widget_set_visible(GTK_WIDGET(self->back), hs_has(back_s));
    if (hs_has(back_s)) {
        g_autofree char *time = hs_quantity_text(back_s, "s", hs_look_units());
        g_autofree char *label = g_strdup_printf(_("Back to %s"), time);
        gtk_button_set_label(self->back, label);
        hs_look_name(self->back, label);
    }
    self->is_showing = TRUE;
    gtk_toggle_button_set_active(self->power_off, hs_session_power_off(self->session));
    self->is_showing = FALSE;
}

static void
on_changed(HsStrip *self, guint mask)
{
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE | HS_CHANGED_MOMENT))
        show_where(self);
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE | HS_CHANGED_MOMENT))
        show_choice(self);
}

static void
on_play(HsStrip *self)
{
    hs_strip_toggle_play(self);
}

static void
on_power_off(HsStrip *self)
{
    if (!self->is_showing)
        hs_session_set_power_off(self->session, gtk_toggle_button_get_active(self->power_off));
}

static void
on_back(HsStrip *self)
{
    hs_session_go_back(self->session);
}

static void
dispose(GObject *object)
{
    HsStrip *self = HS_STRIP(object);

    hs_shell_leave(GTK_WIDGET(self), &self->session, &self->watch);
    G_OBJECT_CLASS(hs_strip_parent_class)->dispose(object);
}

static void
hs_strip_class_init(HsStripClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    hs_shell_class(widget_class, "strip.ui", "strip", GTK_ACCESSIBLE_ROLE_GROUP);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, body);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, play);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, back);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, slow);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, power_off);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, time);
    gtk_widget_class_bind_template_child(widget_class, HsStrip, where);
    gtk_widget_class_bind_template_callback(widget_class, on_play);
    gtk_widget_class_bind_template_callback(widget_class, on_power_off);
    gtk_widget_class_bind_template_callback(widget_class, on_back);
}

static void
hs_strip_init(HsStrip *self)
{
    gtk_widget_init_template(GTK_WIDGET(self));
    hs_look_name(self, _("Strip"));
    show_playing(self);
}

GtkWidget *
hs_strip_new(HsSession *session)
{
    HsStrip *self = g_object_new(HS_TYPE_STRIP, NULL);

    self->session = g_object_ref(session);
    self->plots = HS_PLOTS(hs_plots_new(session));
    gtk_box_append(self->body, GTK_WIDGET(self->plots));
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    on_changed(self, HS_CHANGED_RESULTS);
    return GTK_WIDGET(self);
}

void
hs_strip_set_small(HsStrip *self, gboolean small)
{
    hs_plots_set_small(self->plots, small);
}
