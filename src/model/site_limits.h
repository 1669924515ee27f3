/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which limits does a site set for itself?
 * Answer:    a named set in a file of its own: read and validated, laid under a document's policy.site_limits, printed.
 * Not here:  what a figure does in a check (core, checks/limits/legs.c), the format in words (docs/limits/site.md). */
#ifndef HS_SITE_LIMITS_H
#define HS_SITE_LIMITS_H

#include "arena.h"
#include "faults.h"
#include "result.h"
#include "task.h"
#include "unit_system.h"

#include <gio/gio.h>

/* Never changed after it was read, so that threads share it; counted. */
typedef struct hs_site_set hs_site_set;

hs_site_set *hs_site_set_ref(hs_site_set *set);
void hs_site_set_unref(hs_site_set *set);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(hs_site_set, hs_site_set_unref)

/**
 * hs_site_set_from_bytes - read a site's set of limits
 *
 * What    strict JSON, then format, version, id, edition, wording, and for each check its figure, unit, source and whether the
 *         site has confirmed it; every fault in one go
 * In      text of any length and content
 * Out     a new set, or NULL when it has faults; warnings (unknown keys) do not prevent it
 * Frame   none
 * Errors  faults: GPtrArray of hs_fault*, with the JSON path
 * Source  docs/limits/site.md
 */
hs_site_set *hs_site_set_from_bytes(const char *text, gsize length, GPtrArray *faults);

/* From a file; error is set when it cannot be read. */
hs_site_set *hs_site_set_load(const char *path, GPtrArray *faults, GError **error);

/* The same for people: NULL and one sentence with the first fault, its path, and how many there are. */
hs_site_set *hs_site_set_load_or_say(const char *path, char **ret_trouble);

const char *hs_site_set_id(const hs_site_set *set);
const char *hs_site_set_name(const hs_site_set *set); /* the title, else the id */
const char *hs_site_set_edition(const hs_site_set *set);
const char *hs_site_set_wording(const hs_site_set *set);
const char *hs_site_set_digest(const hs_site_set *set);

/* One figure of the set, in the unit of its check. */
typedef struct {
    hs_check_id check;
    double figure;
    char *wording, *source;
    gboolean is_confirmed;
} hs_site_figure;

int hs_site_set_count(const hs_site_set *set);
const hs_site_figure *hs_site_set_figure(const hs_site_set *set, int i);
/* "confirmed by the site", "unconfirmed", or that the document has its own figure, so that this one is not used. */
const char *hs_site_figure_known(const hs_site_figure *figure, const hs_task *task);
/* Does it replace the published figure, that is: has the document none of its own? */
gboolean hs_site_figure_is_used(const hs_site_figure *figure, const hs_task *task);
/* "Example yard, edition 2026-1, set code 0123456789ab"; new. */
char *hs_site_set_headline(const hs_site_set *set);

/* The task with the set's figures in policy.site_limits; the document's own entries win. set NULL: the task itself. A copy in
 * the arena; the task must outlive it, the set need not. */
const hs_task *hs_site_set_apply(const hs_site_set *set, const hs_task *task, hs_arena *arena);

/* Which set was used, in which edition, its wording, and each figure: for the text report. Plain text, a line each. */
char *hs_site_set_to_text(const hs_site_set *set, const hs_task *task, hs_units units);

#endif
