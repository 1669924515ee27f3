/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a status shown beside its word?
 * Answer:    a bar from 0 to beyond the wall at the limit; not judged is an empty frame.
 * Not here:  the drawing itself (draw/paint.h). */
#include "findings.h"

#include "look.h"
#include "paint.h"

typedef struct {
    hs_finding_status status;
    double ratio;
} mark_state;

static void
draw(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
    mark_state *state = data;

    if (state->status == HS_STATUS_NOT_JUDGED)
        hs_paint_status_glyph(cr, state->status, 1.0, (height - 10.0) / 2.0, 10.0,
                              hs_look_theme(GTK_WIDGET(area)));
    else if (state->status != HS_STATUS_NONE)
        hs_paint_ratio_bar(cr, state->status, state->ratio, 1.0, (height - 7.0) / 2.0,
                           width - 2.0, 7.0, hs_look_theme(GTK_WIDGET(area)));
}

GtkWidget *
hs_status_mark_new(void)
{
    GtkWidget *area = gtk_drawing_area_new();
    mark_state *state = g_new0(mark_state, 1);

    state->ratio = HS_ABSENT;
    g_object_set_data_full(G_OBJECT(area), "hs-mark", state, g_free);
    gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw, state, NULL);
    gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area), 96);
    gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area), 12);
    return area;
}

void
hs_status_mark_set(GtkWidget *area, hs_finding_status status, double ratio)
{
    mark_state *state = g_object_get_data(G_OBJECT(area), "hs-mark");

    state->status = status;
    state->ratio = ratio;
    hs_look_name(area, hs_words_status(status));
    gtk_widget_queue_draw(area);
}
