/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which colours, line styles and fonts?
 * Answer:    three tables. Blue is a force of a person, orange of the suit, grey the weight; nothing else has a colour.
 * Not here:  geometry. */
#include "theme.h"

#define HEX(v)                                                                                 \
    {                                                                                          \
        (double)((v) >> 16 & 0xff) / 255, (double)((v) >> 8 & 0xff) / 255,                     \
            (double)((v)&0xff) / 255, 1                                                        \
    }
#define HEXA(v, a)                                                                             \
    {                                                                                          \
        (double)((v) >> 16 & 0xff) / 255, (double)((v) >> 8 & 0xff) / 255,                     \
            (double)((v)&0xff) / 255, a                                                        \
    }

/* The one place that names the type: its package is a dependency, so that files repeat byte for byte. */
#define FAMILY "Noto Sans"

static const hs_theme light = {.kind = HS_THEME_LIGHT,
                               .paper = HEX(0xffffff),
                               .grid = HEX(0xe3e8ee),
                               .ink = HEX(0x1c2126),
                               .soft_ink = HEX(0x5b6672),
                               .floor = HEX(0xe9edf0),
                               .load = HEX(0xe2e5e9),
                               .load_line = HEX(0x4a525b),
                               .body = HEX(0xe8eef5),
                               .body_line = HEX(0x74828f),
                               .person = HEX(0x1660ab),
                               .suit = HEX(0xbf540f),
                               .suit_fill = HEX(0xfad9c0),
                               .weight = HEX(0x5a5f66),
                               .limit = HEX(0x2b2f34),
                               .mark = HEX(0x111418),
                               .font_family = FAMILY,
                               .line_px = 1};

static const hs_theme dark = {.kind = HS_THEME_DARK,
                              .paper = HEX(0x1d2024),
                              .grid = HEX(0x2b3036),
                              .ink = HEX(0xedf0f3),
                              .soft_ink = HEX(0xa3adb8),
                              .floor = HEX(0x282d32),
                              .load = HEX(0x474e56),
                              .load_line = HEX(0xbcc4cc),
                              .body = HEX(0x39434e),
                              .body_line = HEX(0x93a1af),
                              .person = HEX(0x6db3f8),
                              .suit = HEX(0xf79a4f),
                              .suit_fill = HEX(0x5c3a22),
                              .weight = HEX(0xb4bac1),
                              .limit = HEX(0xd6dade),
                              .mark = HEX(0xf7f9fa),
                              .font_family = FAMILY,
                              .line_px = 1};

/* Black and white: a one-bit copy of it must say the same. Fills are paper, so that near things cover far ones. */
static const hs_theme paper = {.kind = HS_THEME_PAPER,
                               .paper = HEX(0xffffff),
                               .grid = HEXA(0xffffff, 0),
                               .ink = HEX(0x000000),
                               .soft_ink = HEX(0x000000),
                               .floor = HEX(0xffffff),
                               .load = HEX(0xffffff),
                               .load_line = HEX(0x000000),
                               .body = HEX(0xffffff),
                               .body_line = HEX(0x000000),
                               .person = HEX(0x000000),
                               .suit = HEX(0x000000),
                               .suit_fill = HEX(0xffffff),
                               .weight = HEX(0x000000),
                               .limit = HEX(0x000000),
                               .mark = HEX(0x000000),
                               .font_family = FAMILY,
                               .line_px = 1};

const hs_theme *
hs_theme_get(hs_theme_kind kind)
{
    static const hs_theme *const themes[] = {&light, &dark, &paper};

    return themes[kind];
}

hs_theme
hs_theme_lesson(void)
{
    hs_theme theme = light;

    theme.line_px =
        1.1; /* times the large type: outlines and shafts come to 4 px on the wall */
    theme.ink = theme.mark;
    return theme;
}
