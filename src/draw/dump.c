/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the picture say, in text?
 * Answer:    hs_scene_dump(): a line for each thing, back to front, rounded to 1 mm and 1 N.
 * Not here:  the picture (paint.c). */
#include "scene_internal.h"

static const char *const kinds[HS_N_PRIMS] = {
    [HS_PRIM_LINE] = "line",           [HS_PRIM_SHAPE] = "shape",
    [HS_PRIM_DISC] = "disc",           [HS_PRIM_CG] = "cg",
    [HS_PRIM_ARROW] = "arrow",         [HS_PRIM_LABEL] = "label",
    [HS_PRIM_DIMENSION] = "dimension", [HS_PRIM_GRID] = "grid",
    [HS_PRIM_GROUND] = "ground",       [HS_PRIM_BAND] = "band",
    [HS_PRIM_PEAK] = "peak",           [HS_PRIM_BAR] = "bar",
    [HS_PRIM_BREAK] = "break",         [HS_PRIM_SCALES] = "scales",
    [HS_PRIM_RULER] = "ruler"};
static const char *const inks[HS_N_INKS] = {[HS_INK_NONE] = "none",
                                            [HS_INK_PAPER] = "paper",
                                            [HS_INK_GRID] = "grid",
                                            [HS_INK_INK] = "ink",
                                            [HS_INK_SOFT] = "soft",
                                            [HS_INK_FLOOR] = "floor",
                                            [HS_INK_LOAD] = "load",
                                            [HS_INK_LOAD_LINE] = "load-line",
                                            [HS_INK_BODY] = "body",
                                            [HS_INK_BODY_FAR] = "body-far",
                                            [HS_INK_BODY_LINE] = "body-line",
                                            [HS_INK_PERSON] = "person",
                                            [HS_INK_SUIT] = "suit",
                                            [HS_INK_SUIT_FILL] = "suit-fill",
                                            [HS_INK_WEIGHT] = "weight",
                                            [HS_INK_LIMIT] = "limit",
                                            [HS_INK_MARK] = "mark"};
static const char *const dashes[] = {"", " long-dash", " short-dash", " dotted"};
static const char *const layer_ids[HS_N_LAYERS] = {
#define LAYER(id, name, on, has_switch) #id,
#include "layers.def"
#undef LAYER
};

static int
mm(double value_m)
{
    return (int)lround(value_m * 1000);
}

/* Outlines as their box: what a reader can judge; lines and grounds with all their points while these are few. */
static void
dump_points(GString *text, const hs_scene *scene, const hs_prim *prim)
{
    const hs_vec2 *points_m = &g_array_index(scene->points, hs_vec2, prim->first);
    hs_vec2 least = {INFINITY, INFINITY}, most = {-INFINITY, -INFINITY};

    if (prim->n == 0)
        return;
    if (prim->n <= 6) {
        for (int i = 0; i < prim->n; i++)
            g_string_append_printf(text, " %d,%d", mm(points_m[i].x), mm(points_m[i].y));
        return;
    }
    for (int i = 0; i < prim->n; i++) {
        least = (hs_vec2){fmin(least.x, points_m[i].x), fmin(least.y, points_m[i].y)};
        most = (hs_vec2){fmax(most.x, points_m[i].x), fmax(most.y, points_m[i].y)};
    }
    g_string_append_printf(text, " x %d..%d z %d..%d", mm(least.x), mm(most.x), mm(least.y),
                           mm(most.y));
}

static void
dump_prim(GString *text, const hs_scene *scene, const hs_prim *prim)
{
    g_string_append_printf(text, "%-8s %-9s %s", layer_ids[prim->layer], kinds[prim->kind],
                           inks[prim->stroke]);
    if (prim->fill != HS_INK_NONE)
        g_string_append_printf(text, "/%s", inks[prim->fill]);
    g_string_append(text, dashes[prim->dash]);
    dump_points(text, scene, prim);
    if (prim->n == 0 && prim->kind != HS_PRIM_GRID && prim->kind != HS_PRIM_SCALES)
        g_string_append_printf(text, " %d,%d", mm(prim->at.x), mm(prim->at.y));
    if (prim->kind == HS_PRIM_DIMENSION || prim->kind == HS_PRIM_BAR)
        g_string_append_printf(text, " to %d,%d", mm(prim->to.x), mm(prim->to.y));
    if (prim->kind == HS_PRIM_ARROW)
        g_string_append_printf(text, " %d,%d N", (int)lround(prim->force_N.x),
                               (int)lround(prim->force_N.y));
    if (prim->kind == HS_PRIM_BAND)
        g_string_append_printf(text, " %d N", (int)lround(prim->size));
    if (prim->text)
        g_string_append_printf(text, " \"%s\"", prim->text);
    g_string_append_c(text, '\n');
}

char *
hs_scene_dump(const hs_scene *scene)
{
    GString *text = g_string_new(NULL);

    g_string_append_printf(text, "extent x %d..%d z %d..%d, greatest %d N\n",
                           mm(scene->least_m.x), mm(scene->most_m.x), mm(scene->least_m.y),
                           mm(scene->most_m.y), (int)lround(scene->greatest_N));
    for (guint i = 0; i < scene->folds->len; i++) {
        const hs_fold *fold = &g_array_index(scene->folds, hs_fold, i);

        g_string_append_printf(text, "fold %d..%d without %d\n", mm(fold->from_m),
                               mm(fold->to_m), mm(fold->removed_m));
    }
    for (guint i = 0; i < scene->prims->len; i++)
        dump_prim(text, scene, &g_array_index(scene->prims, hs_prim, i));
    return g_string_free(text, FALSE);
}
