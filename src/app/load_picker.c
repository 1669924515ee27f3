/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which load is it, roughly?
 * Answer:    the load's drawing as a button; it opens a catalogue of generic loads with a typed search.
 * Not here:  the loads (ui/loads.json), their drawing (draw). */
#include "load_picker.h"

#include "change.h"
#include "desk.h"
#include "field.h"
#include "load.h"
#include "look.h"
#include "notice.h"
#include "paint.h"
#include "rows.h"

#include <glib/gi18n-lib.h>

/* One entry's picture: a figure with the load, all to one scale. */
typedef struct {
    hs_scene *scene;
    GtkWidget *child; /* of the flow box */
    char *words;      /* what the search looks in, folded */
    int index;
} entry;

static void
entry_free(gpointer data)
{
    entry *self = data;

    g_clear_pointer(&self->scene, hs_scene_free);
    g_free(self->words);
    g_free(self);
}

static JsonArray *
catalogue(void)
{
    static JsonArray *list;

    if (list == NULL) {
        g_autoptr(GBytes) bytes = g_resources_lookup_data("/io/handspike/Handspike/loads.json",
                                                          G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
        g_autofree char *text =
            g_strndup(g_bytes_get_data(bytes, NULL), g_bytes_get_size(bytes));
        JsonNode *node = hs_change_node(text);
        list = json_node_dup_array(node);
        json_node_unref(node);
    }
    return list;
}

/* A scene of a load in somebody's hands. */
static hs_scene *
scene_of_load(JsonNode *load)
{
    g_autofree char *text = json_to_string(load, FALSE);
    JsonNode *own = hs_change_node(text);
    JsonArray *grips = json_object_get_array_member(json_node_get_object(own), "grips");
    GString *held = g_string_new(NULL);
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    hs_scene *scene = NULL;

    for (guint i = 0; i < json_array_get_length(grips) && i < 2; i++)
        g_string_append_printf(
            held, "%s\"%s\"", i ? ", " : "",
            json_object_get_string_member(json_array_get_object_element(grips, i), "id"));
    g_autofree char *whole =
        g_strdup_printf("{\"format\": \"handspike-assessment\", \"version\": 1, \"load\": %s, "
                        "\"route\": {\"points\": ["
                        "{\"x_m\": 0, \"z_m\": 0.7, \"move\": \"start\"}, {\"x_m\": 0, "
                        "\"z_m\": 0.75, \"move\": \"lift\"}]},"
                        "\"workers\": [{\"id\": \"w\"}], \"options\": [{\"id\": \"o\", "
                        "\"bearers\": [{\"id\": \"A\", \"worker\": \"w\","
                        "\"grips\": [%s]}]}]}",
                        text, held->str);
    g_string_free(held, TRUE);
    json_node_unref(own);
    hs_document *document = hs_document_from_bytes(whole, strlen(whole), faults);
    /* A picture for a catalogue: no finding is in it, so no set of limits either. */
    hs_answer *answer = document != NULL && hs_document_task(document) != NULL
                            ? hs_answer_new(document, NULL, HS_ASSESS_LIVE, NULL, NULL)
                            : NULL;
    if (answer != NULL && answer->status == HS_OK) {
        hs_scene_request request = {.task = hs_document_task(document),
                                    .results = &answer->results,
                                    .layers = (1u << HS_LAYER_figure) | (1u << HS_LAYER_load),
                                    .chosen_point = -1};
        scene = hs_scene_build(&request);
    }
    g_clear_pointer(&answer, hs_answer_free);
    g_clear_pointer(&document, hs_document_unref);
    return scene;
}

static void
draw_entry(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
    entry *self = data;
    hs_vec2 least, most;

    if (self->scene == NULL)
        self->scene = scene_of_load(json_array_get_element(catalogue(), (guint)self->index));
    if (self->scene == NULL)
        return;
    hs_view view =
        hs_view_fit(self->scene, width, height, hs_look_font_px(GTK_WIDGET(area)) * 0.6);
    hs_scene_extent(self->scene, &least, &most);
    /* One scale for all: a person of 1.8 m fills the height. */
    double scale = (height - 8.0) / 1.9;
    view.x0_px = width / 2.0 - (least.x + most.x) / 2.0 * scale;
    view.y0_px = height - 4.0;
    view.scale_px_per_m = scale;
    hs_paint_scene(cr, self->scene, &view, hs_look_theme(GTK_WIDGET(area)));
}

/* ---- choice -------------------------------------------------------------------------------- */

/* Every grip of the new load that bearers ask for must be there: the options' bearers take its grips in turn. */
static void
give_grips(HsSession *session, hs_edit *edit, JsonArray *grips)
{
    const hs_document *document = hs_session_document(session);
    int n = (int)json_array_get_length(grips);

    for (int o = 0; o < hs_field_length(document, "options"); o++) {
        g_autofree char *bearers = g_strdup_printf("options[%d].bearers", o);
        int n_bearers = hs_field_length(document, bearers);
        for (int b = n_bearers - 1; b >= MAX(n, 1); b--) {
            g_autofree char *path = g_strdup_printf("%s[%d]", bearers, b);
            hs_edit_remove(edit, path);
        }
        for (int b = 0; b < MIN(n_bearers, n); b++) {
            JsonArray *held = json_array_new();
            JsonNode *node = json_node_new(JSON_NODE_ARRAY);
            g_autofree char *path = g_strdup_printf("%s[%d].grips", bearers, b);
            for (int g = b; g < (n_bearers == 1 ? MIN(n, 2) : b + 1); g++)
                json_array_add_string_element(
                    held, json_object_get_string_member(
                              json_array_get_object_element(grips, (guint)g), "id"));
            json_node_take_array(node, held);
            hs_edit_set(edit, path, node);
        }
    }
}

static void
take_load(GtkWidget *from, HsSession *session, int index)
{
    JsonObject *load = json_array_get_object_element(catalogue(), (guint)index);
    hs_edit *edit = hs_edit_new(_("Choose a load"));
    gboolean is_weighed = hs_field_length(hs_session_document(session), "load.weighings") > 0;
    const char *const members[] = {"name", "parts", "grips"};

    for (guint i = 0; i < G_N_ELEMENTS(members); i++) {
        g_autofree char *path = g_strdup_printf("load.%s", members[i]);
        g_autofree char *text = json_to_string(json_object_get_member(load, members[i]), FALSE);
        hs_edit_set(edit, path, hs_change_node(text));
    }
    give_grips(session, edit, json_object_get_array_member(load, "grips"));
    if (hs_change_commit(from, session, edit) && is_weighed)
        hs_notice_say(from, _("The scale readings were kept: they still decide mass and CG."));
}

static void
on_child(GtkFlowBox *flow, GtkFlowBoxChild *child, HsSession *session)
{
    entry *self = g_object_get_data(G_OBJECT(child), "hs-entry");
    GtkWidget *popover = gtk_widget_get_ancestor(GTK_WIDGET(flow), GTK_TYPE_POPOVER);
    GtkWidget *button = gtk_widget_get_parent(popover);

    gtk_popover_popdown(GTK_POPOVER(popover));
    take_load(button, session, self->index);
}

static gboolean
matches(GtkFlowBoxChild *child, gpointer search)
{
    entry *self = g_object_get_data(G_OBJECT(child), "hs-entry");
    g_autofree char *typed = g_utf8_casefold(gtk_editable_get_text(GTK_EDITABLE(search)), -1);

    return *typed == '\0' || strstr(self->words, typed) != NULL;
}

static void
on_search(GtkSearchEntry *search, GtkFlowBox *flow)
{
    (void)search;
    gtk_flow_box_invalidate_filter(flow);
}

static void
on_search_activate(GtkSearchEntry *search, GtkFlowBox *flow)
{
    for (int i = 0; gtk_flow_box_get_child_at_index(flow, i) != NULL; i++) {
        GtkFlowBoxChild *child = gtk_flow_box_get_child_at_index(flow, i);
        if (matches(child, search)) {
            g_signal_emit_by_name(child, "activate");
            return;
        }
    }
}

static void
add_entry(GtkFlowBox *flow, int index)
{
    JsonObject *load = json_array_get_object_element(catalogue(), (guint)index);
    const char *name = _(json_object_get_string_member(load, "name"));
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 2), *area = gtk_drawing_area_new();
    GtkWidget *label = gtk_label_new(name);
    entry *self = g_new0(entry, 1);

    self->index = index;
    g_autofree char *both =
        g_strdup_printf("%s %s", name, json_object_get_string_member(load, "name"));
    self->words = g_utf8_casefold(both, -1);
    gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area), 130);
    gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area), 110);
    gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw_entry, self, NULL);
    hs_look_name(area, name);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_max_width_chars(GTK_LABEL(label), 18);
    gtk_label_set_justify(GTK_LABEL(label), GTK_JUSTIFY_CENTER);
    gtk_box_append(GTK_BOX(box), area);
    gtk_box_append(GTK_BOX(box), label);
    self->child = gtk_flow_box_child_new();
    gtk_flow_box_child_set_child(GTK_FLOW_BOX_CHILD(self->child), box);
    g_object_set_data_full(G_OBJECT(self->child), "hs-entry", self, entry_free);
    hs_look_name(self->child, name);
    gtk_flow_box_append(flow, self->child);
}

static void
fill(GtkMenuButton *button, gpointer session)
{
    GtkWidget *popover = gtk_popover_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
    GtkWidget *search = gtk_search_entry_new(), *flow = gtk_flow_box_new(),
              *scroller = gtk_scrolled_window_new();

    gtk_flow_box_set_min_children_per_line(GTK_FLOW_BOX(flow), 4);
    gtk_flow_box_set_max_children_per_line(GTK_FLOW_BOX(flow), 4);
    gtk_flow_box_set_selection_mode(GTK_FLOW_BOX(flow), GTK_SELECTION_BROWSE);
    gtk_flow_box_set_activate_on_single_click(GTK_FLOW_BOX(flow), TRUE);
    gtk_flow_box_set_homogeneous(GTK_FLOW_BOX(flow), TRUE);
    for (guint i = 0; i < json_array_get_length(catalogue()); i++)
        add_entry(GTK_FLOW_BOX(flow), (int)i);
    gtk_flow_box_set_filter_func(GTK_FLOW_BOX(flow), matches, search, NULL);
    g_signal_connect(search, "search-changed", G_CALLBACK(on_search), flow);
    g_signal_connect(search, "activate", G_CALLBACK(on_search_activate), flow);
    g_signal_connect(flow, "child-activated", G_CALLBACK(on_child), session);
    hs_look_name(search, _("Search the loads"));
    hs_look_name(flow, _("Loads"));
    hs_look_name_scroller(scroller, _("Loads"));
    hs_look_name(popover, _("Choose a load"));
    gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), flow);
    gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER,
                                   GTK_POLICY_AUTOMATIC);
    gtk_scrolled_window_set_propagate_natural_height(GTK_SCROLLED_WINDOW(scroller), TRUE);
    gtk_scrolled_window_set_max_content_height(GTK_SCROLLED_WINDOW(scroller), 480);
    gtk_widget_set_size_request(scroller, 600, 300);
    gtk_box_append(GTK_BOX(box), search);
    gtk_box_append(GTK_BOX(box), scroller);
    gtk_widget_add_css_class(box, "popover-list");
    gtk_popover_set_child(GTK_POPOVER(popover), box);
    gtk_menu_button_set_popover(button, popover);
}

/* ---- the button ---------------------------------------------------------------------------- */

/* The whole load, its middle in the middle. */
static double
picture_scale(const hs_load *load, int width, int height)
{
    double half_m = 0.15, top_m = 0.2;

    for (int i = 0; i < load->n_grips; i++) {
        half_m = MAX(half_m, ABS(load->grips[i].at_m.x));
        top_m = MAX(top_m, load->grips[i].at_m.z);
    }
    for (int i = 0; i < load->n_parts; i++) {
        hs_vec3 a, b;
        hs_part_box(&load->parts[i], &a, &b);
        half_m = MAX(half_m, MAX(ABS(a.x), ABS(b.x)));
        top_m = MAX(top_m, b.z);
    }
    return MIN((width - 40.0) / (2.0 * half_m), (height - 36.0) / top_m);
}

static void
draw_load(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer session)
{
    const hs_results *results = hs_session_results(session);
    int option = hs_session_left(session);

    if (results == NULL || option < 0 || results->options[option].n_samples == 0)
        return;
    hs_scene_request request = {.task = hs_field_task(session),
                                .results = results,
                                .option = option,
                                .layers = 1u << HS_LAYER_load,
                                .chosen_point = -1,
                                .us_units = hs_look_units() == HS_UNITS_US};
    g_autoptr(hs_scene) scene = hs_scene_build(&request);
    const hs_sample *sample = &results->options[option].samples[0];
    hs_view view = hs_view_fit(scene, width, height, hs_look_font_px(GTK_WIDGET(area)) * 0.8);
    view.scale_px_per_m = picture_scale(&request.task->load, width, height);
    view.x0_px = width / 2.0 - hs_scene_x_of_world(scene, sample->x_m) * view.scale_px_per_m;
    view.y0_px = height - 18.0 + sample->z_m * view.scale_px_per_m;
    hs_paint_scene(cr, scene, &view, hs_look_theme(GTK_WIDGET(area)));
}

static void
on_changed(GtkWidget *area, guint mask)
{
    if (mask & HS_CHANGED_RESULTS)
        gtk_widget_queue_draw(area);
}

GtkWidget *
hs_load_picture_new(HsSession *session)
{
    GtkWidget *area = gtk_drawing_area_new();

    gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area), 120);
    gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area), 220);
    gtk_widget_set_hexpand(area, TRUE);
    gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw_load, session, NULL);
    g_signal_connect_object(session, "changed", G_CALLBACK(on_changed), area,
                            G_CONNECT_SWAPPED);
    return area;
}

double
hs_load_picture_x_m(GtkWidget *picture, HsSession *session, double x_px)
{
    const hs_task *task = hs_field_task(session);
    int width = gtk_widget_get_width(picture), height = gtk_widget_get_height(picture);

    return task != NULL ? (x_px - width / 2.0) / picture_scale(&task->load, width, height)
                        : 0.0;
}

GtkWidget *
hs_load_picker_new(HsSession *session)
{
    GtkWidget *button = gtk_menu_button_new(), *area = hs_load_picture_new(session);

    hs_look_name(area, _("Drawing of the load"));
    gtk_menu_button_set_child(GTK_MENU_BUTTON(button), area);
    gtk_menu_button_set_direction(GTK_MENU_BUTTON(button), GTK_ARROW_RIGHT);
    gtk_menu_button_set_create_popup_func(GTK_MENU_BUTTON(button), fill, session, NULL);
    gtk_widget_add_css_class(button, "load-picture");
    gtk_widget_set_tooltip_text(button, _("Choose another load"));
    hs_row_name_button(button, _("Choose a load"));
    return button;
}
