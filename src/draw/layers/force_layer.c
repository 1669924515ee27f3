/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who holds how much of the load?
 * Answer:    at the hands a filled arrow of each bearer without a suit, an open double one of each suit; under the feet what
 *            the floor carries.
 * Not here:  what a suited bearer's hands feel (felt_layer.c). */
#include "quantity.h"
#include "scene_internal.h"
#include "translate.h"

static char *
named(const hs_scene *scene, int bearer, char *text_taken)
{
    char *text = text_taken;

    if (scene->option->asked->n_bearers > 1) {
        text = g_strdup_printf("%s %s", hs_scene_bearer_id(scene, bearer), text_taken);
        g_free(text_taken);
    }
    return text;
}

static void
put_arrow(hs_scene *scene,
          hs_vec2 at_m,
          double force_N,
          hs_arrow_style style,
          double dx,
          hs_side side,
          char *text_taken)
{
    hs_prim *arrow = hs_scene_add_arrow(scene, at_m, (hs_vec2){0, force_N}, style);
    hs_ink ink = arrow->stroke;

    arrow->offset.x = dx;
    hs_prim *label = hs_scene_add_label(scene, at_m, side, ink, text_taken);

    label->force_N = (hs_vec2){0, force_N};
    label->offset =
        (hs_vec2){dx + (side == HS_SIDE_LEFT ? -0.2 : 0.2), force_N > 0 ? 0.3 : -0.3};
    label->is_bold = TRUE;
    label->priority = 9;
}

/* "190 N (150–210)": from three bearers on statics alone does not say who holds how much, only between what. */
static char *
share_text(const hs_scene *scene, const hs_bearer_sample *bearer)
{
    char *text = hs_scene_text(scene, bearer->hand_force_N, "N");

    if (scene->option->asked->n_bearers < 3 || !hs_has(bearer->share_least_N) ||
        !hs_has(bearer->share_most_N))
        return text;
    /* the range is of the force at rest; walking raises both ends alike */
    double walking = bearer->share_N > 0 ? bearer->hand_force_N / bearer->share_N : 1;
    hs_units units = scene->request->us_units ? HS_UNITS_US : HS_UNITS_SI;
    int digits = hs_quantity_digits(bearer->hand_force_N, "N", units);
    g_autofree char *least =
        hs_quantity_number_digits(walking * bearer->share_least_N, "N", units, digits);
    g_autofree char *most =
        hs_quantity_number_digits(walking * bearer->share_most_N, "N", units, digits);

    if (g_str_equal(least, most))
        return text;
    /* Translators: a share, then its least and most: "190 N (150–210)" */
    char *with_range = g_strdup_printf(_("%s (%s–%s)"), text, least, most);

    g_free(text);
    return with_range;
}

static const char *
lost_words(hs_lost_state state)
{
    switch (state) {
    case HS_LOST_LOCKED:
        return _("%s by the locked suit");
    case HS_LOST_DESCENDING:
        return _("%s by the sinking suit");
    default:
        return _("%s by the suit");
    }
}

static void
draw_suited(hs_scene *scene, int b, hs_vec2 at_m, double away)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];
    double suit_N = bearer->suit_force_N;
    const char *format = _("%s by the suit");

    if (scene->request->power_off && bearer->power_lost.is_known) {
        suit_N = bearer->hand_force_N - bearer->power_lost.felt_force_N;
        format = lost_words(bearer->power_lost.state);
    }
    if (!hs_has(suit_N)) {
        if (hs_has(bearer->hand_force_N)) {
            g_autofree char *force = hs_scene_text(scene, bearer->hand_force_N, "N");

            put_arrow(scene, at_m, bearer->hand_force_N, HS_ARROW_PERSON, 0, HS_SIDE_LEFT,
                      g_strdup_printf(_("%s, suit's part not known"), force));
        }
        return;
    }
    if (fabs(suit_N) < 0.5)
        return;
    g_autofree char *force = hs_scene_text(scene, suit_N, "N");

    put_arrow(scene, at_m, suit_N, HS_ARROW_SUIT, away * 0.95,
              away > 0 ? HS_SIDE_RIGHT : HS_SIDE_LEFT,
              named(scene, b, hs_scene_phrase(format, force)));
}

static void
draw_floor(hs_scene *scene, int b)
{
    const hs_bearer_sample *bearer = &scene->sample->bearers[b];
    hs_vec2 at_m = hs_scene_moving(scene, bearer->feet_x_m, hs_or(bearer->floor_z_m, 0));

    if (scene->request->few_labels || !hs_has(bearer->ground_force_N))
        return;
    g_autofree char *force = hs_scene_text(scene, bearer->ground_force_N, "N");
    hs_prim *label =
        hs_scene_add_label(scene, at_m, HS_SIDE_BELOW, HS_INK_INK,
                           named(scene, b, g_strdup_printf(_("%s on the floor"), force)));

    label->offset = (hs_vec2){0, 2.9};
    label->is_small = TRUE;
    label->priority = 3;
}

/* Bearers at both sides hold at one place of the picture: their arrows stand beside each other. */
static double
aside_em(const hs_scene *scene, int b, hs_vec2 at_m)
{
    int same = 0;

    for (int k = 0; k < b; k++)
        same += fabs(hs_scene_hands(scene, k).x - at_m.x) < 0.02;
    return same * 1.1;
}

void
hs_layer_force_draw(hs_scene *scene)
{
    int n = scene->option->asked->n_bearers;

    for (int b = 0; b < n; b++) {
        const hs_bearer_sample *bearer = &scene->sample->bearers[b];
        hs_vec2 at_m = hs_scene_hands(scene, b);
        double away = at_m.x >= hs_scene_moving(scene, bearer->feet_x_m, 0).x ? 1 : -1;

        scene->depth = HS_DEPTH_FORCE;
        if (hs_scene_suit(scene, b)) {
            draw_suited(scene, b, at_m, away);
        } else if (hs_has(bearer->hand_force_N)) {
            put_arrow(scene, at_m, bearer->hand_force_N, HS_ARROW_PERSON,
                      aside_em(scene, b, at_m), HS_SIDE_ABOVE,
                      named(scene, b, share_text(scene, bearer)));
        }
        draw_floor(scene, b);
    }
}
