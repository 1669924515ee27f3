/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which parts of a long way are left out of the picture?
 * Answer:    hs_folds_find(): every stretch of level carry legs over 2 m where neither load nor figures overhang anything.
 * Not here:  the break mark (site_layer.c). */
#ifndef HS_FOLD_H
#define HS_FOLD_H

#include "scene_internal.h"

/* Fills scene->folds; the same for every option of the results, so that two stages side by side agree. */
void hs_folds_find(hs_scene *scene);
double hs_fold_x_of_world(const GArray *folds, double x_m);
double hs_fold_world_of_x(const GArray *folds, double x_m);

#endif
