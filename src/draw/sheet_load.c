/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which load was it, and from where are its lengths measured?
 * Answer:    two sketches to one scale, from the side and from above: outline, centre of gravity, grips, the place where x and
 *            y are 0; mass and centre in figures, and how they are known.
 * Not here:  readings and parts (sheet_annex.c, sheet_full.c). */
#include "paint_mark.h"
#include "quantity.h"
#include "sheet_parts.h"
#include "solid.h"
#include "translate.h"
#include "words.h"

#define SKETCH_PT 58.0
#define TIGHT_PT  46.0 /* where side 2 is full */
#define ROOM_PT   13.0 /* round the outline, for the letters */
#define CENTRE_PT 4.5
#define LONGEST   150.0 /* pt for a metre: a small box is not blown up */

typedef struct {
    hs_look look;
    double x_pt, y_pt, wide_pt, high_pt; /* of the frame */
    double scale;
    hs_vec2 middle_m;
} hs_sketch;

static hs_vec2
place(const hs_sketch *sketch, hs_vec3 at_m)
{
    double up_m = sketch->look == HS_LOOK_DOWN ? at_m.y : at_m.z;

    return (hs_vec2){
        sketch->x_pt + sketch->wide_pt / 2 + (at_m.x - sketch->middle_m.x) * sketch->scale,
        sketch->y_pt + sketch->high_pt / 2 - (up_m - sketch->middle_m.y) * sketch->scale};
}

static void
paint_outlines(hs_page *page, const hs_sketch *sketch)
{
    static const hs_sample level = {0};
    const hs_load *load = &hs_page_task(page)->load;
    hs_projection projection = {sketch->look, &level, 0};

    for (int i = 0; i < load->n_parts; i++) {
        hs_outline outline;

        if (load->parts[i].is_void ||
            !hs_solid_outline(&projection, &load->parts[i], 0, &outline))
            continue;
        cairo_new_path(page->cr);
        for (int k = 0; k < outline.n; k++) {
            hs_vec3 at_m = {outline.at[k].x, outline.at[k].y, outline.at[k].y};
            hs_vec2 at = place(sketch, at_m);
            cairo_line_to(page->cr, at.x, at.y);
        }
        cairo_close_path(page->cr);
        hs_paint_colour(page->cr, page->theme->paper, 1);
        cairo_fill_preserve(page->cr);
        hs_paint_colour(page->cr, page->theme->ink, 1);
        cairo_set_line_width(page->cr, 1);
        cairo_stroke(page->cr);
    }
}

/* The mark that the lengths are measured from: a black square with an arrow to the front. */
static void
paint_origin(hs_page *page, const hs_sketch *sketch)
{
    hs_vec2 at = place(sketch, (hs_vec3){0, 0, 0});
    double long_pt = 20;

    hs_paint_colour(page->cr, page->theme->ink, 1);
    cairo_rectangle(page->cr, at.x - 2.5, at.y - 2.5, 5, 5);
    cairo_fill(page->cr);
    hs_page_line(page, at.x, at.y, at.x + long_pt, at.y);
    cairo_move_to(page->cr, at.x + long_pt + 4, at.y);
    cairo_line_to(page->cr, at.x + long_pt - 1, at.y - 2.6);
    cairo_line_to(page->cr, at.x + long_pt - 1, at.y + 2.6);
    cairo_fill(page->cr);
    if (sketch->look == HS_LOOK_ALONG_Y)
        hs_page_text_at(page, HS_TYPE_BOLD, "0", at.x - 9, at.y, -1);
    else
        hs_page_text_at(page, HS_TYPE_BOLD, "0", at.x - 9, at.y - 5, -1);
}

static void
paint_sketch(hs_page *page, const hs_sketch *sketch, const char *name)
{
    hs_vec3 centre_m = page->request->results->load.centre_m;
    const hs_load *load = &hs_page_task(page)->load;

    paint_outlines(page, sketch);
    for (int i = 0; i < load->n_grips; i++) {
        hs_vec2 at = place(sketch, load->grips[i].at_m);
        cairo_arc(page->cr, at.x, at.y, 2.2, 0, 2 * G_PI);
        hs_paint_colour(page->cr, page->theme->paper, 1);
        cairo_fill_preserve(page->cr);
        hs_paint_colour(page->cr, page->theme->ink, 1);
        cairo_set_line_width(page->cr, 1);
        cairo_stroke(page->cr);
    }
    paint_origin(page, sketch);
    if (hs_has(centre_m.x) && hs_has(centre_m.y) &&
        (sketch->look == HS_LOOK_DOWN || hs_has(centre_m.z)))
        hs_paint_cg_disc(page->cr, place(sketch, centre_m), CENTRE_PT, 0.67);
    hs_page_text_at(page, HS_TYPE_TEXT, name, sketch->x_pt, sketch->y_pt - 2, -1);
}

static void
paint_sketches(hs_page *page)
{
    hs_vec3 least_m = {0, 0, 0}, most_m = {0, 0, 0};
    double wide = hs_page_width_pt(page) / 2, high = page->is_tight ? TIGHT_PT : SKETCH_PT;
    double room = high - 2 * ROOM_PT;

    if (!hs_scene_load_box(hs_page_task(page), &least_m, &most_m))
        return;
    double scale = fmin(fmin((wide - 2 * ROOM_PT) / fmax(most_m.x - least_m.x, 0.05), LONGEST),
                        room / fmax(fmax(most_m.y - least_m.y, most_m.z - least_m.z), 0.05));
    hs_vec2 side_m = {(least_m.x + most_m.x) / 2, (least_m.z + most_m.z) / 2},
            above_m = {side_m.x, (least_m.y + most_m.y) / 2};
    hs_sketch side = {HS_LOOK_ALONG_Y, page->left_pt, page->y_pt, wide, high, scale, side_m},
              above = {HS_LOOK_DOWN, page->left_pt + wide, page->y_pt, wide, high, scale,
                       above_m};

    paint_sketch(page, &side, _("from the side"));
    paint_sketch(page, &above, _("from above"));
    page->y_pt += high;
    hs_page_text(page, HS_TYPE_TEXT,
                 _("0: lengths count from here; arrow: to the front; rings: grips."));
}

static char *
centre_text(hs_page *page, hs_vec3 at_m)
{
    g_autofree char *x = hs_quantity_text(at_m.x, "m", page->units);
    g_autofree char *y = hs_quantity_text(at_m.y, "m", page->units);
    g_autofree char *z =
        hs_has(at_m.z) ? hs_quantity_text(at_m.z, "m", page->units) : g_strdup(_("not known"));

    return g_strdup_printf(_("%s along, %s to the left, %s up"), x, y, z);
}

void
hs_sheet_load(hs_page *page)
{
    const hs_load *load = &hs_page_task(page)->load;
    const hs_load_result *found = &page->request->results->load;
    g_autofree char *mass = hs_quantity_text(found->mass_kg, "kg", page->units);
    g_autofree char *doubt = hs_has(found->mass_tol_kg)
                                 ? hs_quantity_text(found->mass_tol_kg, "kg", page->units)
                                 : NULL;
    g_autofree char *both =
        doubt ? g_strdup_printf(_("%s, give or take %s"), mass, doubt) : g_strdup(mass);
    g_autofree char *centre = centre_text(page, found->centre_m);
    g_autofree char *gross = g_strdup_printf(_("Gross mass %s."), both);
    g_autofree char *where = g_strdup_printf(_("Centre of gravity %s."), centre);
    g_autofree char *how =
        load->n_weighings > 0
            ? g_strdup_printf(
                  g_dngettext(
                      GETTEXT_PACKAGE,
                      "Measured with %d weighing at the supports; readings in the annex.",
                      "Measured with %d weighings at the supports; readings in the annex.",
                      (gulong)load->n_weighings),
                  load->n_weighings)
            : g_strdup(_("Summed from its parts; how each is known stands in the annex."));
    g_autofree char *said = g_strjoin(" ", gross, where, how, NULL);

    hs_page_subhead(page, _("The load, and how it is known"));
    paint_sketches(page);
    hs_page_text(page, HS_TYPE_TEXT, said);
}
