/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the strip show?
 * Answer:    hs_plot_paint(): one quantity of two options along the route's time, limit as a hatched wall, worst place marked.
 * Not here:  the time axis' controls (app/strip.c). */
#ifndef HS_PLOT_H
#define HS_PLOT_H

#include "result.h"
#include "theme.h"

#include <cairo.h>
#include <glib.h>

typedef enum {
    HS_PLOT_HANDS,       /* share / felt, N */
    HS_PLOT_COMPRESSION, /* kN */
    HS_PLOT_BALANCE,     /* mm to the edge */
    HS_PLOT_POWER_OFF,   /* seconds held against needed */
    HS_N_PLOTS
} hs_plot_kind;

const char *hs_plot_title(hs_plot_kind kind);
const char *hs_plot_unit(hs_plot_kind kind);

typedef struct {
    const hs_results *results;
    const hs_task *task; /* the legs' words under the axis; NULL: none */
    int left, right;     /* options; right -1: one only */
    hs_plot_kind kind;
    double width_px, height_px;
    double axis_px; /* room for the axis figures on the left */
    double font_px;
    gboolean us_units;
} hs_plot_request;

void hs_plot_paint(cairo_t *cr, const hs_plot_request *request, const hs_theme *theme);
/* The time axis under the plots: points' numbers and the legs' words. */
void hs_plot_axis_paint(cairo_t *cr, const hs_plot_request *request, const hs_theme *theme);
/* x of a time and back, shared by all plots of the strip */
double hs_plot_x_of_time(const hs_plot_request *request, double t_s);
double hs_plot_time_of_x(const hs_plot_request *request, double x_px);
/* Value shown for an option at a sample (worst bearer), HS_ABSENT when none: also for speech. */
double hs_plot_value(const hs_results *results, int option, int sample, hs_plot_kind kind);

#endif
