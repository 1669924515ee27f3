/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the working of a finding say?
 * Answer:    a figure of a case, the result of one line by its equation, and a bearer so slow that nothing speeds up.
 * Not here:  the cases. */
#ifndef HS_LINES_H
#define HS_LINES_H

#include "one_bearer.h"

#include <json-glib/json-glib.h>

#define LONG_s 4000.0 /* so slow that nothing speeds up (numerics) */

static inline double
given(JsonObject *of, const char *key)
{
    g_assert_true(json_object_has_member(of, key));
    return json_object_get_double_member(of, key);
}

/* What the working says by one equation. */
static inline double
line_of(const hs_working *working, hs_equation_id equation)
{
    for (const hs_working_line *line = working->first; line != NULL; line = line->next)
        if (line->equation == equation)
            return line->result;
    g_error("no line %s", hs_equation_get(equation)->id);
}

static inline double
line_in(hs_finding finding, hs_equation_id equation)
{
    return line_of(&finding.working, equation);
}

#define LINE(finding, eq) line_in((finding), HS_EQ_##eq)

static inline void
stand_still(one *o)
{
    for (int i = 1; i < 4; i++)
        o->points[i].time_s = LONG_s;
    o->task.policy.walking_factor = 1.0;
}

#endif
