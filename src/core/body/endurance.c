/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long can a joint hold a share of its strength?
 * Answer:    hs_endurance_s(), a published power law for each joint.
 * Not here:  the cautious share of it that a check takes (checks/body_checks.c). */
#include "body.h"

static const struct {
    double b0_s, b1;
} table[HS_N_JOINTS] = {
#define ENDURANCE(joint, b0_s, b1) [HS_JOINT_##joint] = {b0_s, b1},
#include "lists/endurance.def"
#undef ENDURANCE
};

/* The fit's data begin at 0.1, most lie above 0.25: below 0.15 the time at 0.15 is given, and said to be so. */
#define LEAST_FRACTION 0.15

void
hs_endurance_law(
    int joint, double f, double *ret_fraction, double *ret_b0_s, double *ret_exponent)
{
    *ret_fraction = fmax(f, LEAST_FRACTION);
    *ret_b0_s = table[joint].b0_s;
    *ret_exponent = table[joint].b1;
}

double
hs_endurance_s(int joint, double f, bool *ret_is_outside_fit)
{
    if (ret_is_outside_fit != NULL)
        *ret_is_outside_fit = f < LEAST_FRACTION;
    if (!hs_has(f))
        return HS_ABSENT;
    if (f > 1.0)
        return 0.0;
    return table[joint].b0_s * pow(fmax(f, LEAST_FRACTION), table[joint].b1);
}
