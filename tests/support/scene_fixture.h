/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the drawing's tests draw?
 * Answer:    an invented task and results made by hand, so that a picture's golden does not move with the computation.
 * Not here:  real results (core/assess.c). */
#ifndef HS_SCENE_FIXTURE_H
#define HS_SCENE_FIXTURE_H

#include "scene.h"

enum {
    HS_FIXTURE_CREW,
    HS_FIXTURE_SUITED,
    HS_FIXTURE_LOST,
    HS_FIXTURE_ASIDE,
    HS_FIXTURE_N_OPTIONS
};

/* Lives as long as the process. */
const hs_task *hs_fixture_task(void);
const hs_results *hs_fixture_results(void);
/* All layers as at first, the sample nearest to a place of the route (1.25 as in files). */
hs_scene_request hs_fixture_request(int option, double route);

#endif
