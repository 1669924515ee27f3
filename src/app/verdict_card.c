/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what is the answer, and under which conditions?
 * Answer:    a card: the verdict in words, whether only the suit makes it so, the conditions numbered, the chances.
 * Not here:  how it is decided (core/checks/decide.c). */
#include "findings.h"

#include "look.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>

#define LINES 3 /* that are shown before "more" */

typedef struct {
    HsSession *session;
    GtkWidget *box;
    GtkLabel *option, *verdict;
    GtkWidget *lines;
    GtkWidget *more;
    gboolean shows_all;
    gulong watch;
    char *shown;
} card;

static void
card_free(gpointer data)
{
    card *self = data;

    g_clear_signal_handler(&self->watch, self->session);
    g_object_unref(self->session);
    g_free(self->shown);
    g_free(self);
}

static void
add_line(card *self, const char *text, gboolean is_soft)
{
    GtkWidget *label = gtk_label_new(text);

    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_selectable(GTK_LABEL(label), FALSE);
    if (is_soft)
        gtk_widget_add_css_class(label, "soft");
    gtk_box_append(GTK_BOX(self->lines), label);
}

static void
add_conditions(GString *lines, const hs_verdict *verdict)
{
    for (int i = 0; i < verdict->n_conditions; i++) {
        g_autofree char *text = hs_words_message(&verdict->conditions[i], hs_look_units());
        g_string_append_printf(lines, "%d  %s\n", i + 1, text);
    }
}

static void
add_reasons(GString *lines, const hs_results *results, const hs_verdict *verdict)
{
    if (verdict->n_reasons == 0)
        return;
    g_string_append(lines, _("Decided by: "));
    for (int i = 0; i < verdict->n_reasons && i < 4; i++)
        g_string_append_printf(lines, "%s%s", i ? ", " : "",
                               hs_words_check_in(results, verdict->reasons[i]));
    if (verdict->n_reasons > 4)
        g_string_append_printf(lines, _(" and %d more"), verdict->n_reasons - 4);
    g_string_append(lines, "\n");
}

static void
add_chance(GString *lines, const hs_results *results, const char *option)
{
    double least = 1.0;
    hs_check_id worst = 0;

    for (int i = 0; i < results->n_doubt; i++) {
        if (!g_str_equal(results->doubt[i].option, option))
            continue;
        for (int k = 0; k < results->doubt[i].n_checks; k++) {
            if (results->doubt[i].checks[k].p_within < least) {
                least = results->doubt[i].checks[k].p_within;
                worst = results->doubt[i].checks[k].check;
            }
        }
    }
    if (least >= 1.0)
        return;
    g_autofree char *chance = hs_quantity_text(100.0 * least, "pct", hs_look_units());
    g_string_append_printf(lines, _("Smallest chance of staying within: %s, %s\n"),
                           hs_words_check(worst), chance);
}

static char *
write_lines(const hs_results *results, int option)
{
    const hs_option_result *at = &results->options[option];
    GString *lines = g_string_new(NULL);

    if (at->is_added)
        g_string_append(lines, _("Worked out for comparison; decides nothing.\n"));
    if (at->verdict.suit_only)
        g_string_append(
            lines,
            _("Supported only because of the suit: the same person without it is not.\n"));
    add_conditions(lines, &at->verdict);
    add_reasons(lines, results, &at->verdict);
    add_chance(lines, results, at->id);
    return g_string_free(lines, FALSE);
}

static void
show(card *self)
{
    const hs_results *results = hs_session_results(self->session);
    int option = hs_session_right(self->session) >= 0 ? hs_session_right(self->session)
                                                      : hs_session_left(self->session);
    GtkWidget *child;

    if (results == NULL || option < 0 || option >= results->n_options) {
        g_autofree char *trouble = hs_session_trouble(self->session);
        gtk_label_set_text(self->option, "");
        gtk_label_set_text(self->verdict, _("Nothing to decide yet"));
        while ((child = gtk_widget_get_first_child(self->lines)) != NULL)
            gtk_box_remove(GTK_BOX(self->lines), child);
        g_clear_pointer(&self->shown, g_free);
        gtk_widget_set_visible(self->more, FALSE);
        if (trouble != NULL)
            add_line(self, trouble, FALSE);
        return;
    }
    g_autofree char *text = write_lines(results, option);
    gtk_label_set_text(self->option, results->options[option].name);
    gtk_label_set_text(self->verdict,
                       hs_words_verdict(results->options[option].verdict.status));
    if (g_strcmp0(text, self->shown) == 0)
        return;
    while ((child = gtk_widget_get_first_child(self->lines)) != NULL)
        gtk_box_remove(GTK_BOX(self->lines), child);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    guint n = g_strv_length(lines);

    n -= n > 0; /* the last is empty */
    guint most = self->shows_all || n <= LINES + 1 ? n : LINES;
    for (guint i = 0; i < most; i++)
        add_line(self, lines[i], !g_ascii_isdigit(*lines[i]));
    g_autofree char *more =
        self->shows_all ? g_strdup(_("less")) : g_strdup_printf(_("%u more"), n - most);
    gtk_button_set_label(GTK_BUTTON(self->more), more);
    hs_look_name(self->more, more);
    gtk_widget_set_visible(self->more, n > LINES + 1);
    g_free(self->shown);
    self->shown = g_steal_pointer(&text);
}

static void
on_more(card *self)
{
    self->shows_all = !self->shows_all;
    g_clear_pointer(&self->shown, g_free);
    show(self);
}

static void
on_changed(card *self, guint mask)
{
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE))
        show(self);
}

GtkWidget *
hs_verdict_card_new(HsSession *session)
{
    card *self = g_new0(card, 1);

    self->session = g_object_ref(session);
    self->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4);
    self->option = GTK_LABEL(gtk_label_new(NULL));
    self->verdict = GTK_LABEL(gtk_label_new(NULL));
    self->lines = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4);
    gtk_label_set_xalign(self->option, 0.0f);
    gtk_label_set_xalign(self->verdict, 0.0f);
    gtk_label_set_ellipsize(self->option, PANGO_ELLIPSIZE_END);
    gtk_label_set_wrap(self->verdict, TRUE);
    gtk_widget_add_css_class(GTK_WIDGET(self->option), "soft");
    gtk_widget_add_css_class(GTK_WIDGET(self->verdict), "verdict");
    gtk_widget_add_css_class(self->box, "card");
    gtk_box_append(GTK_BOX(self->box), GTK_WIDGET(self->option));
    gtk_box_append(GTK_BOX(self->box), GTK_WIDGET(self->verdict));
    gtk_box_append(GTK_BOX(self->box), self->lines);
    self->more = gtk_button_new_with_label("");
    gtk_widget_set_halign(self->more, GTK_ALIGN_START);
    gtk_widget_set_visible(self->more, FALSE);
    gtk_widget_add_css_class(self->more, "flat");
    g_signal_connect_swapped(self->more, "clicked", G_CALLBACK(on_more), self);
    gtk_box_append(GTK_BOX(self->box), self->more);
    g_object_set_data_full(G_OBJECT(self->box), "hs-card", self, card_free);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    show(self);
    return self->box;
}
