/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how much room do load and bearers take at one instant?
 * Answer:    boxes in world axes round the turned corners of the load's outline, and round a standing person.
 * Not here:  whether it is there (surroundings.c, power_loss.c). */
#include "outline.h"

#define BODY_WIDTH_m 0.50 /* shoulders of a clothed person: common practice, no source */
#define BODY_DEPTH_m                                                                           \
    0.30 /* chest and arms at rest, half of it before the ankles: common practice, no source */

static void
take_in(hs_outline *outline, hs_vec3 p)
{
    outline->least_m = (hs_vec3){fmin(outline->least_m.x, p.x), fmin(outline->least_m.y, p.y),
                                 fmin(outline->least_m.z, p.z)};
    outline->most_m = (hs_vec3){fmax(outline->most_m.x, p.x), fmax(outline->most_m.y, p.y),
                                fmax(outline->most_m.z, p.z)};
}

hs_outline
hs_outline_load(const hs_setup *setup, const hs_place *place)
{
    const hs_load_state *load = setup->load;
    hs_outline outline = {place->origin_m, place->origin_m};
    bool is_first = true;

    if (!load->has_box)
        return outline;
    for (int i = 0; i < 8; i++) {
        hs_vec3 corner = {i & 1 ? load->most_m.x : load->least_m.x,
                          i & 2 ? load->most_m.y : load->least_m.y,
                          i & 4 ? load->most_m.z : load->least_m.z};
        hs_vec3 at = hs_vec3_add(place->origin_m, hs_mat3_apply(&place->load_to_world, corner));

        if (is_first)
            outline = (hs_outline){at, at};
        is_first = false;
        take_in(&outline, at);
    }
    return outline;
}

hs_outline
hs_outline_bearer(const hs_setup *setup, const hs_place *place, int bearer)
{
    const hs_bearer_setup *who = &setup->bearers[bearer];
    const hs_bearer_place *at = &place->bearers[bearer];
    const hs_suit *suit = who->suit;
    double width_m = BODY_WIDTH_m, height_m = who->worker->stature_m,
           behind_m = BODY_DEPTH_m / 2.0;
    double c = fabs(cos(who->facing_rad)), s = fabs(sin(who->facing_rad)), back;

    if (suit != NULL) {
        width_m = fmax(width_m, hs_or(suit->width_m, 0.0));
        height_m = fmax(height_m, hs_or(suit->height_m, 0.0));
        behind_m = fmax(behind_m, hs_or(suit->depth_m, 0.0));
    }
    hs_outline outline = {
        {at->feet_m.x - c * BODY_DEPTH_m / 2.0 - s * width_m / 2.0,
         at->feet_m.y - s * BODY_DEPTH_m / 2.0 - c * width_m / 2.0, at->floor_z_m},
        {at->feet_m.x + c * BODY_DEPTH_m / 2.0 + s * width_m / 2.0,
         at->feet_m.y + s * BODY_DEPTH_m / 2.0 + c * width_m / 2.0, at->floor_z_m + height_m}};

    /* What the suit carries on the wearer's back reaches behind. */
    back = behind_m;
    take_in(&outline, (hs_vec3){at->feet_m.x - back * cos(who->facing_rad),
                                at->feet_m.y - back * sin(who->facing_rad), at->floor_z_m});
    return outline;
}

hs_vec3
hs_outline_size_m(const hs_load_state *load)
{
    if (!load->has_box)
        return (hs_vec3){0.0, 0.0, 0.0};
    return hs_vec3_sub(load->most_m, load->least_m);
}
