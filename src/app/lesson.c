/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the trainer show?
 * Answer:    HsLesson: the stage alone, large, layers one by one, a question before each answer.
 * Not here:  the picture (draw). */
#include "lesson.h"

#include "field.h"
#include "lesson_set.h"
#include "look.h"
#include "paint.h"
#include "quantity.h"
#include "shell.h"

#include <glib/gi18n-lib.h>

#define EDGE_em 1.5 /* room for labels under the floor, in heights of the type */

typedef struct {
    hs_layer layer;
    const char *question;
} lesson_step;

static const lesson_step steps[] = {
    {HS_LAYER_weight, N_("Where does the load's weight act, and how large is it?")},
    {HS_LAYER_force, N_("Who carries how much of it?")},
    {HS_LAYER_felt, N_("What do the hands feel, and what does the suit take?")},
    {HS_LAYER_path, N_("By which way does every newton reach the floor?")},
    {HS_LAYER_combined, N_("Where is the centre of everything together?")},
    {HS_LAYER_base, N_("Does the resultant meet the floor inside the feet?")},
    {HS_LAYER_lever, N_("How far is each force from the low back?")},
};

struct _HsLesson {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    GtkWidget *area;
    GtkLabel *question, *answer;
    GtkButton *ask, *next;
    GtkEntry *guess;
    char *guesses[G_N_ELEMENTS(steps)]; /* what the class said, until the next one */
    int set;                            /* lesson of the ready set, -1 none */
    GtkBox *chips;
    GtkWidget *chip[G_N_ELEMENTS(steps)];
    GtkRange *moment;
    guint shown; /* bits of steps[] that are uncovered */
    int current; /* step that is asked, -1 none */
    gboolean is_running, is_showing;
    int option;
};
G_DEFINE_FINAL_TYPE(HsLesson, hs_lesson, GTK_TYPE_WIDGET)

static const hs_sample *
sample_of(HsLesson *self)
{
    const hs_results *results = hs_session_results(self->session);
    int sample = hs_session_sample(self->session, self->option);

    return results != NULL && sample >= 0 ? &results->options[self->option].samples[sample]
                                          : NULL;
}

static double
lesson_font_px(int height)
{
    return MAX(14.0, height / 20.0); /* read from the last row of a class room */
}

static void
draw(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
    HsLesson *self = data;
    hs_theme theme = hs_theme_lesson();
    guint layers = (1u << HS_LAYER_paper) | (1u << HS_LAYER_site) | (1u << HS_LAYER_suit) |
                   (1u << HS_LAYER_figure) | (1u << HS_LAYER_load);

    (void)area;
    if (sample_of(self) == NULL || hs_field_task(self->session) == NULL)
        return;
    for (guint i = 0; i < G_N_ELEMENTS(steps); i++) {
        if (self->shown & (1u << i))
            layers |= 1u << steps[i].layer;
    }
    hs_scene_request request = {.task = hs_field_task(self->session),
                                .results = hs_session_results(self->session),
                                .option = self->option,
                                .sample = hs_session_sample(self->session, self->option),
                                .layers = layers,
                                .chosen_point = -1,
                                .power_off = hs_session_power_off(self->session),
                                .folds = TRUE,
                                .few_labels = TRUE,
                                .us_units = hs_look_units() == HS_UNITS_US};
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    hs_view view = hs_view_fit_people(scene, width, height, EDGE_em * lesson_font_px(height));
    view.font_px = lesson_font_px(height);
    hs_paint_scene(cr, scene, &view, &theme);
}

/* The figure that the layer shows, in a sentence. */
static char *
answer_text(HsLesson *self, const hs_sample *sample)
{
    const hs_results *results = hs_session_results(self->session);
    const hs_bearer_sample *bearer = &sample->bearers[0];
    hs_units units = hs_look_units();
    double share_N = 0.0, hands_N = 0.0;

    for (int i = 0; i < results->options[self->option].asked->n_bearers; i++) {
        if (!(sample->bearers[i].share_N > share_N))
            continue;
        share_N = sample->bearers[i].share_N;
        hands_N = hs_or(sample->bearers[i].hand_force_N, share_N);
    }
    g_autofree char *weight = hs_quantity_text(results->load.mass_kg * 9.80665, "N", units);
    g_autofree char *share = hs_quantity_text(share_N, "N", units);
    g_autofree char *felt = hs_quantity_text(bearer->felt_force_N, "N", units);
    g_autofree char *ground = hs_quantity_text(bearer->ground_force_N, "N", units);
    g_autofree char *margin = hs_quantity_text(bearer->balance_margin_m, "mm", units);
    g_autofree char *moment = hs_quantity_text(bearer->l5s1_moment_Nm, "Nm", units);
    switch (steps[self->current].layer) {
    case HS_LAYER_weight:
        return g_strdup_printf(_("The load weighs %s, at its centre of gravity."), weight);
    case HS_LAYER_force:
        if (hands_N > 1.01 * share_N) {
            g_autofree char *hands = hs_quantity_text(hands_N, "N", units);
            return g_strdup_printf(_("The greatest share of one bearer is %s; with each step "
                                     "the hands hold up to %s."),
                                   share, hands);
        }
        return g_strdup_printf(_("The greatest share of one bearer is %s."), share);
    case HS_LAYER_felt:
        return g_strdup_printf(_("The hands feel %s."), felt);
    case HS_LAYER_path:
        return g_strdup_printf(
            _("%s stand on the floor under the first bearer: nothing has vanished."), ground);
    case HS_LAYER_base:
        return g_strdup_printf(_("%s are left to the edge."), margin);
    case HS_LAYER_lever:
        return g_strdup_printf(_("They add up to %s at the low back."), moment);
    default:
        return g_strdup(_("Follow the black and white disc."));
    }
}

static void
show_next(HsLesson *self)
{
    gboolean has_next = self->set >= 0 && self->set + 1 < hs_lesson_set_count();

    gtk_widget_set_visible(GTK_WIDGET(self->next), has_next);
    if (!has_next)
        return;
    g_autofree char *label =
        g_strdup_printf(_("Next lesson, %d of %d"), self->set + 2, hs_lesson_set_count());
    gtk_button_set_label(self->next, label);
    hs_look_name(self->next, label);
    gtk_actionable_set_action_target(GTK_ACTIONABLE(self->next), "i", self->set + 1);
}

/* What was typed stays beside the answer. */
static void
keep_guess(HsLesson *self)
{
    const char *text = gtk_editable_get_text(GTK_EDITABLE(self->guess));

    if (self->current < 0 || *text == '\0')
        return;
    g_free(self->guesses[self->current]);
    self->guesses[self->current] = g_strdup(text);
    gtk_editable_set_text(GTK_EDITABLE(self->guess), "");
}

static void
forget(HsLesson *self)
{
    self->current = -1;
    self->shown = 0;
    gtk_editable_set_text(GTK_EDITABLE(self->guess), "");
    for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
        g_clear_pointer(&self->guesses[i], g_free);
}

static void
show(HsLesson *self)
{
    const hs_sample *sample = sample_of(self);
    gboolean is_answered = self->current >= 0 && (self->shown & (1u << self->current));

    gtk_label_set_text(self->question, self->current >= 0 ? _(steps[self->current].question)
                                                          : _("What do you see?"));
    gtk_label_set_text(self->answer, "");
    if (is_answered && sample != NULL) {
        const char *guess = self->guesses[self->current];
        g_autofree char *text = answer_text(self, sample);
        /* Translators: the answer, and what the class had guessed */
        g_autofree char *both =
            guess ? g_strdup_printf(_("%s Guessed: %s."), text, guess) : g_strdup(text);
        gtk_label_set_text(self->answer, both);
    }
    gtk_button_set_label(self->ask, self->current < 0 ? _("First question")
                                    : !is_answered    ? _("Show the answer")
                                    : self->current + 1 < (int)G_N_ELEMENTS(steps)
                                        ? _("Next question")
                                        : _("Begin again"));
    gtk_widget_set_visible(GTK_WIDGET(self->guess), self->current >= 0 && !is_answered);
    show_next(self);
    self->is_showing = TRUE;
    for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
        gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(self->chip[i]),
                                     (self->shown & (1u << i)) != 0);
    gtk_range_set_range(self->moment, 0.0, MAX(hs_session_total_s(self->session), 0.1));
    gtk_range_set_value(self->moment, hs_session_moment_s(self->session));
    self->is_showing = FALSE;
    gtk_widget_queue_draw(self->area);
}

static void
on_ask(HsLesson *self)
{
    keep_guess(self);
    if (self->current >= 0 && !(self->shown & (1u << self->current))) {
        self->shown |= 1u << self->current;
    } else if (self->current + 1 < (int)G_N_ELEMENTS(steps)) {
        self->current++;
    } else {
        forget(self);
    }
    show(self);
}

static void
on_reset(HsLesson *self)
{
    forget(self);
    hs_session_set_moment_s(self->session, 0.0);
    show(self);
}

static void
on_other_option(HsLesson *self)
{
    const hs_results *results = hs_session_results(self->session);

    if (results != NULL)
        self->option = (self->option + 1) % results->n_options;
    show(self);
}

static void
on_moment(HsLesson *self)
{
    if (!self->is_showing)
        hs_session_set_moment_s(self->session, gtk_range_get_value(self->moment));
}

static void
on_chip(GtkToggleButton *chip, HsLesson *self)
{
    int i = GPOINTER_TO_INT(g_object_get_data(G_OBJECT(chip), "hs-step"));

    if (self->is_showing)
        return;
    self->current = i;
    self->shown =
        gtk_toggle_button_get_active(chip) ? self->shown | 1u << i : self->shown & ~(1u << i);
    show(self);
}

static void
on_changed(HsLesson *self, guint mask)
{
    if (self->is_running && (mask & (HS_CHANGED_MOMENT | HS_CHANGED_RESULTS)))
        show(self);
}

void
hs_lesson_set_running(HsLesson *self, gboolean running)
{
    self->is_running = running;
    if (!running)
        return;
    self->option = MAX(0, hs_session_edited(self->session));
    self->set = -1;
    forget(self);
    show(self);
}

void
hs_lesson_reset(HsLesson *self)
{
    on_reset(self);
}

void
hs_lesson_begin(HsLesson *self, int set)
{
    self->set = set;
    for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
        if (steps[i].layer == hs_lesson_set_layer(set))
            self->current = (int)i;
    show(self);
}

static void
dispose(GObject *object)
{
    HsLesson *self = HS_LESSON(object);

    for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
        g_clear_pointer(&self->guesses[i], g_free);
    hs_shell_leave(GTK_WIDGET(self), &self->session, &self->watch);
    G_OBJECT_CLASS(hs_lesson_parent_class)->dispose(object);
}

static void
hs_lesson_class_init(HsLessonClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    hs_shell_class(widget_class, "lesson.ui", "lesson", GTK_ACCESSIBLE_ROLE_GROUP);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, area);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, question);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, answer);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, ask);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, next);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, guess);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, chips);
    gtk_widget_class_bind_template_child(widget_class, HsLesson, moment);
    gtk_widget_class_bind_template_callback(widget_class, on_ask);
    gtk_widget_class_bind_template_callback(widget_class, on_reset);
    gtk_widget_class_bind_template_callback(widget_class, on_other_option);
    gtk_widget_class_bind_template_callback(widget_class, on_moment);
}

static void
hs_lesson_init(HsLesson *self)
{
    self->current = self->set = -1;
    gtk_widget_init_template(GTK_WIDGET(self));
    hs_look_name(self, _("Lesson"));
    hs_look_name(self->area, _("Side view of the lesson"));
    gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(self->area), draw, self, NULL);
}

GtkWidget *
hs_lesson_new(HsSession *session)
{
    HsLesson *self = g_object_new(HS_TYPE_LESSON, NULL);

    self->session = g_object_ref(session);
    for (guint i = 0; i < G_N_ELEMENTS(steps); i++) {
        self->chip[i] = gtk_toggle_button_new_with_label(hs_layer_name(steps[i].layer));
        g_autofree char *name =
            g_strdup_printf(_("Lesson: show %s"), hs_layer_name(steps[i].layer));
        gtk_widget_add_css_class(self->chip[i], "chip");
        g_object_set_data(G_OBJECT(self->chip[i]), "hs-step", GINT_TO_POINTER((int)i));
        hs_look_name(self->chip[i], name);
        g_signal_connect(self->chip[i], "toggled", G_CALLBACK(on_chip), self);
        gtk_box_append(self->chips, self->chip[i]);
    }
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    show(self);
    return GTK_WIDGET(self);
}
