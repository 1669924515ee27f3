/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which figures of published limits does the program hold?
 * Answer:    lists/limit_figures.def and the rows of the tables, visited one by one.
 * Not here:  writing them down (model/limits_json.c). */
#include "figures.h"

#include "lists/limit_headers.def"

#include <stdio.h>

static void
visit_frequency(hs_limit_figure_visit visit, void *data)
{
    static const struct {
        double per_min, factors[6];
        hs_confidence known;
    } rows[] = {
#define NIOSH_FM(per_min, a, b, c, d, e, f, known) {per_min, {a, b, c, d, e, f}, known},
#include "lists/limits_niosh.def"
#undef NIOSH_FM
    };
    static const char *const columns[] = {"short, low",     "short, high", "moderate, low",
                                          "moderate, high", "long, low",   "long, high"};
    char name[96];

    for (int i = 0; i < (int)(sizeof rows / sizeof *rows); i++)
        for (int c = 0; c < 6; c++) {
            hs_source_id source =
                rows[i].known == HS_CONF_SEEN ? HS_SRC_niosh_1994 : HS_SRC_niosh_fm_high;
            hs_limit_figure figure = {
                HS_CHECK_lift_niosh_1994, name, rows[i].factors[c], "", source, rows[i].known};

            snprintf(name, sizeof name, "frequency multiplier, %.1f a minute, %s",
                     rows[i].per_min, columns[c]);
            visit(&figure, data);
        }
}

static void
visit_day(hs_limit_figure_visit visit, void *data)
{
    static const hs_iso11228_day days[] = {
#define ISO_DAY(way, minute, hour, day) {way, minute, hour, day},
#include "lists/limits_iso_day.def"
#undef ISO_DAY
    };
    static const char *const spans[] = {"a minute", "an hour", "8 hours"};
    char name[96];

    for (int i = 0; i < (int)(sizeof days / sizeof *days); i++) {
        double figures[] = {days[i].per_min_kg, days[i].per_h_kg, days[i].per_8h_kg};

        for (int s = 0; s < 3; s++) {
            hs_limit_figure figure = {HS_CHECK_day_mass,      name,          figures[s], "kg",
                                      HS_SRC_iso_11228_1_day, HS_CONF_MEMORY};

            snprintf(name, sizeof name, "carried up to %.0f m, %s", days[i].carry_m, spans[s]);
            visit(&figure, data);
        }
    }
}

void
hs_limit_figures_each(hs_limit_figure_visit visit, void *data)
{
    hs_confidence known; /* of a row that tells it: the list says it again */

#define FIGURE(check, name, value, unit, source, confidence)                                   \
    visit(&(hs_limit_figure){HS_CHECK_##check, name, value, unit, HS_SRC_##source,             \
                             HS_CONF_##confidence},                                            \
          data);
#include "lists/limit_figures.def"
#undef FIGURE
    visit_frequency(visit, data);
    visit_day(visit, data);
    (void)known;
}

hs_own_by
hs_limit_own_by(hs_check_id check)
{
    static const hs_own_by by[HS_N_CHECKS] = {
#define OWN(check, by) [HS_CHECK_##check] = HS_OWN_BY_##by,
#include "lists/site_own.def"
#undef OWN
    };

    return by[check];
}

bool
hs_limit_takes_own(hs_check_id check)
{
    return hs_limit_own_by(check) != HS_OWN_NOT;
}
