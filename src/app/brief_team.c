/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what would the other team rules say?
 * Answer:    a row that unfolds a small table, for each option with a crew.
 * Not here:  its figures (model/team_rules.c). */
#include "brief_team.h"

#include "look.h"
#include "rows.h"
#include "team_rules.h"

#include <glib/gi18n-lib.h>

static void
attach(GtkGrid *grid, const char *text, int column, int row, const char *css)
{
    GtkWidget *label = gtk_label_new(text);

    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_yalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_max_width_chars(GTK_LABEL(label), 12);
    gtk_widget_set_hexpand(label, TRUE);
    if (css != NULL)
        gtk_widget_add_css_class(label, css);
    gtk_grid_attach(grid, label, column, row, 1, 1);
}

static GtkWidget *
table_of(const hs_option_result *option)
{
    g_autoptr(GPtrArray) rows = hs_team_rules_rows(option, hs_look_units());
    GtkGrid *grid = GTK_GRID(gtk_grid_new());
    const char *const heads[] = {_("Rule"), _("allowed"), _("carried"), _("so it is")};

    gtk_grid_set_column_spacing(grid, 8);
    gtk_grid_set_row_spacing(grid, 4);
    for (int i = 0; i < 4; i++)
        attach(grid, heads[i], i, 0, "soft");
    for (guint i = 0; i < rows->len; i++) {
        const hs_team_row *row = rows->pdata[i];
        g_autofree char *allowed = *row->part != '\0'
                                       ? g_strdup_printf("%s\n%s", row->allowed, row->part)
                                       : g_strdup(row->allowed);

        attach(grid, row->rule, 0, (int)i + 1, NULL);
        attach(grid, allowed, 1, (int)i + 1, NULL);
        attach(grid, row->carried, 2, (int)i + 1, NULL);
        attach(grid, row->said, 3, (int)i + 1, NULL);
    }
    return GTK_WIDGET(grid);
}

static void
fill(GtkBox *box, HsSession *session)
{
    const hs_results *results = hs_session_results(session);
    GtkWidget *old;
    int n = 0;

    while ((old = gtk_widget_get_first_child(GTK_WIDGET(box))) != NULL)
        gtk_box_remove(box, old);
    for (int o = 0; results != NULL && o < results->n_options; o++) {
        const hs_option_result *option = &results->options[o];
        g_autofree char *spread = hs_team_rules_spread(option, hs_look_units());

        if (option->n_team_rules == 0)
            continue;
        n++;
        gtk_box_append(box, hs_row_hint(option->name != NULL ? option->name : option->id));
        gtk_box_append(box, table_of(option));
        if (spread != NULL)
            gtk_box_append(box, hs_row_hint(spread));
    }
    if (n == 0)
        gtk_box_append(box, hs_row_hint(hs_session_is_pending(session)
                                            ? _("Being worked out …")
                                            : _("No option has two bearers.")));
}

static void
on_changed(HsSession *session, guint mask, GtkExpander *expander)
{
    if ((mask & HS_CHANGED_RESULTS) != 0 && gtk_expander_get_expanded(expander))
        fill(GTK_BOX(gtk_expander_get_child(expander)), session);
}

static void
on_unfolded(GtkExpander *expander, GParamSpec *spec, HsSession *session)
{
    (void)spec;
    if (gtk_expander_get_expanded(expander))
        fill(GTK_BOX(gtk_expander_get_child(expander)), session);
}

GtkWidget *
hs_brief_team_new(HsSession *session)
{
    GtkWidget *expander = gtk_expander_new(_("All team rules"));
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);

    hs_look_name(expander, _("All team rules"));
    gtk_expander_set_child(GTK_EXPANDER(expander), box);
    g_signal_connect(expander, "notify::expanded", G_CALLBACK(on_unfolded), session);
    g_signal_connect_object(session, "changed", G_CALLBACK(on_changed), expander, 0);
    return expander;
}
