/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does core answer to problems read from standard input?
 * Answer:    one line a problem, one line an answer: for compare_scipy.py.
 * Not here:  any judgement.
 *
 * shares n total mx my x1 y1 ... xn yn              -> OK f1 ... fn | NO
 * range n total mx my x1 y1 ... xn yn m1 ... mn     -> OK least most | NO
 * squeeze n edges Fx Fy Fz Mx My Mz then n times: x y z nx ny nz mu pad -> OK N | NO
 * closure n edges then n times as above             -> OK 0 | OK 1 */
#include "grip.h"
#include "shares.h"

#include <stdio.h>
#include <string.h>

static double
next(void)
{
    double value = 0.0;

    return scanf("%lf", &value) == 1 ? value : HS_ABSENT;
}

static hs_shares_problem
read_problem(void)
{
    hs_shares_problem problem = {.n = (int)next()};

    problem.total_N = next();
    problem.moment_x_Nm = next();
    problem.moment_y_Nm = next();
    for (int i = 0; i < problem.n && i < HS_MAX_USED_GRIPS; i++) {
        problem.x_m[i] = next();
        problem.y_m[i] = next();
    }
    return problem;
}

static void
ask_shares(void)
{
    hs_shares_problem problem = read_problem();
    hs_shares_answer answer;

    if (hs_shares(&problem, &answer, NULL) != HS_OK || answer.is_outside) {
        puts("NO");
        return;
    }
    printf("OK");
    for (int i = 0; i < problem.n; i++)
        printf(" %.17g", answer.up_N[i]);
    puts("");
}

static void
ask_range(void)
{
    hs_shares_problem problem = read_problem();
    hs_shares_answer answer;
    bool member[HS_MAX_USED_GRIPS];
    double least, most;

    for (int i = 0; i < problem.n; i++)
        member[i] = next() > 0.5;
    if (hs_shares(&problem, &answer, NULL) != HS_OK || answer.is_outside ||
        hs_shares_range(&problem, member, &least, &most, NULL) != HS_OK)
        puts("NO");
    else
        printf("OK %.17g %.17g\n", least, most);
}

static hs_vec3
next_vec3(void)
{
    hs_vec3 v;

    v.x = next();
    v.y = next();
    v.z = next();
    return v;
}

static void
read_contacts(int n, hs_contact *contacts)
{
    for (int i = 0; i < n && i < HS_GRIP_MAX_CONTACTS; i++) {
        contacts[i] = (hs_contact){.at_m = next_vec3()};
        contacts[i].inward = next_vec3();
        contacts[i].friction = next();
        contacts[i].pad = (int)next();
    }
}

static void
ask_grip(bool squeeze_too)
{
    hs_contact contacts[HS_GRIP_MAX_CONTACTS];
    int n = (int)next(), n_edges = (int)next();
    hs_wrench need = {{0, 0, 0}, {0, 0, 0}};
    hs_squeeze squeeze;
    hs_hold hold;

    if (squeeze_too) {
        need.force_N = next_vec3();
        need.moment_Nm = next_vec3();
    }
    read_contacts(n, contacts);
    if (!squeeze_too) {
        hold = hs_grip_closure(contacts, n, NULL, false, n_edges);
        printf("OK %d\n", hold == HS_HOLD_FORM || hold == HS_HOLD_FORCE);
    } else if (hs_grip_squeeze(contacts, n, &need, n_edges, &squeeze, NULL) == HS_OK) {
        printf("OK %.17g\n", squeeze.squeeze_N);
    } else {
        puts("NO");
    }
}

int
main(void)
{
    char ask[16];

    while (scanf("%15s", ask) == 1) {
        if (strcmp(ask, "shares") == 0)
            ask_shares();
        else if (strcmp(ask, "range") == 0)
            ask_range();
        else
            ask_grip(strcmp(ask, "squeeze") == 0);
    }
    return 0;
}
