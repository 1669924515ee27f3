/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what was found, and what decides?
 * Answer:    HsFindings: the verdict on top, options as columns, checks as rows sorted by closeness, the working of the
 *            chosen one inside its row.
 * Not here:  sentences (model/words.c), the verdict's card (verdict_card.c), the working (working_view.c). */
#include "findings.h"

#include "field.h"
#include "look.h"
#include "shell.h"
#include "short.h"

#include <glib/gi18n-lib.h>

typedef struct {
    GtkWidget *button, *figure, *place, *word, *mark;
} cell;

typedef struct {
    hs_check_id check;
    GtkWidget *box, *name;
    GtkRevealer *working;
    cell cells[2];
    char *working_key;
} row;

struct _HsFindings {
    GtkWidget parent;
    HsSession *session;
    gulong watch;
    GtkBox *list;
    GtkLabel *count, *left_name, *right_name, *pending;
    GtkToggleButton *by_left, *by_right;
    GtkBox *top;
    GtkButton *rest;
    GtkScrolledWindow *scroller;
    row rows[HS_N_CHECKS];
    gboolean shows_all, is_by_left, is_showing;
};
G_DEFINE_FINAL_TYPE(HsFindings, hs_findings, GTK_TYPE_WIDGET)

const hs_finding *
hs_finding_of(const hs_results *results, int option, hs_check_id check)
{
    if (results == NULL || option < 0 || option >= results->n_options)
        return NULL;
    for (int i = 0; i < results->options[option].n_findings; i++) {
        const hs_finding *finding = &results->options[option].findings[i];
        if (finding->check == check)
            return finding->status != HS_STATUS_NONE ? finding : NULL;
    }
    return NULL;
}

/* ---- order --------------------------------------------------------------------------------- */

/* How near to its limit: beyond first, then near, within, at last what is not judged. */
static double
closeness(const hs_finding *finding)
{
    static const double by_status[] = {-1.0, 10.0, 20.0, 30.0, 1.0};

    if (finding == NULL)
        return -1.0;
    static const double without_ratio[] = {0.0, 0.1, 0.95, 5.0, 0.0};
    double ratio = hs_has(finding->ratio) ? CLAMP(finding->ratio, 0.0, 9.0)
                                          : without_ratio[finding->status];
    double missing =
        finding->status == HS_STATUS_NOT_JUDGED && finding->why == HS_WHY_MISSING ? 5.0 : 0.0;
    return by_status[finding->status] +
           (finding->status == HS_STATUS_NOT_JUDGED ? missing : ratio);
}

static double
row_closeness(HsFindings *self, hs_check_id check)
{
    const hs_results *results = hs_session_results(self->session);
    int right = hs_session_right(self->session), left = hs_session_left(self->session);
    gboolean is_by_left = self->is_by_left || right < 0;
    double first = closeness(hs_finding_of(results, is_by_left ? left : right, check));
    double second = closeness(hs_finding_of(results, is_by_left ? right : left, check));

    return first >= 10.0 ? first + second * 1e-3 : MAX(first, 0.0) + second * 0.1;
}

static gboolean
is_judged(HsFindings *self, hs_check_id check)
{
    const hs_results *results = hs_session_results(self->session);
    int options[2] = {hs_session_left(self->session), hs_session_right(self->session)};

    for (int i = 0; i < 2; i++) {
        const hs_finding *finding = hs_finding_of(results, options[i], check);
        if (finding != NULL &&
            (finding->status != HS_STATUS_NOT_JUDGED || finding->why == HS_WHY_MISSING))
            return TRUE;
    }
    return FALSE;
}

static gboolean
is_there(HsFindings *self, hs_check_id check)
{
    const hs_results *results = hs_session_results(self->session);

    return hs_finding_of(results, hs_session_left(self->session), check) != NULL ||
           hs_finding_of(results, hs_session_right(self->session), check) != NULL;
}

static int
by_closeness(gconstpointer a, gconstpointer b, gpointer data)
{
    double x = row_closeness(data, *(const hs_check_id *)a),
           y = row_closeness(data, *(const hs_check_id *)b);

    return x > y ? -1 : x < y ? 1 : (int)*(const hs_check_id *)a - (int)*(const hs_check_id *)b;
}

/* ---- cells --------------------------------------------------------------------------------- */

/* Why an option has nothing to say about a check. */
static const char *
why_nothing(HsFindings *self, int option, hs_check_id check)
{
    const hs_task *task = hs_field_task(self->session);
    const hs_results *results = hs_session_results(self->session);
    gboolean is_of_suit = check == HS_CHECK_suit_rating || check == HS_CHECK_suit_scope ||
                          check == HS_CHECK_suit_power_loss || check == HS_CHECK_suit_energy ||
                          check == HS_CHECK_rescue;
    const hs_option *asked = results->options[option].asked;

    for (int i = 0; i < asked->n_bearers; i++)
        is_of_suit = is_of_suit && asked->bearers[i].suit < 0;
    if (is_of_suit)
        return _("does not apply: no suit");
    if (check == HS_CHECK_load_weighing && task != NULL && task->load.n_weighings == 0)
        return _("does not apply: not weighed");
    return _("does not apply here");
}

static void
show_cell(HsFindings *self, cell *at, int option, hs_check_id check)
{
    const hs_results *results = hs_session_results(self->session);
    const hs_finding *finding = hs_finding_of(results, option, check);

    gtk_widget_set_sensitive(at->button, finding != NULL);
    gtk_widget_set_visible(at->button, option >= 0);
    gtk_widget_set_visible(at->mark,
                           finding != NULL && finding->status != HS_STATUS_NOT_JUDGED);
    if (finding == NULL) {
        const char *why =
            option >= 0 && results != NULL ? why_nothing(self, option, check) : "";
        gtk_label_set_text(GTK_LABEL(at->figure), why);
        gtk_widget_set_visible(at->place, FALSE);
        gtk_widget_set_visible(at->word, FALSE);
        hs_look_name(at->button, *why ? why : _("does not apply here"));
        return;
    }
    g_autofree char *figure = hs_short_cell(finding, hs_look_units());
    g_autofree char *place = hs_words_place(&results->options[option], finding);
    g_autofree char *spoken = g_strdup_printf(
        "%s, %s: %s, %s", hs_words_check_in(results, check), results->options[option].name,
        hs_words_status(finding->status), figure);
    gboolean is_scope = finding->status == HS_STATUS_NOT_JUDGED;
    gtk_label_set_text(GTK_LABEL(at->figure), figure);
    gtk_label_set_text(GTK_LABEL(at->place), place);
    gtk_widget_set_visible(at->place, *place != '\0' && !is_scope);
    gtk_widget_set_visible(at->word, !is_scope);
    gtk_label_set_text(GTK_LABEL(at->word), hs_words_status(finding->status));
    hs_status_mark_set(at->mark, finding->status, finding->ratio);
    hs_look_name(at->button, spoken);
    hs_look_tip(at->button, hs_words_check_hint(check));
    for (const char *const *css =
             (const char *const[]){"beyond", "near", "within", "scope", NULL};
         *css; css++)
        gtk_widget_remove_css_class(at->word, *css);
    static const char *const by_status[] = {"scope", "within", "near", "beyond", "scope"};
    gtk_widget_add_css_class(at->word, by_status[finding->status]);
}

static void
show_working(HsFindings *self, row *at)
{
    const hs_results *results = hs_session_results(self->session);
    int option = hs_session_finding_option(self->session);
    gboolean is_chosen =
        option >= 0 && hs_session_finding_check(self->session) == (int)at->check;
    const hs_finding *finding = is_chosen ? hs_finding_of(results, option, at->check) : NULL;

    if (finding != NULL)
        gtk_widget_add_css_class(at->box, "chosen");
    else
        gtk_widget_remove_css_class(at->box, "chosen");
    for (int i = 0; i < 2; i++) {
        int shown = i ? hs_session_right(self->session) : hs_session_left(self->session);
        gtk_accessible_update_state(GTK_ACCESSIBLE(at->cells[i].button),
                                    GTK_ACCESSIBLE_STATE_EXPANDED,
                                    finding != NULL && shown == option, -1);
    }
    if (finding != NULL)
        gtk_revealer_set_child(at->working,
                               hs_working_view_new(self->session, option, finding));
    gtk_revealer_set_reveal_child(at->working, finding != NULL);
    if (finding == NULL)
        gtk_revealer_set_child(at->working, NULL);
}

static void
show_row(HsFindings *self, row *at)
{
    gtk_widget_set_visible(at->box, is_there(self, at->check) &&
                                        (self->shows_all || is_judged(self, at->check)));
    if (!gtk_widget_get_visible(at->box))
        return;
    gtk_label_set_text(GTK_LABEL(at->name),
                       hs_words_check_in(hs_session_results(self->session), at->check));
    show_cell(self, &at->cells[0], hs_session_left(self->session), at->check);
    show_cell(self, &at->cells[1], hs_session_right(self->session), at->check);
    show_working(self, at);
}

static void
show_count(HsFindings *self)
{
    int shown = 0, hidden = 0, missing = 0;
    const hs_results *results = hs_session_results(self->session);

    for (int i = 0; i < HS_N_CHECKS; i++) {
        const hs_finding *finding =
            hs_finding_of(results, hs_session_right(self->session), (hs_check_id)i);
        if (!is_there(self, (hs_check_id)i))
            continue;
        if (is_judged(self, (hs_check_id)i))
            shown++;
        else
            hidden++;
        missing += finding != NULL && finding->status == HS_STATUS_NOT_JUDGED &&
                   finding->why == HS_WHY_MISSING;
    }
    g_autofree char *count =
        missing ? g_strdup_printf(_("%d checks, %d not judged"), shown, missing)
                : g_strdup_printf(_("%d checks"), shown);
    gtk_label_set_text(self->count, count);
    gtk_widget_set_visible(GTK_WIDGET(self->rest), hidden > 0);
    g_autofree char *rest =
        self->shows_all ? g_strdup_printf(_("Hide the %d that are out of scope"), hidden)
                        : g_strdup_printf(_("%d more are out of scope: show them"), hidden);
    gtk_button_set_label(self->rest, rest);
    hs_look_name(self->rest, rest);
}

/* The column's name is a switch: rows are sorted by what it names. */
static void
show_column(GtkToggleButton *by, GtkLabel *label, const char *name, gboolean is_sorting)
{
    g_autofree char *spoken = is_sorting
                                  ? g_strdup_printf(_("Sorted by %s, nearest first"), name)
                                  : g_strdup_printf(_("Sort by %s"), name);

    gtk_label_set_text(label, name);
    gtk_toggle_button_set_active(by, is_sorting);
    hs_look_name(by, spoken);
    hs_look_tip(GTK_WIDGET(by), spoken);
}

static void
show_names(HsFindings *self)
{
    const hs_results *results = hs_session_results(self->session);
    int left = hs_session_left(self->session), right = hs_session_right(self->session);

    self->is_showing = TRUE;
    show_column(self->by_left, self->left_name,
                results && left >= 0 ? results->options[left].name : "",
                self->is_by_left || right < 0);
    show_column(self->by_right, self->right_name,
                results && right >= 0 ? results->options[right].name : "", !self->is_by_left);
    self->is_showing = FALSE;
    gtk_widget_set_visible(GTK_WIDGET(self->by_right), right >= 0);
    gtk_widget_set_visible(GTK_WIDGET(self->pending), hs_session_is_pending(self->session));
}

static void
show(HsFindings *self)
{
    hs_check_id order[HS_N_CHECKS];
    GtkWidget *last = NULL;

    for (int i = 0; i < HS_N_CHECKS; i++)
        order[i] = (hs_check_id)i;
    g_qsort_with_data(order, HS_N_CHECKS, sizeof *order, by_closeness, self);
    for (int i = 0; i < HS_N_CHECKS; i++) {
        row *at = &self->rows[order[i]];
        show_row(self, at);
        gtk_box_reorder_child_after(self->list, at->box, last);
        last = at->box;
    }
    show_names(self);
    show_count(self);
}

static void
on_changed(HsFindings *self, guint mask)
{
    if (mask & (HS_CHANGED_RESULTS | HS_CHANGED_CHOICE))
        show(self);
}

static void
on_cell(GtkButton *button, HsFindings *self)
{
    row *at = g_object_get_data(G_OBJECT(button), "hs-row");
    gboolean is_right = button == GTK_BUTTON(at->cells[1].button);
    int option = is_right ? hs_session_right(self->session) : hs_session_left(self->session);
    gboolean is_chosen = hs_session_finding_option(self->session) == option &&
                         hs_session_finding_check(self->session) == (int)at->check;

    hs_session_choose_finding(self->session, is_chosen ? -1 : option,
                              is_chosen ? -1 : (int)at->check);
}

static void
on_sort(GtkToggleButton *by, HsFindings *self)
{
    if (self->is_showing)
        return;
    self->is_by_left = by == self->by_left;
    show(self);
}

static void
on_rest(HsFindings *self)
{
    self->shows_all = !self->shows_all;
    show(self);
}

/* ---- construction -------------------------------------------------------------------------- */

static GtkWidget *
small_label(GtkWidget *box, const char *css)
{
    GtkWidget *label = gtk_label_new(NULL);

    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
    gtk_label_set_width_chars(GTK_LABEL(label), 8);
    gtk_widget_add_css_class(label, css);
    gtk_box_append(GTK_BOX(box), label);
    return label;
}

static void
build_cell(HsFindings *self, row *at, int i)
{
    cell *made = &at->cells[i];
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 1);

    made->button = gtk_button_new();
    made->figure = small_label(box, "figure");
    made->mark = hs_status_mark_new();
    gtk_widget_set_hexpand(made->mark, TRUE);
    gtk_box_append(GTK_BOX(box), made->mark);
    made->word = small_label(box, "status");
    made->place = small_label(box, "place");
    gtk_button_set_child(GTK_BUTTON(made->button), box);
    gtk_widget_add_css_class(made->button, "finding-cell");
    gtk_widget_set_valign(made->button, GTK_ALIGN_START);
    gtk_widget_set_hexpand(made->button, TRUE);
    g_object_set_data(G_OBJECT(made->button), "hs-row", at);
    g_signal_connect(made->button, "clicked", G_CALLBACK(on_cell), self);
}

static void
build_row(HsFindings *self, hs_check_id check)
{
    row *at = &self->rows[check];
    GtkWidget *line = gtk_grid_new(), *cells = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);

    at->check = check;
    at->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
    at->name = gtk_label_new(hs_words_check(check));
    gtk_label_set_xalign(GTK_LABEL(at->name), 0.0f);
    gtk_label_set_yalign(GTK_LABEL(at->name), 0.0f);
    gtk_label_set_wrap(GTK_LABEL(at->name), TRUE);
    gtk_label_set_width_chars(GTK_LABEL(at->name), 12);
    gtk_label_set_max_width_chars(GTK_LABEL(at->name), 12);
    gtk_widget_set_tooltip_text(at->name, hs_words_check_hint(check));
    gtk_widget_add_css_class(at->name, "check-name");
    gtk_box_set_homogeneous(GTK_BOX(cells), TRUE);
    gtk_widget_set_hexpand(cells, TRUE);
    for (int i = 0; i < 2; i++) {
        build_cell(self, at, i);
        gtk_box_append(GTK_BOX(cells), at->cells[i].button);
    }
    gtk_grid_attach(GTK_GRID(line), at->name, 0, 0, 1, 1);
    gtk_grid_attach(GTK_GRID(line), cells, 1, 0, 1, 1);
    gtk_box_append(GTK_BOX(at->box), line);
    at->working = GTK_REVEALER(gtk_revealer_new());
    gtk_revealer_set_transition_duration(at->working, 0);
    gtk_box_append(GTK_BOX(at->box), GTK_WIDGET(at->working));
    gtk_widget_add_css_class(at->box, "finding-row");
    gtk_box_append(self->list, at->box);
}

static void
dispose(GObject *object)
{
    HsFindings *self = HS_FINDINGS(object);

    hs_shell_leave(GTK_WIDGET(self), &self->session, &self->watch);
    G_OBJECT_CLASS(hs_findings_parent_class)->dispose(object);
}

static void
hs_findings_class_init(HsFindingsClass *class)
{
    GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);

    G_OBJECT_CLASS(class)->dispose = dispose;
    hs_shell_class(widget_class, "findings.ui", "findings", GTK_ACCESSIBLE_ROLE_REGION);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, list);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, count);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, left_name);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, right_name);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, by_left);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, by_right);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, pending);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, top);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, rest);
    gtk_widget_class_bind_template_child(widget_class, HsFindings, scroller);
    gtk_widget_class_bind_template_callback(widget_class, on_rest);
    gtk_widget_class_bind_template_callback(widget_class, on_sort);
}

static void
hs_findings_init(HsFindings *self)
{
    gtk_widget_init_template(GTK_WIDGET(self));
    hs_look_name(self, _("Findings"));
    hs_look_name_scroller(GTK_WIDGET(self->scroller), _("List of findings"));
}

GtkWidget *
hs_findings_new(HsSession *session)
{
    HsFindings *self = g_object_new(HS_TYPE_FINDINGS, NULL);

    self->session = g_object_ref(session);
    gtk_box_append(self->top, hs_verdict_card_new(session));
    for (int i = 0; i < HS_N_CHECKS; i++)
        build_row(self, (hs_check_id)i);
    self->watch = g_signal_connect_swapped(session, "changed", G_CALLBACK(on_changed), self);
    show(self);
    return GTK_WIDGET(self);
}
