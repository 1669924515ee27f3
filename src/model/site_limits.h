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

#include <glib.h>

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

const char *hs_site_set_id(const hs_site_set *set);
/* Was it read from the sets that ship (and not from a file that looks like one)? */
gboolean hs_site_set_is_shipped(const hs_site_set *set);
void hs_site_set_mark_shipped(hs_site_set *set);      /* before anybody else has it */
const char *hs_site_set_name(const hs_site_set *set); /* the title, else the id */
const char *hs_site_set_edition(const hs_site_set *set);
const char *hs_site_set_wording(const hs_site_set *set);
const char *hs_site_set_digest(const hs_site_set *set);

/* How a figure of a set is known: the site says so ("confirmed"), or it is a publication's ("known"). */
typedef enum {
    HS_SITE_CONFIRMED,
    HS_SITE_UNCONFIRMED,
    HS_SITE_READ,      /* "known": "seen" */
    HS_SITE_REMEMBERED /* "known": "memory": unconfirmed */
} hs_site_known;

/* One figure of the set, in the unit of its check or as a share of the worker's own mass. A check may have several, each for
 * other people or handling. */
typedef struct {
    hs_check_id check;
    double figure;
    gboolean by_body_mass;
    char *wording, *source;
    hs_site_known known;
    hs_site_when when;
} hs_site_figure;

int hs_site_set_count(const hs_site_set *set);
const hs_site_figure *hs_site_set_figure(const hs_site_set *set, int i);
/* "18 kg", "40 % of the worker's own mass"; new. */
char *hs_site_figure_text(const hs_site_figure *figure, hs_units units);
/* Only remembered, or not confirmed by the site: near at most. */
gboolean hs_site_figure_is_unconfirmed(const hs_site_figure *figure);
/* "confirmed by the site", "read in a publication", "unconfirmed", or that the document has its own figure, so that this one is not used. task NULL: there is none yet. */
const char *hs_site_figure_known(const hs_site_figure *figure, const hs_task *task);
/* Does it replace the published figure, that is: has the document none of its own? */
gboolean hs_site_figure_is_used(const hs_site_figure *figure, const hs_task *task);
/* One figure as a line of text, new; task NULL: there is none yet. */
char *hs_site_set_line(const hs_site_set *set, int i, const hs_task *task, hs_units units);
/* "Example yard, edition 2026-1, set code 0123456789ab"; new. */
char *hs_site_set_headline(const hs_site_set *set);

/* The task with the set's figures in policy.site_limits; the document's own entries win. set NULL: the task itself. A copy in
 * the arena; the task must outlive it, the set need not. */
const hs_task *hs_site_set_apply(const hs_site_set *set, const hs_task *task, hs_arena *arena);

/* Which set was used, in which edition, its wording, and each figure: for the text report. Plain text, a line each. */
char *hs_site_set_to_text(const hs_site_set *set, const hs_task *task, hs_units units);

#endif
