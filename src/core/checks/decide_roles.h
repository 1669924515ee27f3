/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who does what the second person did, and were the gates passed?
 * Answer:    hs_check_roles(), hs_check_gates() (check.h), and these for others who ask about roles.
 * Not here:  the verdict (decide.c). */
#ifndef HS_DECIDE_ROLES_H
#define HS_DECIDE_ROLES_H

#include "run.h"

/* What a role is about, as far as a check needs to know: lists/role_words.def. */
typedef enum {
    HS_ROLE_OTHER = 0,
    HS_ROLE_RESCUES,
    HS_ROLE_WATCHES
} hs_role_kind;

/* Baseline and options with at least as many bearers: who does it today; else who does it then. Never NULL. */
const char *hs_role_filler(const hs_asking *asking, const hs_role *role);
bool hs_role_is_empty(const char *filler);
bool hs_role_is_device(const char *filler);
hs_role_kind hs_role_kind_of(const hs_role *role);

/* The first person (no device) who fills a role of this kind in this option; NULL: nobody. */
const char *hs_roles_person_for(const hs_asking *asking, hs_role_kind kind);

/* Roles of this option that a device fills: each is a condition. */
int hs_roles_n_devices(const hs_asking *asking);

#endif
