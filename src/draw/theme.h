/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which colours, line styles and fonts?
 * Answer:    hs_theme for light, dark, and paper (black and white, legible after a bad photocopy).
 * Not here:  geometry. */
#ifndef HS_THEME_H
#define HS_THEME_H

typedef struct {
    double r, g, b, a;
} hs_colour;

typedef enum {
    HS_THEME_LIGHT,
    HS_THEME_DARK,
    HS_THEME_PAPER
} hs_theme_kind;

typedef struct {
    hs_theme_kind kind;
    hs_colour paper, grid, ink, soft_ink, floor, load, load_line, body, body_line, person, suit,
        suit_fill, weight, limit, mark;
    const char *font_family;
    double line_px; /* 1 on screen; more in the lesson */
} hs_theme;

const hs_theme *hs_theme_get(hs_theme_kind kind);
/* The lesson's: daylight palette, thick lines. */
hs_theme hs_theme_lesson(void);

#endif
