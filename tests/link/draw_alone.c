/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does all of draw, with model and core, link without GTK?
 * Answer:    this program has every object of the three in it; that it links is the test, that it answers is a sign of life.
 * Not here:  includes (tests/lint/layers.py). */
#include "scene.h"
#include "view.h"

#include <stdio.h>

int
main(void)
{
    hs_view view = {.scale_px_per_m = 100.0, .x0_px = 10.0, .y0_px = 500.0};
    hs_vec2 at_m = hs_view_to_world(&view, hs_view_to_surface(&view, (hs_vec2){1.5, 2.5}));

    printf("%g %g\n", at_m.x, at_m.y);
    return fabs(at_m.x - 1.5) < 1e-12 && fabs(at_m.y - 2.5) < 1e-12 ? 0 : 1;
}
