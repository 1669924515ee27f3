/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the person see first?
 * Answer:    HsGalleryView: the worked scenarios as small side views, and a blank one.
 * Not here:  reading them (model/gallery.c). */
#include "gallery_view.h"

#include "desk.h"
#include "gallery.h"
#include "lesson_set.h"
#include "look.h"
#include "paint.h"
#include "window.h"

#include <glib/gi18n-lib.h>

typedef struct {
    GtkWidget *area;
    hs_example *example;
    hs_scene *scene; /* drawn when it is first seen */
    gboolean was_tried;
} tile;

static void
tile_free(gpointer data)
{
    tile *self = data;

    g_clear_pointer(&self->scene, hs_scene_free);
    hs_example_free(self->example);
    g_free(self);
}

/* The proposed option where there is one, a little way into the lift. A picture of people and load: no finding is in it, so it is
 * assessed without a set of limits. Opened, an example is a document like any other, with the set that is chosen. */
static void
build_scene(tile *self)
{
    const hs_task *task = hs_document_task(self->example->document);
    hs_answer *answer;

    self->was_tried = TRUE;
    if (task == NULL)
        return;
    answer = hs_answer_new(self->example->document, NULL, HS_ASSESS_LIVE, NULL, NULL);
    if (answer->status == HS_OK) {
        const hs_results *results = &answer->results;
        int option = task->n_options > 1 ? 1 : 0;
        hs_scene_request request = {.task = task,
                                    .results = results,
                                    .option = option,
                                    .sample = results->options[option].n_samples / 4,
                                    .layers = (1u << HS_LAYER_site) | (1u << HS_LAYER_suit) |
                                              (1u << HS_LAYER_figure) | (1u << HS_LAYER_load),
                                    .chosen_point = -1,
                                    .few_labels = TRUE};
        if (results->options[option].n_samples > 0)
            self->scene = hs_scene_build(&request);
    }
    hs_answer_free(answer);
}

static void
draw(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
    tile *self = data;

    if (!self->was_tried)
        build_scene(self);
    if (self->scene == NULL)
        return;
    hs_view view =
        hs_view_fit_people(self->scene, width, height, hs_look_font_px(GTK_WIDGET(area)) * 0.7);
    hs_paint_scene(cr, self->scene, &view, hs_look_theme(GTK_WIDGET(area)));
}

static void
on_tile(GtkButton *button)
{
    tile *self = g_object_get_data(G_OBJECT(button), "hs-tile");

    hs_window_open_document(HS_WINDOW(gtk_widget_get_root(GTK_WIDGET(button))),
                            self->example->document);
}

static GtkWidget *
wrapped(const char *text, const char *css, int lines)
{
    GtkWidget *label = gtk_label_new(text);

    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_xalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_yalign(GTK_LABEL(label), 0.0f);
    gtk_label_set_lines(GTK_LABEL(label), lines);
    gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
    gtk_label_set_max_width_chars(GTK_LABEL(label), 32);
    gtk_widget_add_css_class(label, css);
    return label;
}

static GtkWidget *
add_tile(GtkFlowBox *flow, const char *title, const char *caption, GtkWidget *picture)
{
    GtkWidget *button = gtk_button_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 4);

    gtk_box_append(GTK_BOX(box), picture);
    gtk_box_append(GTK_BOX(box), wrapped(title, "tile-title", 2));
    gtk_box_append(GTK_BOX(box), wrapped(caption, "soft", 2));
    gtk_button_set_child(GTK_BUTTON(button), box);
    gtk_widget_add_css_class(button, "tile");
    hs_look_name(button, title);
    gtk_flow_box_append(flow, button);
    gtk_widget_set_focusable(gtk_widget_get_parent(button), FALSE);
    hs_look_name(gtk_widget_get_parent(button), title);
    return button;
}

static GtkWidget *
picture_area(void)
{
    GtkWidget *area = gtk_drawing_area_new();

    gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area), 250);
    gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area), 150);
    gtk_widget_add_css_class(area, "tile-picture");
    return area;
}

static GtkWidget *
add_example(GtkFlowBox *flow, hs_example *example)
{
    tile *self = g_new0(tile, 1);

    self->example = example;
    self->area = picture_area();
    hs_look_name(self->area, example->title ? example->title : _("Untitled"));
    gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(self->area), draw, self, NULL);
    GtkWidget *button = add_tile(flow, example->title ? example->title : _("Untitled"),
                                 example->caption ? example->caption : "", self->area);
    g_object_set_data_full(G_OBJECT(button), "hs-tile", self, tile_free);
    return button;
}

static void
add_blank(GtkFlowBox *flow)
{
    hs_example *blank = g_new0(hs_example, 1);

    blank->title = g_strdup(_("Blank"));
    blank->caption = g_strdup(_("A box, a way, one person: change everything."));
    blank->document = hs_document_new_blank();
    gtk_actionable_set_action_name(GTK_ACTIONABLE(add_example(flow, blank)), "win.new");
}

/* The ready lessons, numbered: nothing has to be entered. */
static GtkWidget *
build_teach(void)
{
    GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 8);

    GtkWidget *title = wrapped(_("Teach, 20 minutes:"), "tile-title", 1);

    gtk_widget_set_valign(title, GTK_ALIGN_CENTER);
    gtk_box_append(GTK_BOX(line), title);
    for (int i = 0; i < hs_lesson_set_count(); i++) {
        g_autofree char *text = g_strdup_printf("%d  %s", i + 1, hs_lesson_set_title(i));
        GtkWidget *button = gtk_button_new_with_label(text);
        gtk_actionable_set_action_target(GTK_ACTIONABLE(button), "i", i);
        gtk_actionable_set_action_name(GTK_ACTIONABLE(button), "win.teach");
        hs_look_name(button, text);
        gtk_box_append(GTK_BOX(line), button);
    }
    gtk_widget_add_css_class(line, "teach");
    return line;
}

GtkWidget *
hs_gallery_view_new(void)
{
    GtkWidget *scroller = gtk_scrolled_window_new(),
              *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 18);
    GtkWidget *flow = gtk_flow_box_new();
    g_autoptr(GPtrArray) examples = hs_gallery_list();

    gtk_flow_box_set_selection_mode(GTK_FLOW_BOX(flow), GTK_SELECTION_NONE);
    gtk_flow_box_set_homogeneous(GTK_FLOW_BOX(flow), TRUE);
    gtk_flow_box_set_min_children_per_line(GTK_FLOW_BOX(flow), 2);
    gtk_flow_box_set_max_children_per_line(GTK_FLOW_BOX(flow), 4);
    gtk_flow_box_set_row_spacing(GTK_FLOW_BOX(flow), 14);
    gtk_flow_box_set_column_spacing(GTK_FLOW_BOX(flow), 14);
    hs_look_name(flow, _("Worked scenarios"));
    add_blank(GTK_FLOW_BOX(flow));
    g_ptr_array_set_free_func(examples, NULL);
    for (guint i = 0; i < examples->len; i++)
        g_signal_connect(add_example(GTK_FLOW_BOX(flow), examples->pdata[i]), "clicked",
                         G_CALLBACK(on_tile), NULL);
    gtk_box_append(
        GTK_BOX(box),
        wrapped(_("Can this lift, that a crew does today, be done by one worker in a suit?"),
                "start-title", 2));
    gtk_box_append(GTK_BOX(box),
                   wrapped(_("Open a worked scenario and change it, or begin with a blank one. "
                             "Loads, places, people and suits are invented."),
                           "soft", 2));
    gtk_box_append(GTK_BOX(box), build_teach());
    gtk_box_append(GTK_BOX(box), flow);
    gtk_widget_set_halign(box, GTK_ALIGN_CENTER);
    gtk_widget_add_css_class(box, "start-page");
    gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), box);
    gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER,
                                   GTK_POLICY_AUTOMATIC);
    hs_look_name_scroller(scroller, _("Start page"));
    return scroller;
}
