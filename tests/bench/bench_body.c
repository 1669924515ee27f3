/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long do a posture and a whole leg take?
 * Answer:    medians over many runs, printed; nothing is judged here.
 * Not here:  whether the figures are right (tests/unit/body). */
#include "body.h"
#include "units.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum {
    N_PLACES = 17,
    N_RUNS = 301
};

static double
now_us(void)
{
    struct timespec t;

    clock_gettime(CLOCK_MONOTONIC, &t);
    return 1e6 * (double)t.tv_sec + 1e-3 * (double)t.tv_nsec;
}

static int
by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;

    return (x > y) - (x < y);
}

static double
median_us(double *times_us)
{
    qsort(times_us, N_RUNS, sizeof times_us[0], by_size);
    return times_us[N_RUNS / 2];
}

static hs_body_input
place(int i)
{
    return (hs_body_input){.hand_x_m = 0.35,
                           .hand_z_m = 0.25 + 0.75 * i / (N_PLACES - 1.0),
                           .felt_N = 15.0 * HS_GRAVITY_m_s2,
                           .weight_factor = 1.0,
                           .suit.gain_trunk = 1.0,
                           .stance = HS_STANCE_STANDING,
                           .style = HS_STYLE_FREE};
}

int
main(void)
{
    static double warm_us[N_RUNS], cold_us[N_RUNS], leg_us[N_RUNS];
    hs_worker worker = {
        .sex = HS_SEX_MALE, .stature_m = 1.756, .mass_kg = 85.5, .age_years = 40.0};
    hs_body_input inputs[N_PLACES];
    hs_body_state states[N_PLACES], found, near;
    hs_arena *arena = hs_arena_new();
    hs_person person;
    int n_found = 0;

    if (hs_person_make(&worker, 25.0, HS_SEGMENTS_DE_LEVA, &person, NULL) != HS_OK)
        return 1;
    for (int i = 0; i < N_PLACES; i++)
        inputs[i] = place(i);
    for (int i = 0; i < N_RUNS; i++) {
        const hs_body_input *at = &inputs[i % (N_PLACES - 1)];
        double start_us = now_us();

        hs_posture_find(&person, at, NULL, &near);
        cold_us[i] = now_us() - start_us;
        start_us = now_us();
        hs_posture_find(&person, at + 1, &near, &found);
        warm_us[i] = now_us() - start_us;
        start_us = now_us();
        hs_posture_leg(&person, inputs, N_PLACES, arena, states);
        leg_us[i] = now_us() - start_us;
    }
    for (int i = 0; i < N_PLACES; i++)
        n_found += states[i].is_found;
    printf("one posture, warm: %.1f us\none posture, cold: %.1f us\n", median_us(warm_us),
           median_us(cold_us));
    printf("leg of %d places, cold: %.0f us, %d states found\n", N_PLACES, median_us(leg_us),
           n_found);
    hs_arena_free(arena);
    return 0;
}
