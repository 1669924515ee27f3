/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how long would other published curves let a share of strength be held, and how long do hands hold?
 * Answer:    the grip's own power law, one law and one curve for no joint in particular, one curve for the shoulder.
 * Not here:  the laws by joint that a check is judged by (endurance.c). */
#include "endurance_readers.h"

#include "status.h"
#include "units.h"

#include <math.h>

#define S_PER_min      60.0 /* definition of the minute */
#define ROHMERT_LEAST  0.20 /* the curve is drawn from 20 to 100 per cent */
#define SHOULDER_LEAST 0.15 /* its curve has a pole there */

static double
power_law_s(double f, double b0_s, double b1)
{
    if (!(f > 0.0))
        return HS_ABSENT;
    return f > 1.0 ? 0.0 : b0_s * pow(f, b1);
}

double
hs_endurance_hands_s(double f)
{
    return power_law_s(f, HS_ENDURANCE_HANDS_b0_s, HS_ENDURANCE_HANDS_b1);
}

double
hs_endurance_hands_share(double seconds)
{
    if (!(seconds > 0.0))
        return 1.0;
    return fmin(pow(seconds / HS_ENDURANCE_HANDS_b0_s, 1.0 / HS_ENDURANCE_HANDS_b1), 1.0);
}

double
hs_endurance_any_s(double f)
{
    return power_law_s(f, HS_ENDURANCE_ANY_b0_s, HS_ENDURANCE_ANY_b1);
}

double
hs_endurance_rohmert_s(double f)
{
    if (!(f >= ROHMERT_LEAST))
        return HS_ABSENT;
    return f > 1.0 ? 0.0 : S_PER_min * (-1.5 + 2.1 / f - 0.6 / (f * f) + 0.1 / (f * f * f));
}

double
hs_endurance_shoulder_s(double f)
{
    if (!(f > SHOULDER_LEAST))
        return HS_ABSENT;
    return f > 1.0 ? 0.0 : 1236.5 / pow(100.0 * f - 15.0, 0.618) - 72.5;
}
