/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a figure of the posture change with the three angles?
 * Answer:    a dual number carries the value and its three derivatives through every step (forward differentiation).
 * Not here:  what is computed (chain.c). */
#ifndef HS_DUAL_H
#define HS_DUAL_H

#include <math.h>

/* A step of a formula that has to be compiled into the whole (numerics: speed alone). */
#if defined(__GNUC__)
#define HS_INLINE static inline __attribute__((always_inline))
#else
#define HS_INLINE static inline
#endif

/* As fmax and fmin where a is a number; where a is none, b. They compile to one instruction. */
HS_INLINE double
hs_more_of(double a, double b)
{
    return a > b ? a : b;
}

HS_INLINE double
hs_less_of(double a, double b)
{
    return a < b ? a : b;
}

/* v[0] is the value, v[1..3] its derivatives by shank, thigh and trunk angle. */
typedef struct {
    double v[4];
} hs_dual;

HS_INLINE hs_dual
dual_of(double value)
{
    return (hs_dual){{value, 0.0, 0.0, 0.0}};
}

HS_INLINE hs_dual
dual_add(hs_dual a, hs_dual b)
{
    return (hs_dual){{a.v[0] + b.v[0], a.v[1] + b.v[1], a.v[2] + b.v[2], a.v[3] + b.v[3]}};
}

HS_INLINE hs_dual
dual_sub(hs_dual a, hs_dual b)
{
    return (hs_dual){{a.v[0] - b.v[0], a.v[1] - b.v[1], a.v[2] - b.v[2], a.v[3] - b.v[3]}};
}

HS_INLINE hs_dual
dual_scale(hs_dual a, double k)
{
    return (hs_dual){{a.v[0] * k, a.v[1] * k, a.v[2] * k, a.v[3] * k}};
}

/* a + k b */
HS_INLINE hs_dual
dual_axpy(hs_dual a, double k, hs_dual b)
{
    return (hs_dual){
        {a.v[0] + k * b.v[0], a.v[1] + k * b.v[1], a.v[2] + k * b.v[2], a.v[3] + k * b.v[3]}};
}

HS_INLINE hs_dual
dual_shift(hs_dual a, double c)
{
    a.v[0] += c;
    return a;
}

/* f(a) with f and f' given */
HS_INLINE hs_dual
dual_chain(hs_dual a, double value, double slope)
{
    return (hs_dual){{value, slope * a.v[1], slope * a.v[2], slope * a.v[3]}};
}

HS_INLINE hs_dual
dual_mul(hs_dual a, hs_dual b)
{
    return (hs_dual){{a.v[0] * b.v[0], a.v[0] * b.v[1] + b.v[0] * a.v[1],
                      a.v[0] * b.v[2] + b.v[0] * a.v[2], a.v[0] * b.v[3] + b.v[0] * a.v[3]}};
}

HS_INLINE hs_dual
dual_div(hs_dual a, hs_dual b)
{
    double inverse = 1.0 / b.v[0], q = a.v[0] * inverse;

    return (hs_dual){{q, (a.v[1] - q * b.v[1]) * inverse, (a.v[2] - q * b.v[2]) * inverse,
                      (a.v[3] - q * b.v[3]) * inverse}};
}

/* angle of (x, y) as atan2(y, x) */
HS_INLINE hs_dual
dual_atan2(hs_dual y, hs_dual x)
{
    double r2 = x.v[0] * x.v[0] + y.v[0] * y.v[0];
    double cy = x.v[0] / r2, cx = -y.v[0] / r2;

    return (hs_dual){{atan2(y.v[0], x.v[0]), cy * y.v[1] + cx * x.v[1],
                      cy * y.v[2] + cx * x.v[2], cy * y.v[3] + cx * x.v[3]}};
}

#endif
