/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields stand under About, Work and Checks?
 * Answer:    three sections of plain rows.
 * Not here:  the other sections (brief_*.c), the rows themselves (rows.h). */
#include "brief.h"

#include "brief_limits.h"
#include "brief_team.h"
#include "change.h"
#include "field.h"
#include "look.h"
#include "quantity.h"
#include "rows.h"

#include <glib/gi18n-lib.h>

/* ---- About --------------------------------------------------------------------------------- */

static char *
about_summary(HsSession *session)
{
    static const char *const wanted[] = {"about.title", "about.place", "about.task",
                                         "about.assessor", "about.date"};
    int missing = 0;

    for (guint i = 0; i < G_N_ELEMENTS(wanted); i++) {
        const char *text = hs_field_text(hs_session_document(session), wanted[i]);
        missing += text == NULL || *text == '\0';
    }
    if (missing == 0)
        return g_strdup(_("complete"));
    return g_strdup_printf(
        g_dngettext(GETTEXT_PACKAGE, "%d field open", "%d fields open", (gulong)missing),
        missing);
}

static void
about_build(HsSession *session, GtkBox *content)
{
    gtk_box_append(content, hs_text_row_new(session, _("Title"), "about.title", 1));
    gtk_box_append(content, hs_text_row_new(session, _("Place"), "about.place", 1));
    gtk_box_append(content,
                   hs_sentence_row_new(session, _("Task, in a sentence"), "about.task"));
    gtk_box_append(content, hs_text_row_new(session, _("Assessor"), "about.assessor", 1));
    gtk_box_append(content, hs_text_row_new(session, _("Date"), "about.date", 1));
    gtk_box_append(content, hs_text_row_new(session, _("Reference"), "about.reference", 1));
    gtk_box_append(content, hs_text_row_new(session, _("Review due"), "about.review_due", 1));
    gtk_box_append(content, hs_text_row_new(session, _("Notes"), "about.notes", 3));
}

const hs_brief_part hs_brief_about = {"about", N_("About"), about_summary, NULL, about_build};

/* ---- Work ---------------------------------------------------------------------------------- */

static char *
work_summary(HsSession *session)
{
    const hs_document *document = hs_session_document(session);
    double cycles = hs_or(hs_field_number(document, "work.cycles_per_hour"), 1.0);
    double hours = hs_or(hs_field_number(document, "work.hours"), 1.0);
    g_autofree char *n = hs_quantity_number(cycles, "", hs_look_units());
    g_autofree char *h = hs_quantity_number(hours, "", hs_look_units());

    /* Translators: cycles an hour, then hours of work: "12 an hour, 4 h" */
    return g_strdup_printf(_("%s an hour, %s h"), n, h);
}

static char *
work_shape(HsSession *session)
{
    return g_strdup_printf("%d", hs_field_length(hs_session_document(session), "roles"));
}

static void
on_add_role(GtkWidget *button, gpointer data)
{
    HsSession *session = data;
    int n = hs_field_length(hs_session_document(session), "roles");
    hs_edit *edit = hs_edit_new(_("Add a role"));
    g_autofree char *path = g_strdup_printf("roles[%d]", n);

    if (hs_field_node(hs_session_document(session), "roles") == NULL)
        hs_edit_set(edit, "roles", hs_change_node("[]"));
    hs_edit_insert(edit, path,
                   hs_change_node("{\"role\": \"\", \"before\": \"\", \"after\": \"\"}"));
    hs_change_commit(button, session, edit);
}

/* "Steers, today": the role's own name goes along with the text; its number while it has none. */
static void
name_role_field(GtkWidget *field, guint mask, HsSession *session)
{
    int i = GPOINTER_TO_INT(g_object_get_data(G_OBJECT(field), "hs-role"));
    gboolean is_after = g_object_get_data(G_OBJECT(field), "hs-after") != NULL;
    g_autofree char *path = g_strdup_printf("roles[%d].role", i);
    g_autofree char *number = g_strdup_printf(_("Role %d"), i + 1);
    const char *role = hs_field_text(hs_session_document(session), path);

    if ((mask & HS_CHANGED_DOCUMENT) == 0)
        return;
    /* Translators: spoken names of two fields; %s is the role, "Steers the load" */
    g_autofree char *name = g_strdup_printf(is_after ? _("%s, after") : _("%s, today"),
                                            role != NULL && *role != '\0' ? role : number);
    hs_look_name(field, name);
}

static void
role_field(HsSession *session, GtkBox *content, int i, gboolean is_after)
{
    g_autofree char *path = g_strdup_printf("roles[%d].%s", i, is_after ? "after" : "before");
    GtkWidget *row = hs_text_row_new(session, is_after ? _("after") : _("today"), path, 1);
    GtkWidget *field = gtk_widget_get_last_child(row);

    g_object_set_data(G_OBJECT(field), "hs-role", GINT_TO_POINTER(i));
    g_object_set_data(G_OBJECT(field), "hs-after", GINT_TO_POINTER(is_after));
    name_role_field(field, HS_CHANGED_DOCUMENT, session);
    g_signal_connect_object(session, "changed", G_CALLBACK(name_role_field), field,
                            G_CONNECT_SWAPPED);
    gtk_box_append(content, row);
}

static void
work_build(HsSession *session, GtkBox *content)
{
    int n = hs_field_length(hs_session_document(session), "roles");

    gtk_box_append(content, hs_quantity_row_new(session, _("Cycles an hour"), NULL,
                                                "work.cycles_per_hour", "", 1.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Hours of this work"), NULL,
                                                "work.hours", "h", 0.5));
    gtk_box_append(content, hs_quantity_row_new(session, _("Recovery after it"), NULL,
                                                "work.recovery_h", "h", 0.5));
    gtk_box_append(content, hs_quantity_row_new(session, _("Empty walk back"), NULL,
                                                "work.one_way_empty_walk_m", "m", 1.0));
    gtk_box_append(content, hs_row_heading(_("Roles: who does it today, who after")));
    if (n == 0)
        gtk_box_append(content, hs_row_hint(_("Who steers, watches, opens, guards, rescues? An "
                                              "empty role is printed as EMPTY.")));
    for (int i = 0; i < n; i++) {
        g_autofree char *role = g_strdup_printf("roles[%d].role", i);
        g_autofree char *name = g_strdup_printf(_("Role %d"), i + 1);
        gtk_box_append(content, hs_text_row_new(session, name, role, 1));
        role_field(session, content, i, FALSE);
        role_field(session, content, i, TRUE);
    }
    gtk_box_append(
        content, hs_row_button(_("Add a role"), NULL, G_CALLBACK(on_add_role), session, NULL));
}

const hs_brief_part hs_brief_work = {"work", N_("Work"), work_summary, work_shape, work_build};

/* ---- Checks -------------------------------------------------------------------------------- */

static const char *const criteria[] = {"niosh-1994",   "iso-11228-1",  "en-1005-2",
                                       "mil-std-1472", "gb-guideline", "spine-compression"};
static const hs_check_id criteria_check[] = {
    HS_CHECK_lift_niosh_1994,   HS_CHECK_lift_iso_11228_1,  HS_CHECK_lift_en_1005_2,
    HS_CHECK_lift_mil_std_1472, HS_CHECK_lift_gb_guideline, HS_CHECK_spine_compression};

static gboolean
is_criterion_on(const hs_document *document, const char *id)
{
    int n = hs_field_length(document, "criteria");

    if (hs_field_node(document, "criteria") == NULL)
        return TRUE;
    for (int i = 0; i < n; i++) {
        g_autofree char *path = g_strdup_printf("criteria[%d]", i);
        if (g_strcmp0(hs_field_text(document, path), id) == 0)
            return TRUE;
    }
    return FALSE;
}

static char *
checks_summary(HsSession *session)
{
    int n = 0;

    for (guint i = 0; i < G_N_ELEMENTS(criteria); i++)
        n += is_criterion_on(hs_session_document(session), criteria[i]);
    g_autofree char *published = g_strdup_printf(
        g_dngettext(GETTEXT_PACKAGE, "%d published limit", "%d published limits", (gulong)n),
        n);
    return hs_brief_limits_summary(session, published);
}

static char *
checks_shape(HsSession *session)
{
    GString *shape = g_string_new("");

    for (guint i = 0; i < G_N_ELEMENTS(criteria); i++)
        g_string_append_c(
            shape, is_criterion_on(hs_session_document(session), criteria[i]) ? '1' : '0');
    g_string_append_printf(shape, " %d ", (int)hs_look_units());
    hs_brief_limits_shape(session, shape);
    return g_string_free(shape, FALSE);
}

static void
on_criterion(GtkCheckButton *check, HsSession *session)
{
    const char *id = g_object_get_data(G_OBJECT(check), "hs-id");
    JsonArray *list = json_array_new();
    JsonNode *node = json_node_new(JSON_NODE_ARRAY);
    hs_edit *edit = hs_edit_new(_("Choose published limits"));

    for (guint i = 0; i < G_N_ELEMENTS(criteria); i++) {
        gboolean on = g_str_equal(criteria[i], id)
                          ? gtk_check_button_get_active(check)
                          : is_criterion_on(hs_session_document(session), criteria[i]);
        if (on)
            json_array_add_string_element(list, criteria[i]);
    }
    json_node_take_array(node, list);
    hs_edit_set(edit, "criteria", node);
    hs_change_commit(GTK_WIDGET(check), session, edit);
}

static void
add_policy(HsSession *session, GtkBox *content)
{
    const char *const rules[] = {"none", "gb", "mil-std-1472", "en-1005-2", "measured", NULL};
    const char *const words[] = {
        hs_words_team_rule(HS_TEAM_NONE),         hs_words_team_rule(HS_TEAM_GB),
        hs_words_team_rule(HS_TEAM_MIL_STD_1472), hs_words_team_rule(HS_TEAM_EN_1005_2),
        hs_words_team_rule(HS_TEAM_MEASURED),     NULL};

    const char *const tables[] = {"", "de_leva", "winter", NULL};
    const char *const table_words[] = {_("de Leva 1996 (assumed)"), _("de Leva 1996"),
                                       _("Winter 2009"), NULL};

    gtk_box_append(content, hs_row_heading(_("Rules of the site")));
    gtk_box_append(content, hs_choice_row_new(session, _("Team rule"), NULL, "policy.team_rule",
                                              HS_CHOICE_WORD, rules, words));
    gtk_box_append(content, hs_brief_team_new(session));
    gtk_box_append(content, hs_quantity_row_new(session, _("Team factor, measured"), NULL,
                                                "policy.team_factor", "", 0.05));
    gtk_box_append(content,
                   hs_choice_row_new(session, _("Segment masses"), NULL, "policy.segments",
                                     HS_CHOICE_WORD, tables, table_words));
    gtk_box_append(content, hs_quantity_row_new(session, _("Strength percentile"), NULL,
                                                "policy.strength_percentile", "", 5.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Allowance on squeeze"), NULL,
                                                "policy.slip_factor", "", 0.1));
    gtk_box_append(content, hs_quantity_row_new(session, _("Grip lost by the glove, part"),
                                                NULL, "policy.glove_loss_fraction", "", 0.05));
    gtk_box_append(content, hs_quantity_row_new(session, _("Near, from this part of a limit"),
                                                NULL, "policy.near_ratio", "", 0.05));
    gtk_box_append(content, hs_quantity_row_new(session, _("Couple the hands may hold"), NULL,
                                                "policy.couple_Nm", "Nm", 1.0));
    gtk_box_append(content, hs_row_heading(_("Doubt")));
    gtk_box_append(content, hs_quantity_row_new(session, _("Friction, plus or minus per cent"),
                                                NULL, "doubt.friction_pct", "", 5.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Gain, plus or minus per cent"),
                                                NULL, "doubt.gain_pct", "", 5.0));
    gtk_box_append(content, hs_quantity_row_new(session, _("Reach, plus or minus cm"), NULL,
                                                "doubt.reach_cm", "", 1.0));
}

static void
checks_build(HsSession *session, GtkBox *content)
{
    for (guint i = 0; i < G_N_ELEMENTS(criteria); i++) {
        const char *name = hs_words_check(criteria_check[i]);
        GtkWidget *check = gtk_check_button_new_with_label(name);
        gtk_check_button_set_active(GTK_CHECK_BUTTON(check),
                                    is_criterion_on(hs_session_document(session), criteria[i]));
        gtk_widget_set_tooltip_text(check, hs_words_check_hint(criteria_check[i]));
        hs_look_name(check, name);
        g_object_set_data_full(G_OBJECT(check), "hs-id", g_strdup(criteria[i]), g_free);
        g_signal_connect(check, "toggled", G_CALLBACK(on_criterion), session);
        gtk_box_append(content, check);
    }
    hs_brief_limits_build(session, content);
    add_policy(session, content);
}

const hs_brief_part hs_brief_checks = {"checks", N_("Checks"), checks_summary, checks_shape,
                                       checks_build};
