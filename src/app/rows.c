/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are words, texts and yes-or-no fields shown and entered?
 * Answer:    rows with a line of text or a drop-down, bound to a path; headings, hints and buttons between them.
 * Not here:  numbers (quantity_row.c). */
#include "rows.h"

#include "change.h"
#include "field.h"
#include "look.h"

#include <glib/gi18n-lib.h>

typedef struct {
    HsSession *session;
    GtkWidget *control;
    char *path, *label;
    hs_choice_kind kind;
    char **ids;
    gulong watch;
    gboolean is_showing, is_sentence;
} bound_field;

static void
bound_free(gpointer data)
{
    bound_field *field = data;

    g_clear_signal_handler(&field->watch, field->session);
    g_object_unref(field->session);
    g_free(field->path);
    g_free(field->label);
    g_strfreev(field->ids);
    g_free(field);
}

static bound_field *
bind(
    GtkWidget *row, GtkWidget *control, HsSession *session, const char *label, const char *path)
{
    bound_field *field = g_new0(bound_field, 1);

    field->session = g_object_ref(session);
    field->control = control;
    field->path = g_strdup(path);
    field->label = g_strdup(label);
    g_object_set_data_full(G_OBJECT(row), "hs-field", field, bound_free);
    return field;
}

static GtkWidget *
labelled(const char *label, GtkWidget *control)
{
    GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
    GtkWidget *text = gtk_label_new(label);

    gtk_label_set_xalign(GTK_LABEL(text), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(text), TRUE);
    gtk_label_set_width_chars(GTK_LABEL(text), 8);
    gtk_widget_set_hexpand(text, TRUE);
    gtk_box_append(GTK_BOX(row), text);
    gtk_box_append(GTK_BOX(row), control);
    gtk_widget_add_css_class(row, "row");
    return row;
}

/* ---- text ---------------------------------------------------------------------------------- */

static void
show_text(bound_field *field)
{
    const char *text = hs_field_text(hs_session_document(field->session), field->path);

    field->is_showing = TRUE;
    if (g_strcmp0(text ? text : "", gtk_editable_get_text(GTK_EDITABLE(field->control))) != 0)
        gtk_editable_set_text(GTK_EDITABLE(field->control), text ? text : "");
    field->is_showing = FALSE;
}

static void
commit_text(bound_field *field)
{
    const char *stored = hs_field_text(hs_session_document(field->session), field->path);
    const char *typed = gtk_editable_get_text(GTK_EDITABLE(field->control));

    if (g_strcmp0(stored ? stored : "", typed) != 0)
        hs_change_text(field->control, field->session, field->label, field->path,
                       *typed != '\0' ? typed : NULL);
}

static void
on_text_changed(bound_field *field, guint mask)
{
    if ((mask & HS_CHANGED_DOCUMENT) && !gtk_widget_has_focus(field->control) &&
        !(gtk_widget_get_state_flags(field->control) & GTK_STATE_FLAG_FOCUS_WITHIN))
        show_text(field);
}

static gboolean
on_text_key(GtkEventControllerKey *keys,
            guint key,
            guint code,
            GdkModifierType state,
            bound_field *field)
{
    (void)keys, (void)code, (void)state;
    if (key != GDK_KEY_Escape)
        return GDK_EVENT_PROPAGATE;
    show_text(field);
    return GDK_EVENT_STOP;
}

static void
show_view(bound_field *field)
{
    const char *text = hs_field_text(hs_session_document(field->session), field->path);
    GtkTextBuffer *buffer = gtk_text_view_get_buffer(GTK_TEXT_VIEW(field->control));
    GtkTextIter from, to;

    gtk_text_buffer_get_bounds(buffer, &from, &to);
    g_autofree char *now = gtk_text_buffer_get_text(buffer, &from, &to, FALSE);
    if (g_strcmp0(now, text ? text : "") != 0)
        gtk_text_buffer_set_text(buffer, text ? text : "", -1);
}

static void
commit_view(bound_field *field)
{
    const char *stored = hs_field_text(hs_session_document(field->session), field->path);
    GtkTextBuffer *buffer = gtk_text_view_get_buffer(GTK_TEXT_VIEW(field->control));
    GtkTextIter from, to;

    gtk_text_buffer_get_bounds(buffer, &from, &to);
    g_autofree char *typed = gtk_text_buffer_get_text(buffer, &from, &to, FALSE);
    if (field->is_sentence)
        g_strdelimit(typed, "\n\r", ' ');
    if (g_strcmp0(stored ? stored : "", typed) != 0)
        hs_change_text(field->control, field->session, field->label, field->path,
                       *typed != '\0' ? typed : NULL);
}

static void
on_view_changed(bound_field *field, guint mask)
{
    if ((mask & HS_CHANGED_DOCUMENT) && !gtk_widget_has_focus(field->control))
        show_view(field);
}

static GtkWidget *
text_view_row(HsSession *session, const char *label, const char *path, int lines)
{
    GtkWidget *row = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3);
    GtkWidget *text = gtk_label_new(label), *view = gtk_text_view_new();
    bound_field *field = bind(row, view, session, label, path);

    gtk_label_set_xalign(GTK_LABEL(text), 0.0f);
    gtk_text_view_set_wrap_mode(GTK_TEXT_VIEW(view), GTK_WRAP_WORD_CHAR);
    gtk_text_view_set_accepts_tab(GTK_TEXT_VIEW(view), FALSE);
    gtk_text_buffer_set_enable_undo(gtk_text_view_get_buffer(GTK_TEXT_VIEW(view)), FALSE);
    /* It grows with its text: a box that scrolls by itself would stop the wheel on the way down the brief. */
    gtk_widget_set_size_request(view, -1, 22 * lines + 8);
    gtk_widget_add_css_class(view, "text-box");
    hs_look_name(view, label);
    gtk_box_append(GTK_BOX(row), text);
    gtk_box_append(GTK_BOX(row), view);
    gtk_widget_add_css_class(row, "row");
    GtkEventController *focus = gtk_event_controller_focus_new();
    g_signal_connect_swapped(focus, "leave", G_CALLBACK(commit_view), field);
    gtk_widget_add_controller(view, focus);
    field->watch =
        g_signal_connect_swapped(session, "changed", G_CALLBACK(on_view_changed), field);
    show_view(field);
    return row;
}

GtkWidget *
hs_text_row_new(HsSession *session, const char *label, const char *path, int lines)
{
    if (lines > 1)
        return text_view_row(session, label, path, lines);
    GtkWidget *entry = gtk_entry_new();
    GtkWidget *row = labelled(label, entry);
    bound_field *field = bind(row, entry, session, label, path);

    gtk_editable_set_width_chars(GTK_EDITABLE(entry), 18);
    gtk_editable_set_max_width_chars(GTK_EDITABLE(entry), 18);
    gtk_editable_set_enable_undo(GTK_EDITABLE(entry), FALSE);
    hs_look_name(entry, label);
    g_signal_connect_swapped(entry, "activate", G_CALLBACK(commit_text), field);
    GtkEventController *focus = gtk_event_controller_focus_new();
    g_signal_connect_swapped(focus, "leave", G_CALLBACK(commit_text), field);
    gtk_widget_add_controller(entry, focus);
    GtkEventController *keys = gtk_event_controller_key_new();
    gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
    g_signal_connect(keys, "key-pressed", G_CALLBACK(on_text_key), field);
    gtk_widget_add_controller(entry, keys);
    field->watch =
        g_signal_connect_swapped(session, "changed", G_CALLBACK(on_text_changed), field);
    show_text(field);
    return row;
}

static gboolean
on_sentence_key(GtkEventControllerKey *keys,
                guint key,
                guint code,
                GdkModifierType state,
                bound_field *field)
{
    (void)keys, (void)code, (void)state;
    if (key != GDK_KEY_Return && key != GDK_KEY_KP_Enter && key != GDK_KEY_ISO_Enter)
        return GDK_EVENT_PROPAGATE;
    commit_view(field);
    gtk_widget_child_focus(GTK_WIDGET(gtk_widget_get_root(field->control)),
                           GTK_DIR_TAB_FORWARD);
    return GDK_EVENT_STOP;
}

GtkWidget *
hs_sentence_row_new(HsSession *session, const char *label, const char *path)
{
    GtkWidget *row = text_view_row(session, label, path, 2);
    bound_field *field = g_object_get_data(G_OBJECT(row), "hs-field");
    GtkEventController *keys = gtk_event_controller_key_new();

    field->is_sentence = TRUE;
    gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
    g_signal_connect(keys, "key-pressed", G_CALLBACK(on_sentence_key), field);
    gtk_widget_add_controller(field->control, keys);
    return row;
}

/* ---- choice -------------------------------------------------------------------------------- */

static char *
stored_word(bound_field *field)
{
    const hs_document *document = hs_session_document(field->session);

    if (field->kind == HS_CHOICE_FLAG) {
        int flag = hs_field_flag(document, field->path);
        return g_strdup(flag < 0 ? "" : flag ? "true" : "false");
    }
    if (field->kind == HS_CHOICE_NUMBER) {
        double value = hs_field_number(document, field->path);
        return hs_has(value) ? g_strdup_printf("%d", (int)value) : g_strdup("");
    }
    const char *text = hs_field_text(document, field->path);
    return g_strdup(text ? text : "");
}

static void
show_choice(bound_field *field)
{
    g_autofree char *word = stored_word(field);
    guint at = GTK_INVALID_LIST_POSITION;

    for (guint i = 0; field->ids[i] != NULL; i++) {
        if (g_str_equal(field->ids[i], word))
            at = i;
    }
    field->is_showing = TRUE;
    gtk_drop_down_set_selected(GTK_DROP_DOWN(field->control), at);
    field->is_showing = FALSE;
}

static void
commit_choice(bound_field *field)
{
    guint at = gtk_drop_down_get_selected(GTK_DROP_DOWN(field->control));

    if (field->is_showing || at == GTK_INVALID_LIST_POSITION)
        return;
    hs_edit *edit = hs_edit_new(field->label);
    const char *id = field->ids[at];
    if (*id == '\0')
        hs_edit_unset(edit, field->path);
    else if (field->kind == HS_CHOICE_FLAG)
        hs_edit_set_bool(edit, field->path, g_str_equal(id, "true"));
    else if (field->kind == HS_CHOICE_NUMBER)
        hs_edit_set_number(edit, field->path, g_ascii_strtod(id, NULL));
    else
        hs_edit_set_string(edit, field->path, id);
    if (!hs_change_commit(field->control, field->session, edit))
        show_choice(field);
}

static void
on_choice_changed(bound_field *field, guint mask)
{
    if (mask & HS_CHANGED_DOCUMENT)
        show_choice(field);
}

void
hs_row_name_button(GtkWidget *outer, const char *name)
{
    hs_look_name(outer, name);
    for (GtkWidget *child = gtk_widget_get_first_child(outer); child != NULL;
         child = gtk_widget_get_next_sibling(child))
        hs_look_name(child, name);
}

static gboolean
on_cut_tooltip(
    GtkLabel *label, int x, int y, gboolean by_keys, GtkTooltip *tooltip, gpointer data)
{
    (void)x, (void)y, (void)by_keys, (void)data;
    if (!pango_layout_is_ellipsized(gtk_label_get_layout(label)))
        return FALSE;
    gtk_tooltip_set_text(tooltip, gtk_label_get_text(label));
    return TRUE;
}

static void
on_word_setup(GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
    GtkWidget *label = gtk_label_new(NULL);

    (void)factory, (void)data;
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
    gtk_widget_set_has_tooltip(label, TRUE);
    g_signal_connect(label, "query-tooltip", G_CALLBACK(on_cut_tooltip), NULL);
    gtk_list_item_set_child(item, label);
}

static void
on_word_bind(GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
    GtkStringObject *word = GTK_STRING_OBJECT(gtk_list_item_get_item(item));

    (void)factory, (void)data;
    gtk_label_set_text(GTK_LABEL(gtk_list_item_get_child(item)),
                       gtk_string_object_get_string(word));
}

void
hs_row_cut_long(GtkWidget *dropdown)
{
    GtkListItemFactory *whole = gtk_drop_down_get_factory(GTK_DROP_DOWN(dropdown));
    GtkListItemFactory *cut = gtk_signal_list_item_factory_new();

    g_signal_connect(cut, "setup", G_CALLBACK(on_word_setup), NULL);
    g_signal_connect(cut, "bind", G_CALLBACK(on_word_bind), NULL);
    gtk_drop_down_set_list_factory(GTK_DROP_DOWN(dropdown), whole);
    gtk_drop_down_set_factory(GTK_DROP_DOWN(dropdown), cut);
    g_object_unref(cut);
}

GtkWidget *
hs_choice_row_new(HsSession *session,
                  const char *label,
                  const char *name,
                  const char *path,
                  hs_choice_kind kind,
                  const char *const *ids,
                  const char *const *words)
{
    GtkWidget *dropdown = gtk_drop_down_new_from_strings(words);
    GtkWidget *row = labelled(label, dropdown);

    hs_row_cut_long(dropdown);
    /* The label breaks before the chosen word is cut: it takes what is left, and asks for no more. */
    gtk_label_set_max_width_chars(GTK_LABEL(gtk_widget_get_first_child(row)), 8);
    bound_field *field = bind(row, dropdown, session, name ? name : label, path);

    field->kind = kind;
    field->ids = g_strdupv((char **)(uintptr_t)ids);
    hs_row_name_button(dropdown, name ? name : label);
    show_choice(field);
    g_signal_connect_swapped(dropdown, "notify::selected", G_CALLBACK(commit_choice), field);
    field->watch =
        g_signal_connect_swapped(session, "changed", G_CALLBACK(on_choice_changed), field);
    return row;
}

GtkWidget *
hs_tri_row_new(HsSession *session, const char *label, const char *path)
{
    const char *const ids[] = {"", "true", "false", NULL};
    const char *const words[] = {_("not known"), _("yes"), _("no"), NULL};

    return hs_choice_row_new(session, label, NULL, path, HS_CHOICE_FLAG, ids, words);
}

/* ---- what only stands there ---------------------------------------------------------------- */

GtkWidget *
hs_row_heading(const char *text)
{
    GtkWidget *label = gtk_label_new(text);

    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_widget_add_css_class(label, "row-heading");
    return label;
}

GtkWidget *
hs_row_hint(const char *text)
{
    GtkWidget *label = gtk_label_new(text);

    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_max_width_chars(GTK_LABEL(label), 34);
    gtk_widget_add_css_class(label, "soft");
    return label;
}

GtkWidget *
hs_row_button(const char *label,
              const char *name,
              GCallback on_click,
              gpointer data,
              GDestroyNotify release)
{
    GtkWidget *button = gtk_button_new_with_label(label);

    if (name != NULL)
        hs_look_name(button, name);
    gtk_widget_set_halign(button, GTK_ALIGN_START);
    if (release != NULL)
        g_object_set_data_full(G_OBJECT(button), "hs-data", data, release);
    g_signal_connect(button, "clicked", on_click, data);
    return button;
}

typedef struct {
    HsSession *session;
    char *path, *label;
} removal;

static void
removal_free(gpointer data)
{
    removal *one = data;

    g_free(one->path);
    g_free(one->label);
    g_free(one);
}

static void
on_remove(GtkWidget *button, gpointer data)
{
    removal *one = data;
    hs_edit *edit = hs_edit_new(one->label);

    hs_edit_remove(edit, one->path);
    hs_change_commit(button, one->session, edit);
}

GtkWidget *
hs_row_remove(HsSession *session, const char *label, const char *path)
{
    removal *one = g_new(removal, 1);

    one->session = session;
    one->path = g_strdup(path);
    one->label = g_strdup(label);
    GtkWidget *button =
        hs_row_button(_("Remove"), label, G_CALLBACK(on_remove), one, removal_free);
    gtk_widget_add_css_class(button, "flat");
    gtk_widget_set_halign(button, GTK_ALIGN_END);
    return button;
}
